/** Warm-up and steady state: balances, closed forms, and what is said when the films close. */
import { describe, expect, it } from 'vitest';
import { newGrids } from '../../../src/engine/film/films.ts';
import { constantOil, oilOfGrade } from '../../../src/engine/film/oil.ts';
import { type ThermalBody, toRoom, type Warming, warmFilm } from '../../../src/engine/heat/warmFilm.ts';
import { netHeat, steadyState, warmUp } from '../../../src/engine/heat/warmUp.ts';
import { loadAt } from '../../../src/engine/spindle/pose.ts';
import { at, coneSeat, RAD, straight } from '../film/bearings.ts';

const JOURNAL: ThermalBody = { mass: 0.8, specificHeat: 486, area: 0.02, cooling: 10, expansion: 11.3e-6, anchor: 0 };
const BUSH: ThermalBody = { mass: 2, specificHeat: 376, area: 0.06, cooling: 10, expansion: 18e-6, anchor: 0 };
const SIZE = { rows: 12, columns: 48 };
const sleeve = coneSeat(straight(0.011, 0.02, 4e-6), 'sleeve');
const shallow = coneSeat({ halfAngle: 3 * RAD, radius: 0.011, from: -0.025, to: -0.0005, film: 2.5e-6 }, 'shallow');
const front = coneSeat({ halfAngle: 45 * RAD, radius: 0.012, from: 0, to: 0.004, film: 2.5e-6 }, 'front');
const back = coneSeat({ halfAngle: -22.5 * RAD, radius: 0.008, from: -0.066, to: -0.06, film: 2.5e-6 }, 'back');

const warming = (over: Partial<Warming> = {}): Warming => ({
  grids: newGrids([sleeve], SIZE),
  stand: { pose: at({ x: 1e-6 }) },
  omega: 150,
  oil: oilOfGrade(10),
  journal: JOURNAL,
  bush: BUSH,
  ambient: 20,
  ...over,
});

describe('steady state', () => {
  it.each<[string, Partial<Warming>]>([
    ['held by hand', {}],
    ['carrying a load', { stand: { load: loadAt(0, -100, 0, 0), position: 0 } }],
    ['two seats', { grids: newGrids([sleeve, shallow], SIZE), stand: { pose: at({ x: 5e-7 }) } }],
    ['a hot room', { ambient: 40 }],
  ])('%s: heat in is heat out, of each part and in all', (_, over) => {
    const setup = warming(over);
    const state = steadyState(setup);
    if (state.status !== 'solved') throw new Error(state.status);
    const { power } = state.total;
    expect(state.journal).toBeGreaterThan(setup.ambient + 1);
    const [journal, bush] = netHeat(setup, state);
    expect(Math.abs(journal)).toBeLessThan(1e-4 * power);
    expect(Math.abs(bush)).toBeLessThan(1e-4 * power);
    const out =
      toRoom(setup.journal, state.journal, setup.ambient) +
      toRoom(setup.bush, state.bush, setup.ambient) +
      state.heat.oil;
    expect(Math.abs(out / power - 1)).toBeLessThan(2e-4);
    expect(power).toBeCloseTo(state.total.torque * setup.omega, 9);
    // oil between two walls heated evenly is warmer than their mean
    for (const oil of state.oil) expect(oil).toBeGreaterThan((state.journal + state.bush) / 2);
  });

  it('is where the warm-up goes', () => {
    const setup = warming();
    const late = warmUp(setup, 5e4);
    const state = steadyState(setup);
    if (state.status !== 'solved') throw new Error(state.status);
    expect(late.end).toBe('time');
    expect(Math.abs(late.last!.journal - state.journal)).toBeLessThan(0.05);
    expect(Math.abs(late.last!.bush - state.bush)).toBeLessThan(0.05);
  });

  it('a journal that outgrows its bush: there is a steady state at just those speeds at which the warm-up does not seize', () => {
    const setup = warming({
      stand: { load: loadAt(0, -20, 0, 0), position: 0 },
      journal: { ...JOURNAL, expansion: 20e-6 },
      bush: { ...BUSH, expansion: 10e-6 },
    });
    const ends = [20, 60, 100, 140, 180, 260, 500, 1500].map((omega) => {
      const steady = steadyState({ ...setup, omega });
      const { end } = warmUp({ ...setup, omega }, 40_000);
      if (steady.status === 'contact') expect(steady.seat).toBe(0);
      expect([omega, steady.status]).toEqual([omega, end === 'time' ? 'solved' : 'contact']);
      return end;
    });
    expect(ends[0]).toBe('time');
    expect(ends.at(-1)).toBe('contact');
  });

  it('is the same wherever it is sought from, also from so hot that the films heat more than the room takes', () => {
    const setup = warming({
      stand: { pose: at({}) },
      journal: { ...JOURNAL, expansion: 20e-6 },
      bush: { ...BUSH, expansion: 10e-6 },
    });
    for (const omega of [60, 140]) {
      const steady = steadyState({ ...setup, omega });
      if (steady.status !== 'solved') throw new Error(steady.status);
      for (const celsius of [25, 50, 55]) {
        const from = warmFilm({ ...setup, omega }, celsius, celsius, null);
        if (from.status !== 'solved') throw new Error(from.status);
        if (omega === 140 && celsius > 40) expect(netHeat(setup, from).reduce((a, b) => a + b)).toBeGreaterThan(0);
        const found = steadyState({ ...setup, omega }, from);
        if (found.status !== 'solved') throw new Error(found.status);
        expect(Math.abs(found.journal - steady.journal)).toBeLessThan(0.005);
        expect(Math.abs(found.bush - steady.bush)).toBeLessThan(0.005);
      }
    }
  });

  it('a hotter film is thicker where bronze surrounds steel', () => {
    const state = steadyState(warming());
    if (state.status !== 'solved') throw new Error(state.status);
    const grown = 0.011 * (18e-6 * (state.bush - 20) - 11.3e-6 * (state.journal - 20));
    expect(state.run.growth[0]).toBeCloseTo(grown, 12);
    expect(state.seats[0]!.least.film).toBeCloseTo(4e-6 - 1e-6 + grown, 12);
  });
});

