/** Setting of angles and the error budget: each formula both ways, and what the films stand. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fit as solveFit } from '../../../src/engine/contact/fit.ts';
import { tilted, worstFilms } from '../../../src/engine/cutting/angleError.ts';
import {
  type AngleTools,
  alongAxis,
  alongSlide,
  angleSetting,
  DEFAULT_BLOCKS,
  scaleArc,
  tableMove,
  tailstockSetOver,
} from '../../../src/engine/cutting/angleSetting.ts';
import {
  budgetOf,
  contributionsOf,
  type SetUpErrors,
  type SurfaceCut,
} from '../../../src/engine/cutting/errorBudget.ts';
import { setUpsOf } from '../../../src/engine/cutting/setUp.ts';
import { grown } from '../../../src/engine/parts/growth.ts';
import { MM, pair, rad, surface, UM, withFilm } from './pairs.ts';

const tools: AngleTools = {
  bar: 100 * MM,
  blocks: DEFAULT_BLOCKS,
  travel: 25 * MM,
  indicator: UM,
  scaleRadius: 300 * MM,
  scaleReading: 0.1 * MM,
  centres: 150 * MM,
};

/** A pair with both films right at position 0, and tolerances of half a micrometre. */
const right = pair(0, 0).map((seat) => ({
  ...seat,
  bush: { ...seat.bush, radius: seat.journal.radius + seat.target! / Math.cos(seat.journal.halfAngle) },
}));

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
        for (const [reading, perReading] of ways)
          expect(((reading(a + 1e-7) - reading(a - 1e-7)) / 2e-7) * perReading(a)).toBeCloseTo(1, 7);
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
    const misses = (error: number) =>
      [error, -error]
        .map((e) => worstFilms(tilted(right[seat]!, part, gauged, e), 0)!)
        .map(({ least, greatest }) => Math.max(2.5 * UM - least, greatest - 2.5 * UM));
    expect(Math.max(...misses(stands!))).toBeCloseTo(0.5 * UM, 12);
    expect(Math.max(...misses(stands! * 1.01))).toBeGreaterThan(0.5 * UM);
    // to first order the tolerance over the distance along the line
    expect(stands! * Math.max(to - gauged, gauged - from)).toBeGreaterThan(
      0.3 * UM * Math.cos(right[seat]![part].halfAngle),
    );
  });

  it('a film that is out of its tolerance anyway stands nothing that could be told', () => {
    expect(angleSetting(right, -0.1 * MM, 0, 'journal', -13 * MM, tools).stands).toBeNull();
  });

  it('an indicator that leans errs along a slide, and does nothing where it is kept at nought', () => {
    const leaning = angleSetting(right, 0, 1, 'journal', 2.7 * MM, { ...tools, lean: rad(5) });
    const of = (way: string) => leaning.ways.find((w) => w.way === way)!;
    expect(of('alongBar').lean).toBe(0);
    expect(of('sineBar').lean).toBe(0);
    // sin a' = sin 45°·cos 5°: a quarter of a degree
    expect(of('alongSlide').lean).toBeCloseTo(rad(45) - Math.asin(Math.sin(rad(45)) * Math.cos(rad(5))), 14);
    expect(of('alongSlide').film).toBeCloseTo(
      leaning.perAngle * Math.hypot(of('alongSlide').error, of('alongSlide').lean),
      15,
    );
    // 1 µm over 25 mm
    expect(of('alongBar').error).toBeGreaterThanOrEqual(UM / (25 * MM));
    expect(of('alongBar').error).toBeLessThan((1.1 * UM) / (25 * MM));
  });
});

