/** The Run screen's own pieces: lines of equal value, colours, the skin, sweeps, edits, the scenario. */
import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { stretchesOf } from '../../../../src/app/charts/conditions.tsx';
import type { Drawn } from '../../../../src/app/pictures/drawn.ts';
import { luminance } from '../../../../src/app/pictures/filmColour.ts';
import { leastFilm } from '../../../../src/app/pictures/solid/filmGeometry.ts';
import { contour } from '../../../../src/app/screens/run/contours.ts';
import { mapScale } from '../../../../src/app/screens/run/mapScale.ts';
import { plausibleRun } from '../../../../src/app/screens/run/plausibleRun.ts';
import { pressureColour } from '../../../../src/app/screens/run/pressureColour.ts';
import {
  isPosed,
  oilKind,
  standKind,
  withFurtherLoad,
  withGroove,
  withOilKind,
  withoutEntry,
  withStand,
} from '../../../../src/app/screens/run/runEdits.ts';
import { leaningAt, runningPair, suiting } from '../../../../src/app/screens/run/runningPair.ts';
import { extremeOf, groovesOf, stationsOf } from '../../../../src/app/screens/run/seatMarks.ts';
import { skinOf } from '../../../../src/app/screens/run/skinGeometry.ts';
import { clearancesOf, type Running, speedsOf } from '../../../../src/app/screens/run/sweeps.ts';
import type { Design } from '../../../../src/design/definition.ts';
import { MATERIALS, USUAL } from '../../../../src/design/materials.ts';
import { figures, measureText } from '../../../../src/design/measures.ts';
import { parseDesign } from '../../../../src/design/parse.ts';
import { validateDesign } from '../../../../src/design/validate.ts';
import { oilOfGrade } from '../../../../src/engine/film/oil.ts';
import { followFields, type RunFields, warmFields } from '../../../../src/report/film/fields.ts';
import { speedWork } from '../../../../src/report/film/limits.ts';
import { solve } from '../../../../src/report/report.ts';

function demo(name: string): Running {
  const parsed = parseDesign(
    readFileSync(new URL(`../../../../assets/designs/${name}.conepair.json`, import.meta.url), 'utf8'),
  );
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.errors));
  return parsed.design as Running;
}
const valid = (design: Design) => {
  const result = validateDesign(design);
  return result.ok ? [] : result.errors;
};

describe('lines of equal value', () => {
  test('of a plane lie where the plane has that value', () => {
    const [rows, columns] = [7, 12];
    const values = Float64Array.from({ length: rows * columns }, (_, k) => k % rows);
    const pieces = contour(values, rows, columns, 2.25);
    expect(pieces.length).toBe(columns);
    for (const [, y0, , y1] of pieces) expect([y0, y1]).toEqual([2.25, 2.25]);
  });

  test('have no loose ends: every end meets another, but at the first and last row', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 48, maxLength: 48 }), (values) => {
        const [rows, columns] = [6, 8];
        const ends = new Map<string, number>();
        for (const [x0, y0, x1, y1] of contour(values, rows, columns, 0)) {
          for (const [x, y] of [
            [x0, y0],
            [x1, y1],
          ] as const) {
            const key = `${(x % columns).toFixed(9)} ${y.toFixed(9)}`;
            ends.set(key, (ends.get(key) ?? 0) + 1);
          }
        }
        for (const [key, count] of ends) {
          const y = Number(key.split(' ')[1]);
          if (y > 1e-9 && y < rows - 1 - 1e-9) expect(count % 2, key).toBe(0);
        }
      }),
      { seed: 7, numRuns: 200 },
    );
  });
});

