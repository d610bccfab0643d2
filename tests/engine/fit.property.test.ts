/** The fit of random designs against the brute force, to a picometre; and what must not change it. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Design, Seat, Surface } from '../../src/design/definition.ts';
import { validateDesign } from '../../src/design/validate.ts';
import { fitSection } from '../../src/report/fit/section.ts';
import { LONG } from '../long.ts';
import { type Closes, filmsAtVertices, filmsBetween, least, type Point, touch, vertices } from './bruteForce.ts';

/** mm */
const AGREE = 1e-9;

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Deviations at up to five stations, some gentle (µm), some so strong that the line goes back on itself. */
const shape = fc.tuple(
  fc.array(fc.tuple(between(0.05, 1), between(-1, 1)), { maxLength: 5 }),
  fc.constantFrom(0, 0.001, 0.01, 0.2),
);

function surface(
  halfAngle: number,
  radius: number,
  from: number,
  length: number,
  [points, height]: [[number, number][], number],
): Surface {
  const total = points.reduce((sum, [step]) => sum + step, 0.5);
  let z = from - 0.1 * length;
  const profile = points.map(([step, deviation]): [number, number] => {
    z += (step / total) * 1.2 * length;
    return [z, deviation * height];
  });
  const bare: Surface = { halfAngle, diameter: 2 * radius, station: 0, from, to: from + length };
  return height === 0 || profile.length === 0 ? bare : { ...bare, profile };
}

/** A seat whose surfaces lie about station 0; `sign` 1 closes rearward, -1 noseward, 0 is straight. */
const seatOf = (sign: number, name: string): fc.Arbitrary<Seat> =>
  fc
    .record({
      angle: fc.oneof(between(0.5, 6), between(6, 60)),
      mismatch: fc.oneof(fc.constant(0), between(-0.02, 0.02), between(-12, 12)),
      radius: between(8, 20),
      clearance: between(-0.05, 0.05),
      lengths: fc.tuple(between(0.3, 1), between(0.3, 1)),
      places: fc.tuple(between(-0.15, 0.15), between(-0.15, 0.15)),
      bushShape: shape,
      journalShape: shape,
      target: between(0, 0.01),
    })
    .map((c): Seat => {
      const angle = sign * c.angle;
      const journalAngle = sign * Math.max(0.4, c.angle + c.mismatch);
      const room = Math.min(
        20,
        (0.8 * c.radius) / Math.tan((Math.max(c.angle, Math.abs(journalAngle)) * Math.PI) / 180),
      );
      const make = (a: number, radius: number, i: 0 | 1, s: [[number, number][], number]) => {
        const length = room * c.lengths[i];
        return surface(a, radius, room * c.places[i] - length / 2, length, s);
      };
      return {
        name,
        bush: make(angle, c.radius, 0, c.bushShape),
        journal: make(journalAngle, c.radius - c.clearance, 1, c.journalShape),
        film: { target: c.target },
      };
    })
    .filter((seat) => validateDesign({ conepair: 1, seats: [seat] }).ok && steepEnough(seat));

/**
 * A piece all but parallel to the axis has no station of a given radius to the accuracy asked; exactly parallel ones
 * are in the cases.
 */
function steepEnough(seat: Seat): boolean {
  return [vertices(seat.bush, 'bush'), vertices(seat.journal, 'journal')].every((chain) =>
    chain.every(([z, r], i) => i === 0 || Math.abs((r - chain[i - 1]![1]) / (z - chain[i - 1]![0])) > 3e-5),
  );
}

const coneSeat = (name = 'a') => fc.constantFrom(1, -1).chain((sign) => seatOf(sign, name));
const anySeat = (name = 'a') =>
  fc.constantFrom(1, 1, -1, -1, 0).chain((sign) => (sign === 0 ? straightSeat(name) : seatOf(sign, name)));
const straightSeat = (name: string): fc.Arbitrary<Seat> =>
  seatOf(1, name).map((seat) => ({ ...seat, bush: level(seat.bush), journal: level(seat.journal) }));
const level = (s: Surface): Surface => ({ ...s, halfAngle: 0 });

