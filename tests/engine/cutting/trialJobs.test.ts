/**
 * Whole jobs, simulated: true films drawn from the doubt, the plan cut short by a dial that errs, a trial, what it says
 * is safe taken off with the dial erring again, a second trial. Counted: how often what is said to be safe is more than
 * is truly left. In some jobs a reading is a slip, small or gross.
 *
 * @module-tag long
 */
import { sum } from 'd3-array';
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { mersenne } from 'pure-rand/generator/mersenne';
import { describe, expect, it, vi } from 'vitest';
import { type SeatInput, fit as solveFit } from '../../../src/engine/contact/fit.ts';
import { leftToCut } from '../../../src/engine/cutting/leftToCut.ts';
import { pairsDrawn } from '../../../src/engine/cutting/pairsDrawn.ts';
import { nearestPlan } from '../../../src/engine/cutting/plan.ts';
import { remaining, type Trial, trialsOf } from '../../../src/engine/cutting/trial.ts';
import { believed } from '../../../src/engine/cutting/trialReadings.ts';
import { predict } from '../../../src/engine/gauging/readings/index.ts';
import { withStock } from '../../../src/engine/parts/stock.ts';
import { LONG } from '../../long.ts';
import { evenDoubt, filmsInDoubt, MM, pair, UM } from './pairs.ts';

// The machine may be busy; nothing here is timed.
vi.setConfig({ testTimeout: 1_800_000 });

const JOBS = 25 * LONG;
const seats = pair(0.0164, 0.008);
const DOUBT = 2 * UM;
const allow = [
  { seat: 0, part: 'journal' as const, cleanup: 0, limit: 0.3 * MM },
  { seat: 1, part: 'journal' as const, cleanup: 0, limit: 0.3 * MM },
];
const shake = { indicator: 30 * MM, position: 0, direction: 0, sigma: UM, free: ['x', 'y', 'tiltX', 'tiltY'] as const };
const BLUE = 2 * UM;
const PAIRS = 150;

const dialSigma = (normal: number) => Math.hypot(0.05 * normal, 1.8 * UM);

function jobs(seed: number, slips: boolean) {
  const rng = mersenne(seed);
  const uniform = () => 1 - uniformFloat64(rng);
  const normal = () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
  const count = { jobs: 0, told: 0, overshot: 0, withheld: 0, slipped: 0, caught: 0, within: 0, misled: 0 };

  const cut = (parts: readonly SeatInput[], amounts: readonly { seat: number; normal: number }[]) =>
    parts.map((s, i) => {
      const off = sum(amounts.filter(({ seat }) => seat === i).map(({ normal }) => normal));
      return { ...s, journal: withStock(s.journal, 'journal', off) };
    });

  for (let job = 0; job < JOBS; job++) {
    let truth: SeatInput[] = believed(seats, [DOUBT * normal(), DOUBT * normal()]);
    const trials: Trial[] = [];
    let next = [{ seat: 1, normal: 50 * UM }];
    // a slip so small that nothing calls it out misleads, and nothing can be said of it
    let hidden = false;
    for (let turn = 0; turn < 2; turn++) {
      const taken = next
        .filter(({ normal }) => normal > 0)
        .map(({ seat, normal: told }) => ({ seat, part: 'journal' as const, normal: told, sigma: dialSigma(told) }));
      truth = cut(
        truth,
        taken.map(({ seat, normal: told, sigma }) => ({ seat, normal: Math.max(0, told + sigma * normal()) })),
      );
      const at = solveFit(truth, 0).firstPosition!;
      const read = predict({ kind: 'shake', ...shake, value: 0 }, truth).value;
      if (read === null) break;
      const isSlip = slips && uniform() < 0.15;
      const slip = isSlip ? (uniform() < 0.5 ? 10 : -10) * UM * (1 + uniform()) : 0;
      const blue = solveFit(truth, at).seats.map(({ leastFilm }, seat) => ({ seat, prints: leastFilm! < BLUE }));
      trials.push({
        taken,
        thickness: BLUE,
        standOff: { value: at + UM * normal() + slip, sigma: UM },
        shake: { ...shake, value: Math.max(0, read + UM * normal()) },
        blue,
      });
      const result = trialsOf({ seats }, trials, evenDoubt(2, DOUBT)).at(-1)!;
      if (isSlip) count.slipped++;
      if (isSlip) hidden = true;
      if (result.status !== 'updated') {
        count.withheld++;
        if (isSlip) count.caught++;
        break;
      }
      const { amounts } = leftToCut(
        { seats, position: 0, allow: remaining(allow, trials) },
        {
          parts: result.parts,
          films: result.films,
          clashes: result.clashes.length > 0,
          risk: 1 / 40,
          drawn: pairsDrawn({ ...filmsInDoubt(seats, DOUBT), input: { seats }, trials }, PAIRS, 1),
        },
      );
      const wanted = nearestPlan({ seats: truth, position: 0, allow })!;
      const trueOn = (seat: number) =>
        wanted.amounts[
          wanted.rooms.findIndex(({ of }) => of.kind === 'surface' && of.seat === seat && of.part === 'journal')
        ]!;
      count.jobs++;
      if (result.clashes.length > 0) {
        count.withheld++;
        if (isSlip) count.caught++;
        for (const { safe } of amounts) expect(safe).toBe(0);
        break;
      }
      const seatOf = (room: number) => Math.floor(room / 2);
      for (const { room, amount, safe, sigma } of amounts) {
        expect(safe).toBeGreaterThanOrEqual(0);
        expect(safe).toBeLessThanOrEqual(amount);
        count.told++;
        if (Math.abs(trueOn(seatOf(room)) - amount) <= 1.96 * sigma) count.within++;
      }
      if (amounts.some(({ room, safe }) => safe > trueOn(seatOf(room)) + 0.05 * UM))
        count[hidden ? 'misled' : 'overshot']++;
      next = amounts.map(({ room, safe }) => ({ seat: seatOf(room), normal: safe }));
    }
  }
  return count;
}

/** The most that is still likely (1 in 1000) of so many, each by chance 1 in 40. */
const mostOf = (n: number) => n / 40 + 3.1 * Math.sqrt((n / 40) * (39 / 40));

describe('what is said to be safe is more than is left at most once in 40 times', () => {
  it('with honest readings', () => {
    const count = jobs(5, false);
    console.info(JSON.stringify(count));
    expect(count.jobs).toBeGreaterThan(JOBS);
    expect(count.overshot).toBeLessThanOrEqual(mostOf(count.jobs));
    // a limit of 1 in 100 for each reading, some six of them a job, and the doubt of the dial among the reasons
    expect(count.withheld).toBeLessThan(0.15 * count.jobs);
  });

  it('with slips among them, of which most are called out', () => {
    const count = jobs(6, true);
    console.info(JSON.stringify(count));
    expect(count.overshot).toBeLessThanOrEqual(mostOf(count.jobs));
    // by far the most in many jobs; of few, so many as chance leaves of one half
    expect(count.caught).toBeGreaterThanOrEqual(count.slipped / 2 - 0.82 * Math.sqrt(count.slipped));
    expect(count.slipped).toBeGreaterThan(4);
  });
});
