/** Safe speeds, cold clearances, and the position to set cold. */
import { describe, expect, it } from 'vitest';
import { newGrids } from '../../../src/engine/film/films.ts';
import { oilOfGrade } from '../../../src/engine/film/oil.ts';
import { cylinderRotor } from '../../../src/engine/film/whirl.ts';
import { type ThermalBody, type Warming, warmFilm } from '../../../src/engine/heat/warmFilm.ts';
import { steadyState } from '../../../src/engine/heat/warmUp.ts';
import { centredFilm, coldPositionFor } from '../../../src/engine/run/coldPosition.ts';
import {
  aimWithin,
  calm,
  type Needs,
  overCuts,
  overSpeeds,
  type SteadyPoint,
  steadyCut,
  steadyPoint,
  withClearance,
  withFilm,
  workingStretch,
} from '../../../src/engine/run/limits.ts';
import { loadAt } from '../../../src/engine/spindle/pose.ts';
import { at, coneSeat, RAD, straight } from '../film/bearings.ts';

const JOURNAL: ThermalBody = { mass: 0.8, specificHeat: 486, area: 0.02, cooling: 10, expansion: 11.3e-6, anchor: 0 };
const BUSH: ThermalBody = { mass: 2, specificHeat: 376, area: 0.06, cooling: 10, expansion: 18e-6, anchor: 0 };
const SIZE = { rows: 8, columns: 48 };
const sleeve = coneSeat(straight(0.011, 0.02, 4e-6), 'sleeve');
const shallow = coneSeat({ halfAngle: 3 * RAD, radius: 0.011, from: -0.025, to: -0.0005, film: 2.5e-6 }, 'shallow');

const warming = (over: Partial<Warming> = {}): Warming => ({
  grids: newGrids([sleeve], SIZE),
  coarse: newGrids([sleeve], { rows: 4, columns: 24 }),
  stand: { load: loadAt(0, -100, 0, 0), position: 0 },
  omega: 150,
  oil: oilOfGrade(10),
  journal: JOURNAL,
  bush: BUSH,
  ambient: 20,
  ...over,
});

describe('over speeds', () => {
  it('friction and temperature rise with speed; each point is a steady state of its own', () => {
    const points = [...overSpeeds(warming(), [50, 100, 200, 400], { film: 0 })];
    for (let i = 1; i < points.length; i++) {
      expect(points[i]!.power!).toBeGreaterThan(points[i - 1]!.power!);
      expect(points[i]!.journal!).toBeGreaterThan(points[i - 1]!.journal!);
    }
    const alone = steadyState(warming({ omega: 200 }));
    if (alone.status !== 'solved') throw new Error(alone.status);
    expect(Math.abs(points[2]!.journal! - alone.journal)).toBeLessThan(0.01);
    expect(points.every((point) => point.condition === 'works')).toBe(true);
  });

  it('too slow is too thin', () => {
    const conditions = [
      ...overSpeeds(warming({ stand: { load: loadAt(0, -3000, 0, 0), position: 0 } }), [5, 20, 2000], { film: 2e-6 }),
    ].map((point) => point.condition);
    expect(conditions).toEqual(['thin', 'thin', 'works']);
  });

  it('so fast that the oil does not last', () => {
    const points = [
      ...overSpeeds(warming({ stand: { load: loadAt(0, -300, 0, 0), position: 0 } }), [100, 3000], { film: 1e-7 }),
    ];
    expect(points.map(({ condition }) => condition)).toEqual(['works', 'hot']);
    expect(points[1]!.journal!).toBeGreaterThan(90);
  });

  it('a light rotor with little load whirls when fast', () => {
    const rotor = cylinderRotor(3, -0.05, 0.05, 0.01);
    const conditions = [
      ...overSpeeds(warming({ stand: { load: loadAt(0, -5, 0, 0), position: 0 } }), [50, 3000], { film: 1e-7, rotor }),
    ].map((point) => point.condition);
    expect(conditions[1]).toBe('loose');
  });
});