describe('the colour of pressure', () => {
  test('darkens all the way, so that it reads in black and white', () => {
    const shades = Array.from({ length: 33 }, (_, i) => luminance(pressureColour(i, 32)));
    for (let i = 1; i < shades.length; i++) expect(shades[i]!).toBeLessThan(shades[i - 1]!);
    expect(shades[0]!).toBeGreaterThan(0.85);
    expect(shades[32]!).toBeLessThan(0.05);
  });

  test('one scale for all seats, its end a round number in the unit shown', () => {
    const fields = followFields({ rows: 8, columns: 32 }).fields(demo('correct'))!;
    const greatest = Math.max(...fields.seats.map((seat) => seat.peakPressure));
    const { max, levels } = mapScale(fields, 'pressure', 'metric');
    expect(max).toBeGreaterThanOrEqual(greatest);
    expect(max).toBeLessThan(2.6 * greatest);
    expect(levels.every((level) => level > 0 && level < max)).toBe(true);
    const inch = mapScale(fields, 'pressure', 'inch').max / 0.00689475729;
    expect(inch).toBeCloseTo(Number(inch.toPrecision(2)), 4);
  });

  test('one psi is 6894.757 Pa', () => {
    expect(measureText('pressure', 6.894757293168e-3 * 100, 'inch')).toBe('100 psi');
    expect(measureText('pressure', 0.8516, 'metric')).toBe('0.852 MPa');
    expect(figures(-0.00012345)).toBe('−0.000123');
  });
});

describe('the unrolled seat', () => {
  const design = demo('correct');
  const fields = followFields({ rows: 16, columns: 64 }).fields(design)!;

  test('reaches over the overlap, from end to end', () => {
    fields.seats.forEach((seat, i) => {
      const { bush, journal } = design.seats[i]!;
      const { from, to } = stationsOf(seat);
      expect(from).toBeCloseTo(Math.max(bush.from, journal.from + (design.position ?? 0)), 2);
      expect(to).toBeCloseTo(Math.min(bush.to, journal.to + (design.position ?? 0)), 2);
    });
  });

  test('its peak is the report’s', () => {
    for (const seat of fields.seats)
      expect(extremeOf(seat.pressure, seat, 'greatest').value).toBeCloseTo(seat.peakPressure, 5);
  });

  test('a groove is as wide as its arc, wherever its angle is counted from', () => {
    const around = {
      ...design,
      run: { ...design.run, supply: [{ seat: 'shallow', angle: -90, from: -20, to: -5, width: 2, pressure: 0 }] },
    };
    const [groove] = groovesOf(around, fields.seats[0]!);
    const radius = design.seats[0]!.bush.diameter / 2 - 12.5 * Math.tan((3 * Math.PI) / 180);
    expect(groove!.angle).toBe(270);
    expect(groove!.half).toBeCloseTo(((1 / radius) * 180) / Math.PI, 9);
  });

  test('raised as a skin it stands highest at the peak, and nowhere under the metal', () => {
    const frame = { centre: 0, scale: 100, outside: 1.35 * 0.011, overhang: 0, halfLength: 1, halfHeight: 1 };
    const seat = fields.seats[0]!;
    const peak = extremeOf(seat.pressure, seat, 'greatest');
    const { mesh, lines } = skinOf(seat, (3 * Math.PI) / 180, {
      frame,
      layer: 'pressure',
      max: seat.peakPressure,
      colour: (p) => pressureColour(p, seat.peakPressure),
    });
    let best = { radius: 0, angle: 0 };
    for (let k = 0; k < mesh.positions.length; k += 3) {
      const [y, z] = [mesh.positions[k + 1]!, mesh.positions[k + 2]!];
      const radius = Math.hypot(y, z);
      if (radius > best.radius) best = { radius, angle: ((Math.atan2(y, -z) * 180) / Math.PI + 360) % 360 };
      expect(radius).toBeGreaterThan(100 * 1e-3 * Math.min(...seat.radii) * 0.99);
    }
    expect(Math.abs(best.angle - peak.angle)).toBeLessThan(12);
    expect(lines.length % 6).toBe(0);
    expect([...mesh.indices].every((index) => index < mesh.positions.length / 3)).toBe(true);
  });
});