/** Parts that do not match: leaning opposite ways, one of them straight, or far apart in angle. */
const oddSeat: fc.Arbitrary<Seat> = fc
  .record({
    angles: fc.oneof(
      fc.tuple(between(0.5, 14), between(-14, -0.5)),
      fc.tuple(fc.constant(0), fc.oneof(between(0.5, 29), between(-29, -0.5))),
      fc.tuple(between(1, 50), between(12, 29)).map(([bush, more]): [number, number] => [bush, bush + more]),
      fc
        .tuple(between(13, 50), between(12, 29))
        .map(([bush, less]): [number, number] => [bush, Math.max(0.5, bush - less)]),
    ),
    sign: fc.constantFrom(1, -1),
    radius: between(8, 20),
    clearance: between(-0.05, 3),
    shapes: fc.tuple(shape, shape),
    shares: fc.tuple(between(0.3, 1), between(0.3, 1)),
  })
  .map(({ angles, sign, radius, clearance, shapes, shares }): Seat => {
    const [a, b] = [sign * angles[0], sign * angles[1]];
    const room = Math.min(
      20,
      (0.7 * (radius - clearance)) / Math.tan((Math.max(Math.abs(a), Math.abs(b)) * Math.PI) / 180),
    );
    return {
      name: 'a',
      bush: surface(a, radius, (-room * shares[0]) / 2, room * shares[0], shapes[0]),
      journal: surface(b, radius - clearance, (-room * shares[1]) / 2, room * shares[1], shapes[1]),
    };
  })
  .filter((seat) => validateDesign({ conepair: 1, seats: [seat] }).ok && steepEnough(seat));
/** The one that leans more says which way they close (engine/contact/fit.ts). */
const leaning = ({ bush, journal }: Seat): Closes =>
  (bush.halfAngle * journal.halfAngle > 0 ? bush.halfAngle : bush.halfAngle + journal.halfAngle) > 0
    ? 'rearward'
    : 'noseward';

const closing = (seat: Seat): Closes => (seat.bush.halfAngle > 0 ? 'rearward' : 'noseward');
const bushOf = (seat: Seat) => vertices(seat.bush, 'bush');
const journalOf = (seat: Seat) => vertices(seat.journal, 'journal');
const touchOf = (seat: Seat) => touch(bushOf(seat), journalOf(seat), closing(seat));
const report = (seats: Seat[], position: number) => fitSection({ conepair: 1, seats, position } satisfies Design);
const one = (seat: Seat, position: number) => report([seat], position).seats[0]!;

function near(found: number | null, wanted: number | null, within = AGREE) {
  if (wanted === null || found === null) expect(found).toBe(wanted);
  else if (!(Math.abs(found - wanted) <= within))
    expect.fail(`found ${found}, wanted ${wanted}: off by ${found - wanted}`);
}

const run = (seed: number, numRuns = 200) => ({ seed, numRuns: numRuns * LONG });

