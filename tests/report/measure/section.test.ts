/**
 * The measure section: its units and places, what it leaves open, what it cannot use, and the shape taken into the
 * design.
 */
import { describe, expect, test } from 'vitest';
import { type Design, reading as readingDefinition } from '../../../src/design/definition.ts';
import { validateDesign } from '../../../src/design/validate.ts';
import { fitSection } from '../../../src/report/fit/section.ts';
import { measureReport } from '../../../src/report/measure/definition.ts';
import type { Reading } from '../../../src/report/measure/kinds.ts';
import { predictedReading } from '../../../src/report/measure/predictedReading.ts';
import { measureSection } from '../../../src/report/measure/section.ts';
import { fromReading, toReading } from '../../../src/report/measure/toReading.ts';
import { designWithMeasured, designWithTold, tellsAnything } from '../../../src/report/measure/withMeasured.ts';
import { solve } from '../../../src/report/report.ts';
import { exactly, keeping, notebookDemo } from './notebooks.ts';

const near = (found: number | null | undefined, wanted: number, within = 1e-9) =>
  expect(Math.abs(found! - wanted), `${found} is not ${wanted}`).toBeLessThan(within);

describe('a whole notebook', () => {
  test('read without error from the parts as drawn, it gives these to 1e-9 mm and degrees', () => {
    const design = exactly(notebookDemo());
    const measure = measureSection(design)!;
    expect(measure.surfaces.map((s) => `${s.seat} ${s.part}`)).toEqual([
      'shallow journal',
      'shallow bush',
      'steep journal',
      'steep bush',
    ]);
    for (const found of measure.surfaces) {
      const drawn = design.seats.find((s) => s.name === found.seat)![found.part];
      near(found.halfAngle, drawn.halfAngle);
      near(found.diameter, drawn.diameter);
    }
    measure.readings.forEach(({ index, fitted, residual }, i) => {
      expect(index).toBe(i);
      near(fitted, design.readings![i]!.value);
      near(residual, 0);
    });
    near(measure.chiSquare, 0);
    expect(measure.settled).toBe(true);
  });

  test('is as its definition says, survives JSON, and leaves the design as it was', () => {
    for (const design of [
      notebookDemo(),
      keeping(notebookDemo(), (_, i) => i === 0),
      keeping(notebookDemo(), (r) => r.kind === 'standOff' || r.kind === 'shake'),
    ]) {
      const before = structuredClone(design);
      const measure = measureSection(design)!;
      expect(measureReport.safeParse(measure).error?.issues ?? []).toEqual([]);
      expect(JSON.parse(JSON.stringify(measure))).toEqual(measure);
      expect(design).toEqual(before);
    }
  });

  test('residual is value less fitted; normalised is it over its own deviation', () => {
    const design = notebookDemo();
    const measure = measureSection(design)!;
    for (const { index, fitted, residual, normalised, leverage } of measure.readings) {
      const { value, sigma } = design.readings![index]!;
      near(residual, value - fitted, 1e-12);
      near(normalised, residual / sigma / Math.sqrt(1 - leverage), 1e-9);
    }
    near(
      measure.chiSquare,
      measure.readings.reduce((sum, { index, residual }) => sum + (residual / design.readings![index]!.sigma) ** 2, 0),
      1e-9,
    );
    near(
      measure.readings.reduce((sum, r) => sum + r.leverage, 0),
      8,
      1e-6,
    );
  });

  test('uncertainties are in degrees and mm on diameter', () => {
    // two diameters of 1 µm, 20 mm apart: u(a) = √2·1 µm/(2·20 mm)·cos²a; the diameter at the one station is that
    // reading
    const on = { kind: 'diameter', seat: 'shallow', part: 'journal', sigma: 0.001 } as const;
    const design = notebookDemo((d) => ({
      ...d,
      readings: [
        { ...on, station: 0, value: 18 },
        { ...on, station: -20, value: 18 - 40 * Math.tan(Math.PI / 60) },
      ],
    }));
    const [journal] = measureSection(design)!.surfaces;
    near(journal!.sigma.diameter, 0.001);
    near(journal!.sigma.halfAngle, (((Math.SQRT2 * 0.001) / 40) * Math.cos(Math.PI / 60) ** 2 * 180) / Math.PI, 1e-12);
    near(journal!.correlation, Math.SQRT1_2, 1e-9);
  });

  test('correlations: ones along the middle, alike both ways, those of a surface as it tells them, none where a number is open', () => {
    const { correlations, surfaces } = measureSection(notebookDemo())!;
    const { numbers, matrix } = correlations;
    expect(numbers).toHaveLength(8);
    matrix.forEach((row, a) => {
      near(row[a], 1);
      row.forEach((value, b) => {
        near(value, matrix[b]![a]!);
        expect(Math.abs(value!)).toBeLessThanOrEqual(1 + 1e-12);
      });
    });
    for (const { seat, part, correlation } of surfaces) {
      const place = (of: string) => numbers.findIndex((n) => n.seat === seat && n.part === part && n.of === of);
      near(matrix[place('halfAngle')]![place('diameter')], correlation!);
    }
    expect(measureSection(keeping(notebookDemo(), (_, i) => i === 4))!.correlations.matrix.flat()).toEqual([
      null,
      null,
      null,
      null,
    ]);
  });

  test('stands in the report only where there are readings', () => {
    expect(solve(notebookDemo(), 'x', ['measure']).measure?.readings).toHaveLength(16);
    expect(measureSection({ ...notebookDemo(), readings: [] })).toBeUndefined();
    const { readings: _, ...without } = notebookDemo();
    expect('measure' in solve(without, 'x')).toBe(false);
  });

  test('lobes are felt in a shake', () => {
    const design = notebookDemo();
    const shake = design.readings!.find((r) => r.kind === 'shake')!;
    const lobed: Design = {
      ...design,
      seats: design.seats.map((seat) => ({
        ...seat,
        journal: { ...seat.journal, lobes: [{ count: 2, amplitude: 0.001, phase: 90 }] },
      })),
    };
    expect(Math.abs(predictedReading(lobed, shake).value! - predictedReading(design, shake).value!)).toBeGreaterThan(
      0.0005,
    );
  });

  test('straightness gives the profile, in the report and in the design', () => {
    const on = { kind: 'straightness', seat: 'shallow', part: 'bush', sigma: 0.0003 } as const;
    const design = notebookDemo((d) => ({
      ...exactly(d),
      readings: [...exactly(d).readings!, { ...on, station: -10, value: 0.002 }, { ...on, station: -5, value: -0.001 }],
    }));
    const measure = measureSection(design)!;
    const bush = measure.surfaces.find((s) => s.seat === 'shallow' && s.part === 'bush')!;
    expect(bush.profile!.map((p) => p.station)).toEqual([-10, -5]);
    expect(bush.profile!.every((p) => p.sigma !== null && p.sigma > 0 && p.sigma <= 0.0003)).toBe(true);
    const taken = designWithMeasured(design, measure).seats[0]!.bush;
    expect(taken.profile).toEqual([
      [-21, 0],
      [-10, bush.profile![0]!.deviation],
      [-5, bush.profile![1]!.deviation],
      [-0.5, 0],
    ]);
  });
});

