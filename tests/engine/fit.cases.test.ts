/** The fit of named cases, every number from the geometry of a cone: axial = normal/sin a = radial/tan a. */
import { describe, expect, it } from 'vitest';
import type { Design, Seat, Surface } from '../../src/design/definition.ts';
import { fitSection } from '../../src/report/fit/section.ts';

const rad = (degrees: number) => (degrees * Math.PI) / 180;
const sin = (degrees: number) => Math.sin(rad(degrees));
const cos = (degrees: number) => Math.cos(rad(degrees));
const tan = (degrees: number) => Math.tan(rad(degrees));

const cone = (
  halfAngle: number,
  diameter: number,
  from: number,
  to: number,
  profile?: [number, number][],
): Surface => ({ halfAngle, diameter, station: 0, from, to, ...(profile && { profile }) });
const fitOf = (seats: Seat[], more: Partial<Design> = {}) => fitSection({ conepair: 1, seats, ...more });
const one = (journal: Surface, bush: Surface, position = 0) =>
  fitOf([{ name: 'a', journal, bush }], { position }).seats[0]!;
/** mm */
const is = (found: number | null | undefined, wanted: number) => expect(found).toBeCloseTo(wanted, 10);

const shallow: Seat = {
  name: 'shallow',
  journal: cone(3, 22, -26, 0),
  bush: cone(3, 22.006, -25, -0.5),
  film: { target: 0.0025, tolerance: 0.0005 },
};
const steep: Seat = {
  name: 'steep',
  journal: cone(45, 26, 0, 4),
  bush: cone(45, 26.008, 0.5, 3.5),
  film: { target: 0.0025, tolerance: 0.0005 },
};

describe('the example of the file format', () => {
  const fit = fitOf([shallow, steep], { position: 0.02, adjuster: { pitch: 0.75 } });
  const [first, second] = [fit.seats[0]!, fit.seats[1]!];

  it('has the printed numbers, rounded as printed', () => {
    expect(first.closes).toBe('rearward');
    expect(first.seatPosition).toBeCloseTo(-0.0572, 4);
    expect(first.contact?.station).toBeCloseTo(-25, 10);
    expect(first.contact?.diameter).toBeCloseTo(19.386, 3);
    expect(first.contact?.end).toBe('whole');
    expect(first.leastFilm).toBeCloseTo(0.00404, 5);
    expect(first.leastFilmStation).toBeCloseTo(-25, 10);
    expect(first.greatestFilm).toBeCloseTo(0.00404, 5);
    expect(first.sensitivity).toBeCloseTo(0.0523, 4);
    expect(first.positionForTarget).toBeCloseTo(-0.0095, 4);
    expect(first.shiftToTarget).toBeCloseTo(-0.0295, 4);
    expect(first.turnsToTarget).toBeCloseTo(-0.0393, 4);
    expect(fit.first).toBe('steep');
    expect(fit.together).toEqual(['steep']);
    expect(fit.firstPosition).toBeCloseTo(-0.004, 10);
    expect(fit.filmsAtFirst.shallow).toBeCloseTo(0.00279, 5);
    expect(fit.filmsAtFirst.steep).toBe(0);
    expect(fit.endPlay).toBeNull();
    expect(fit.relation?.between).toEqual(['shallow', 'steep']);
    expect(fit.relation?.error).toBeCloseTo(-0.009, 4);
    expect(fit.relation?.allowance).toBeCloseTo(0.0103, 4);
  });

  it('has them from the geometry of a cone', () => {
    is(first.seatPosition, -0.003 / tan(3));
    is(first.leastFilm, 0.02 * sin(3) + 0.003 * cos(3));
    is(first.sensitivity, sin(3));
    is(first.positionForTarget, -0.003 / tan(3) + 0.0025 / sin(3));
    is(second.seatPosition, -0.004);
    is(second.positionForTarget, -0.004 + 0.0025 / sin(45));
    is(fit.filmsAtFirst.shallow, -0.004 * sin(3) + 0.003 * cos(3));
    is(fit.relation?.allowance, 0.0005 / sin(3) + 0.0005 / sin(45));
  });

  it('null where there is no target or no adjuster', () => {
    const bare = fitOf([{ name: 'a', journal: shallow.journal, bush: shallow.bush }]);
    expect(bare.seats[0]).toMatchObject({ positionForTarget: null, shiftToTarget: null, turnsToTarget: null });
    expect(bare.relation).toBeNull();
    expect(fitOf([shallow]).seats[0]!.turnsToTarget).toBeNull();
    expect(fitOf([shallow]).position).toBe(0);
  });
});

