/** What warms at given temperatures, in closed form where it has one, and the way there against plain small steps. */
import { describe, expect, it } from 'vitest';
import { effortOf } from '../../../src/engine/film/effort.ts';
import { newGrids } from '../../../src/engine/film/films.ts';
import { constantOil, oilOfGrade } from '../../../src/engine/film/oil.ts';
import { leastFilmGuidance } from '../../../src/engine/heat/guidance.ts';
import {
  growths,
  type ThermalBody,
  toRoom,
  type WarmFilm,
  type Warming,
  warmFilm,
} from '../../../src/engine/heat/warmFilm.ts';
import { netHeat, steadyState, warmUp } from '../../../src/engine/heat/warmUp.ts';
import { at, coneSeat, straight } from '../film/bearings.ts';

const JOURNAL: ThermalBody = { mass: 0.8, specificHeat: 486, area: 0.02, cooling: 10, expansion: 11.3e-6, anchor: 0 };
const BUSH: ThermalBody = { mass: 2, specificHeat: 376, area: 0.06, cooling: 14, expansion: 18e-6, anchor: 0 };
const [R, L, H] = [0.011, 0.02, 4e-6];
const sleeve = coneSeat(straight(R, L, H), 'sleeve');

const warming = (over: Partial<Warming> = {}): Warming => ({
  grids: newGrids([sleeve], { rows: 8, columns: 32 }),
  stand: { pose: at({}) },
  omega: 150,
  oil: oilOfGrade(10),
  journal: JOURNAL,
  bush: BUSH,
  ambient: 20,
  ...over,
});

function solvedAt(setup: Warming, journal: number, bush: number, last: WarmFilm | null = null): WarmFilm {
  const state = warmFilm(setup, journal, bush, last);
  if (state.status !== 'solved') throw new Error(state.status);
  return state;
}

