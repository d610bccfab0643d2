/** The play map, the pull of a pointer, and a measured shake read back. */
import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { filmFromShake } from '../../../src/engine/play/filmFromShake.ts';
import { playMap, reachToward } from '../../../src/engine/play/reach.ts';
import { REARWARD, seat } from '../../../src/engine/play/seating.ts';
import { endPlay, heldAt, shakeAt, shakeCurve, shakeOf } from '../../../src/engine/play/shake.ts';
import { axisAt } from '../../../src/engine/spindle/pose.ts';
import { spindleOf } from '../../../src/engine/spindle/rigid.ts';
import { ALL, coneSeat, spindleDesign, spindleFrom } from './designs.ts';
import { leastFilm, places } from './reference.ts';

// a busy machine is no fault
vi.setConfig({ testTimeout: 60_000 });

const STATION = 0.03;
const sleeve = spindleOf([coneSeat('plain', 0, 19.99, 20, [-20, 0], [-25, 5])], ALL);
/** how far the axis gets at the indicator: c·(2·(S - Z₁)/L - 1) */
const RADIUS = 5e-6 * ((2 * 50) / 20 - 1);

describe('play map', () => {
  it('of a true round is a circle', () => {
    const map = playMap(heldAt(sleeve, 0), STATION, 60);
    expect(map.status).toBe('solved');
    if (map.status !== 'solved') return;
    expect(map.polygon).toHaveLength(60);
    for (const { x, y } of map.polygon) expect(Math.abs(Math.hypot(x, y) - RADIUS)).toBeLessThan(1e-12);
  });

  it('its width in any direction is the shake there, and it is convex', () => {
    fc.assert(
      fc.property(spindleDesign({ lobed: true, profiled: false }), (design) => {
        const spindle = spindleFrom(design);
        const home = seat(spindle, REARWARD);
        if (home.status !== 'solved') return;
        const body = heldAt(spindle, home.pose.z + 5e-6);
        const map = playMap(body, STATION, 36);
        if (map.status !== 'solved') return;
        const { polygon } = map;
        for (const direction of [0, Math.PI / 3]) {
          const shake = shakeOf(body, { station: STATION, direction });
          const along = polygon.map(({ x, y }) => x * Math.cos(direction) + y * Math.sin(direction));
          if (shake.status === 'solved')
            expect(Math.abs(Math.max(...along) - Math.min(...along) - shake.total)).toBeLessThan(1e-11);
        }
        polygon.forEach((b, i) => {
          const [a, c] = [polygon[(i + polygon.length - 1) % polygon.length]!, polygon[(i + 1) % polygon.length]!];
          expect((b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x)).toBeGreaterThan(-1e-16);
        });
      }),
      { seed: 51, numRuns: 25 },
    );
  });
});