describe('over films', () => {
  const sleeveOf = (film: number) => newGrids([coneSeat(straight(0.011, 0.02, film), 'sleeve')], SIZE);

  it('cut to a film it runs as one that was made with it', () => {
    for (const film of [2.5e-6, 6e-6]) {
      const { grids: _, coarse: __, ...rest } = warming();
      const made = steadyPoint(0, { ...rest, grids: sleeveOf(film) }, { film: 0 }).point;
      const cut = steadyPoint(0, withFilm(warming(), film, [true]), { film: 0 }).point;
      expect(Math.abs(cut.leastFilm! - made.leastFilm!) / made.leastFilm!).toBeLessThan(1e-3);
      expect(Math.abs(cut.journal! - made.journal!)).toBeLessThan(0.05);
    }
  });

  it('the thicker the film the cooler it runs, and none between two that run is judged to seize', () => {
    const films = Array.from({ length: 33 }, (_, k) => (1 + k / 16) * 1e-6);
    const points = films.map((film) => steadyPoint(film, withFilm(warming(), film, [true]), { film: 0 }).point);
    expect(points.map(({ condition }) => condition)).toEqual(films.map(() => 'works'));
    const fall = points.slice(1).map(({ journal }, i) => points[i]!.journal! - journal!);
    expect(Math.min(...fall)).toBeGreaterThan(0);
    // Smoothly: between two neighbours no step is half as large again as the one before it.
    expect(Math.max(...fall.slice(1).map((step, i) => step / fall[i]!))).toBeLessThan(1.5);
  });

  it('a film that only growth gives is thin where it is needed from the start', () => {
    // the bush grows away from the journal: there is more film once it is warm, which is found first
    const tight = withFilm(warming(), 1e-6, [true]);
    const cold = warmFilm(tight, tight.ambient, tight.ambient, null);
    if (cold.status !== 'solved') throw new Error(cold.status);
    const { leastFilm } = steadyPoint(0, tight, { film: 0 }).point;
    const [before, after] = [cold.seats[0]!.least.film, leastFilm!];
    expect(after).toBeGreaterThan(1.05 * before);
    expect(steadyCut(0, tight, { film: 0 }).point.coldFilm).toBeCloseTo(before, 14);
    expect(steadyPoint(0, tight, { film: 0 }).point).not.toHaveProperty('coldFilm');
    const judged = (film: number, fromCold: boolean) =>
      (fromCold ? steadyCut : steadyPoint)(0, tight, { film }).point.condition;
    const between = (before + after) / 2;
    expect([judged(between, false), judged(between, true)]).toEqual(['works', 'thin']);
    expect([judged(0.99 * before, true), judged(1.01 * after, false)]).toEqual(['works', 'thin']);
  });

  it('what drags more cold than what drives it gives does not work, though warm it would', () => {
    const tight = withFilm(warming(), 2e-6, [true]);
    const cold = warmFilm(tight, tight.ambient, tight.ambient, null);
    if (cold.status !== 'solved') throw new Error(cold.status);
    const { coldPower, power } = steadyCut(0, tight, { film: 0 }).point;
    expect(coldPower).toBeCloseTo(cold.total.power, 9);
    expect(coldPower!).toBeGreaterThan(1.1 * power!);
    const judged = (needs: Needs) => steadyCut(0, tight, needs).point.condition;
    expect(judged({ film: 0, power: 1.01 * coldPower! })).toBe('works');
    expect(judged({ film: 0, power: (coldPower! + power!) / 2 })).toBe('drags');
    expect(judged({ film: 1e-3, power: power! })).toBe('thin');
    // The thicker the film the less the drag: what works begins where it is as much as may be.
    const cut = (film: number) => withFilm(warming(), film, [true]);
    const needs = { film: 0, power: coldPower! };
    const points = [...overCuts(cut, [1e-6, 1.98e-6, 2.02e-6, 3e-6], needs)];
    expect(points.map(({ condition }) => condition)).toEqual(['drags', 'drags', 'works', 'works']);
  });

  it('whirl is judged of the films that run warm, though those that are cold are looked at too', () => {
    const light = warming({ stand: { load: loadAt(0, -20, 0, 0), position: 0 }, omega: 1500 });
    const cold = warmFilm(light, light.ambient, light.ambient, null);
    if (cold.status !== 'solved') throw new Error(cold.status);
    const masses = Array.from({ length: 25 }, (_, k) => 0.01 * 1.7 ** k);
    const seen = masses.map((mass) => {
      const rotor = cylinderRotor(mass, -0.05, 0.05, 0.01);
      const [warm, cut] = [steadyPoint, steadyCut].map(
        (judged) => judged(0, light, { film: 0, rotor }).point.condition,
      );
      expect(cut).toBe(warm);
      warmFilm(light, light.ambient, light.ambient, null);
      return [warm !== 'loose', calm(light, cold, rotor)];
    });
    // Of some the cold films would say otherwise.
    expect(seen.some(([warm, asCold]) => warm !== asCold)).toBe(true);
  });

  it('a cone is cut to it where the journal is set; a seat that is not aimed at keeps what it has', () => {
    const pair = warming({
      grids: newGrids([shallow, sleeve], SIZE),
      stand: { pose: { x: 0, y: 0, z: 2e-5, tiltX: 0, tiltY: 0 } },
    });
    const { extra } = withFilm(pair, 5e-6, [true, false]);
    // set back by 20 µm a cone of 3° has gained 20·sin 3°
    expect(extra![0]! * 1e6).toBeCloseTo(5 - 2.5 - 20 * Math.sin(3 * RAD), 3);
    expect(extra![1]).toBe(0);
  });
});

