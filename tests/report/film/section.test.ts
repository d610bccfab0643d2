/** The `film` section: its shape for every outcome, and its numbers in the units of the file. */
import { readFileSync } from 'node:fs';
import { describe, expect, it, vi } from 'vitest';
import type { Design } from '../../../src/design/definition.ts';
import { parseDesign } from '../../../src/design/parse.ts';
import { validateDesign } from '../../../src/design/validate.ts';
import { equilibrium } from '../../../src/engine/film/equilibrium.ts';
import { newGrids, solveFilms } from '../../../src/engine/film/films.ts';
import { COARSE, FINE } from '../../../src/engine/run/running.ts';
import { report as definition } from '../../../src/report/definition.ts';
import { followFields } from '../../../src/report/film/fields.ts';
import { clearanceWork, coldSettings, speedWork } from '../../../src/report/film/limits.ts';
import { neededFilm } from '../../../src/report/film/neededFilm.ts';
import { filmSection } from '../../../src/report/film/section.ts';
import { toRunning } from '../../../src/report/film/toSpindle.ts';
import { solve } from '../../../src/report/report.ts';

type Run = NonNullable<Design['run']>;
type Running = Design & { run: Run };

function demo(name: string, run: Run, change: Partial<Design> = {}): Running {
  const parsed = parseDesign(
    readFileSync(new URL(`../../../assets/designs/${name}.conepair.json`, import.meta.url), 'utf8'),
  );
  if (!parsed.ok) throw new Error(parsed.errors[0]!.message);
  const valid = validateDesign({ ...parsed.design, ...change, run });
  if (!valid.ok) throw new Error(valid.errors[0]!.message);
  return valid.design as Running;
}

// Whole sections with their warm-up: seconds where the machine is busy.
vi.setConfig({ testTimeout: 40_000 });

const OIL = { viscosity: 0.0086 };
/** A short warm-up, so that the tests are not long. */
const heat = { duration: 60 };
const loaded: Run = { speed: 1200, oil: OIL, load: { x: 0, y: -120, z: -40, station: 30 }, heat };

describe('every outcome has the shape of the definition and survives JSON', () => {
  it.each<[string, string, Run, string]>([
    ['a pose held by hand', 'correct', { speed: 1200, oil: OIL, pose: { x: 0.001 }, heat }, 'held'],
    ['nothing given: at home', 'correct', { speed: 1200, oil: { grade: 10, index: 95 }, heat }, 'held'],
    ['a pose found for a load', 'rear-bearing', loaded, 'found'],
    ['cones a stop has to hold', 'correct', loaded, 'stopped'],
    ['a pose that touches', 'correct', { speed: 1200, oil: OIL, pose: { x: 0.003 } }, 'contact'],
    ['a load no film carries', 'correct', { speed: 1200, oil: OIL, load: { z: -40 } }, 'contact'],
    ['out of the bush', 'correct', { speed: 1200, oil: OIL, pose: { z: 90 } }, 'apart'],
    ['no room', 'correct', { speed: 1200, oil: OIL, load: { y: -10 } }, 'noRoom'],
    ['standing still under a load', 'rear-bearing', { ...loaded, speed: 0 }, 'standing'],
    ['standing still, held', 'correct', { speed: 0, oil: OIL, heat }, 'held'],
  ])('%s', (name, file, run, status) => {
    const design = demo(file, run);
    if (status === 'noRoom')
      design.seats = design.seats.map((seat, i) =>
        i > 0
          ? seat
          : {
              ...seat,
              journal: { ...seat.journal, halfAngle: 0, diameter: 22.05 },
              bush: { ...seat.bush, halfAngle: 0 },
            },
      );
    const found = solve(design, `${name}.conepair.json`, ['film']);
    expect(definition.safeParse(found).error?.issues ?? []).toEqual([]);
    expect(JSON.parse(JSON.stringify(found))).toEqual(found);
    expect(found.film!.status).toBe(status);
    expect(found.film!.seats.map((seat) => seat.name)).toEqual(design.seats.map((seat) => seat.name));
  });

  it('is left out of a design that does not run', () => {
    expect(filmSection({ ...demo('correct', loaded), run: undefined })).toBeUndefined();
  });
});

