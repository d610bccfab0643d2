/** The forward models against constructions that share nothing with them, and every reason a reading is impossible. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type SeatInput, fit as solveFit } from '../../../src/engine/contact/fit.ts';
import type { Fault, Reading } from '../../../src/engine/gauging/reading.ts';
import { predict } from '../../../src/engine/gauging/readings/index.ts';
import { ballIn, rollOn } from '../../../src/engine/gauging/touching.ts';
import { type Line, lineOf } from '../../../src/engine/parts/line.ts';
import { anyPair, between, cone, DEG, disturbed, doubleCone, errors, MM, notebook, UM } from './pairs.ts';

/** Many places along a chain. */
function places({ z, r }: Line, count: number): [number, number][] {
  const found: [number, number][] = [];
  for (let i = 1; i < z.length; i++)
    for (let k = 0; k <= count; k++)
      found.push([z[i - 1]! + ((z[i]! - z[i - 1]!) * k) / count, r[i - 1]! + ((r[i]! - r[i - 1]!) * k) / count]);
  return found;
}

const bends = fc.array(fc.tuple(between(0.05, 1), between(-30, 30)), { maxLength: 5 });
/** A line of one surface with any bends, some of them larger than a film. */
const bentLine = (metal: 'inside' | 'outside') =>
  fc
    .record({ angle: fc.oneof(between(1, 8), between(20, 60), between(-50, -2)), bends })
    .map(({ angle, bends: steps }) => {
      const length = 10;
      const total = steps.reduce((sum, [step]) => sum + step, 0.3);
      let z = -length;
      const profile = steps.map(([step, d]): [number, number] => {
        z += (step / total) * length;
        return [z, d / 1000];
      });
      return lineOf(cone(angle, 60, 0, -length, 0, profile), metal);
    });

describe('a roll on a line, a ball in a bore', () => {
  test('the roll touches and nowhere goes in', () => {
    fc.assert(
      fc.property(bentLine('inside'), between(1, 6), between(-9, -1), (line, q, Z) => {
        const touch = rollOn(line, q * MM, Z * MM)!;
        const distances = places(line, 400).map(([z, r]) => Math.hypot(z - Z * MM, r - touch.centre));
        expect(Math.min(...distances)).toBeGreaterThan(q * MM - 1e-12);
        expect(Math.hypot(touch.station - Z * MM, touch.radius - touch.centre)).toBeCloseTo(q * MM, 14);
      }),
      { seed: 21, numRuns: 200 },
    );
  });

  test('the ball touches, nowhere goes in, and a little further home it would', () => {
    let touched = 0;
    fc.assert(
      fc.property(bentLine('outside'), between(10, 45), (line, q) => {
        const closes = line.halfAngle > 0 ? 'rearward' : 'noseward';
        const touch = ballIn(line, q * MM, closes);
        const narrowest = Math.min(...line.r);
        if (!touch) {
          expect(narrowest).toBeGreaterThan(q * MM);
          return;
        }
        touched++;
        const least = (centre: number) => Math.min(...places(line, 400).map(([z, r]) => Math.hypot(z - centre, r)));
        expect(least(touch.centre)).toBeGreaterThan(q * MM - 1e-12);
        expect(Math.hypot(touch.station - touch.centre, touch.radius)).toBeCloseTo(q * MM, 14);
        expect(least(touch.centre - (closes === 'rearward' ? 1 : -1) * 50 * UM)).toBeLessThan(q * MM);
      }),
      { seed: 22, numRuns: 200 },
    );
    expect(touched).toBeGreaterThan(50);
  });

  test('on a straight line they are the rules of the shop', () => {
    fc.assert(
      fc.property(anyPair, errors, (nominal, by) => {
        const truth = disturbed(nominal, by);
        for (const reading of notebook(nominal, truth)) {
          if (reading.kind === 'overRolls') {
            const { halfAngle: a, radius, station } = truth[reading.seat]!.journal;
            expect(reading.value).toBeCloseTo(
              2 * (radius + (reading.station - station) * Math.tan(a)) + reading.roll * (1 + 1 / Math.cos(a)),
              14,
            );
          }
          if (reading.kind === 'ballDepth') {
            const { halfAngle: a, radius, station } = truth[reading.seat]!.bush;
            const centre = reading.face - reading.value - reading.ball / 2;
            expect((radius + (centre - station) * Math.tan(a)) * Math.cos(a) * Math.sign(radius)).toBeCloseTo(
              reading.ball / 2,
              14,
            );
          }
        }
      }),
      { seed: 23, numRuns: 100 },
    );
  });

  test('the stand-off is the first touch of the fit', () => {
    fc.assert(
      fc.property(anyPair, errors, (nominal, by) => {
        const truth = disturbed(nominal, by);
        expect(predict({ kind: 'standOff', value: 0, sigma: UM }, truth).value).toBe(solveFit(truth, 0).firstPosition);
      }),
      { seed: 24, numRuns: 100 },
    );
  });

  test('the shake of a straight bearing with even clearance is the clearance, tilted as far as its length lets it', () => {
    const plain: SeatInput[] = [{ name: 'plain', journal: cone(0, 20, 0, -20, 0), bush: cone(0, 20.01, 0, -20, 0) }];
    const at = (indicator: number, free: readonly ('x' | 'y' | 'tiltX' | 'tiltY')[]) =>
      predict({ kind: 'shake', indicator, position: 0, direction: 0.7, free, value: 0, sigma: UM }, plain).value;
    expect(at(0, ['x', 'y'])).toBeCloseTo(10 * UM, 13);
    // one end against one side, the other against the other: five times as far out, at 30 mm from the middle
    expect(at(20 * MM, ['x', 'y', 'tiltX', 'tiltY'])).toBeCloseTo(30 * UM, 12);
  });
});