describe('sweeps', () => {
  test('speeds turn the way the spindle turns, with the speed now among them', () => {
    const speeds = speedsOf({ ...demo('correct'), run: { ...demo('correct').run, speed: -800 } });
    expect(speeds.every((speed) => speed < 0)).toBe(true);
    expect(speeds.some((speed) => Math.abs(speed + 800) < 1e-9)).toBe(true);
  });

  test.each(['correct', 'steep-first'])(
    '%s: at the speed it runs at, the sweep finds the steady state of the report',
    { timeout: 60_000 },
    (name) => {
      const design = demo(name);
      const { steady } = solve(design, 'here', ['film']).film!;
      const points = [...speedWork(design, speedsOf(design))];
      const now = points.find(({ at }) => Math.abs(at - design.run.speed) < 1e-6)!;
      expect(now.leastFilm!).toBeCloseTo(steady!.leastFilm, 5);
      expect(now.power! / steady!.power).toBeCloseTo(1, 2);
      // Faster it warms, and never on a thinner film: no jump to another balance in between.
      const warm = points.toReversed().filter(({ condition }) => condition === 'works');
      for (let i = 1; i < warm.length; i++) expect(warm[i]!.leastFilm!).toBeGreaterThan(warm[i - 1]!.leastFilm!);
    },
  );

  test('clearances rise, take no more than the film there is, and hold the design’s own', () => {
    const design = demo('correct');
    const extras = clearancesOf(design);
    const least = Math.min(...solve(design, 'here', ['fit']).fit!.seats.map(({ leastFilm }) => leastFilm!));
    expect(extras).toContain(0);
    expect(extras[0]!).toBeGreaterThan(-least);
    for (let i = 1; i < extras.length; i++) expect(extras[i]!).toBeGreaterThan(extras[i - 1]!);
  });

  test('stretches of one condition meet without a gap', () => {
    const at = (x: number, condition: 'works' | 'thin') => ({
      at: x,
      condition,
      journal: null,
      bush: null,
      leastFilm: null,
      power: null,
      coldPower: null,
    });
    const stretches = stretchesOf([at(100, 'works'), at(200, 'thin'), at(400, 'works')], true, []);
    expect(stretches[0]!.from).toBe(100);
    expect(stretches[2]!.to).toBe(400);
    expect(stretches[0]!.to).toBe(stretches[1]!.from);
    expect(stretches[0]!.to).toBeCloseTo(Math.sqrt(100 * 200), 9);
    // where the end of what works is known, there
    const known = stretchesOf([at(100, 'works'), at(200, 'thin'), at(400, 'works')], true, [100, 187]);
    expect(known.map(({ to }) => to)).toEqual([187, expect.closeTo(Math.sqrt(200 * 400), 9), 400]);
  });
});

type Warm = Parameters<typeof runningPair>[3];
function drawnFor(design: Design, fields: RunFields, angle: number, warm: Warm): Drawn {
  const pair = runningPair(design, fields, angle, warm);
  return leaningAt(pair, suiting(pair, 400));
}

describe('the section of the running pair', () => {
  const leastOf = (drawn: Drawn, seat: number) =>
    Math.min(
      ...Array.from({ length: 180 }, (_, k) => drawn.at!((k * Math.PI) / 90)).flatMap((seats) =>
        seats[seat]!.film.map(({ film }) => 1000 * film),
      ),
    );

  test.each(['correct', 'rear-bearing', 'opposed-cones', 'worn-bell-mouth'])(
    '%s: the films drawn are those solved, the least of all above the axis',
    (name) => {
      const design = demo(name);
      const fields = followFields().fields(design)!;
      const thin = fields.seats.reduce((a, b) => (b.leastFilm < a.leastFilm ? b : a));
      const drawn = drawnFor(design, fields, (thin.leastAngle * Math.PI) / 180, null);
      fields.seats.forEach(({ leastFilm }, i) => {
        expect(Math.abs(leastOf(drawn, i) - leastFilm)).toBeLessThan(3e-6);
      });
      const above = Math.min(
        ...drawn.seats.find((seat) => seat.name === thin.name)!.film.map(({ film }) => 1000 * film),
      );
      expect(Math.abs(above - thin.leastFilm)).toBeLessThan(3e-6);
    },
  );

  test('warm, the films drawn are those of the steady state', () => {
    const design = demo('correct');
    const steady = solve(design, 'here', ['film']).film!.steady!;
    const fields = warmFields(design, steady, { rows: 32, columns: 128 })!;
    const drawn = drawnFor(design, fields, 0, steady);
    fields.seats.forEach(({ leastFilm }, i) => {
      expect(Math.abs(leastOf(drawn, i) - leastFilm)).toBeLessThan(3e-6);
    });
  });
});