describe('the lesson of the two cones', () => {
  it('backing off 10 µm opens the steep film by 7 µm and the shallow one by half a micrometre', () => {
    const [here, there] = [fitOf([shallow, steep], { position: 0.02 }), fitOf([shallow, steep], { position: 0.03 })];
    is(there.seats[0]!.leastFilm! - here.seats[0]!.leastFilm!, 0.01 * sin(3));
    is(there.seats[1]!.leastFilm! - here.seats[1]!.leastFilm!, 0.01 * sin(45));
  });

  it('with the same relation in both parts, a film of 2.5 µm in both needs some 44 µm', () => {
    const same = (seat: Seat): Seat => ({ ...seat, journal: { ...seat.bush } });
    is(fitOf([same(shallow), same(steep)]).relation?.error, 0.0025 / sin(3) - 0.0025 / sin(45));
    expect(fitOf([same(shallow), same(steep)]).relation?.error).toBeCloseTo(0.044, 3);
  });

  it('interference is a negative film, not hidden', () => {
    is(one(steep.journal, steep.bush, -0.01).leastFilm, (-0.01 + 0.004) * sin(45));
  });
});

describe('where it touches', () => {
  const bush = cone(3, 22.006, -25, -0.5);

  it('a journal of less angle touches at the small end', () => {
    const found = one(cone(2.9, 22, -26, 1), bush);
    expect(found.contact?.end).toBe('small');
    is(found.contact?.station, -25);
    is(found.contact?.diameter, 22.006 - 50 * tan(3));
    // the journal's station of the radius of the bush's small end
    is(found.seatPosition, -25 - (11.003 - 25 * tan(3) - 11) / tan(2.9));
    expect(found.contact?.stretches).toHaveLength(1);
  });

  it('a journal of more angle touches at the large end', () => {
    const found = one(cone(3.1, 22, -26, 1), bush);
    expect(found.contact?.end).toBe('large');
    is(found.contact?.station, -0.5);
    is(found.seatPosition, -0.5 - (11.003 - 0.5 * tan(3) - 11) / tan(3.1));
  });

  it('a crowned journal touches in the middle', () => {
    const crown: [number, number][] = [
      [-26, 0],
      [-13, 0.01],
      [0, 0],
    ];
    const found = one(cone(3, 22, -26, 0, crown), bush);
    expect(found.contact?.end).toBe('middle');
    // the crown takes up 0.01 of the normal gap 0.003·cos 3°
    is(found.seatPosition, (0.01 - 0.003 * cos(3)) / sin(3));
    is(found.contact!.diameter / 2, 11 - 13 * tan(3) + 0.01 / cos(3));
  });

  it('a bush with a ridge touches on it; proud metal makes it smaller', () => {
    const ridge: [number, number][] = [
      [-14, 0],
      [-13, 0.01],
      [-12, 0],
    ];
    const found = one(cone(3, 22, -26, 0), cone(3, 22.006, -25, -0.5, ridge));
    expect(found.contact?.end).toBe('middle');
    is(found.contact?.station, -13);
    is(found.seatPosition, (0.01 - 0.003 * cos(3)) / sin(3));
  });

  it('two equal crowns touch in two stretches, the small end’s first', () => {
    const crowns: [number, number][] = [
      [-20, 0],
      [-18, 0.01],
      [-16, 0],
      [-10, 0],
      [-8, 0.01],
      [-6, 0],
    ];
    const found = one(cone(3, 22, -26, 0, crowns), bush);
    expect(found.contact?.stretches).toHaveLength(2);
    expect(found.contact!.stretches[0]!.from).toBeLessThan(found.contact!.stretches[1]!.from);
    is(found.contact!.stretches[1]!.from - found.contact!.stretches[0]!.from, 10);
  });

  it('a crown with a flat touches along the flat', () => {
    const flat: [number, number][] = [
      [-20, 0],
      [-16, 0.01],
      [-10, 0.01],
      [-6, 0],
    ];
    const found = one(cone(3, 22, -26, 0, flat), bush);
    expect(found.contact?.end).toBe('middle');
    const stretch = found.contact!.stretches[0]!;
    is(stretch.to - stretch.from, 6);
    is(found.contact?.station, stretch.from);
  });

  it('equal angles touch along the whole line; station: its small end', () => {
    const found = one(cone(45, 26, 0, 4), cone(45, 26.008, 0.5, 3.5));
    expect(found.contact?.end).toBe('whole');
    is(found.contact?.station, 0.5);
    is(found.contact!.stretches[0]!.to, 3.5);
  });

  it('noseward-closing: the small end is at the nose', () => {
    const found = one(cone(-45, 26, 0, 4), cone(-45, 26.008, 0.5, 3.5));
    expect(found.closes).toBe('noseward');
    is(found.seatPosition, 0.004);
    expect(found.contact?.end).toBe('whole');
    is(found.contact?.station, 3.5);
    is(found.sensitivity, -sin(45));
    const small = one(cone(-44, 26, -1, 5), cone(-45, 26.008, 0.5, 3.5));
    expect(small.contact?.end).toBe('small');
    is(small.contact?.station, 3.5);
  });
});

