/** What the sweeps over speeds and clearances are made of, and what is told where a film is not to be had. */
import { describe, expect, it } from 'vitest';
import { leastFilmIn, newGrids, summedCoefficients } from '../../../src/engine/film/films.ts';
import { oilOfGrade } from '../../../src/engine/film/oil.ts';
import { cylinderRotor, rotorWhirl } from '../../../src/engine/film/whirl.ts';
import { type ThermalBody, type Warming, warmFilm } from '../../../src/engine/heat/warmFilm.ts';
import { steadyState } from '../../../src/engine/heat/warmUp.ts';
import { coldPositionFor } from '../../../src/engine/run/coldPosition.ts';
import {
  calm,
  OIL_LASTS,
  overCuts,
  overSpeeds,
  type SteadyPoint,
  steadyPoint,
  withClearance,
  workingStretch,
} from '../../../src/engine/run/limits.ts';
import { loadAt } from '../../../src/engine/spindle/pose.ts';
import { at, type Cone, coneSeat, straight } from '../film/bearings.ts';
import { shallow, steep, turned } from './spindles.ts';

const JOURNAL: ThermalBody = { mass: 0.8, specificHeat: 486, area: 0.02, cooling: 10, expansion: 11.3e-6, anchor: 0 };
const BUSH: ThermalBody = { mass: 2, specificHeat: 376, area: 0.06, cooling: 10, expansion: 18e-6, anchor: 0 };
const SIZE = { rows: 8, columns: 48 };

const warming = (cones: readonly Cone[], over: Partial<Warming> = {}): Warming => {
  const seats = cones.map((cone, i) => coneSeat(cone, `${i}`));
  return {
    grids: newGrids(seats, SIZE),
    coarse: newGrids(seats, { rows: 4, columns: 24 }),
    stand: { load: loadAt(0, -100, 0, 0), position: 0 },
    omega: 150,
    oil: oilOfGrade(10),
    journal: JOURNAL,
    bush: BUSH,
    ambient: 20,
    ...over,
  };
};
const SLEEVE = straight(0.011, 0.02, 4e-6);

function steadyOf(setup: Warming) {
  const state = steadyState(setup);
  if (state.status !== 'solved') throw new Error(state.status);
  return state;
}

describe('a steady point', () => {
  it('tells its state: films, temperatures and power are those of the steady state', () => {
    const setup = warming([SLEEVE, { ...SLEEVE, from: -0.06, to: -0.04, film: 5e-6 }]);
    const state = steadyOf(setup);
    const { point } = steadyPoint(7, setup, { film: 0 });
    expect(point).toEqual({
      at: 7,
      condition: 'works',
      journal: expect.closeTo(state.journal, 9),
      bush: expect.closeTo(state.bush, 9),
      leastFilm: expect.closeTo(Math.min(...state.seats.map(({ least }) => least.film)), 15),
      power: expect.closeTo(state.total.power, 9),
    });
  });

  it('a neighbour that leads nowhere is left: the search begins afresh', () => {
    const setup = warming([SLEEVE]);
    const state = steadyOf(setup);
    // So hot a journal has outgrown its bush.
    const misleading = { ...state, journal: 900 };
    expect(steadyState(setup, misleading).status).toBe('contact');
    const { point } = steadyPoint(1, setup, { film: 0 }, misleading);
    expect(point.condition).toBe('works');
    expect(point.journal!).toBeCloseTo(state.journal, 6);
  });

  it('nothing is known where there is no steady state', () => {
    const shut = { condition: 'seizes', journal: null, bush: null, leastFilm: null, power: null };
    expect([...overCuts((extra) => withClearance(warming([SLEEVE]), extra), [-5e-6], { film: 0 })]).toEqual([
      { at: -5e-6, ...shut, coldFilm: null, coldPower: null },
    ]);
    const spent = { ...warming([SLEEVE]), effort: { spent: 1, most: 1 } };
    expect([...overSpeeds(spent, [100], { film: 0 })][0]).toMatchObject({ at: 100, condition: 'notConverged' });
  });

  it('the hottest of oil and parts counts against what the oil lasts', () => {
    const conditions = (ambient: number) => {
      const setup = warming([SLEEVE], { ambient });
      const state = steadyOf(setup);
      return [
        Math.max(...state.oil, state.journal, state.bush) > OIL_LASTS,
        steadyPoint(1, setup, { film: 0 }).point.condition,
      ];
    };
    const rises = steadyOf(warming([SLEEVE], { ambient: 88 }));
    const above = Math.max(...rises.oil) - 88;
    expect(above).toBeGreaterThan(0.5);
    expect(conditions(OIL_LASTS - 1.2 * above)).toEqual([false, 'works']);
    expect(conditions(OIL_LASTS - 0.5 * above)).toEqual([true, 'hot']);
  });
});