describe('numbers', () => {
  const film = filmSection(demo('rear-bearing', loaded))!;

  it('the oil balances the load, and the seats add up to it', () => {
    expect(film.force!.x).toBeCloseTo(0, 3);
    expect(film.force!.y).toBeCloseTo(120, 3);
    expect(film.force!.z).toBeCloseTo(40, 3);
    // N·mm about the bush datum: -120 N at 30 mm
    expect(film.moment!.x).toBeCloseTo(-3600, 1);
    for (const key of ['x', 'y', 'z'] as const)
      expect(film.seats.reduce((sum, seat) => sum + seat.force![key], 0)).toBeCloseTo(film.force![key], 9);
    expect(film.load).toEqual({ force: { x: 0, y: -120, z: -40 }, moment: { x: expect.closeTo(3600, 9), y: 0 } });
    expect(film.stop).toBe(0);
  });

  it('power is torque times speed: W from N·mm and rev/min', () => {
    for (const { torque, power } of film.seats)
      expect(power!).toBeCloseTo((torque! / 1000) * ((1200 * Math.PI) / 30), 9);
    expect(film.power!).toBeCloseTo((film.torque! / 1000) * ((1200 * Math.PI) / 30), 9);
  });

  it('the stiffness is per mm and rad: a nudge of the pose changes the force so', () => {
    const at = (z: number) =>
      filmSection(
        demo('rear-bearing', {
          speed: 1200,
          oil: OIL,
          heat: { duration: 1 },
          pose: { ...film.pose, z: film.pose.z + z },
        }),
      )!;
    const [plus, minus] = [at(1e-7), at(-1e-7)];
    expect(-(plus.force!.z - minus.force!.z) / 2e-7 / film.stiffness[2]![2]!).toBeCloseTo(1, 3);
    expect(-(plus.moment!.x - minus.moment!.x) / 2e-7 / film.stiffness[3]![2]!).toBeCloseTo(1, 2);
  });

  it('at the nose the spindle gives way by its compliance', () => {
    expect(film.nose!.station).toBe(30);
    expect(film.nose!.stiffness).toHaveLength(3);
    // softer there than between the seats
    expect(film.nose!.stiffness[1]![1]!).toBeLessThan(film.stiffness[1]![1]! + Math.abs(film.stiffness[0]![1]!));
  });

  it('a least film of a pose held is that of the lines', () => {
    const held = filmSection(demo('correct', { speed: 1200, oil: OIL, pose: { x: 0.001, z: 0.01 }, heat }))!;
    const found = held.seats[0]!;
    // 2.5 µm at home, 10 µm noseward opens by sin 3°, 1 µm sideways takes cos 3°
    expect(found.leastFilm!).toBeCloseTo(
      0.0025 * Math.cos(Math.PI / 60) + 0.01 * Math.sin(Math.PI / 60) - 0.001 * Math.cos(Math.PI / 60),
      8,
    );
    expect(found.leastFilmAt!.angle).toBeCloseTo(0, 9);
    expect(held.pose.z).toBe(0.01);
  });

  it.each<[string, string, Run]>([
    ['three seats under a load', 'rear-bearing', loaded],
    ['thin on one side', 'correct', { ...loaded, load: undefined, pose: { x: 0.0021, tiltY: 1e-5 } }],
    [
      'with a groove',
      'correct',
      {
        ...loaded,
        load: undefined,
        pose: { x: 0.001 },
        supply: [{ seat: 'shallow', angle: 40, from: -22, to: -3, width: 2, pressure: 0.1 }],
      },
    ],
  ])('the accuracy stated is met: %s, against a grid twice as fine at the same pose', (_, file, run) => {
    const design = demo(file, run);
    const told = filmSection(design)!;
    const input = toRunning(design);
    const { x, y, z, tiltX, tiltY } = told.pose;
    const finer = solveFilms(
      newGrids(input.seats, { rows: 128, columns: 512 }),
      [x / 1000, y / 1000, z / 1000, tiltX, tiltY],
      input.run,
    );
    if (finer.status !== 'solved') throw new Error(finer.status);
    const greatest = Math.max(
      ...finer.seats.flatMap(({ force }) => [Math.hypot(force[0], force[1]), Math.abs(force[2])]),
    );
    finer.seats.forEach(({ force }, i) => {
      const { force: f } = told.seats[i]!;
      // what is left beyond the finer grid is a quarter of what is left here
      for (const [c, key] of [
        [0, 'x'],
        [1, 'y'],
        [2, 'z'],
      ] as const)
        expect(Math.abs(force[c] - f![key]) / greatest).toBeLessThanOrEqual(2 * told.accuracy!.force + 1e-4);
    });
    expect(Math.abs(finer.total.torque * 1000 - told.torque!) / told.torque!).toBeLessThanOrEqual(
      2 * told.accuracy!.torque + 1e-4,
    );
    expect(told.accuracy!.imbalance).toBeLessThan(1e-7);
  });

  it('warm-up starts at the room’s temperature with the film told above', () => {
    expect(film.warmUp[0]).toMatchObject({ time: 0, journal: 20, bush: 20 });
    expect(film.warmUp[0]!.leastFilm / film.leastFilm!).toBeCloseTo(1, 1);
    expect(film.warmUp[film.warmUp.length - 1]!.time).toBe(60);
    expect(film.warmUpEnd).toBe('time');
  });

  it('steady: what goes to the room and with the oil is the power', () => {
    const { steady } = film;
    expect((steady!.heat.journal + steady!.heat.bush + steady!.heat.oil) / steady!.power).toBeCloseTo(1, 3);
  });

  it('the warm film is that of the fine grid, to three parts in a thousand', () => {
    for (const down of [60, 150]) {
      const design = demo('steep-first', {
        speed: 1200,
        oil: { grade: 10 },
        load: { x: 0, y: -down, z: -20, station: 30 },
      });
      const { steady } = filmSection(design)!;
      const input = toRunning(design);
      const run = {
        ...input.run,
        viscosity: steady!.seats.map(({ viscosity }) => viscosity),
        growth: steady!.seats.map(({ growth }) => growth / 1000),
      };
      const found = equilibrium(newGrids(input.seats, FINE), input.load!, run, {
        position: input.position,
        adjusted: true,
        coarse: newGrids(input.seats, COARSE),
      });
      if (found.status !== 'solved') throw new Error(found.status);
      const fine = 1000 * Math.min(...found.seats.map(({ least }) => least.film));
      expect(Math.abs(steady!.leastFilm - fine)).toBeLessThan(0.003 * fine);
    }
  });

  it('several loads act together', () => {
    const split = filmSection(
      demo('rear-bearing', { ...loaded, load: { y: -120, station: 30 }, loads: [{ z: -30 }, { z: -10 }] }),
    )!;
    expect(split.pose.y).toBeCloseTo(film.pose.y, 9);
    expect(split.load!.force.z).toBe(-40);
  });

  it('a groove feeds the film', () => {
    const fed = filmSection(
      demo('correct', {
        speed: 1200,
        oil: OIL,
        pose: { x: 0.001 },
        supply: [{ seat: 'shallow', angle: 90, from: -22, to: -3, width: 2, pressure: 0.2 }],
        heat,
      }),
    )!;
    expect(fed.seats[0]!.supplied!).toBeGreaterThan(0);
    expect(fed.seats[1]!.supplied).toBe(0);
  });

  it('two measured points of an oil are an oil', () => {
    const by = (oil: Run['oil']) =>
      filmSection(demo('correct', { speed: 1200, oil, ambient: 40, heat: { duration: 1 } }))!.seats[0]!.viscosity!;
    expect(
      by({
        measured: [
          [40, 10],
          [100, 2.637],
        ],
      }),
    ).toBeCloseTo(by({ grade: 10, index: 95 }), 5);
  });

  it('lobes of the journal come round', () => {
    const seats = demo('correct', loaded).seats.map((seat, i) =>
      i > 0 ? seat : { ...seat, journal: { ...seat.journal, lobes: [{ count: 1, amplitude: 0.0005, phase: 180 }] } },
    );
    const turned = filmSection(
      demo('correct', { speed: 1200, oil: OIL, pose: { x: 0.001 }, heat: { duration: 1 } }, { seats }),
    )!;
    expect(turned.leastFilm!).toBeGreaterThan(0.0017);
    expect(turned.turn!.leastFilm!).toBeLessThan(0.00105);
    expect(turned.turn!.greatest!.y).toBeGreaterThan(turned.turn!.least!.y);
  });
});

