/** Whether it whirls as it runs, and from what speed on. */
import { describe, expect, it } from 'vitest';
import { equilibrium } from '../../../src/engine/film/equilibrium.ts';
import { newGrids, summedCoefficients } from '../../../src/engine/film/films.ts';
import { cylinderRotor, rotorWhirl } from '../../../src/engine/film/whirl.ts';
import { MOST_EFFORT, QUICK, type Running } from '../../../src/engine/run/running.ts';
import { solveRun } from '../../../src/engine/run/solveRun.ts';
import { whirlOf } from '../../../src/engine/run/whirling.ts';
import { loadAt } from '../../../src/engine/spindle/pose.ts';
import type { Cone } from '../film/bearings.ts';
import { rear, runningOf, shallow } from './spindles.ts';

/** Two sleeves, loaded alike; a light load on a heavy rotor whirls early. */
const SLEEVES: Record<string, Cone> = { front: { ...rear, from: 0, to: 0.02 }, rear };
const MIDDLE = -0.035;
const sleeves = (load: number, mass: number, over: Partial<Running> = {}) =>
  runningOf(SLEEVES, {
    load: loadAt(0, -load, 0, MIDDLE),
    rotor: cylinderRotor(mass, -0.09, 0.02, 0.009),
    ...over,
  });

function whirlingOf(running: Running) {
  const solved = solveRun(running);
  if (!('seats' in solved)) throw new Error(solved.status);
  return { solved, found: whirlOf(running, solved)! };
}

/** Whether it is calm at a speed, from the films there and nothing else. */
function calmAt(running: Running, omega: number): boolean {
  const { seats, load, position, adjusted, run, rotor } = running;
  const grids = newGrids(seats, QUICK);
  const turning = { ...run, omega };
  const found = equilibrium(grids, load!, turning, { position, adjusted });
  if (found.status !== 'solved') throw new Error(found.status);
  return rotorWhirl(rotor, omega, summedCoefficients(grids, turning), true)!.stable;
}

let found: ReturnType<typeof whirlingOf> | undefined;
/** 40 N on a rotor of 20 kg, worked out once. */
const usual = () => {
  found ??= whirlingOf(sleeves(40, 20));
  return found;
};

describe('whirl', () => {
  it('begins at the speed told: calm just below, not just above', () => {
    const { found } = usual();
    const running = sleeves(40, 20);
    expect(found.givenUp).toBe(false);
    expect(found.now!.stable).toBe(true);
    expect(found.threshold!).toBeGreaterThan(120);
    expect([calmAt(running, 0.98 * found.threshold!), calmAt(running, 1.02 * found.threshold!)]).toEqual([true, false]);
  });

  it('turned the other way the same', () => {
    const running = sleeves(40, 20);
    const one = usual().found;
    const other = whirlingOf({ ...running, run: { ...running.run, omega: -running.run.omega } }).found;
    expect(other.threshold! / one.threshold!).toBeCloseTo(1, 6);
    expect(other.now!.frequency / one.now!.frequency).toBeCloseTo(1, 6);
  });

  it('at every speed looked at: 0', () => {
    const { found } = whirlingOf(sleeves(0.2, 2000));
    expect(found.now!.stable).toBe(false);
    expect(found.threshold).toBe(0);
  });

  it('at none: null, up to sixteen times the speed', () => {
    const { found } = whirlingOf(sleeves(200, 0.01));
    expect(found.now!.stable).toBe(true);
    expect(found.threshold).toBeNull();
  });

  it('what is told of now is of the films solved, and of all five motions where nothing holds it', () => {
    const cones = { shallow, rear };
    const most = { ...MOST_EFFORT, whirl: 1 };
    const running = runningOf(cones, { load: loadAt(0, -20, -10, -0.03), most });
    const { solved, found } = whirlingOf(running);
    expect(solved.status).toBe('found');
    expect(found.now).toEqual(rotorWhirl(running.rotor, running.run.omega, solved.coefficients, false));
    expect(found.now!.frequency).not.toBeCloseTo(
      rotorWhirl(running.rotor, running.run.omega, solved.coefficients, true)!.frequency,
      3,
    );
  });

  // Round and in the middle no oil presses; a hair aside it is driven round with half its speed.
  it('a journal that runs true is looked at a hair aside', () => {
    const { found } = whirlingOf(sleeves(0, 2, { load: null }));
    expect(found).toMatchObject({ threshold: null, givenUp: false, now: { stable: true } });
    expect(found.now!.frequency / 60).toBeCloseTo(1, 2);
  });

  it('of straight seats that only drift along the axis the thrust changes nothing', () => {
    const [free, pressed] = [usual(), whirlingOf({ ...sleeves(40, 20), load: loadAt(0, -40, -10, MIDDLE) })];
    expect([free.solved.status, pressed.solved.status]).toEqual(['found', 'stopped']);
    expect(free.found.threshold! / pressed.found.threshold!).toBeCloseTo(1, 3);
    expect(free.found.now!.decay / pressed.found.now!.decay).toBeCloseTo(1, 3);
  });

  it('nothing whirls that does not turn', () => {
    const running = sleeves(40, 2, { load: null });
    const still = { ...running, run: { ...running.run, omega: 0 } };
    const solved = solveRun(still);
    if (!('seats' in solved)) throw new Error(solved.status);
    expect(whirlOf(still, solved)).toBeNull();
  });

  it('says where not every speed was looked at', () => {
    const { found } = whirlingOf(sleeves(200, 0.01, { most: { ...MOST_EFFORT, whirl: 1e4 } }));
    expect(found.givenUp).toBe(true);
  });
});