describe('calm', () => {
  const rotor = (mass: number) => cylinderRotor(mass, -0.05, 0.05, 0.01);

  it.each([0.1, 3, 300])('is that the least damped motion of the films dies away (%s kg)', (mass) => {
    const setup = warming([SLEEVE], { stand: { load: loadAt(0, -30, 0, 0), position: 0 }, omega: 700 });
    const state = steadyOf(setup);
    // the four motions that the films resist
    const films = summedCoefficients(setup.grids, state.run);
    expect(calm(setup, state, rotor(mass))).toBe(rotorWhirl(rotor(mass), 700, films, true)!.stable);
  });

  it('heavy and hardly loaded it is not, light and loaded it is', () => {
    const setup = warming([SLEEVE], { stand: { load: loadAt(0, -30, 0, 0), position: 0 }, omega: 700 });
    const state = steadyOf(setup);
    expect([calm(setup, state, rotor(0.1)), calm(setup, state, rotor(3000))]).toEqual([true, false]);
    expect(steadyPoint(0, setup, { film: 0, rotor: rotor(0.1) }).point.condition).toBe('works');
    expect(steadyPoint(0, setup, { film: 0, rotor: rotor(3000) }).point.condition).toBe('loose');
  });

  it('what a hand or a stop holds along the axis does not whirl along it', () => {
    // an oil film that would push it out along the axis
    const cones = [shallow];
    for (const stand of [{ pose: at({ x: 5e-7 }) }, { load: loadAt(0, -40, 0, -0.015), position: 0, adjusted: true }]) {
      const setup = warming(cones, { stand });
      const state = steadyOf(setup);
      const films = summedCoefficients(setup.grids, state.run);
      expect(state.stop !== 0 || 'pose' in stand).toBe(true);
      for (const mass of [0.5, 5000])
        expect(calm(setup, state, rotor(mass))).toBe(rotorWhirl(rotor(mass), setup.omega, films, true)!.stable);
    }
  });
});

describe('the stretch that works', () => {
  const points = (conditions: string) =>
    [...conditions].map(
      (one, x): SteadyPoint => ({
        at: x,
        condition: one === 'w' ? 'works' : 'thin',
        journal: null,
        bush: null,
        leastFilm: null,
        power: null,
      }),
    );
  const judge = () => 'thin' as const;

  it('of two as near, the lower one', () => {
    expect(workingStretch(points('wttw'), 1.5, judge)).toMatchObject({ from: 0, to: 0 });
    expect(workingStretch(points('wttw'), 1.6, judge)).toMatchObject({ from: 3, to: 3 });
  });

  it('reaches over every point that works beside it, and no further', () => {
    expect(workingStretch(points('twwwt'), 2, judge)).toEqual({ from: 1, to: 3, openBelow: false, openAbove: false });
    expect(workingStretch(points('www'), 0, judge)).toEqual({ from: 0, to: 2, openBelow: true, openAbove: true });
  });
});

describe('a warm film that no position gives', () => {
  it.each([1, -1] as const)('what is in the way, and a film met that is next to it (%s)', (side) => {
    const cones = side === 1 ? [shallow, steep] : [turned(shallow), turned(steep)];
    const setup = warming(cones, {
      stand: { load: loadAt(0, -20 * side, -5 * side, 0.01 * side), position: 0, adjusted: true },
      omega: side * 150,
    });
    const found = coldPositionFor(setup, 0, 5e-7);
    if (found.status !== 'notFound') throw new Error(found.status);
    expect(found.inTheWay).toEqual({ seat: 1, shut: true });
    // The steep film shuts first, cold; the shallow one has then what the steep one leaves, and grows by a micrometre.
    const shutAt = -2.5e-6 / Math.sin(steep.halfAngle);
    const cold = leastFilmIn(coneSeat(shallow), at({ z: shutAt }), { omega: 0, viscosity: [], growth: [0] }, 0)!.film;
    expect(found.nearest!).toBeGreaterThan(cold);
    expect(found.nearest!).toBeLessThan(cold + 3e-6);
  });

  it('metal under the load is in the way where the seat itself is open', () => {
    const setup = warming([shallow], {
      stand: { load: loadAt(0, -1e6, 0, -0.015), position: 0, adjusted: true },
      omega: 2,
    });
    const found = coldPositionFor(setup, 0, 3e-6);
    expect(found).toEqual({ status: 'notFound', nearest: null, inTheWay: { seat: 0, shut: false } });
  });

  it('found to a nanometre, and the state told is the one it warms to', () => {
    const setup = warming([shallow], { stand: { pose: at({ x: 2e-7, z: 3e-5 }) } });
    const found = coldPositionFor(setup, 0, 4e-6);
    if (found.status !== 'found') throw new Error(found.status);
    expect(found.state.pose).toEqual(at({ x: 2e-7, z: found.position }));
    const again = warmFilm(
      { ...setup, stand: { pose: found.state.pose } },
      found.state.journal,
      found.state.bush,
      null,
    );
    if (again.status !== 'solved') throw new Error(again.status);
    // as drawn the journal stands aside by 0.2 µm
    expect(again.seats[0]!.least.film + 2e-7 * Math.cos(shallow.halfAngle)).toBeCloseTo(4e-6, 8);
  });
});
