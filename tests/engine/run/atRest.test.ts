/** At rest on metal: forces balance, and the adjuster keeps the journal from coming off its seats and no more. */
import { describe, expect, it } from 'vitest';
import { seat } from '../../../src/engine/play/seating.ts';
import { atRest } from '../../../src/engine/run/atRest.ts';
import { standing } from '../../../src/engine/run/solveRun.ts';
import { asPose, loadAt, MOTIONS } from '../../../src/engine/spindle/pose.ts';
import type { Cone } from '../film/bearings.ts';
import { back, rear, runningOf, shallow, steep, turned } from './spindles.ts';

const HOME = { front: steep, rear };

/** Thrust of the contacts along the axis (N), and their push sideways. */
function carried(found: ReturnType<typeof atRest>, cones: Record<string, Cone>) {
  if (found === null) throw new Error('no rest');
  const sum = [0, 0, 0];
  for (const { seat: name, angle, share } of found.contacts) {
    const { halfAngle } = cones[name]!;
    sum[0]! -= share * Math.cos(halfAngle) * Math.cos(angle);
    sum[1]! -= share * Math.cos(halfAngle) * Math.sin(angle);
    sum[2]! += share * Math.sin(halfAngle);
  }
  return sum;
}

describe('at rest', () => {
  it('pressed home the contacts carry all of the load, wherever it was set', () => {
    const load = loadAt(3, -8, -20, -0.03);
    const poses = [0, 1e-5, -1e-6].map((position) => {
      const found = atRest(runningOf(HOME, { load, position }));
      const sum = carried(found, HOME);
      load.slice(0, 3).forEach((force, i) => {
        expect(sum[i]! + force).toBeCloseTo(0, 7);
      });
      return found!.pose;
    });
    expect(poses[1]!.z).toBeCloseTo(poses[0]!.z, 12);
    // where a push of that size seats it
    const seated = seat({ seats: runningOf(HOME).seats, free: new Set(MOTIONS) }, asPose(load));
    expect(seated.status === 'solved' && seated.pose.z).toBeCloseTo(poses[0]!.z, 12);
  });

  it.each([1, -1] as const)('the adjuster holds it only off its seats (closing side %s)', (side) => {
    const cones = side === 1 ? HOME : { front: turned(steep), rear: turned(rear) };
    const at = (position: number, thrust: number, adjusted: boolean) =>
      atRest(runningOf(cones, { load: loadAt(0, -side * 5, side * thrust, 0), position: side * position, adjusted }))!;
    const home = side * at(0, -20, false).pose.z;
    expect(home).toBeLessThan(-1e-6);
    // open: the load presses it home all the same
    expect(side * at(5e-6, -20, true).pose.z).toBeCloseTo(home, 12);
    // set closer than metal allows: nothing to lie in
    expect(
      atRest(runningOf(cones, { load: loadAt(0, -side * 5, -side * 20, 0), position: side * -1e-5, adjusted: true })),
    ).toBeNull();
    // pulled off its seats it stays where it is set
    const open = at(3e-6, 4, true);
    expect(side * open.pose.z).toBe(3e-6);
    const sum = carried(open, cones);
    expect(sum[1]).toBeCloseTo(side * 5, 7);
  });

  it('cones face to face need no adjuster', () => {
    const both = { front: steep, back };
    for (const adjusted of [false, true])
      for (const thrust of [-20, 20]) {
        const found = atRest(runningOf(both, { load: loadAt(0, -3, thrust, -0.03), adjusted, position: 1e-6 }));
        expect(carried(found, both)[2]! + thrust).toBeCloseTo(0, 7);
        expect(Math.sign(found!.pose.z)).toBe(Math.sign(thrust));
      }
  });

  it('straight seats hold nothing along the axis: it stays where it is set', () => {
    const sleeves = { front: { ...rear, from: 0, to: 0.02 }, rear };
    const found = atRest(runningOf(sleeves, { load: loadAt(0, -20, -10, -0.03), position: 7e-6 }))!;
    expect(found.pose.z).toBe(7e-6);
    expect(carried(found, sleeves)[1]).toBeCloseTo(20, 7);
    // it lies at the bottom of both
    for (const { angle } of found.contacts) expect(angle).toBeCloseTo(1.5 * Math.PI, 6);
  });

  it('no load, no rest; nor where a part has no room', () => {
    expect(atRest(runningOf(HOME, { load: null }))).toBeNull();
    expect(atRest(runningOf({ front: steep, rear: { ...rear, film: -4e-6 } }))).toBeNull();
  });

  it('the seat that bears most is named', () => {
    const cones = { shallow, steep: { ...steep, film: 4e-6 }, rear };
    for (const station of [-0.015, -0.08, -0.2]) {
      const running = runningOf(cones, {
        load: loadAt(0, -50, -2, station),
        run: { ...runningOf(cones).run, omega: 0 },
      });
      const rest = atRest(running)!;
      const most = rest.contacts.reduce((a, b) => (b.share > a.share ? b : a));
      const found = standing(running);
      expect(found).toEqual({ status: 'standing', pose: rest.pose, seat: Object.keys(cones).indexOf(most.seat) });
    }
    expect(standing(runningOf(cones, { load: null, pose: asPose([1e-6, 0, 0, 0, 0]) }))).toEqual({
      status: 'standing',
      pose: asPose([1e-6, 0, 0, 0, 0]),
      seat: null,
    });
  });
});