describe('readings that cannot have been taken', () => {
  const on = { seat: 0, value: 0, sigma: UM };
  const shallowTurned = doubleCone().map((seat) => ({
    ...seat,
    bush: { ...seat.bush, halfAngle: -seat.bush.halfAngle },
    journal: { ...seat.journal, halfAngle: -seat.journal.halfAngle },
  }));
  const straight: SeatInput[] = [{ name: 'plain', journal: cone(0, 20, 0, -20, 0), bush: cone(0, 20.01, 0, -20, 0) }];
  const huge: SeatInput[] = [{ name: 'a', journal: cone(3, 40, 0, -20, 0), bush: cone(3, 20, 0, -20, 0) }];
  const ball = (mm: number, seat = 0): Reading => ({
    ...on,
    seat,
    part: 'bush',
    kind: 'ballDepth',
    ball: mm * MM,
    face: 5 * MM,
  });
  const roll = (mm: number, station: number, seat = 0): Reading => ({
    ...on,
    seat,
    part: 'journal',
    kind: 'overRolls',
    roll: mm * MM,
    station: station * MM,
  });
  const rise = (more: Partial<Reading>): Reading =>
    ({ ...on, part: 'journal', kind: 'sineRise', bar: 100 * MM, stack: 5 * MM, travel: 20 * MM, ...more }) as Reading;

  test.each<[string, Reading, SeatInput[], Partial<Fault>]>([
    [
      'rolls in a bush',
      { ...on, part: 'bush', kind: 'overRolls', roll: 6 * MM, station: 0 },
      doubleCone(),
      { what: 'wrongPart', part: 'bush' },
    ],
    [
      'a ball in a journal',
      { ...on, part: 'journal', kind: 'ballDepth', ball: 20 * MM, face: 0 },
      doubleCone(),
      { what: 'wrongPart', part: 'journal' },
    ],
    ['a ball in a straight bore', ball(20), straight, { what: 'straight' }],
    ['a ball that falls through', ball(19), doubleCone(), { what: 'falls', ball: 19 * MM }],
    [
      'a ball on the edge of the small end',
      ball(19.4),
      doubleCone(),
      { what: 'edge', end: 'small', station: -25 * MM },
    ],
    ['a ball on the edge of the mouth', ball(22.1), doubleCone(), { what: 'edge', end: 'large', station: -0.5 * MM }],
    [
      'a ball on the mouth of a cone that narrows to the nose',
      ball(24.7),
      shallowTurned.slice(0, 1),
      { what: 'edge', end: 'large', station: -25 * MM },
    ],
    [
      'a ball that touches the shallow bush first',
      ball(33.7, 1),
      doubleCone().map((s, i) => (i === 0 ? { ...s, bush: { ...s.bush, radius: 10.5 * MM, to: 0.9 * MM } } : s)),
      { what: 'otherSeat', seat: 0 },
    ],
    [
      'a ball that cannot get past the steep bush',
      ball(20),
      doubleCone().map((s, i) =>
        i === 1 ? { ...s, bush: { ...s.bush, station: 11 * MM, from: 11 * MM, to: 14 * MM, radius: 9 * MM } } : s,
      ),
      { what: 'blocked', seat: 1 },
    ],
    [
      'rolls beside the surface',
      roll(4, 20),
      doubleCone(),
      { what: 'missed', station: 20 * MM, from: -26 * MM, to: 0 },
    ],
    [
      'rolls on the edge of the small end',
      roll(6, -27),
      doubleCone(),
      { what: 'edge', end: 'small', station: -26 * MM },
    ],
    [
      'rolls on the edge of the large end',
      roll(6, 0.5),
      doubleCone().slice(0, 1),
      { what: 'edge', end: 'large', station: 0 },
    ],
    ['rolls against the steep cone', roll(6, -0.9), doubleCone(), { what: 'otherSeat', seat: 1 }],
    [
      'a diameter beside the surface',
      { ...on, part: 'journal', kind: 'diameter', station: 1 * MM },
      doubleCone(),
      { what: 'missed' },
    ],
    [
      'a straightness beside the surface',
      { ...on, part: 'bush', kind: 'straightness', station: -25.5 * MM },
      doubleCone(),
      { what: 'missed', from: -25 * MM },
    ],
    [
      'a stack beyond the bar',
      rise({ stack: 101 * MM } as Partial<Reading>),
      doubleCone(),
      { what: 'stackBeyondBar', bar: 100 * MM },
    ],
    [
      'a travel beyond the line',
      rise({ travel: 27 * MM } as Partial<Reading>),
      doubleCone(),
      { what: 'travelBeyondLine', travel: 27 * MM },
    ],
    ['a rise beyond the bar', rise({ value: 0.2 }), doubleCone(), { what: 'riseBeyondBar', rise: 0.2, bar: 100 * MM }],
    [
      'a line square to the plate and beyond',
      rise({ stack: -99.9 * MM, seat: 1, travel: 2 * MM } as Partial<Reading>),
      doubleCone(),
      { what: 'riseBeyondBar' },
    ],
    [
      'a stand-off of cones that open rearward',
      { kind: 'standOff', value: 0, sigma: UM },
      shallowTurned,
      { what: 'nothingCloses' },
    ],
    [
      'a stand-off of parts that do not go in',
      { kind: 'standOff', value: 0, sigma: UM },
      huge,
      { what: 'neverTouches' },
    ],
    [
      'a shake where the journal is pressed in',
      { kind: 'shake', indicator: 0, position: -20 * UM, direction: 0, free: ['x', 'y'], value: 0, sigma: UM },
      doubleCone(),
      { what: 'interferes' },
    ],
    [
      'a shake that nothing stops',
      { kind: 'shake', indicator: 0, position: 40 * MM, direction: 0, free: ['x', 'y'], value: 0, sigma: UM },
      doubleCone(),
      { what: 'unbounded' },
    ],
  ])('%s', (_, reading, seats, fault) => {
    expect(predict(reading, seats).fault).toMatchObject(fault);
  });

  test('good set-ups beside each bad one have no fault', () => {
    for (const reading of [
      ball(20),
      ball(21.9),
      ball(33.9, 1),
      roll(6, -22),
      roll(6, -7),
      rise({}),
      rise({ travel: 26 * MM } as Partial<Reading>),
    ])
      expect(predict(reading, doubleCone()).fault).toBeNull();
  });

  test('the depth of a ball on a sharp edge is still told, with the fault', () => {
    const { value, fault } = predict(ball(19.4), doubleCone());
    expect(fault).not.toBeNull();
    const r = 11.0025 * MM - 25 * MM * Math.tan(3 * DEG);
    expect(value).toBeCloseTo(5 * MM - (-25 * MM + Math.sqrt((9.7 * MM) ** 2 - r * r) + 9.7 * MM), 14);
  });
});