describe('for pictures and sweeps', () => {
  it('fields follow the design, with the same forces as the report on their grid', () => {
    const follower = followFields({ rows: 16, columns: 64 });
    const first = follower.fields(demo('rear-bearing', loaded))!;
    const second = follower.fields(demo('rear-bearing', { ...loaded, speed: 1250 }))!;
    expect(first.status).toBe('found');
    expect(second.pose.y).not.toBe(first.pose.y);
    for (const seat of first.seats) {
      expect(seat.pressure).toHaveLength(16 * 64);
      expect(Math.max(...seat.pressure)).toBeCloseTo(seat.peakPressure, 4);
      expect(Math.min(...seat.film)).toBeGreaterThanOrEqual(seat.leastFilm - 1e-7);
      expect(seat.stations[0]!).toBeLessThan(seat.stations[15]!);
    }
    expect(first.seats[0]!.stations[0]!).toBeCloseTo(-25 + 24.5 / 32, 6);
    const touching = follower.fields(demo('correct', { speed: 1200, oil: OIL, pose: { x: 0.003 } }))!;
    expect(touching.status).toBe('contact');
    expect(Math.min(...touching.seats[0]!.film)).toBeLessThan(0);
    expect(follower.fields({ ...demo('correct', loaded), run: undefined })).toBeNull();
  });

  const all = <P, R>(work: Generator<P, R>): { points: P[]; result: R } => {
    const points: P[] = [];
    for (;;) {
      const next = work.next();
      if (next.done) return { points, result: next.value };
      points.push(next.value);
    }
  };
  const held = demo('correct', { speed: 1200, oil: { grade: 10 }, pose: { x: 0.0005 } });

  it('speeds', () => {
    const { points, result } = all(speedWork(held, [600, 1200]));
    expect(points.map((point) => point.at)).toEqual([expect.closeTo(600, 9), expect.closeTo(1200, 9)]);
    expect(points[1]!.journal!).toBeGreaterThan(points[0]!.journal!);
    expect(result).toMatchObject({ openBelow: true, openAbove: true });
  });

  it('clearances: too tight seizes', () => {
    const { points, result } = all(clearanceWork(held, [-0.003, -0.001, 0]));
    expect(points[0]!.condition).toBe('seizes');
    expect(points[2]!.condition).toBe('works');
    expect(result!.from).toBeGreaterThan(-0.003);
    expect(result!.from).toBeLessThan(-0.001);
  });

  it('cold settings: each seat with a film wanted', () => {
    const { points } = all(coldSettings(demo('correct', { speed: 300, oil: { grade: 5 }, pose: {} })));
    expect(points.map((point) => point.seat)).toEqual(['shallow', 'steep']);
    expect(points[1]).toMatchObject({ status: 'found' });
    expect(points[1]!.move).toBeCloseTo(points[1]!.position!, 12);
  });

  it('the film needed is three combined roughnesses', () => {
    expect(neededFilm({ speed: 1, oil: OIL, roughness: { journal: 0.0003, bush: 0.0004 } })).toBeCloseTo(0.0015, 12);
  });
});