describe('against brute force', () => {
  it('seat position', () => {
    let met = 0;
    fc.assert(
      fc.property(coneSeat(), (seat) => {
        const wanted = touchOf(seat);
        if (wanted !== null) met++;
        expect(one(seat, 0).closes).toBe(closing(seat));
        near(one(seat, 0).seatPosition, wanted);
      }),
      run(1, 600),
    );
    expect(met).toBeGreaterThan(400 * LONG);
  });

  it('parts that do not match: seat position and films', () => {
    let met = 0;
    fc.assert(
      fc.property(oddSeat, between(-3, 3), (seat, position) => {
        if (seat.bush.halfAngle + seat.journal.halfAngle === 0) return;
        const found = one(seat, position);
        expect(found.closes).toBe(leaning(seat));
        const wanted = touch(bushOf(seat), journalOf(seat), leaning(seat));
        if (wanted !== null) met++;
        near(found.seatPosition, wanted);
        const films = filmsAtVertices(bushOf(seat), journalOf(seat), seat.bush.halfAngle, position);
        near(found.leastFilm, films.length === 0 ? null : Math.min(...films));
        near(found.greatestFilm, films.length === 0 ? null : Math.max(...films));
      }),
      run(13, 600),
    );
    expect(met).toBeGreaterThan(120 * LONG);
  });

  it('every position permitted holds every film in tolerance, and none beyond does', () => {
    const steady = (name: string) =>
      coneSeat(name).filter((seat) =>
        [bushOf(seat), journalOf(seat)].every((chain) =>
          chain.every(([, r], i) => i === 0 || (r - chain[i - 1]![1]) * seat.bush.halfAngle > 0),
        ),
      );
    let some = 0;
    fc.assert(
      fc.property(
        steady('a'),
        steady('b'),
        between(-0.02, 0.02),
        between(0.002, 0.02),
        between(0, 1),
        (a, b, offset, tolerance, share) => {
          const [pa, pb] = [one(a, 0).positionForTarget, one(b, 0).positionForTarget];
          if (pa === null || pb === null) return;
          // The second seat moved so that the two want nearly the same position.
          const by = pa - pb + offset;
          const moved: Seat = {
            ...b,
            film: { target: b.film!.target, tolerance },
            bush: { ...b.bush, station: b.bush.station + by, from: b.bush.from + by, to: b.bush.to + by },
          };
          if (b.bush.profile) moved.bush.profile = b.bush.profile.map(([z, d]): [number, number] => [z + by, d]);
          const seats = [{ ...a, film: { target: a.film!.target, tolerance } }, moved];
          const { permitted } = report(seats, 0);
          // Out of tolerance, or metal in metal.
          const wrong = (seat: Seat, film: number) => Math.max(Math.abs(film - seat.film!.target) - tolerance, -film);
          const worst = (position: number) =>
            Math.max(...seats.map((seat) => wrong(seat, least(seat, position) ?? Number.POSITIVE_INFINITY)));
          if (permitted === null) {
            const between = report(seats, 0).seats.map((seat) => seat.positionForTarget!);
            for (const t of [0, 0.25, 0.5, 0.75, 1])
              expect(worst(between[0]! + t * (between[1]! - between[0]!))).toBeGreaterThan(-AGREE);
            return;
          }
          some++;
          expect(worst(permitted.from + share * (permitted.to - permitted.from))).toBeLessThanOrEqual(AGREE);
          for (const beyond of [permitted.from - 1e-6, permitted.to + 1e-6])
            expect(worst(beyond)).toBeGreaterThan(-AGREE);
        },
      ),
      run(14, 200),
    );
    expect(some).toBeGreaterThan(20 * LONG);
  });

  it('least and greatest film at any position, and never less between the vertices', () => {
    fc.assert(
      fc.property(anySeat(), between(-3, 3), (seat, position) => {
        const [bush, journal, angle] = [bushOf(seat), journalOf(seat), seat.bush.halfAngle];
        const films = filmsAtVertices(bush, journal, angle, position);
        const found = one(seat, position);
        near(found.leastFilm, films.length === 0 ? null : Math.min(...films));
        near(found.greatestFilm, films.length === 0 ? null : Math.max(...films));
        for (const film of filmsBetween(bush, journal, angle, position, 40)) {
          if (film < found.leastFilm! - AGREE || film > found.greatestFilm! + AGREE)
            expect.fail(`a film of ${film} outside ${found.leastFilm} to ${found.greatestFilm}`);
        }
      }),
      run(2),
    );
  });

  it('the station of the least film is a place on the bush with that film', () => {
    fc.assert(
      fc.property(anySeat(), between(-1, 1), (seat, position) => {
        const found = one(seat, position);
        if (found.leastFilm === null) return;
        const bush = bushOf(seat);
        const i = Math.max(
          1,
          bush.findIndex(([z]) => z >= found.leastFilmStation! - 1e-9),
        );
        const [[z0, r0], [z1, r1]] = [bush[i - 1]!, bush[i]!];
        const a = (seat.bush.halfAngle * Math.PI) / 180;
        const [z, r] = [found.leastFilmStation!, r0 + ((r1 - r0) * (found.leastFilmStation! - z0)) / (z1 - z0)];
        // A film along the inner normal ends on the journal's line.
        const end: Point = [z + found.leastFilm * Math.sin(a), r - found.leastFilm * Math.cos(a)];
        near(distance(end, journalOf(seat), position), 0);
      }),
      run(3),
    );
  });

  it('the film is 0 where the seat touches, and the wanted film where it is wanted', () => {
    fc.assert(
      fc.property(coneSeat(), (seat) => {
        const { seatPosition, positionForTarget } = one(seat, 0);
        if (seatPosition !== null) near(least(seat, seatPosition), 0);
        if (positionForTarget !== null) near(least(seat, positionForTarget), seat.film!.target);
        // A film can be wanted wherever the seat touches, and takes the journal off its seat.
        if (seatPosition !== null && positionForTarget !== null) {
          const off =
            closing(seat) === 'rearward' ? positionForTarget - seatPosition : seatPosition - positionForTarget;
          expect(off).toBeGreaterThanOrEqual(-AGREE);
        }
      }),
      run(4, 400),
    );
  });

  it('the touch is on both lines', () => {
    fc.assert(
      fc.property(coneSeat(), (seat) => {
        const { contact, seatPosition } = one(seat, 0);
        if (seatPosition === null) {
          expect(contact).toBeNull();
          return;
        }
        const at: Point = [contact!.station, contact!.diameter / 2];
        near(distance(at, bushOf(seat), 0), 0);
        near(distance(at, journalOf(seat), seatPosition), 0);
      }),
      run(5),
    );
  });

  it('sensitivity is the slope of the least film, away from its kinks', () => {
    let compared = 0;
    fc.assert(
      fc.property(anySeat(), between(-0.5, 0.5), (seat, position) => {
        const step = 1e-5;
        const [before, here, after] = [
          least(seat, position - step),
          least(seat, position),
          least(seat, position + step),
        ];
        if (before === null || here === null || after === null) return;
        const [left, right] = [(here - before) / step, (after - here) / step];
        if (Math.abs(left - right) > 1e-8) return;
        compared++;
        near(one(seat, position).sensitivity, (after - before) / (2 * step), 1e-8);
      }),
      run(6),
    );
    expect(compared).toBeGreaterThan(100 * LONG);
  });

  it('several seats: first, its position, every film there, end play', () => {
    let plays = 0;
    fc.assert(
      fc.property(fc.tuple(anySeat('a'), anySeat('b'), anySeat('c')), (seats) => {
        const found = report(seats, 0);
        const stops = seats.map((seat) => (seat.bush.halfAngle === 0 ? null : touchOf(seat)));
        const of = (closes: Closes) =>
          stops.filter(
            (stop, i): stop is number =>
              stop !== null && closing(seats[i]!) === closes && seats[i]!.bush.halfAngle !== 0,
          );
        const rear = of('rearward').length === 0 ? null : Math.max(...of('rearward'));
        const nose = of('noseward').length === 0 ? null : Math.min(...of('noseward'));
        near(found.firstPosition, rear);
        if (rear === null) {
          expect(found.first).toBeNull();
        } else {
          near(stops[seats.findIndex((seat) => seat.name === found.first)]!, rear);
          for (const seat of seats) near(found.filmsAtFirst[seat.name]!, least(seat, found.firstPosition!));
        }
        if (rear !== null && nose !== null) plays++;
        near(found.endPlay, rear === null || nose === null ? null : nose - rear);
      }),
      run(7),
    );
    expect(plays).toBeGreaterThan(66 * LONG);
  });

  it('the relation is the difference of the two positions', () => {
    fc.assert(
      fc.property(coneSeat('a'), coneSeat('b'), (a, b) => {
        const found = report([a, b], 0);
        const [p, q] = found.seats.map((seat) => seat.positionForTarget);
        near(found.relation?.error ?? null, p == null || q == null ? null : p - q);
      }),
      run(8, 300),
    );
  });
});

