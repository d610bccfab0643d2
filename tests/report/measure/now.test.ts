/** The first line of Measure. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { parseDesign } from '../../../src/design/parse.ts';
import { fitSection } from '../../../src/report/fit/section.ts';
import { measuredNow } from '../../../src/report/measure/now.ts';
import { measureSection } from '../../../src/report/measure/section.ts';
import { measureVerdict } from '../../../src/report/measure/verdict.ts';

const read = parseDesign(
  readFileSync(new URL('../../../assets/designs/notebook.conepair.json', import.meta.url), 'utf8'),
);
if (!read.ok) throw new Error('notebook');
const { design } = read;

test('how far the cones stand wrong is told as the sentence below tells it, whichever way they do', () => {
  const measure = measureSection(design)!;
  const { relation } = measure.consequences;
  const { value, interval } = relation!;
  const [low, high] = interval!;
  for (const found of [relation!, { ...relation!, value: -value, interval: [-high, -low] as typeof interval }]) {
    const told = { ...measure, consequences: { ...measure.consequences, relation: found } };
    for (const system of ['metric', 'inch'] as const) {
      const now = measuredNow(told, system);
      const [, figure, doubt] = /^Cones wrong by ([\d.]+ \S+), give or take ([\d.]+ \S+)\.$/.exec(now) ?? [];
      expect(figure, now).toBeTruthy();
      const { headline, sentences } = measureVerdict(design, told, fitSection(design), system, 'half');
      expect([headline, ...sentences].join(' ')).toMatch(
        new RegExp(`stand ${figure} wrong to each other, [^.]*give or take ${doubt}`),
      );
    }
  }
});

test('a straight seat before the cones is not one of those that stand wrong to each other', () => {
  const rear = {
    name: 'rear',
    journal: { halfAngle: 0, diameter: 15, station: -60, from: -80, to: -60 },
    bush: { halfAngle: 0, diameter: 15.005, station: -60, from: -80, to: -60 },
    film: { target: 0.0025, tolerance: 0.0005 },
  };
  const [one, other] = design.seats.map(({ name }) => name);
  for (const seats of [
    [rear, ...design.seats],
    [...design.seats, rear],
  ]) {
    const whole = { ...design, seats };
    const measure = measureSection(whole)!;
    expect(measure.consequences.relationBetween).toEqual([one, other]);
    expect(measureVerdict(whole, measure, fitSection(whole), 'metric', 'half').headline).toMatch(
      new RegExp(`^The ${one} and ${other} cones stand `),
    );
    expect(fitSection(whole).relation!.between).toEqual([one, other]);
  }
});