describe('the solid picture of the running pair', () => {
  const running = readdirSync(new URL('../../../../assets/designs/', import.meta.url))
    .map((file) => file.split('.')[0]!)
    .filter((name) => demo(name).run);

  test.each(running)('%s: the least film on its labels is that of the solver, turned as it may be', (name) => {
    const design = demo(name);
    const cold = followFields().fields(design)!;
    const { steady } = solve(design, 'here', ['film']).film!;
    const warm = steady && warmFields(design, steady, { rows: 16, columns: 64 });
    for (const [fields, state] of [[cold, null] as const, ...(warm ? [[warm, steady] as const] : [])])
      for (const turn of [Math.PI / 2, 0.3]) {
        const drawn = drawnFor(design, fields, turn, state);
        // One factor does for the section and the solid picture, which are turned otherwise.
        expect(drawn.factor).toBeCloseTo(suiting(runningPair(design, fields, 0, state), 400), 6);
        // mm
        fields.seats.forEach(({ leastFilm: solved }, i) => {
          expect(Math.abs(1000 * leastFilm(drawn, i)! - solved)).toBeLessThan(1e-6);
        });
      }
  });
});

describe('changes of the run', () => {
  const design = demo('correct');

  test('each way to know the oil is valid and keeps the oil about as thick as it was', () => {
    for (const kind of ['measured', 'viscosity', 'grade']) {
      const other = withOilKind(design, kind);
      expect(valid(other)).toEqual([]);
      expect(oilKind(other)).toBe(kind);
      const back = withOilKind(other, 'grade');
      expect(valid(back)).toEqual([]);
      expect(oilOfGrade(back.run!.oil.grade!).viscosity(20) / oilOfGrade(5).viscosity(20)).toBeGreaterThan(0.8);
      expect(oilOfGrade(back.run!.oil.grade!).viscosity(20) / oilOfGrade(5).viscosity(20)).toBeLessThan(1.25);
    }
  });

  test('held by hand, it stands where it was found; carrying a load again, it has one', () => {
    const found = { x: 0.0011, y: -0.0002, z: 0.02, tiltX: 1e-6, tiltY: -2e-6 };
    const held = withStand(design, 'pose', found, null, 'metric');
    expect(valid(held)).toEqual([]);
    expect(isPosed(held.run!)).toBe(true);
    expect(held.run!.pose).toEqual(found);
    const loaded = withStand(held, 'load', null, null, 'metric');
    expect(valid(loaded)).toEqual([]);
    expect(standKind(loaded)).toBe('load');
    expect(loaded.run!.pose).toBeUndefined();
    // the one it had before, where it is known
    const { load } = design.run!;
    expect(withStand(held, 'load', null, { load: load! }, 'metric').run!.load).toEqual(load);
  });

  test('a run with neither a pose nor a load is one held by hand', () => {
    const { load: _, ...rest } = design.run;
    expect(standKind({ ...design, run: rest })).toBe('pose');
  });

  test('a groove and a further load are valid as they are added, and struck out again', () => {
    const bare = withoutEntry(design, 'supply', 0);
    expect(bare.run!.supply).toBeUndefined();
    const grooved = withGroove(withGroove(bare));
    expect(valid(grooved)).toEqual([]);
    expect(withoutEntry(grooved, 'supply', 0).run!.supply!.length).toBe(1);
    const pulled = withFurtherLoad(bare);
    expect(valid(pulled)).toEqual([]);
    expect(withoutEntry(pulled, 'loads', 0)).toEqual(bare);
  });

  test.each([
    'steep-first',
    'shallow-first',
    'half-angle-mismatch',
    'worn-bell-mouth',
    'opposed-cones',
    'rear-bearing',
    'notebook',
  ])('the scenario made for %s is valid and turns', (name) => {
    const { run: _, ...bare } = demo(name);
    const design = { ...bare, run: plausibleRun(bare, 'metric') };
    expect(valid(design)).toEqual([]);
    expect(design.run.speed).toBeGreaterThan(100);
    expect(followFields({ rows: 8, columns: 32 }).fields(design)!.status).toMatch(/^(found|stopped)$/);
  });

  test('what is taken of a part that says nothing is among the materials', () => {
    for (const name of Object.values(USUAL)) expect(MATERIALS.some((material) => material.name === name)).toBe(true);
  });
});
