/**
 * Plans of random designs against a general-purpose LP package: the weighed cost of stock and misses, the programme
 * written from the closed form of a cone, with limits that are met and not, straight, nearly straight and steep seats.
 */
import fc from 'fast-check';
import loadHighs from 'highs';
import { expect, it, vi } from 'vitest';
import { planCut, planIn } from '../../../src/engine/cutting/plan.ts';
import type { PlanInput } from '../../../src/engine/cutting/problem.ts';
import { WORTH } from '../../../src/engine/cutting/programme.ts';
import { anyAngle, type DrawnSeat, drawnSeat, rad, rearwardAngle, roomsOf, seatOf, UM } from './pairs.ts';

// The machine may be busy; nothing here is timed.
vi.setConfig({ testTimeout: 120_000 });

const highs = await loadHighs();
/** µm of cost: 1e-8 mm of stock */
const AGREE = 1e-5;
const PRECISE = { primal_feasibility_tolerance: 1e-10, dual_feasibility_tolerance: 1e-10 };

/** format.md, "What a plan is": a film's miss is worth a hundred times its stock. */
it('a film is worth what the file format says', () => expect(WORTH).toBe(100));

interface Asked {
  share: number;
  spare: 'journal' | null;
  keep: boolean;
}

const TOLERANCE = 0.5;
/** µm: within it every seat overlaps */
const REACH = 2000;

/** Lengths in µm; film = clearance·cos a + p·sin a + stock off both parts. */
function programme(seats: readonly DrawnSeat[], { share, spare, keep }: Asked): string {
  const signed = (c: number, x: string) => `${c < 0 ? '-' : '+'} ${Math.abs(c).toFixed(17)} ${x}`;
  const film = ({ angle }: DrawnSeat, i: number) =>
    `${angle === 0 ? '' : signed(Math.sin(rad(angle)), 'p')} + j${i} + b${i}`;
  const missing = ({ angle, clearance, target }: DrawnSeat) => 1000 * (target - clearance * Math.cos(rad(angle)));
  const stock = seats.flatMap((_, i) => [`${spare === 'journal' ? '2 ' : ''}j${i}`, `b${i}`]);
  const rows = seats.flatMap((seat, i) => [
    ` a${i}: ${film(seat, i)} + m${i} >= ${(missing(seat) - share * TOLERANCE).toFixed(17)}`,
    ` c${i}: ${film(seat, i)} - m${i} <= ${(missing(seat) + share * TOLERANCE).toFixed(17)}`,
  ]);
  const rooms = seats.flatMap(({ rooms: pair }, i) =>
    pair.map(
      ([cleanup, limit], k) =>
        ` ${(1000 * cleanup).toFixed(17)} <= ${k === 0 ? 'j' : 'b'}${i} <= ${(1000 * limit).toFixed(17)}`,
    ),
  );
  const misses = seats.map((_, i) => `100 m${i}`);
  return [
    'Minimize',
    ` obj: ${[...stock, ...misses, ...(keep ? ['2 v'] : [])].join(' + ')}`,
    'Subject To',
    ...rows,
    ' u: p - v <= 0',
    ' w: p + v >= 0',
    'Bounds',
    ` -${REACH} <= p <= ${REACH}`,
    ...rooms,
    'End',
  ].join('\n');
}

function agrees(angle: fc.Arbitrary<number>, count: number, seed: number, asked: Asked) {
  const seen = { planned: 0, infeasible: 0 };
  fc.assert(
    fc.property(fc.array(drawnSeat(angle), { minLength: 1, maxLength: count }), (drawn) => {
      const wanted = highs.solve(programme(drawn, asked), PRECISE);
      expect(wanted.Status).toBe('Optimal');
      const { share, spare, keep } = asked;
      const input: PlanInput = {
        seats: drawn.map(seatOf),
        position: 0,
        reach: { from: -REACH * UM, to: REACH * UM },
        allow: drawn.flatMap(roomsOf),
        share,
        prefer: { ...(spare && { spare }), keepPosition: keep },
      };
      const found = planCut(input);
      const plan = planIn(found);
      if (!plan || (found.status !== 'planned' && found.status !== 'infeasible'))
        return expect.fail(JSON.stringify(found));
      seen[found.status]++;
      const stock = plan.rooms.reduce(
        (sum, { of }, k) => sum + (of.kind === 'surface' && of.part === spare ? 2 : 1) * plan.amounts[k]!,
        0,
      );
      const misses = plan.films.reduce<number>(
        (sum, film, i) => sum + Math.max(0, Math.abs(film! - input.seats[i]!.target!) - share * TOLERANCE * UM),
        0,
      );
      const cost = (stock + 100 * misses + (keep ? 2 * Math.abs(plan.position) : 0)) / UM;
      expect(Math.abs(cost - wanted.ObjectiveValue)).toBeLessThan(AGREE * (1 + Math.abs(wanted.ObjectiveValue) / 1000));
      expect(found.status === 'planned').toBe(misses < 1e-9);
    }),
    { seed, numRuns: 150 },
  );
  return seen;
}

const PLAIN: Asked = { share: 0, spare: null, keep: false };
const nearlyStraight = fc.double({ min: 0.02, max: 1, noNaN: true });

it('seats that all close rearward', () => {
  const { planned, infeasible } = agrees(rearwardAngle, 3, 21, PLAIN);
  expect(planned).toBeGreaterThan(25);
  expect(infeasible).toBeGreaterThan(25);
});

it('seats of every kind: rearward, noseward, straight', () => {
  const { planned, infeasible } = agrees(anyAngle, 4, 22, PLAIN);
  expect(planned).toBeGreaterThan(10);
  expect(infeasible).toBeGreaterThan(25);
});

it('seats nearly straight among them', () => {
  expect(agrees(fc.oneof(anyAngle, nearlyStraight), 4, 23, PLAIN).infeasible).toBeGreaterThan(40);
});

it('with the journal spared, with the nose kept', () => {
  expect(agrees(rearwardAngle, 3, 24, { ...PLAIN, spare: 'journal' }).planned).toBeGreaterThan(25);
  expect(agrees(rearwardAngle, 3, 25, { ...PLAIN, keep: true }).planned).toBeGreaterThan(25);
});

it('within four fifths of the tolerances', () => {
  const { planned, infeasible } = agrees(anyAngle, 4, 26, { ...PLAIN, share: 0.8 });
  expect(planned).toBeGreaterThan(10);
  expect(infeasible).toBeGreaterThan(25);
});