describe('the films at given temperatures', () => {
  // Running true: torque 2π·η·ω·R³·L/h, conduction k·2π·R·L/h with k = 0.14 W/(m·K), and no oil runs out.
  it.each([
    [20, 20],
    [47, 31],
    [30, 52],
  ])('running true, closed form: journal at %i °C, bush at %i °C', (journal, bush) => {
    const setup = warming({ oil: constantOil(0.01) });
    const { heat, oil, total, run } = solvedAt(setup, journal, bush);
    const film = H + R * (18e-6 * (bush - 20) - 11.3e-6 * (journal - 20));
    // the film opens from the journal that is smaller than the bush
    expect(run.growth[0]! + H).toBeCloseTo(film, 10);
    const across = (0.14 * 2 * Math.PI * R * L) / film;
    expect(heat.across / across).toBeCloseTo(1, 3);
    const power = (2 * Math.PI * 0.01 * 150 ** 2 * R ** 3 * L) / film;
    expect(total.power / power).toBeCloseTo(1, 2);
    expect(oil[0]).toBeCloseTo((journal + bush) / 2 + total.power / (12 * heat.across), 4);
    expect(heat.journal).toBeCloseTo(total.power / 2 + heat.across * (bush - journal), 6);
    expect(heat.bush).toBeCloseTo(total.power / 2 - heat.across * (bush - journal), 6);
    expect(heat.oil).toBeCloseTo(0, 9);
  });

  it('aside, the oil that runs out carries off what it was warmed by; all the power goes somewhere', () => {
    const wide = coneSeat(straight(R, L, 4e-5), 'wide');
    const setup = warming({ grids: newGrids([wide], { rows: 8, columns: 48 }), stand: { pose: at({ x: 3e-5 }) } });
    const { heat, oil, total, seats, run } = solvedAt(setup, 26, 24);
    const { rear, nose } = seats[0]!.flow;
    const flow = Math.max(0, rear) + Math.max(0, nose);
    expect(flow).toBeGreaterThan(0);
    // c = 1900 J/(kg·K)
    const carried = setup.oil.density(20) * 1900 * flow * (oil[0]! - 20);
    expect(heat.oil / carried).toBeCloseTo(1, 9);
    expect(carried).toBeGreaterThan(0.02 * total.power);
    expect(heat.oil + heat.journal + heat.bush).toBeCloseTo(total.power, 9);
    expect(heat.journal - heat.bush).toBeCloseTo(2 * heat.across * (24 - 26), 9);
    expect(Math.abs(oil[0]! - (25 + (total.power - heat.oil) / (12 * heat.across)))).toBeLessThan(0.03);
    // the viscosity is the one at that temperature
    expect(run.viscosity[0]! / setup.oil.viscosity(oil[0]!)).toBeCloseTo(1, 2);
  });

  it('from a state close by they are the same', () => {
    const setup = warming({ stand: { pose: at({ x: 2e-6 }) } });
    const near = solvedAt(setup, 30, 28);
    const [fresh, followed] = [solvedAt(setup, 41, 36), solvedAt(setup, 41, 36, near)];
    expect(Math.abs(followed.oil[0]! - fresh.oil[0]!)).toBeLessThan(0.02);
    expect(followed.total.power / fresh.total.power).toBeCloseTo(1, 2);
  });

  it('of two seats the heats add up, and each has its own temperature', () => {
    const other = coneSeat({ ...straight(0.008, 0.03, 9e-6), from: -0.09, to: -0.06 }, 'other');
    const both = solvedAt(warming({ grids: newGrids([sleeve, other], { rows: 8, columns: 32 }) }), 33, 29);
    const alone = [sleeve, other].map((seat) =>
      solvedAt(warming({ grids: newGrids([seat], { rows: 8, columns: 32 }) }), 33, 29),
    );
    for (const part of ['journal', 'bush', 'oil', 'across'] as const)
      expect(both.heat[part]).toBeCloseTo(alone[0]!.heat[part] + alone[1]!.heat[part], 6);
    expect(both.oil).toEqual([expect.closeTo(alone[0]!.oil[0]!, 6), expect.closeTo(alone[1]!.oil[0]!, 6)]);
  });

  it('film that is added cold comes on top of what growth adds', () => {
    const setup = warming();
    const [own] = growths(setup, 45, 30);
    expect(growths({ ...setup, extra: [3e-6] }, 45, 30)[0]).toBeCloseTo(own! + 3e-6, 18);
    expect(growths(setup, 20, 20)).toEqual([0]);
  });

  it('metal, a journal out of its bush and effort that is spent are told apart', () => {
    const seized = { status: 'contact', seat: 0, journal: 21, bush: 22 };
    expect(warmFilm(warming({ stand: { pose: at({ x: 5e-6 }) } }), 21, 22, null)).toEqual(seized);
    expect(warmFilm(warming({ stand: { pose: at({ z: 1 }) } }), 21, 22, null)).toMatchObject({ journal: 21, bush: 22 });
    const spent = warming({ effort: { spent: 2, most: 1 } });
    expect(warmFilm(spent, 21, 22, null)).toEqual({ status: 'givenUp', journal: 21, bush: 22 });
    expect(steadyState(spent)).toEqual({ status: 'givenUp', journal: 20, bush: 20 });
    expect(warmUp(spent, 100)).toEqual({ points: [], end: 'givenUp', seat: null, last: null });
  });
});

