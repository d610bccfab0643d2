/**
 * Readings know on which side of a cut they were taken: what was wrong before is not wrong any more, and no shape is
 * ground back on paper.
 */

import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readNow, withReadings } from '../../../src/app/screens/measure/entries.ts';
import type { Design } from '../../../src/design/definition.ts';
import { parseDesign } from '../../../src/design/parse.ts';
import { validateDesign } from '../../../src/design/validate.ts';
import { designWithPlanDone } from '../../../src/report/cut/planDone.ts';
import { cutSection } from '../../../src/report/cut/section.ts';
import { fitSection } from '../../../src/report/fit/section.ts';
import { readingsFromCsv, readingsToCsv } from '../../../src/report/measure/csv.ts';
import { farOffText } from '../../../src/report/measure/farOff.ts';
import type { Reading } from '../../../src/report/measure/kinds.ts';
import { predictedReading } from '../../../src/report/measure/predictedReading.ts';
import { measureSection } from '../../../src/report/measure/section.ts';
import { measureVerdict } from '../../../src/report/measure/verdict.ts';
import { designWithTold, fitMeasured } from '../../../src/report/measure/withMeasured.ts';

const parsed = parseDesign(
  readFileSync(new URL('../../regressions/measured-before-the-cut.conepair.json', import.meta.url), 'utf8'),
);
if (!parsed.ok) throw new Error(JSON.stringify(parsed.errors));
const job = parsed.design;

/** The job cut along its old lines, which its readings still tell of. */
const following: Design = {
  ...job,
  cut: { ...job.cut!, allow: job.cut!.allow.map(({ renew: _, ...entry }) => entry) },
};
const measured = (design: Design) => designWithTold(design, measureSection(design)!);
const done = (design: Design) => designWithPlanDone(design, cutSection(design)!);
const verdictOf = (design: Design) => {
  const { headline, sentences } = measureVerdict(
    design,
    measureSection(design)!,
    fitMeasured(design, measureSection(design)!),
    'inch',
  );
  return [headline, ...sentences].join(' ');
};
const relationOf = (design: Design) => measureSection(design)!.consequences.relation!;

describe('after the plan was taken as done', () => {
  test('the measured relation is that of the parts as they are now', () => {
    const before = measured(following);
    expect(Math.abs(relationOf(before).value)).toBeGreaterThan(0.07);
    const now = done(before);
    expect(validateDesign(now).ok).toBe(true);
    expect(Math.abs(relationOf(now).value)).toBeLessThan(0.0005);
    expect(verdictOf(now)).not.toMatch(/beyond/);
    // The steep journal is as sure as its readings and the stock together: the trial's and the plan's.
    const sigma = (design: Design) =>
      measureSection(design)!.surfaces.find(({ seat, part }) => seat === 'steep' && part === 'journal')!.sigma
        .diameter!;
    const cosine = Math.cos((before.seats[1]!.journal.halfAngle * Math.PI) / 180);
    const stock = now.cut!.trials!.flatMap(({ taken = [] }) =>
      taken.map(({ normal, sigma: stated }) => stated ?? Math.hypot(normal / 20, 0.0025 * cosine)),
    );
    expect(sigma(now)).toBeCloseTo(Math.hypot(sigma(before), (2 * Math.hypot(...stock)) / cosine), 6);
  });

  test('using the measured shapes changes no cut surface, and no film by a hundredth of a micrometre', () => {
    const now = done(measured(following));
    const used = measured(now);
    for (const i of [0, 1])
      expect(Math.abs(used.seats[i]!.journal.diameter - now.seats[i]!.journal.diameter)).toBeLessThan(1e-9);
    fitSection(used).seats.forEach(({ leastFilm }, i) => {
      expect(Math.abs(leastFilm! - fitSection(now).seats[i]!.leastFilm!)).toBeLessThan(1e-5);
    });
    // Without knowing when they were taken the readings would put all of the stock on again.
    const { trials: _, ...cut } = now.cut!;
    expect(measured({ ...now, cut }).seats[1]!.journal.diameter - now.seats[1]!.journal.diameter).toBeGreaterThan(0.1);
  });

  test('a surface cut to a new line is told by no old reading, and the verdict says why', () => {
    const now = done(measured(job));
    const measure = measureSection(now)!;
    expect(measure.overtaken.map(({ index }) => index)).toEqual([4, 5, 6]);
    expect(measure.surfaces.some(({ seat, part }) => seat === 'steep' && part === 'journal')).toBe(false);
    expect(measure.readings.map(({ index }) => index)).toEqual(
      job.readings!.flatMap((_, i) => (i >= 4 && i <= 6 ? [] : [i])),
    );
    expect(verdictOf(now)).toMatch(
      /3 readings are of the old line of the steep journal, cut to a new one since: kept, and not used\. Nothing was read of the steep journal/,
    );
    expect(farOffText(now, { ...now.readings![4]!, value: 35 } as Reading, 'metric')).toBeNull();
    // Read again, it is told.
    const [over] = now.readings!.slice(4, 5) as [Reading];
    const again = withReadings(
      now,
      [0, 1].map(
        (k) =>
          ({
            ...now.readings![4 + k]!,
            after: 2,
            value: predictedReading(now, { ...now.readings![4 + k]!, after: 2 } as Reading).value! + 0.001,
          }) as Reading,
      ),
    );
    expect(over.kind).toBe('overRolls');
    const told = measureSection(again)!.surfaces.find(({ seat, part }) => seat === 'steep' && part === 'journal')!;
    expect(told.diameter - now.seats[1]!.journal.diameter).toBeCloseTo(0.001, 5);
  });

  test('only old readings of a new line: nothing is told, and nothing is called impossible', () => {
    const now = done(measured({ ...job, readings: job.readings!.slice(4, 7) }));
    expect(measureSection(now)).toMatchObject({
      surfaces: [],
      readings: [],
      impossible: [],
      overtaken: [{ index: 0 }, { index: 1 }, { index: 2 }],
    });
    expect(verdictOf(now)).toMatch(/None of the readings can be used\. 3 readings are of the old line/);
  });
});