describe('what holds of every fit', () => {
  it('the least film of steadily widening lines grows as the seat opens', () => {
    const steady = coneSeat().filter((seat) =>
      [bushOf(seat), journalOf(seat)].every((chain) =>
        chain.every(([, r], i) => i === 0 || (r - chain[i - 1]![1]) * seat.bush.halfAngle > 0),
      ),
    );
    fc.assert(
      fc.property(steady, between(-2, 2), between(0, 1), (seat, position, step) => {
        const [here, opened] = [
          one(seat, position),
          one(seat, position + (closing(seat) === 'rearward' ? step : -step)),
        ];
        if (here.leastFilm !== null && opened.leastFilm !== null)
          expect(opened.leastFilm).toBeGreaterThanOrEqual(here.leastFilm - AGREE);
      }),
      run(9),
    );
  });

  it('the mirror image is the same fit with positions and stations of the other sign', () => {
    const mirror = (s: Surface): Surface => {
      const turned: Surface = { ...s, halfAngle: -s.halfAngle, station: -s.station, from: -s.to, to: -s.from };
      if (s.profile) turned.profile = s.profile.map(([z, d]): [number, number] => [-z, d]).reverse();
      return turned;
    };
    const minus = (x: number | null) => (x === null ? null : -x);
    fc.assert(
      fc.property(coneSeat(), between(-1, 1), (seat, position) => {
        const [here, there] = [
          one(seat, position),
          one({ ...seat, bush: mirror(seat.bush), journal: mirror(seat.journal) }, -position),
        ];
        expect(there.closes).toBe(here.closes === 'rearward' ? 'noseward' : 'rearward');
        near(there.seatPosition, minus(here.seatPosition));
        near(there.positionForTarget, minus(here.positionForTarget));
        near(there.leastFilm, here.leastFilm);
        near(there.greatestFilm, here.greatestFilm);
        near(there.sensitivity, minus(here.sensitivity));
        expect(there.contact?.end).toBe(here.contact?.end);
        near(there.contact?.station ?? null, minus(here.contact?.station ?? null));
      }),
      run(10),
    );
  });

  it('a shift of the datums shifts the positions and nothing else', () => {
    const shift = (s: Surface, by: number): Surface => {
      const shifted: Surface = { ...s, station: s.station + by, from: s.from + by, to: s.to + by };
      if (s.profile) shifted.profile = s.profile.map(([z, d]): [number, number] => [z + by, d]);
      return shifted;
    };
    // Sixteenths keep most stations exact; the rest round within the accuracy asked.
    const sixteenths = fc.integer({ min: -800, max: 800 }).map((n) => n / 16);
    fc.assert(
      fc.property(coneSeat(), between(-1, 1), sixteenths, sixteenths, (seat, position, c, d) => {
        const by = d - c;
        const [here, there] = [
          one(seat, position),
          one({ ...seat, journal: shift(seat.journal, c), bush: shift(seat.bush, d) }, position + by),
        ];
        near(there.seatPosition, here.seatPosition === null ? null : here.seatPosition + by);
        near(there.positionForTarget, here.positionForTarget === null ? null : here.positionForTarget + by);
        near(there.leastFilm, here.leastFilm);
        near(there.greatestFilm, here.greatestFilm);
      }),
      run(11),
    );
  });

  it('a design twice as large has a fit twice as large', () => {
    const twice = (s: Surface): Surface => {
      const large: Surface = { ...s, diameter: 2 * s.diameter, station: 2 * s.station, from: 2 * s.from, to: 2 * s.to };
      if (s.profile) large.profile = s.profile.map(([z, d]): [number, number] => [2 * z, 2 * d]);
      return large;
    };
    const doubled = (x: number | null) => (x === null ? null : 2 * x);
    fc.assert(
      fc.property(coneSeat(), between(-1, 1), (seat, position) => {
        const [here, there] = [
          one(seat, position),
          one(
            { ...seat, journal: twice(seat.journal), bush: twice(seat.bush), film: { target: 2 * seat.film!.target } },
            2 * position,
          ),
        ];
        near(there.seatPosition, doubled(here.seatPosition));
        near(there.positionForTarget, doubled(here.positionForTarget));
        near(there.leastFilm, doubled(here.leastFilm));
        near(there.greatestFilm, doubled(here.greatestFilm));
        near(there.sensitivity, here.sensitivity, 1e-9);
      }),
      run(12, 300),
    );
  });
});

/** Distance from a point to a chain moved by a position. */
function distance([z, r]: Point, chain: readonly Point[], position: number): number {
  let closest = Number.POSITIVE_INFINITY;
  for (let i = 1; i < chain.length; i++) {
    const [[z0, r0], [z1, r1]] = [chain[i - 1]!, chain[i]!];
    const [dz, dr] = [z1 - z0, r1 - r0];
    const t = Math.min(1, Math.max(0, ((z - position - z0) * dz + (r - r0) * dr) / (dz * dz + dr * dr)));
    closest = Math.min(closest, Math.hypot(z - position - z0 - t * dz, r - r0 - t * dr));
  }
  return closest;
}