describe('ties', () => {
  it('seats that touch together are all named, the first of the file first', () => {
    const twin: Seat = { name: 'twin', journal: cone(30, 40, 6, 9), bush: { ...cone(30, 40 + 0.008 * tan(30), 6, 9) } };
    const fit = fitOf([twin, steep]);
    expect(fit.first).toBe('twin');
    expect(fit.together).toEqual(['twin', 'steep']);
    is(fit.firstPosition, -0.004);
    expect(fit.filmsAtFirst).toEqual({ twin: 0, steep: 0 });
  });

  it('a nanometre apart is not together', () => {
    const twin: Seat = { name: 'twin', journal: cone(45, 26, 0, 4), bush: cone(45, 26.008 + 0.000002, 0.5, 3.5) };
    expect(fitOf([twin, steep])).toMatchObject({ first: 'steep', together: ['steep'] });
  });
});

describe('what never touches', () => {
  it('a straight bearing: film of half the clearance at every position, no sensitivity', () => {
    for (const position of [-5, 0, 5]) {
      const found = one(cone(0, 20, -20, 0), cone(0, 20.01, -15, -5), position);
      expect(found).toMatchObject({ closes: 'never', seatPosition: null, contact: null });
      is(found.leastFilm, 0.005);
      is(found.greatestFilm, 0.005);
      is(found.sensitivity, 0);
    }
  });

  it('beside a straight seat the cone alone decides', () => {
    const straight: Seat = {
      name: 'straight',
      journal: cone(0, 20, -20, 0),
      bush: cone(0, 20.01, -15, -5),
      film: { target: 0.005 },
    };
    const fit = fitOf([straight, steep]);
    expect(fit.first).toBe('steep');
    is(fit.filmsAtFirst.straight, 0.005);
    expect(fit.seats[0]!.positionForTarget).toBeNull();
    expect(fit.relation).toBeNull();
  });

  it('a journal too small passes through, one too large cannot enter', () => {
    for (const diameter of [10, 40])
      expect(one(cone(3, diameter, -26, 0), cone(3, 22, -25, 0))).toMatchObject({
        closes: 'rearward',
        seatPosition: null,
        contact: null,
      });
    const fit = fitOf([{ name: 'a', journal: cone(3, 10, -26, 0), bush: cone(3, 22, -25, 0) }]);
    expect(fit).toMatchObject({
      first: null,
      together: [],
      firstPosition: null,
      filmsAtFirst: {},
      endPlay: null,
      relation: null,
    });
  });

  it('where the parts stand apart along the axis there is no film', () => {
    expect(one(cone(0, 20, -20, 0), cone(0, 20.01, 5, 15))).toMatchObject({
      leastFilm: null,
      leastFilmStation: null,
      greatestFilm: null,
      sensitivity: null,
    });
  });
});

describe('opposed cones', () => {
  const rear: Seat = { name: 'rear', journal: cone(45, 26, 0, 4), bush: cone(45, 26.02, 0.5, 3.5) };
  const nose: Seat = { name: 'nose', journal: cone(-30, 26, 10, 14), bush: cone(-30, 26.03, 10.5, 13.5) };

  it('end play lies between the two stops', () => {
    const fit = fitOf([nose, rear]);
    expect(fit.first).toBe('rear');
    is(fit.firstPosition, -0.01);
    is(fit.seats[0]!.seatPosition, 0.015 / tan(30));
    is(fit.endPlay, 0.01 + 0.015 / tan(30));
    is(fit.filmsAtFirst.nose, (0.015 / tan(30) + 0.01) * sin(30));
  });

  it('it is negative where the stops interfere', () => {
    const tight: Seat = { ...nose, bush: cone(-30, 25.9, 10.5, 13.5) };
    is(fitOf([rear, tight]).endPlay, 0.01 - 0.05 / tan(30));
  });

  it('with the noseward cone alone there is no first touch', () => {
    expect(fitOf([nose])).toMatchObject({ first: null, firstPosition: null, endPlay: null });
  });
});