describe('what the readings leave open', () => {
  test('values stay as drawn, sigma is null, and a reading that would settle it is named', () => {
    const design = keeping(notebookDemo(), (_, i) => i === 4);
    const { surfaces, undetermined, freedom, readings } = measureSection(design)!;
    expect(surfaces).toHaveLength(1);
    expect(surfaces[0]).toMatchObject({
      seat: 'shallow',
      part: 'bush',
      halfAngle: 3,
      sigma: { halfAngle: null, diameter: null },
      correlation: null,
    });
    expect(freedom).toBe(0);
    expect(readings[0]!.normalised).toBe(0);
    expect(undetermined.map(({ of, held }) => [of, held])).toEqual([
      ['diameter', false],
      ['halfAngle', true],
    ]);
    for (const { next } of undetermined) {
      expect(next!.sigma).toBeGreaterThan(0);
      expect(readingDefinition.safeParse(next!.reading).success).toBe(true);
      const after = measureSection({ ...design, readings: [...design.readings!, next!.reading] })!;
      expect(after.undetermined).toEqual([]);
    }
  });

  test('is not taken into the design: what is told is, what is open stays as drawn', () => {
    const ball = keeping(notebookDemo(), (_, i) => i === 4);
    expect(designWithTold(ball, measureSection(ball)!)).toEqual(ball);
    expect(tellsAnything(measureSection(ball)!)).toBe(false);
    // A sine bar tells a half angle and no diameter.
    const sine = notebookDemo((d) => ({ ...d, readings: [{ ...d.readings![7]!, value: 0.004 }] }));
    const measure = measureSection(sine)!;
    const taken = designWithTold(sine, measure).seats[0]!.bush;
    expect(tellsAnything(measure)).toBe(true);
    expect(taken.diameter).toBe(sine.seats[0]!.bush.diameter);
    expect(taken.halfAngle).toBe(measure.surfaces[0]!.halfAngle);
    expect(taken.halfAngle).not.toBe(sine.seats[0]!.bush.halfAngle);
    const whole = notebookDemo();
    expect(designWithTold(whole, measureSection(whole)!)).toEqual(designWithMeasured(whole, measureSection(whole)!));
  });

  test('a prior of the design file settles it', () => {
    const design: Design = {
      ...keeping(notebookDemo(), (_, i) => i === 4),
      priors: [{ seat: 'shallow', part: 'bush', of: 'halfAngle', sigma: 0.01 }],
    };
    expect(validateDesign(design).ok).toBe(true);
    const { undetermined, surfaces } = measureSection(design)!;
    expect(undetermined).toEqual([]);
    near(surfaces[0]!.sigma.halfAngle, 0.01, 1e-12);
    const wrong = validateDesign({ ...design, priors: [{ seat: 'nose', part: 'bush', of: 'halfAngle', sigma: 0.01 }] });
    expect(wrong.ok ? [] : wrong.errors.map((e) => e.path)).toEqual(['priors[0].seat']);
  });

  test('a relation that leans on an unread surface has a value as drawn, and no uncertainty', () => {
    const { consequences, next } = measureSection(keeping(notebookDemo(), (r) => 'seat' in r && r.seat === 'shallow'))!;
    expect(consequences.relation).toMatchObject({ sigma: null, interval: null });
    expect(consequences.relation!.asDrawn.map((s) => `${s.seat} ${s.part}`).sort()).toEqual([
      'steep bush',
      'steep journal',
    ]);
    expect(consequences.films.shallow!.sigma).toBeGreaterThan(0);
    expect(consequences.first).toBeNull();
    expect(next).toMatchObject({ quantity: 'relation', sigma: null });
    expect(next!.suggestions.length).toBeGreaterThan(0);
  });

  test('what follows is what the fit of the measured design tells', () => {
    const design = notebookDemo();
    const measure = measureSection(design)!;
    const fit = fitSection(designWithMeasured(design, measure));
    near(measure.consequences.relation!.value, fit.relation!.error, 1e-12);
    near(measure.consequences.firstPosition!.value, fit.firstPosition!, 1e-12);
    for (const seat of fit.seats) {
      near(measure.consequences.films[seat.name]!.value, seat.leastFilm!, 1e-12);
      near(measure.consequences.seatPositions[seat.name]!.value, seat.seatPosition!, 1e-12);
    }
  });
});

