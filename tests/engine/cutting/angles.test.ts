/** Setting of angles and the error budget: each formula both ways, and what the films stand. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fit as solveFit } from '../../../src/engine/contact/fit.ts';
import { tilted, worstFilms } from '../../../src/engine/cutting/angleError.ts';
import { type AngleTools, alongAxis, alongSlide, angleSetting, DEFAULT_BLOCKS, scaleArc, tableMove, tailstockRule, tailstockSetOver } from '../../../src/engine/cutting/angleSetting.ts';
import { cooled, errorBudget, type SetUpErrors } from '../../../src/engine/cutting/errorBudget.ts';
import { MM, pair, rad, surface, UM, withFilm } from './pairs.ts';

const tools: AngleTools = { bar: 100 * MM, blocks: DEFAULT_BLOCKS, travel: 25 * MM, indicator: UM, scaleRadius: 300 * MM, scaleReading: 0.1 * MM, centres: 150 * MM };

/** A pair with both films right at position 0, and tolerances of half a micrometre. */
const right = pair(0, 0).map((seat) => ({ ...seat, bush: { ...seat.bush, radius: seat.journal.radius + seat.target! / Math.cos(seat.journal.halfAngle) } }));

describe('each way of setting', () => {
  it('an error of what is read is the error of the angle that is told', () => {
    const angle = fc.double({ min: 0.5, max: 60, noNaN: true }).map(rad);
    const ways = [
      [(a: number) => alongSlide(a, 25 * MM), (a: number) => 1 / (25 * MM * Math.cos(a))],
      [(a: number) => alongAxis(a, 25 * MM), (a: number) => Math.cos(a) ** 2 / (25 * MM)],
      [(a: number) => tableMove(a, 300 * MM), (a: number) => Math.cos(a) ** 2 / (300 * MM)],
      [(a: number) => scaleArc(a, 300 * MM), () => 1 / (300 * MM)],
      [(a: number) => tailstockSetOver(a, 150 * MM), (a: number) => 1 / (150 * MM * Math.cos(a))],
    ] as const;
    fc.assert(
      fc.property(angle, (a) => {
        for (const [reading, perReading] of ways) expect(((reading(a + 1e-7) - reading(a - 1e-7)) / 2e-7) * perReading(a)).toBeCloseTo(1, 7);
      }),
      { seed: 1 },
    );
  });

  it('the stack on the sine bar gives the angle back, and its blocks add up to it', () => {
    const { blocks, ways } = angleSetting(right, 0, 0, 'journal', -13 * MM, tools);
    const stack = ways.find(({ way }) => way === 'sineBar')!.reading;
    expect(Math.asin(stack / tools.bar)).toBeCloseTo(rad(3), 14);
    if (blocks.kind !== 'stack') throw new Error('no stack');
    expect(blocks.blocks.reduce((a, b) => a + b, 0) - blocks.error).toBeCloseTo(stack, 12);
  });

  it('no indicator travels further on a cone than the cone reaches', () => {
    const steep = angleSetting(right, 0, 1, 'journal', 2.7 * MM, tools);
    expect(steep.ways.find(({ way }) => way === 'alongAxis')!.reading).toBeCloseTo(3 * MM, 12);
    expect(steep.ways.find(({ way }) => way === 'alongSlide')!.reading).toBeCloseTo(25 * MM * Math.sin(rad(45)), 12);
    expect(steep.ways.some(({ way }) => way === 'tailstock')).toBe(false);
    expect(steep.dresser).toBeCloseTo(rad(45), 14);
  });

  it('the rule of the handbooks for the tailstock is too much by 1/cos a', () => {
    for (const a of [0.8, 3].map(rad)) expect(tailstockRule(2 * Math.tan(a), 150 * MM) / tailstockSetOver(a, 150 * MM)).toBeCloseTo(1 / Math.cos(a), 12);
  });
});

describe('what the films stand', () => {
  it.each([
    [0, 'journal'],
    [0, 'bush'],
    [1, 'journal'],
    [1, 'bush'],
  ] as const)('seat %i, %s: at that error one film is just at the end of its tolerance', (seat, part) => {
    const { from, to } = right[seat]![part];
    const gauged = (from + to) / 2;
    const { stands } = angleSetting(right, 0, seat, part, gauged, tools);
    const misses = (error: number) => [error, -error].map((e) => worstFilms(tilted(right[seat]!, part, gauged, e), 0)!).map(({ least, greatest }) => Math.max(2.5 * UM - least, greatest - 2.5 * UM));
    expect(Math.max(...misses(stands!))).toBeCloseTo(0.5 * UM, 12);
    expect(Math.max(...misses(stands! * 1.01))).toBeGreaterThan(0.5 * UM);
    // to first order the tolerance over the distance along the line
    expect(stands! * Math.max(to - gauged, gauged - from)).toBeGreaterThan(0.3 * UM * Math.cos(right[seat]![part].halfAngle));
  });

  it('a tenths indicator will not do for a shallow cone, one of a micrometre over its whole length will', () => {
    const setting = (indicator: number) => angleSetting(right, 0, 0, 'journal', -13 * MM, { ...tools, indicator }).ways.find(({ way }) => way === 'alongSlide')!;
    expect(setting(2.54 * UM).enough).toBe(false);
    expect(setting(UM / 2).enough).toBe(true);
    expect(setting(2.54 * UM).film).toBeCloseTo((setting(UM / 2).film * 2.54) / 0.5, 12);
  });

  it('without a tolerance nothing is said', () => {
    const free = right.map((seat) => ({ ...seat, tolerance: 0 }));
    const { stands, ways } = angleSetting(free, 0, 0, 'journal', -13 * MM, tools);
    expect(stands).toBeNull();
    expect(ways.every(({ enough }) => enough === null)).toBe(true);
  });
});