describe('warm-up', () => {
  it('of one lump by constant power, closed form: T = ambient + P/(hA)·(1 - exp(-t hA/mc))', () => {
    // Constant viscosity, no growth, oil that carries off next to nothing, two like parts: one lump.
    const body: ThermalBody = { mass: 1, specificHeat: 400, area: 0.03, cooling: 12, expansion: 0, anchor: 0 };
    const setup = warming({ oil: constantOil(0.01), journal: body, bush: body, stand: { pose: at({}) } });
    const { points, end } = warmUp(setup, 2000);
    expect(end).toBe('time');
    const power = points[0]!.power;
    for (const { time, journal, bush, power: now } of points) {
      const wanted = 20 + (power / (2 * 0.36)) * (1 - Math.exp((-time * 0.36) / 400));
      expect(Math.abs(now / power - 1)).toBeLessThan(1e-9);
      expect(Math.abs((journal + bush) / 2 - wanted)).toBeLessThan(0.005 * (wanted - 20) + 0.02);
    }
    expect(points[points.length - 1]!.time).toBe(2000);
  });

  it('energy: what was put in is what is stored and what has gone, over the whole run', () => {
    const setup = warming({ stand: { pose: at({}) } });
    const { points } = warmUp(setup, 3600);
    let put = 0;
    let gone = 0;
    for (let i = 1; i < points.length; i++) {
      const [a, b] = [points[i - 1]!, points[i]!];
      const room = (p: typeof a) => toRoom(JOURNAL, p.journal, 20) + toRoom(BUSH, p.bush, 20);
      put += ((a.power + b.power) / 2) * (b.time - a.time);
      gone += ((room(a) + room(b)) / 2) * (b.time - a.time);
    }
    const last = points[points.length - 1]!;
    const stored =
      JOURNAL.mass * JOURNAL.specificHeat * (last.journal - 20) + BUSH.mass * BUSH.specificHeat * (last.bush - 20);
    // running true no oil runs out; the sums are trapezoids
    expect(Math.abs((stored + gone) / put - 1)).toBeLessThan(0.02);
  });

  it('two cones face to face in bronze that outgrows the steel between them: the films close and it seizes', () => {
    const setup = warming({
      grids: newGrids([front, back], SIZE),
      stand: { pose: at({}) },
      omega: 400,
      journal: { ...JOURNAL, anchor: -0.06 },
      bush: { ...BUSH, anchor: -0.06 },
      oil: oilOfGrade(22),
    });
    const found = warmUp(setup, 36_000);
    expect(found.end).toBe('contact');
    expect(found.seat).not.toBeNull();
    const films = found.points.map(({ leastFilm }) => leastFilm);
    expect(films[films.length - 1]!).toBeLessThan(0.5 * films[0]!);
    expect(steadyState(setup).status).not.toBe('solved');
  });

  it('can be stopped', () => {
    let heard = 0;
    const found = warmUp(warming(), 3600, () => ++heard < 3);
    expect(found.end).toBe('cancelled');
    expect(heard).toBe(3);
  });

  it('a pose that touches from the start says so', () => {
    expect(warmUp(warming({ stand: { pose: at({ x: 5e-6 }) } }), 100)).toMatchObject({
      end: 'contact',
      seat: 0,
      points: [],
    });
  });
});