describe('the way there', () => {
  const setup = warming({ stand: { pose: at({ x: 1.5e-6 }) }, omega: 300 });
  const capacity = [JOURNAL.mass * JOURNAL.specificHeat, BUSH.mass * BUSH.specificHeat] as const;

  /** Runge and Kutta's steps of four seconds: the balance itself, integrated with nothing else in common. */
  function plainly(until: number): { journal: number; bush: number } {
    const step = 4;
    let y = [20, 20];
    let last: WarmFilm | null = null;
    const rate = (t: readonly number[]) => {
      last = solvedAt(setup, t[0]!, t[1]!, last);
      return netHeat(setup, last).map((w, i) => w / capacity[i]!);
    };
    const moved = (k: readonly number[], by: number) => y.map((one, i) => one + by * k[i]!);
    for (let time = 0; time < until; time += step) {
      const a = rate(y);
      const b = rate(moved(a, step / 2));
      const c = rate(moved(b, step / 2));
      const d = rate(moved(c, step));
      y = y.map((one, i) => one + (step / 6) * (a[i]! + 2 * b[i]! + 2 * c[i]! + d[i]!));
    }
    return { journal: y[0]!, bush: y[1]! };
  }

  it.each([40, 240])('is that of small plain steps: after %i s', (until) => {
    const { points, end, last } = warmUp(setup, until);
    const wanted = plainly(until);
    expect(end).toBe('time');
    expect(points.at(-1)!.time).toBe(until);
    expect(wanted.journal).toBeGreaterThan(21);
    expect(Math.abs(points.at(-1)!.journal - wanted.journal)).toBeLessThan(0.15);
    expect(Math.abs(points.at(-1)!.bush - wanted.bush)).toBeLessThan(0.15);
    expect(last).toMatchObject({ journal: points.at(-1)!.journal, bush: points.at(-1)!.bush });
  });

  it('begins cold, never goes back, and takes longer steps as less changes', () => {
    const { points } = warmUp(setup, 3000);
    const state = solvedAt(setup, 20, 20);
    expect(points[0]).toEqual({
      time: 0,
      journal: 20,
      bush: 20,
      oil: expect.closeTo(state.oil[0]!, 6),
      leastFilm: expect.closeTo(state.seats[0]!.least.film, 15),
      power: expect.closeTo(state.total.power, 6),
    });
    const steps = points.slice(1).map(({ time }, i) => time - points[i]!.time);
    expect(Math.min(...steps)).toBeGreaterThan(0);
    expect(steps.at(-2)!).toBeGreaterThan(5 * steps[0]!);
    expect(points.length).toBeLessThan(60);
  });

  it('given up on the way, it tells what was reached', () => {
    const effort = effortOf(8e4);
    const found = warmUp({ ...setup, effort }, 3000);
    expect(found.end).toBe('givenUp');
    expect(found.points.length).toBeGreaterThan(1);
    expect(found.last!.journal).toBe(found.points.at(-1)!.journal);
  });

  it('what goes to the room follows the area, the cooling and the difference', () => {
    expect(toRoom(BUSH, 45, 20)).toBeCloseTo(14 * 0.06 * 25, 12);
    const state = solvedAt(setup, 33, 27);
    expect(netHeat(setup, state)).toEqual([
      state.heat.journal - 10 * 0.02 * 13,
      expect.closeTo(state.heat.bush - 14 * 0.06 * 7, 12),
    ]);
  });
});

describe('how thin a film may be', () => {
  // µm by diameter (mm) and sliding speed (m/s), as the standard has it. @source ISO7902-3 table 1
  it.each([
    [24, 1, 3],
    [24, 1.01, 4],
    [62.9, 3, 4],
    [63, 3.01, 7],
    [160, 10, 9],
    [400, 30, 13],
    [999, 30.1, 16],
    [1000, 0, 10],
    [2500, 31, 18],
  ])('a shaft of %f mm at %f m/s: %f µm', (diameter, speed, film) => {
    const wanted = { film: expect.closeTo(film * 1e-6, 12), within: true };
    expect(leastFilmGuidance(diameter / 1000, speed)).toEqual(wanted);
    expect(leastFilmGuidance(diameter / 1000, -speed)).toEqual(wanted);
  });

  it('beyond the table its nearest row, and that is said', () => {
    expect(leastFilmGuidance(0.0239, 2)).toEqual({ film: 4e-6, within: false });
    expect(leastFilmGuidance(2.51, 2)).toEqual({ film: expect.closeTo(12e-6, 12), within: false });
  });
});