describe('the error budget', () => {
  const none: SetUpErrors = { toolHeight: 0, angle: 0, way: 'sineBar', division: 0, diameterDial: false, lean: 0, warm: 0, expansion: 11.3e-6, anchor: 0 };
  const cuts = [{ seat: 0, part: 'journal' as const, normal: 50 * UM, gauged: -13 * MM }];
  const only = (errors: Partial<SetUpErrors>, cause: string) => errorBudget(right, 0, cuts, { ...none, ...errors }).contributions.find((c) => c.cause === cause)!.film;

  it('is nothing without errors', () => {
    for (const { film } of errorBudget(right, 0, cuts, none).contributions) expect(film).toBeLessThan(1e-17);
  });

  it('dial: half a division, as stock', () => {
    expect(only({ division: 5 * UM }, 'dial')).toBeCloseTo(2.5 * UM * Math.cos(rad(3)), 14);
    expect(only({ division: 5 * UM, diameterDial: true }, 'dial')).toBeCloseTo(1.25 * UM * Math.cos(rad(3)), 14);
  });

  it('indicator that leans: the stop by s·(1 - cos t), the angle only where it is told by a reading', () => {
    expect(only({ lean: rad(10) }, 'stop')).toBeCloseTo(50 * UM * (1 - Math.cos(rad(10))), 13);
    expect(only({ lean: rad(10) }, 'sine')).toBe(0);
    const error = rad(3) - Math.asin(Math.sin(rad(3)) * Math.cos(rad(10)));
    const slope = only({ lean: rad(10), way: 'alongSlide' }, 'sine') / only({ angle: error }, 'angle');
    expect(slope).toBeGreaterThan(0.9);
    expect(slope).toBeLessThan(1.1);
  });

  it('growth: a cone that is cold again opens by α·ΔT times the distance of its normal from the anchor', () => {
    const warm = only({ warm: 10, anchor: -13 * MM }, 'growth');
    const [r] = [11 * MM - 13 * MM * Math.tan(rad(3))];
    expect(warm / (11.3e-6 * 10 * r * Math.cos(rad(3)))).toBeGreaterThan(0.95);
    expect(warm / (11.3e-6 * 10 * r * Math.cos(rad(3)))).toBeLessThan(1.1);
    // about its own apex a cone grows into itself
    const apex = -(11 * MM) / Math.tan(rad(3));
    const cone = surface(3, 22, 0, -26, 0);
    const cold = cooled(cone, { warm: 10, expansion: 11.3e-6, anchor: apex });
    expect(cold.radius - (cold.station - cone.station) * Math.tan(rad(3))).toBeCloseTo(cone.radius, 15);
  });

  it('is sorted, largest first, with its sums', () => {
    const budget = errorBudget(right, 0, [...cuts, { seat: 1, part: 'bush', normal: 20 * UM, gauged: 2.5 * MM }], {
      toolHeight: 0.2 * MM,
      angle: 1e-5,
      way: 'alongSlide',
      division: 5 * UM,
      diameterDial: true,
      lean: rad(8),
      warm: 3,
      expansion: 11.3e-6,
      anchor: 0,
    });
    const films = budget.contributions.map((c) => c.film);
    expect(films).toEqual([...films].sort((a, b) => b - a));
    expect(films).toHaveLength(12);
    for (const { seat, sum, likely } of budget.seats) {
      const own = budget.contributions.filter((c) => c.seat === seat).map((c) => c.film);
      expect(sum).toBeCloseTo(
        own.reduce((a, b) => a + b),
        18,
      );
      expect(likely).toBeCloseTo(Math.sqrt(own.reduce((a, b) => a + b * b, 0)), 18);
      expect(likely).toBeLessThan(sum);
    }
  });

  it('each contribution is what the fit says of the part made wrong', () => {
    const error = 2e-5;
    const wrong = withFilm({ ...right[0]!, journal: tilted(right[0]!, 'journal', -13 * MM, error).journal });
    const change = (e: number) => {
      const found = solveFit([e > 0 ? wrong : tilted(right[0]!, 'journal', -13 * MM, e)], 0).seats[0]!;
      return Math.max(Math.abs(found.leastFilm! - 2.5 * UM), Math.abs(found.greatestFilm! - 2.5 * UM));
    };
    expect(only({ angle: error }, 'angle')).toBeCloseTo(Math.max(change(error), change(-error)), 14);
  });
});