describe('the film to aim for', () => {
  const pointsOf = (film: (at: number) => number) =>
    [1, 1.5, 2, 3, 4, 6, 8].map(
      (at): SteadyPoint => ({
        at,
        condition: 'works',
        journal: 30,
        bush: 25,
        leastFilm: film(at),
        power: 1,
      }),
    );

  it('stands in the geometric middle where looser runs thicker, four fifths of the way to the nearer end', () => {
    const aim = aimWithin(
      pointsOf((at) => at / 2),
      { from: 2, to: 8 },
    )!;
    expect(aim.film).toBeCloseTo(4, 12);
    expect(aim.tolerance).toBeCloseTo(0.8 * 2, 12);
  });

  it('is no looser than where the warm film is thickest', () => {
    const aim = aimWithin(
      pointsOf((at) => -((at - 3) ** 2)),
      { from: 2, to: 8 },
    )!;
    expect(aim.film).toBe(3);
    expect(aim.tolerance).toBeCloseTo(0.8, 12);
  });

  it('is the middle where looser only runs thinner, and nothing where no point has a film', () => {
    expect(
      aimWithin(
        pointsOf((at) => 1 / at),
        { from: 1, to: 4 },
      )!.film,
    ).toBeCloseTo(2, 12);
    expect(aimWithin([], { from: 1, to: 4 })).toBeNull();
  });
});

describe('over clearances', () => {
  it('tighter is hotter and touches in the end; wider is cooler', () => {
    const points = [
      ...overCuts((extra) => withClearance(warming(), extra), [-4.05e-6, -3e-6, -1e-6, 2e-6, 6e-6], { film: 1e-7 }),
    ];
    expect(points[0]!.condition).toBe('seizes');
    const running = points.slice(1);
    for (let i = 1; i < running.length; i++) expect(running[i]!.journal!).toBeLessThan(running[i - 1]!.journal!);
  });

  it('the stretch that works is found to a hundredth of a step', () => {
    const condition = (x: number): SteadyPoint['condition'] => (x < 1.237 ? 'seizes' : x > 4.6 ? 'loose' : 'works');
    const points = [0, 1, 2, 3, 4, 5].map((x) => ({
      at: x,
      condition: condition(x),
      journal: null,
      bush: null,
      leastFilm: null,
      power: null,
    }));
    const found = workingStretch(points, 3, condition)!;
    expect(Math.abs(found.from - 1.237)).toBeLessThan(0.01);
    expect(Math.abs(found.to - 4.6)).toBeLessThan(0.01);
    expect(found).toMatchObject({ openBelow: false, openAbove: false });
    expect(workingStretch(points.slice(0, 2), 3, condition)).toBeNull();
    expect(workingStretch(points.slice(2, 5), 3, condition)).toMatchObject({
      from: 2,
      to: 4,
      openBelow: true,
      openAbove: true,
    });
  });
});

describe('several stretches that work', () => {
  const works = new Set([1, 2, 5, 6, 7, 10]);
  const condition = (x: number): SteadyPoint['condition'] => (works.has(Math.round(x)) ? 'works' : 'thin');
  const points = Array.from({ length: 12 }, (_, x) => ({
    at: x,
    condition: condition(x),
    journal: null,
    bush: null,
    leastFilm: null,
    power: null,
  }));

  it.each([
    [0, 0.5, 2.5],
    [3.4, 0.5, 2.5],
    [3.6, 4.5, 7.5],
    [6, 4.5, 7.5],
    [8.6, 9.5, 10.5],
    [20, 9.5, 10.5],
  ])('the one nearest to %s, from %s to %s', (from, low, high) => {
    const found = workingStretch(points, from, condition)!;
    expect(Math.abs(found.from - low)).toBeLessThan(0.01);
    expect(Math.abs(found.to - high)).toBeLessThan(0.01);
    expect(found).toMatchObject({ openBelow: false, openAbove: false });
    // never beyond what works
    expect([condition(found.from), condition(found.to)]).toEqual(['works', 'works']);
  });

  it('a point alone at either end of what was looked at is open there', () => {
    expect(workingStretch(points.slice(0, 3), 2, condition)).toMatchObject({
      to: 2,
      openBelow: false,
      openAbove: true,
    });
    expect(workingStretch(points.slice(10), 10, condition)).toMatchObject({
      from: 10,
      openBelow: true,
      openAbove: false,
    });
  });
});

