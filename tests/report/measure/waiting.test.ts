/**
 * A notebook half read, with a stand-off in it: it waits until every seat that may have touched was read, and Measure
 * and the belief of all other screens tell the same.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Design } from '../../../src/design/definition.ts';
import { parseDesign } from '../../../src/design/parse.ts';
import { validateDesign } from '../../../src/design/validate.ts';
import { beliefSection } from '../../../src/report/belief/section.ts';
import { fitSection } from '../../../src/report/fit/section.ts';
import { measuredNow } from '../../../src/report/measure/now.ts';
import { measureSection } from '../../../src/report/measure/section.ts';
import { measureVerdict } from '../../../src/report/measure/verdict.ts';

const read = parseDesign(
  readFileSync(new URL('../../../assets/designs/correct.conepair.json', import.meta.url), 'utf8'),
);
if (!read.ok) throw new Error('demo');
const demo = read.design;

type Reading = NonNullable<Design['readings']>[number];

const withReadings = (readings: Reading[], more: Partial<Design> = {}): Design => {
  const { cut: _, odds: __, priors: ___, ...rest } = demo;
  const result = validateDesign({ ...rest, ...more, readings });
  if (!result.ok) throw new Error(result.errors[0]!.message);
  return result.design;
};

const seat = (name: string) => demo.seats.find((one) => one.name === name)!;
/** Diameters near both ends of a surface, as drawn. */
const diameters = (name: string, part: 'journal' | 'bush'): Reading[] => {
  const { diameter, station, halfAngle, from, to } = seat(name)[part];
  return [0.1, 0.9].map((share) => {
    const at = from + share * (to - from);
    const value = diameter + 2 * (at - station) * Math.tan((halfAngle * Math.PI) / 180);
    return { kind: 'diameter', seat: name, part, station: at, value, sigma: 0.003 };
  });
};
const standOff: Reading = { kind: 'standOff', value: 0.004, sigma: 0.001 };
const shallow = [...diameters('shallow', 'journal'), ...diameters('shallow', 'bush')];
const steep = [...diameters('steep', 'journal'), ...diameters('steep', 'bush')];

describe('while a seat that may have touched was never read', () => {
  const design = withReadings([...shallow, standOff]);
  const measure = measureSection(design)!;
  const belief = beliefSection(design)!;

  it('the stand-off waits, with the seats it may be of and what is to be read', () => {
    expect(measure.aside).toHaveLength(1);
    const [{ index, touched, unread }] = measure.aside as [(typeof measure.aside)[number]];
    expect(index).toBe(4);
    expect(Object.keys(touched).sort()).toEqual(['shallow', 'steep']);
    expect(unread).toEqual([
      { seat: 'steep', part: 'journal' },
      { seat: 'steep', part: 'bush' },
    ]);
    expect(measure.readings.map((one) => one.index)).toEqual([0, 1, 2, 3]);
    const told = measureVerdict(design, measure, fitSection(design), 'metric').sentences.join(' ');
    expect(told).toMatch(
      /Reading 5 \(stand-off\) waits: it may have been the shallow \(\d+ in 100\) or the steep \(\d+ in 100\) that touched, and nobody has read the steep journal and steep bush\. Once those are read it counts/,
    );
    // What it would not tell is not proposed.
    for (const { reading } of measure.next!.suggestions) expect(reading.kind).not.toBe('standOff');
  });

  it('Measure and the belief tell the same of what was read, and nothing of what was not', () => {
    const films = measure.consequences.films;
    expect(films.shallow!.value).toBeCloseTo(belief.films.shallow!.mean, 12);
    expect(films.shallow!.sigma!).toBeCloseTo(belief.films.shallow!.sd, 12);
    expect(films.steep!.sigma).toBeNull();
    // Nothing is made up of it: as drawn, and with all the doubt of what nobody has read.
    expect(measure.surfaces.some((one) => one.seat === 'steep')).toBe(false);
    expect(belief.films.steep!.mean).toBeCloseTo(fitSection(design).seats[1]!.leastFilm!, 9);
    expect(belief.films.steep!.sd).toBeGreaterThan(0.004);
    expect(belief.notAsRead).toBeUndefined();
  });
});

it('once both seats are read it counts, and sharpens where they touch', () => {
  const without = measureSection(withReadings([...shallow, ...steep]))!;
  const all = measureSection(withReadings([...shallow, ...steep, { ...standOff, value: -0.0035 }]))!;
  expect(all.aside).toEqual([]);
  expect(all.readings).toHaveLength(9);
  expect(all.consequences.firstPosition!.sigma!).toBeLessThan(0.8 * without.consequences.firstPosition!.sigma!);
});

it('alone it tells nothing yet, and is not called unusable', () => {
  const design = withReadings([standOff]);
  const measure = measureSection(design)!;
  expect(measure.aside).toHaveLength(1);
  expect(measuredNow(measure, 'metric')).toBe('Not enough read yet.');
  expect(measureVerdict(design, measure, fitSection(design), 'metric')).toMatchObject({
    tone: 'mend',
    headline: 'Not enough read yet.',
    sentences: [expect.stringMatching(/^Reading 1 \(stand-off\) waits/)],
  });
});

it('of the only cone that closes rearward it counts at once', () => {
  const { odds: _, ...rest } = demo;
  const design = withReadings([standOff], { ...rest, seats: [seat('shallow')] } as Partial<Design>);
  expect(measureSection(design)!.aside).toEqual([]);
  expect(measureSection(design)!.readings).toHaveLength(1);
});
