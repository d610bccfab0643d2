/** Spindles to be asked about as they run: a few cones, a load, and what warms. */
import { constantOil } from '../../../src/engine/film/oil.ts';
import { cylinderRotor } from '../../../src/engine/film/whirl.ts';
import { coldRun, MOST_EFFORT, type Running } from '../../../src/engine/run/running.ts';
import { loadAt } from '../../../src/engine/spindle/pose.ts';
import { at, type Cone, coneSeat, RAD } from '../film/bearings.ts';

export const shallow: Cone = { halfAngle: 8 * RAD, radius: 0.011, from: -0.025, to: -0.005, film: 2.5e-6 };
export const steep: Cone = { halfAngle: 45 * RAD, radius: 0.013, from: 0, to: 0.003, film: 2.5e-6 };
export const rear: Cone = { halfAngle: 0, radius: 0.009, from: -0.09, to: -0.07, film: 4e-6 };
export const back: Cone = { halfAngle: -30 * RAD, radius: 0.01, from: -0.066, to: -0.06, film: 2.5e-6 };

/** Seen from the other end: the axis turns about x, so y, z and the sense of rotation change sign. */
export const turned = (cone: Cone): Cone => ({ ...cone, halfAngle: -cone.halfAngle, from: -cone.to, to: -cone.from });

const body = { mass: 0.8, specificHeat: 480, area: 0.02, cooling: 10, expansion: 11e-6, anchor: 0 };

/** Turning at 120 rad/s in an oil of 0.01 Pa·s under 20 N down and 10 N rearward at the datum. */
export function runningOf(cones: Record<string, Cone>, over: Partial<Running> = {}): Running {
  const seats = over.seats ?? Object.entries(cones).map(([name, cone]) => coneSeat(cone, name));
  const load = over.load === undefined ? loadAt(0, -20, -10, 0) : over.load;
  return {
    seats,
    load,
    pose: at({}),
    position: 0,
    adjusted: false,
    run: coldRun(seats, load, 120, 0.01, MOST_EFFORT.pose),
    oil: constantOil(0.01),
    journal: body,
    bush: body,
    rotor: cylinderRotor(0.8, -0.09, 0.02, 0.011),
    ambient: 20,
    duration: 10,
    roughness: { journal: 1e-7, bush: 1e-7 },
    needed: 3e-7,
    nose: 0.03,
    most: MOST_EFFORT,
    ...over,
  };
}
