/** Least stock of random designs against a general-purpose LP package, the programme written from the closed form of a cone. */
import fc from 'fast-check';
import loadHighs from 'highs';
import { expect, it, vi } from 'vitest';
import { planCut } from '../../../src/engine/cutting/plan.ts';
import { anyAngle, type DrawnSeat, drawnSeat, MM, rad, rearwardAngle, roomsOf, seatOf } from './pairs.ts';

// The machine may be busy; nothing here is timed.
vi.setConfig({ testTimeout: 60_000 });

const highs = await loadHighs();
/** mm */
const AGREE = 1e-8;

/** Lengths in µm; film = clearance·cos a + p·sin a + stock off both parts. `spared` counts a thousandfold. */
function programme(seats: readonly DrawnSeat[], spared: 'journal' | null): string {
  const stock = seats.flatMap((_, i) => [`j${i}`, `b${i}`]);
  const signed = (c: number, x: string) => `${c < 0 ? '-' : '+'} ${Math.abs(c).toFixed(17)} ${x}`;
  const cost = (x: string) => (spared === 'journal' && x.startsWith('j') ? 1000 : 1);
  const films = seats.map(({ angle, clearance, target }, i) => ` f${i}: ${Math.abs(angle) > 0 ? signed(Math.sin(rad(angle)), 'p') : ''} + j${i} + b${i} = ${(1000 * (target - clearance * Math.cos(rad(angle)))).toFixed(17)}`);
  const rooms = seats.flatMap(({ rooms: pairOfRooms }, i) => pairOfRooms.map(([cleanup, limit], k) => ` ${(1000 * cleanup).toFixed(17)} <= ${k === 0 ? 'j' : 'b'}${i} <= ${(1000 * limit).toFixed(17)}`));
  return ['Minimize', ` obj: ${stock.map((x) => `${cost(x)} ${x}`).join(' + ')}`, 'Subject To', ...films, 'Bounds', ' p free', ...rooms, 'End'].join('\n');
}

function agrees(angle: fc.Arbitrary<number>, count: number, seed: number, spared: 'journal' | null) {
  const seen = { planned: 0, infeasible: 0 };
  fc.assert(
    fc.property(fc.array(drawnSeat(angle), { minLength: 1, maxLength: count }), (drawn) => {
      const wanted = highs.solve(programme(drawn, spared), { primal_feasibility_tolerance: 1e-10, dual_feasibility_tolerance: 1e-10 });
      const found = planCut({ seats: drawn.map(seatOf), position: 0, allow: drawn.flatMap(roomsOf), ...(spared && { prefer: { spare: spared } }) });
      if (wanted.Status === 'Infeasible') {
        seen.infeasible++;
        expect(found.status).toBe('infeasible');
        return;
      }
      expect(wanted.Status).toBe('Optimal');
      if (found.status !== 'planned') return expect.fail(JSON.stringify(found));
      seen.planned++;
      const { amounts, rooms, total } = found.plan;
      const least = rooms.reduce((sum, { of }, k) => sum + (spared && of.kind === 'surface' && of.part === spared ? 1000 : 1) * amounts[k]!, 0);
      expect(Math.abs(least / MM - wanted.ObjectiveValue / 1000)).toBeLessThan(AGREE * (spared ? 1000 : 1));
      expect(total).toBeLessThanOrEqual(least + 1e-15);
    }),
    { seed, numRuns: 120 },
  );
  return seen;
}

it('seats that all close rearward', () => {
  const { planned, infeasible } = agrees(rearwardAngle, 3, 21, null);
  expect(planned).toBeGreaterThan(25);
  expect(infeasible).toBeGreaterThan(25);
});

it('seats of every kind: rearward, noseward, straight', () => {
  const { planned, infeasible } = agrees(anyAngle, 4, 22, null);
  expect(planned).toBeGreaterThan(10);
  expect(infeasible).toBeGreaterThan(25);
});

it('with the journal spared', () => {
  expect(agrees(rearwardAngle, 3, 23, 'journal').planned).toBeGreaterThan(25);
});