describe('what is asked of a running spindle', () => {
  it('its least film: just so much is enough', () => {
    const { state } = steadyPoint(1, warming(), { film: 0 });
    const film = Math.min(...state!.seats.map(({ least }) => least.film));
    expect(steadyPoint(1, warming(), { film: film * (1 - 1e-6) }, state).point.condition).toBe('works');
    expect(steadyPoint(1, warming(), { film: film * (1 + 1e-2) }, state).point).toMatchObject({
      condition: 'thin',
      leastFilm: expect.closeTo(film, 9),
    });
  });
});

describe('the position to set cold', () => {
  const cone = warming({ grids: newGrids([shallow], SIZE), stand: { pose: at({}) } });

  it('warms to the film wanted', () => {
    const found = coldPositionFor(cone, 0, 2.5e-6);
    if (found.status !== 'found') throw new Error(found.status);
    const state = steadyState({ ...cone, stand: { pose: at({ z: found.position }) } });
    if (state.status !== 'solved') throw new Error(state.status);
    expect(state.seats[0]!.least.film).toBeCloseTo(2.5e-6, 8);
    expect(centredFilm(cone, 0, state)).toBeCloseTo(2.5e-6, 8);
    // bronze round steel opens as it warms, so it is set tighter cold
    expect(found.position).toBeLessThan(-1e-6);
  });

  it('with parts that do not grow it is the cold one', () => {
    const found = coldPositionFor(
      { ...cone, journal: { ...JOURNAL, expansion: 0 }, bush: { ...BUSH, expansion: 0 } },
      0,
      2e-6,
    );
    expect(found).toMatchObject({ status: 'found' });
    if (found.status === 'found') expect(found.position).toBeCloseTo(-5e-7 / Math.sin(3 * RAD), 7);
  });

  it('from a position that touches it still gets there', () => {
    const found = coldPositionFor({ ...cone, stand: { pose: at({ z: -1e-4 }) } }, 0, 2.5e-6);
    expect(found.status).toBe('found');
  });

  it('is the same wherever the journal stands now, far open and far shut too', () => {
    const steep = coneSeat({ halfAngle: 45 * RAD, radius: 0.013, from: 0.0005, to: 0.0035, film: 2.5e-6 }, 'steep');
    const seats = [shallow, steep];
    const found = [-1e-3, 0, 1e-4, 1e-3].map((position) => {
      const both = warming({
        grids: newGrids(seats, SIZE),
        coarse: newGrids(seats, { rows: 4, columns: 24 }),
        stand: { load: loadAt(0, -40, -5, 0.03), position, adjusted: true },
      });
      const [wide, narrow] = [coldPositionFor(both, 1, 2.5e-6), coldPositionFor(both, 0, 1e-6)];
      // So thin a shallow film would have the steep cone shut.
      expect(narrow).toMatchObject({ status: 'notFound', inTheWay: { seat: 1, shut: true } });
      return wide.status === 'found' ? wide.position : Number.NaN;
    });
    for (const position of found) expect(position).toBeCloseTo(found[0]!, 9);
  });

  it('a straight seat is not set by position', () => {
    expect(coldPositionFor(warming(), 0, 2e-6)).toEqual({ status: 'notSet' });
  });

  it('a journal the load presses off its adjuster: no film wider than that, but a closer one', () => {
    const steep = coneSeat({ halfAngle: 45 * RAD, radius: 0.013, from: 0.0005, to: 0.0035, film: 2.5e-6 }, 'steep');
    const both = warming({
      grids: newGrids([shallow, steep], SIZE),
      coarse: newGrids([shallow, steep], { rows: 4, columns: 24 }),
      stand: { load: loadAt(0, -40, -100, 0.03), position: 0, adjusted: true },
    });
    const wide = coldPositionFor(both, 1, 4e-6);
    if (wide.status !== 'pressed') throw new Error(wide.status);
    expect(wide.film).toBeLessThan(4e-6);
    expect(coldPositionFor({ ...both, stand: { load: loadAt(0, -40, -100, 0.03), position: 0 } }, 1, 4e-6).status).toBe(
      'notSet',
    );
  });

  it('one point alone is judged', () => {
    expect(steadyPoint(1, cone, { film: 1e-6 }).point).toMatchObject({ at: 1, condition: 'works' });
  });
});