describe('readings that cannot be', () => {
  test('are named with why, the others are used', () => {
    const design = notebookDemo((d) => ({
      ...d,
      readings: [
        { kind: 'ballDepth', seat: 'shallow', part: 'bush', ball: 5, face: 0, value: 3, sigma: 0.001 },
        ...d.readings!,
      ],
    }));
    const measure = measureSection(design)!;
    expect(measure.impossible).toHaveLength(1);
    expect(measure.impossible[0]).toMatchObject({ index: 0, what: 'falls' });
    near(measure.impossible[0]!.lengths!.ball, 5);
    expect(measure.impossible[0]!.message).toMatch(
      /ball of 5 mm is too small: it falls through the bush, which is 15\.8\d+ mm/,
    );
    expect(measure.readings.map((r) => r.index)).toEqual(notebookDemo().readings!.map((_, i) => i + 1));
  });

  test('alone: an empty section that says so', () => {
    const design = notebookDemo((d) => ({
      ...d,
      readings: [
        { kind: 'sineRise', seat: 'steep', part: 'bush', bar: 100, stack: 120, travel: 2, value: 0, sigma: 0.001 },
      ],
    }));
    const measure = measureSection(design)!;
    expect(measure).toMatchObject({ surfaces: [], readings: [], chiSquare: 0, freedom: 0, next: null });
    expect(measure.impossible[0]).toMatchObject({
      what: 'stackBeyondBar',
      lengths: { stack: expect.closeTo(120, 9), bar: expect.closeTo(100, 9) },
    });
    expect(measureReport.safeParse(measure).success).toBe(true);
  });

  test('names of seats and ends are told', () => {
    const fault = (reading: Reading) => predictedReading(notebookDemo(), reading, 7).fault;
    expect(
      fault({ kind: 'overRolls', seat: 'shallow', part: 'bush', roll: 4, station: -5, value: 0, sigma: 1 }),
    ).toMatchObject({ index: 7, what: 'wrongPart', part: 'bush' });
    expect(
      fault({ kind: 'overRolls', seat: 'shallow', part: 'journal', roll: 6, station: -0.9, value: 0, sigma: 1 }),
    ).toMatchObject({ what: 'otherSeat', seat: 'steep' });
    expect(
      fault({ kind: 'ballDepth', seat: 'shallow', part: 'bush', ball: 15.815, face: 0, value: 0, sigma: 1 }),
    ).toMatchObject({ what: 'edge', end: 'small' });
    expect(fault({ kind: 'shake', indicator: 0, position: -0.02, direction: 0, value: 0, sigma: 1 })).toMatchObject({
      what: 'interferes',
    });
  });
});

test('readings go to the engine and come back the same', () => {
  const design = notebookDemo();
  for (const reading of [
    ...design.readings!,
    { kind: 'shake', indicator: 12.7, position: -0.0254, direction: 210, value: 0.0123, sigma: 0.0005 } as const,
  ]) {
    const back = fromReading(design, toReading(design, reading));
    expect(Object.keys(back).sort()).toEqual(Object.keys(reading).sort());
    for (const [key, value] of Object.entries(reading)) {
      const found = (back as Record<string, unknown>)[key];
      if (typeof value === 'number') near(found as number, value, 1e-9);
      else expect(found).toBe(value);
    }
  }
});
