/** The nearest position at which the films part the surfaces: enough there, not enough a little nearer. */
import { describe, expect, it } from 'vitest';
import { equilibrium } from '../../../src/engine/film/equilibrium.ts';
import { newGrids } from '../../../src/engine/film/films.ts';
import { backOff } from '../../../src/engine/run/backOff.ts';
import { COARSE, MOST_EFFORT, type Running, WARM } from '../../../src/engine/run/running.ts';
import { loadAt } from '../../../src/engine/spindle/pose.ts';
import { back, rear, runningOf, shallow, steep, turned } from './spindles.ts';

const CONES = { shallow, steep };
const held = (position: number, over: Partial<Running> = {}) =>
  runningOf(CONES, { adjusted: true, position, load: loadAt(0, -30, 0, 0.01), needed: 4e-7, ...over });

/** m, cold under the load at a position; null where no film carries it or it is pressed off its adjuster */
function leastAt({ seats, load, adjusted, run }: Running, position: number): number | null {
  const found = equilibrium(newGrids(seats, WARM), load!, run, {
    position,
    adjusted,
    coarse: newGrids(seats, COARSE),
    close: 1e-5,
  });
  return found.status === 'solved' && found.stop !== 0 ? Math.min(...found.seats.map(({ least }) => least.film)) : null;
}

describe('where else the adjuster could stand', () => {
  // shut by micrometres, and shut by tenths of a millimetre
  it.each([-4e-6, -1.5e-4])('opened from %f m just until the films are enough', (position) => {
    const running = held(position);
    expect(leastAt(running, position)).toBeNull();
    const { backOff: found, givenUp } = backOff(running);
    expect(givenUp).toBe(false);
    expect(found!.position).toBeGreaterThan(position);
    expect(found!.leastFilm).toBeGreaterThanOrEqual(running.needed);
    expect(leastAt(running, found!.position)! / found!.leastFilm).toBeCloseTo(1, 2);
    // the first that does, to a thousandth of a step
    expect(leastAt(running, found!.position - 3e-8) ?? 0).toBeLessThan(running.needed);
  });

  it('closed where it lies so loose that it sinks', () => {
    const running = held(1e-4, { load: loadAt(0, -250, 0, 0.001), needed: 8e-7 });
    expect(leastAt(running, 1e-4) ?? 0).toBeLessThan(running.needed);
    const { backOff: found } = backOff(running);
    expect(found!.position).toBeLessThan(1e-4);
    expect(found!.leastFilm).toBeGreaterThanOrEqual(running.needed);
    expect(leastAt(running, found!.position + 3e-6) ?? 0).toBeLessThan(running.needed);
  });

  it('seen from the other end it is the same', () => {
    const one = backOff(held(-4e-6)).backOff!;
    const from = runningOf(
      { shallow: turned(shallow), steep: turned(steep) },
      { adjusted: true, position: 4e-6, load: loadAt(0, 30, 0, -0.01), needed: 4e-7 },
    );
    const other = backOff({ ...from, run: { ...from.run, omega: -from.run.omega } }).backOff!;
    expect(other.position / one.position).toBeCloseTo(-1, 6);
    expect(other.leastFilm / one.leastFilm).toBeCloseTo(1, 4);
  });

  it('a straight seat beside the cones changes nothing of where these open', () => {
    const cones = { ...CONES, rear };
    const running = runningOf(cones, { adjusted: true, position: -4e-6, load: loadAt(0, -30, 0, -0.01), needed: 4e-7 });
    const { backOff: found } = backOff(running);
    expect(found!.leastFilm).toBeGreaterThanOrEqual(running.needed);
    expect(leastAt(running, found!.position - 3e-8) ?? 0).toBeLessThan(running.needed);
  });

  it('is not asked where no adjuster sets it, nothing is to be carried, or seats close both ways or none', () => {
    const none = { backOff: null, givenUp: false };
    expect(backOff(held(-4e-6, { adjusted: false }))).toEqual(none);
    expect(backOff(held(-4e-6, { load: null }))).toEqual(none);
    expect(backOff(runningOf({ steep, back }, { adjusted: true, position: -4e-6 }))).toEqual(none);
    expect(backOff(runningOf({ rear }, { adjusted: true, position: -4e-6 }))).toEqual(none);
  });

  it('none within reach of a load that no film carries', () => {
    expect(backOff(held(-4e-6, { load: loadAt(0, -1e6, 0, 0.01) }))).toEqual({ backOff: null, givenUp: false });
  });

  it('a load that presses it off the adjuster everywhere leaves nothing to set', () => {
    expect(backOff(held(-4e-6, { load: loadAt(0, -3, -400, 0) })).backOff).toBeNull();
  });

  it('gives up when its effort is spent', () => {
    expect(backOff(held(-1.5e-4, { most: { ...MOST_EFFORT, backOff: 1e4 } }))).toEqual({
      backOff: null,
      givenUp: true,
    });
  });
});
