/**
 * A sheet after trials: what is left and not the plan before, its feeds and gauges, the parts drawn and the films
 * believed.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { Design } from '../../../src/design/definition.ts';
import { parseDesign } from '../../../src/design/parse.ts';
import { lookSentence } from '../../../src/report/cut/advice.ts';
import { beforeTrial } from '../../../src/report/cut/beforeTrial.ts';
import { cutSection } from '../../../src/report/cut/section.ts';
import { fitSection } from '../../../src/report/fit/section.ts';
import { drawnParts } from '../../../src/report/sheet/drawnParts.ts';
import { leftSteps } from '../../../src/report/sheet/leftSteps.ts';
import { partsAfterTrials } from '../../../src/report/sheet/partsAfterTrials.ts';
import { purposeOf } from '../../../src/report/sheet/purpose.ts';

const read = parseDesign(
  readFileSync(join(import.meta.dirname, '../../../assets/designs/steep-first.conepair.json'), 'utf8'),
);
if (!read.ok) throw new Error('demo');
const steep = read.design;
type Trials = NonNullable<NonNullable<Design['cut']>['trials']>;
const withTrials = (...trials: Trials): Design => ({ ...steep, cut: { ...steep.cut!, trials } });
const first = { standOff: { value: -0.001, sigma: 0.002 } };
const second = {
  taken: [{ seat: 'steep', part: 'journal' as const, normal: 0.04 }],
  standOff: { value: -0.058, sigma: 0.002 },
};
const shaken = { ...second, shake: { value: 0.0097, sigma: 0.0005, indicator: 30, position: -0.03, direction: 0 } };
const tried = withTrials(first, second);

test('after a trial the sheet is of what is left, and no longer the plan', () => {
  const { kind, headline } = purposeOf(tried, cutSection(tried)!, 'metric');
  expect(kind).toBe('left');
  expect(headline).toMatch(
    /^Take nothing yet: you are 5[34]\.\d+ µm short along the axis, most likely 38 \(0 to 1[4-8]\d\) µm off the steep journal/,
  );
  expect(headline).not.toContain('76.53');
});

test('a note of the history alone leaves the plan as it was', () => {
  const noted = withTrials({ note: 'centres trued' });
  expect(purposeOf(noted, cutSection(noted)!, 'metric').kind).toBe('work');
});

test('a trial that cannot be of these parts is no work order', () => {
  const wrong = withTrials({ standOff: { value: 2, sigma: 0.0001 } });
  const { kind, headline } = purposeOf(wrong, cutSection(wrong)!, 'metric');
  expect(kind).toBe('refused');
  expect(headline).toContain('cannot have come from these parts');
});

test('once all of it is off there is nothing to do', () => {
  const cut = cutSection(steep)!;
  const [step] = cut.steps;
  const done = withTrials({
    taken: [{ seat: step!.seat, part: step!.part, normal: step!.normal }],
    standOff: { value: step!.standOff.stop!, sigma: 0.0005 },
  });
  const report = cutSection(done)!;
  const { kind, headline } = purposeOf(done, report, 'metric');
  // A stand-off by itself does not tell that it works: nothing is asked to come off, and it is not called done.
  expect(kind).toBe('parts');
  expect(report.works!.now).toBeLessThan(0.5);
  expect(headline).toMatch(/^By what is known it works [\w ]+: at the same trial read the blue and the shake too\.$/);
  const untried = withTrials({ taken: done.cut!.trials![0]!.taken! });
  expect(purposeOf(untried, cutSection(untried)!, 'metric').headline).toMatch(
    /: assemble it dry and read the stand-off, the blue and the shake\.$/,
  );
  // The same advice on Cut's button and on Odds.
  const after = cutSection(untried)!;
  expect(beforeTrial(after)).toBe('nothing');
  expect(lookSentence(after, 'metric')).toMatch(
    /asks for no more metal; to know whether it is right, assemble it for a trial/,
  );
  // Drawn as they are by now: what came off is off, once.
  const { made } = drawnParts(done, report, 'parts', 'metric');
  expect(made.seats[1]!.journal.diameter).toBeCloseTo(step!.after.diameter, 7);
});

test('the parts believed have just the films and the touch of the report', () => {
  for (const design of [tried, withTrials(first), withTrials(first, shaken)]) {
    const report = cutSection(design)!;
    const after = partsAfterTrials(design, report)!;
    const fit = fitSection(after.believed);
    expect(fit.position).toBe(report.remaining!.position);
    for (const { name, leastFilm } of fit.seats) expect(leastFilm).toBeCloseTo(report.remaining!.films[name]!, 9);
    expect(fit.firstPosition).toBeCloseTo(report.remaining!.standOff.all!, 9);
    expect(fitSection(after.believedNow).firstPosition).toBeCloseTo(report.remaining!.standOff.now!, 9);
  }
});

test('the drawing carries what is safe now, and the whole beside it; diameters after trials have no tolerance', () => {
  const report = cutSection(tried)!;
  const across = 2 / Math.cos(Math.PI / 4);
  const [step] = report.remaining!.steps;
  const drawn = (safe: number) => {
    const steps = [{ ...step!, safe, safeDiameter: -across * safe }];
    return drawnParts(tried, { ...report, remaining: { ...report.remaining!, steps } }, 'left', 'metric');
  };
  for (const [safe, target] of [
    [0, 'none'],
    [0.01, 'part'],
    [step!.normal, 'whole'],
  ] as const) {
    const { made, runs, surfaces, whole, ...rest } = drawn(safe);
    expect(rest.target).toBe(target);
    expect(made.seats[1]!.journal.diameter).toBeCloseTo(24 - across * (0.04 + safe), 9);
    expect(made.seats[1]!.bush).toEqual(steep.seats[1]!.bush);
    // The films are those of the whole all the same.
    expect(runs.position).toBe(report.remaining!.position);
    expect(whole.length).toBe(target === 'whole' ? 0 : 1);
    if (target !== 'whole') expect(whole[0]!.diameter).toBeCloseTo(24 - across * (0.04 + step!.normal), 9);
    expect(surfaces.every(({ diameterTolerance }) => diameterTolerance === null)).toBe(true);
    expect(surfaces.every(({ halfAngleTolerance }) => halfAngleTolerance !== null)).toBe(true);
    const changed = surfaces.find(({ seat, part }) => seat === 'steep' && part === 'journal')!.cut;
    if (target === 'none') expect(changed).toBeNull();
    else expect(changed).toBeCloseTo(-across * safe, 9);
  }
});

test('before any trial too: the whole has its tolerance only where all of it is safe', () => {
  const report = cutSection(steep)!;
  const across = 2 / Math.cos(Math.PI / 4);
  const [step] = report.steps;
  const drawn = (safe: number) => {
    const first = { ...step!, normal: safe, diameter: -across * safe };
    return drawnParts(steep, { ...report, steps: [{ ...step!, safe, first }] }, 'work', 'metric');
  };
  const surfaceOf = ({ surfaces }: ReturnType<typeof drawn>) =>
    surfaces.find(({ seat, part }) => seat === 'steep' && part === 'journal')!;
  for (const safe of [0, 0.02, step!.normal]) {
    const all = drawn(safe);
    expect(all.made.seats[1]!.journal.diameter).toBeCloseTo(24 - across * safe, 7);
    expect(surfaceOf(all).diameterTolerance === null).toBe(safe < step!.normal);
    expect(all.runs.seats[1]!.journal.diameter).toBeCloseTo(step!.after.diameter, 9);
  }
});

test('of what is left the feeds are those of its stock, and a gauge over rolls changes by Δ⌀ and nothing else', () => {
  const report = cutSection(tried)!;
  const [left] = leftSteps(tried, report, partsAfterTrials(tried, report)!);
  const { normal } = report.remaining!.steps[0]!;
  expect(left!.safe).toBeNull();
  expect(left!.all.crossFeed).toBeCloseTo(normal / Math.cos(Math.PI / 4), 12);
  expect(left!.all.axialFeed).toBeCloseTo(normal / Math.sin(Math.PI / 4), 12);
  expect(left!.all.crossDivisions).toBeCloseTo(report.remaining!.steps[0]!.crossDivisions, 9);
  const { count, depth, last } = left!.all.passes;
  expect((count - 1) * depth + last).toBeCloseTo(left!.all.crossFeed, 12);
  // The same gauge as before, so that nothing has to be set up anew.
  const { value: _, ...setUp } = report.steps[0]!.gauges[0]!.reading;
  expect(left!.gauges.map(({ reading }) => reading)).toEqual([{ ...setUp, value: expect.any(Number) }]);
  // Rolls at a fixed station touch elsewhere on the line, but the radius is less by as much all along it.
  expect(left!.gauges[0]!.all).toBeCloseTo(left!.all.diameter, 9);
  expect(left!.gauges[0]!.safe).toBeNull();
});

test('where something is safe to take it has feeds and a change of the gauge of its own, in proportion', () => {
  const sure: Design = { ...tried, cut: { ...tried.cut!, doubt: 0.0002 } };
  const report = cutSection(sure)!;
  const [left] = leftSteps(sure, report, partsAfterTrials(sure, report)!);
  expect(left!.safe!.normal).toBeGreaterThan(0.02);
  expect(left!.safe!.normal).toBeLessThan(left!.all.normal);
  expect(left!.gauges[0]!.safe! / left!.gauges[0]!.all!).toBeCloseTo(left!.safe!.normal / left!.all.normal, 8);
});