describe('between trials', () => {
  const shapes = measured(following);
  const reading = shapes.readings!.find((r) => r.kind === 'diameter' && r.part === 'journal')! as Extract<
    Reading,
    { kind: 'diameter' }
  >;
  const taken = { seat: 'rear', part: 'journal' as const, normal: 0.01, sigma: 0.001 };
  const tried: Design = { ...shapes, cut: { ...shapes.cut!, trials: [{ taken: [taken] }] } };

  test('what is read now is read after all trials so far, and is expected with their stock off', () => {
    const now = readNow(tried, reading);
    expect(now.after).toBe(1);
    expect(readNow({ ...shapes, cut: { allow: [] } }, { ...reading, after: 7 })).not.toHaveProperty('after');
    const cos = Math.cos((tried.seats[2]!.journal.halfAngle * Math.PI) / 180);
    expect(predictedReading(tried, now).value! - predictedReading(tried, reading).value!).toBeCloseTo(-0.02 / cos, 9);
  });

  test('the shape sought is that of the design, before the stock that is not in it', () => {
    const read = withReadings(tried, [
      { ...readNow(tried, reading), value: predictedReading(tried, readNow(tried, reading)).value! },
    ]);
    expect(measured(read).seats[2]!.journal.diameter).toBeCloseTo(measured(tried).seats[2]!.journal.diameter, 5);
  });

  test('of a new line that the design does not have yet a reading tells nothing', () => {
    const renewing: Design = {
      ...tried,
      cut: { ...tried.cut!, allow: [{ seat: 'rear', part: 'journal', renew: true }] },
    };
    const measure = measureSection(withReadings(renewing, [readNow(renewing, reading)]))!;
    expect(measure.overtaken).toEqual([{ index: job.readings!.length, surfaces: [{ seat: 'rear', part: 'journal' }] }]);
  });

  test('in a spreadsheet they keep their place in the history; rows that do not speak of it were read now', () => {
    const readings: Reading[] = [reading, { ...reading, after: 1 }];
    const back = readingsFromCsv(readingsToCsv(readings), tried);
    expect(back.ok && back.readings.map(({ after }) => after)).toEqual([undefined, 1]);
    const bare = readingsFromCsv('kind,seat,part,value,sigma,station\ndiameter,rear,journal,14.28,0.001,-100', tried);
    expect(bare.ok && bare.readings[0]!.after).toBe(1);
    const wrong = readingsFromCsv(
      'kind,seat,part,value,sigma,station,after\ndiameter,rear,journal,14.28,0.001,-100,soon',
      tried,
    );
    expect(wrong.ok ? [] : wrong.errors).toEqual([
      { row: 2, column: 'after', message: 'found "soon"; type a whole number of trials' },
    ]);
  });
});

test('what cannot be is refused, by its place', () => {
  const errorsOf = (design: unknown) => {
    const result = validateDesign(design);
    return result.ok ? [] : result.errors;
  };
  expect(errorsOf({ ...job, readings: [{ ...job.readings![0]!, after: 2 }] })).toEqual([
    { path: 'readings[0].after', message: 'found 2, but only 1 trial is written down' },
  ]);
  const { cut: _, ...bare } = job;
  expect(errorsOf({ ...bare, readings: [{ ...job.readings![0]!, after: 1 }] })).toEqual([
    { path: 'readings[0].after', message: 'found 1, but no trial is written down' },
  ]);
  expect(errorsOf({ ...job, cut: { ...job.cut!, trials: [{ note: 'open' }, { inShapes: true }] } })).toEqual([
    {
      path: 'cut.trials[1].inShapes',
      message: 'found true, but an earlier trial is not in the shapes; metal that came off before it is off them too',
    },
  ]);
});

test('trials after one in the shapes keep their number, and count from the shapes', () => {
  const now = done(measured(following));
  const tried: Design = {
    ...now,
    cut: {
      ...now.cut!,
      trials: [...now.cut!.trials!, { standOff: { value: fitSection(now).firstPosition!, sigma: 0.001 } }],
    },
  };
  expect(validateDesign(tried).ok).toBe(true);
  const { trials, remaining } = cutSection(tried)!;
  expect(trials).toHaveLength(1);
  expect(trials![0]!.status).toBe('updated');
  expect(remaining!.steps).toEqual([]);
});