describe('the way to set it', () => {
  const quiet: Omit<SetUpErrors, 'angle' | 'way'> = {
    toolHeight: 0,
    division: 0,
    diameterDial: false,
    lean: 0,
    warm: 0,
    expansion: 11.3e-6,
    anchor: 0,
  };
  const cuts: SurfaceCut[] = [{ seat: 0, part: 'journal', normal: 20 * UM, gauged: -13 * MM }];
  const setUp = (
    more: Partial<AngleTools> = {},
    errors = quiet,
    own: Parameters<typeof setUpsOf>[5] = null,
    seats = right,
  ) => setUpsOf(seats, 0, cuts, { ...tools, ...more }, () => errors, own);

  it('what is recommended keeps the tolerance together with everything else: budget and recommendation are one', () => {
    for (const indicator of [0.1, 0.5, 1, 2.54, 10].map((x) => x * UM)) {
      const { surfaces, budget } = setUp({ indicator });
      const [surface] = surfaces;
      const tolerance = right[0]!.tolerance!;
      if (surface!.recommended !== null) {
        expect(surface!.used).toBe(surface!.recommended);
        expect(budget.seats[0]!.likely).toBeLessThan(tolerance * 1.02);
      } else expect(budget.seats[0]!.likely).toBeGreaterThan(tolerance);
      // the film of the way used is the budget's own
      const angle = budget.contributions.find(({ cause }) => cause === 'angle')!.film;
      expect(angle / surface!.ways.find(({ way }) => way === surface!.used)!.film).toBeCloseTo(1, 1);
    }
  });

  it('where none is enough, what would be is', () => {
    const { surfaces } = setUp({ indicator: 10 * UM, scaleRadius: 30 * MM });
    expect(surfaces[0]!.recommended).toBeNull();
    const { needed } = surfaces[0]!;
    const finer = setUp({ indicator: needed!.indicator * 0.999 }).surfaces[0]!.ways.find(
      ({ way }) => way === 'alongBar',
    )!;
    const coarser = setUp({ indicator: needed!.indicator * 1.001 }).surfaces[0]!.ways.find(
      ({ way }) => way === 'alongBar',
    )!;
    expect([finer.enough, coarser.enough]).toEqual([true, false]);
    const longer = setUp({ indicator: 10 * UM, travel: needed!.travel * 1.001, bar: 10 }).surfaces[0]!.ways.find(
      ({ way }) => way === 'alongBar',
    );
    if (longer) expect(longer.enough).toBe(true);
  });

  it('a tenths indicator will not do for a shallow cone, one of half a micrometre will', () => {
    expect(setUp({ indicator: 2.54 * UM, scaleRadius: 30 * MM, centres: 30 * MM }).surfaces[0]!.recommended).toBeNull();
    expect(setUp({ indicator: UM / 2, scaleRadius: 30 * MM }).surfaces[0]!.recommended).not.toBeNull();
  });

  it('the other errors leave less room, down to a third of the tolerance', () => {
    const tolerance = right[0]!.tolerance!;
    expect(setUp().surfaces[0]!.room).toBeCloseTo(tolerance, 9);
    const some = setUp({}, { ...quiet, division: 0.6 * UM });
    const others = some.budget.contributions.filter(({ cause }) => cause !== 'angle').map(({ film }) => film);
    expect(some.surfaces[0]!.room).toBeCloseTo(Math.sqrt(tolerance ** 2 - Math.hypot(...others) ** 2), 12);
    expect(setUp({}, { ...quiet, division: 50 * UM }).surfaces[0]!.room).toBeCloseTo(tolerance / 3, 12);
  });

  it("the person's own way counts in the budget, and is recommended where it is enough", () => {
    expect(setUp({ indicator: UM / 2 }, quiet, 'alongSlide').surfaces[0]).toMatchObject({
      used: 'alongSlide',
      recommended: 'alongSlide',
    });
    const coarse = setUp({ indicator: UM / 2 }, quiet, 'scale');
    expect(coarse.surfaces[0]!.used).toBe('scale');
    expect(coarse.surfaces[0]!.recommended).not.toBe('scale');
    expect(coarse.budget.contributions[0]!.cause).toBe('angle');
  });

  it('what the blocks miss is told as film', () => {
    const { blocks, blocksFilm, perAngle } = setUp().surfaces[0]!;
    if (blocks.kind !== 'stack') throw new Error('no stack');
    expect(blocksFilm).toBeCloseTo((Math.abs(blocks.error) / (tools.bar * Math.cos(rad(3)))) * perAngle, 15);
  });

  it('without a tolerance nothing is said', () => {
    const { surfaces } = setUp(
      {},
      quiet,
      null,
      right.map((seat) => ({ ...seat, tolerance: 0 })),
    );
    expect(surfaces[0]).toMatchObject({ stands: null, room: null, needed: null });
    expect(surfaces[0]!.ways.every(({ enough }) => enough === null)).toBe(true);
  });
});

describe('the error budget', () => {
  const none: SetUpErrors = {
    toolHeight: 0,
    angle: 0,
    way: 'sineBar',
    division: 0,
    diameterDial: false,
    lean: 0,
    warm: 0,
    expansion: 11.3e-6,
    anchor: 0,
  };
  const cuts = [{ seat: 0, part: 'journal' as const, normal: 50 * UM, gauged: -13 * MM }];
  const errorBudget = (seats: typeof right, position: number, all: readonly SurfaceCut[], errors: SetUpErrors) =>
    budgetOf(all.flatMap((cut) => contributionsOf(seats, position, cut, errors)));
  const only = (errors: Partial<SetUpErrors>, cause: string) =>
    errorBudget(right, 0, cuts, { ...none, ...errors }).contributions.find((c) => c.cause === cause)!.film;

  it('is nothing without errors', () => {
    for (const { film } of errorBudget(right, 0, cuts, none).contributions) expect(film).toBeLessThan(1e-17);
  });

  it('dial: half a division, as stock', () => {
    expect(only({ division: 5 * UM }, 'dial')).toBeCloseTo(2.5 * UM * Math.cos(rad(3)), 14);
    expect(only({ division: 5 * UM, diameterDial: true }, 'dial')).toBeCloseTo(1.25 * UM * Math.cos(rad(3)), 14);
  });

  it('dial: whichever side is worse, where the parts lean differently', () => {
    // Off the end of a line that leans, more comes within the overlap on one side than goes out of it on the other.
    const sides = [40, 46].flatMap((journal) =>
      (['journal', 'bush'] as const).map((part) => {
        const seat = withFilm({
          name: 'steep',
          journal: surface(journal, 24, 1.2, 1, 4),
          bush: surface(45, 24.04, 1.2, 1, 4),
        });
        const now = solveFit([seat], 0).seats[0]!;
        const [more, less] = [1, -1].map((side) => {
          const then = solveFit([{ ...seat, [part]: { ...seat[part], radius: seat[part].radius + side * 50 * UM } }], 0)
            .seats[0]!;
          return Math.max(Math.abs(then.leastFilm! - now.leastFilm!), Math.abs(then.greatestFilm! - now.greatestFilm!));
        });
        const found = contributionsOf(
          [seat],
          0,
          { seat: 0, part, normal: 50 * UM, gauged: 2 * MM },
          { ...none, division: 100 * UM },
        ).find(({ cause }) => cause === 'dial')!;
        expect(found.film).toBeCloseTo(Math.max(more!, less!), 14);
        return Math.sign(Math.round((more! - less!) / 1e-9));
      }),
    );
    expect(new Set(sides)).toEqual(new Set([1, -1]));
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
    const cold = grown(cone, 1 / (1 + 10 * 11.3e-6), apex);
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