describe('pulled by a pointer', () => {
  it('inside the region the nose goes where it is pulled, held by nothing', () => {
    const found = reachToward(heldAt(sleeve, 0), STATION, 3e-6, -4e-6);
    expect(found.status).toBe('solved');
    if (found.status !== 'solved') return;
    const { x, y } = axisAt(found.pose, STATION);
    expect(Math.hypot(x - 3e-6, y + 4e-6)).toBeLessThan(1e-11);
    expect(found.contacts).toEqual([]);
  });

  it('outside it goes to the nearest point of the region, and the contacts push back along the pull', () => {
    const found = reachToward(heldAt(sleeve, 0), STATION, 3e-4, -4e-4);
    expect(found.status).toBe('solved');
    if (found.status !== 'solved') return;
    const { x, y } = axisAt(found.pose, STATION);
    expect(Math.abs(x - 0.6 * RADIUS)).toBeLessThan(1e-11);
    expect(Math.abs(y + 0.8 * RADIUS)).toBeLessThan(1e-11);
    expect(found.short).toBeCloseTo(5e-4 - RADIUS, 11);
    expect(found.contacts).toHaveLength(2);
    expect(found.contacts[1]!.share).toBeCloseTo(2.5, 5);
  });

  it('of any spindle never into a bush, never further from the pointer than any corner of the map', () => {
    fc.assert(
      fc.property(
        spindleDesign({ lobed: true, profiled: true }),
        fc.double({ min: -3e-5, max: 3e-5, noNaN: true }),
        fc.double({ min: -3e-5, max: 3e-5, noNaN: true }),
        (design, x, y) => {
          const spindle = spindleFrom(design);
          const home = seat(spindle, REARWARD);
          if (home.status !== 'solved') return;
          const body = heldAt(spindle, home.pose.z + 4e-6);
          const found = reachToward(body, STATION, x, y);
          const map = playMap(body, STATION, 24);
          if (map.status !== 'solved') return;
          expect(found.status).toBe('solved');
          if (found.status !== 'solved') return;
          const { pose } = found;
          expect(
            leastFilm(
              places(design, 1000 * pose.z),
              { x: 1000 * pose.x, y: 1000 * pose.y, tiltX: pose.tiltX, tiltY: pose.tiltY },
              720,
            ),
          ).toBeGreaterThan(-1e-9);
          for (const corner of map.polygon)
            expect(found.short).toBeLessThanOrEqual(Math.hypot(corner.x - x, corner.y - y) + 1e-11);
        },
      ),
      { seed: 52, numRuns: 60 },
    );
  });
});

describe('a measured shake', () => {
  const indicator = { station: STATION, direction: 0 };

  it('of a double cone gives back its position', () => {
    let read = 0;
    fc.assert(
      fc.property(
        spindleDesign({ lobed: true, profiled: false }),
        fc.double({ min: 0.05, max: 0.9, noNaN: true }),
        (design, part) => {
          const spindle = spindleFrom(design);
          const { rear, nose, total } = endPlay(spindle);
          if (rear.status !== 'solved') return;
          const reach = nose.status === 'solved' ? total! : 4e-5;
          const position = rear.pose.z + part * reach;
          const shake = shakeAt(spindle, position, indicator);
          if (shake.status !== 'solved') return;
          const found = filmFromShake(spindle, indicator, shake.total, rear.pose.z, rear.pose.z + reach);
          if (found.status !== 'solved') {
            // a shake that the position does not decide
            expect(found.status).toBe('undecided');
            return;
          }
          read++;
          for (const answer of found.answers) {
            const again = shakeAt(spindle, answer.position, indicator);
            expect(again.status).toBe('solved');
            if (again.status === 'solved') expect(Math.abs(again.total - shake.total)).toBeLessThan(1e-12);
          }
          // where the shake rises with the position, the position is one of the answers
          const beyond = shakeAt(spindle, position + 1e-9, indicator);
          if (beyond.status === 'solved' && Math.abs(beyond.total - shake.total) > 1e-12)
            expect(Math.min(...found.answers.map((a) => Math.abs(a.position - position)))).toBeLessThan(1e-9);
        },
      ),
      { seed: 53, numRuns: 25 },
    );
    expect(read).toBeGreaterThan(15);
  });

  it('more than there is, less than there is, and one that says nothing', () => {
    const cone = spindleOf([coneSeat('cone', 20, 30, 30, [-10, 0], [-12, 2])], ALL);
    const shakes = shakeCurve(cone, indicator, 1e-9, 2e-5, 5).map((p) => p.total!);
    expect([...shakes].sort((a, b) => a - b)).toEqual(shakes);
    expect(filmFromShake(cone, indicator, 1, 0, 2e-5)).toMatchObject({ status: 'more' });
    expect(filmFromShake(cone, indicator, 0, 5e-6, 2e-5)).toMatchObject({ status: 'less' });
    expect(filmFromShake(sleeve, indicator, 1e-5, 0, 2e-5)).toMatchObject({ status: 'undecided' });
  });
});
