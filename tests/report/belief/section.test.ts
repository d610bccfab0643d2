/** The belief in the report: Measure's own where all is read, what is named as never read, and what trials teach. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Design } from '../../../src/design/definition.ts';
import { beliefReport } from '../../../src/report/belief/definition.ts';
import { beliefSection } from '../../../src/report/belief/section.ts';
import { beliefSentences, chanceText, offSentences, unknownSentence } from '../../../src/report/belief/words.ts';
import { fitSection } from '../../../src/report/fit/section.ts';
import { measureSection } from '../../../src/report/measure/section.ts';

const demo = (name: string): Design =>
  JSON.parse(readFileSync(new URL(`../../../assets/designs/${name}.conepair.json`, import.meta.url), 'utf8')) as Design;
const notebook = demo('notebook');
const plain = demo('steep-first');
const cut = { allow: [{ seat: 'steep', part: 'journal' as const, limit: 0.1 }] };
const blue = [
  { seat: 'shallow', prints: false },
  { seat: 'steep', prints: true },
];
const tried = (...trials: NonNullable<NonNullable<Design['cut']>['trials']>): Design => ({
  ...plain,
  cut: { ...cut, trials },
});

describe('the belief', () => {
  it('of parts of which nothing was read there is none', () => {
    expect(beliefSection(plain)).toBeUndefined();
  });

  it('of parts whose doubt is stated there is one before any reading: of that doubt, and it is named', () => {
    const stated = { ...plain, cut: { ...cut, doubt: 0.001 } };
    const belief = beliefSection(stated)!;
    expect(beliefReport.safeParse(belief).success).toBe(true);
    expect(belief.assumed.length).toBeGreaterThan(0);
    for (const { name, leastFilm } of fitSection(stated).seats) {
      expect(Math.abs((belief.films[name]!.likely ?? belief.films[name]!.mean) - leastFilm!)).toBeLessThan(1e-9);
      expect(belief.films[name]!.high - belief.films[name]!.low).toBeGreaterThan(0.003);
    }
    const words = beliefSentences(stated, belief, 'metric').join(' ');
    expect(words).toMatch(/^By the doubt that is stated of the parts as drawn the films here are shallow .* ± /);
    expect(words).toMatch(/The steep seat touches first, .*\./);
    expect(unknownSentence(demo('steep-first'), 'metric')).toMatch(/^Assumed, never measured: .* known to ± 9\.8 µm/);
  });

  it('is what Measure tells where every surface is read', () => {
    const [belief, measure] = [beliefSection(notebook)!, measureSection(notebook)!];
    expect(beliefReport.safeParse(belief).success).toBe(true);
    expect(belief.method).toBe('linear');
    expect(belief.assumed).toEqual([]);
    for (const { seat, part, halfAngle, diameter, sigma, correlation } of measure.surfaces) {
      const own = belief.surfaces.find((s) => s.seat === seat && s.part === part)!;
      expect(own.halfAngle).toEqual({ mean: halfAngle, sd: sigma.halfAngle });
      expect(own.diameter).toEqual({ mean: diameter, sd: sigma.diameter });
      expect(own.correlation).toBeCloseTo(correlation!, 9);
    }
    for (const [seat, film] of Object.entries(measure.consequences.films))
      expect(belief.films[seat]).toEqual({
        mean: film!.value,
        sd: film!.sigma,
        low: film!.interval![0],
        high: film!.interval![1],
      });
    expect(belief.first).toEqual(measure.consequences.first);
  });

  it('names what nobody has read, and tells films with its doubt all the same', () => {
    const some = { ...notebook, readings: notebook.readings!.filter((r) => 'part' in r && r.part === 'journal') };
    const belief = beliefSection(some)!;
    expect([...new Set(belief.assumed.map(({ seat, part }) => `${seat} ${part}`))]).toEqual([
      'shallow bush',
      'steep bush',
    ]);
    expect(belief.films.shallow!.sd).toBeGreaterThan(0.003);
    expect(beliefSentences(some, belief, 'metric').at(-1)).toBe(
      'Never read, so taken as drawn and in doubt: the shallow bush and the steep bush.',
    );
  });
});

describe('trials alone', () => {
  const first = tried({ standOff: { value: -0.004, sigma: 0.001 }, blue });
  const second = tried(
    { standOff: { value: -0.004, sigma: 0.001 }, blue },
    {
      taken: [{ seat: 'steep', part: 'journal', normal: 0.02, sigma: 0.001 }],
      standOff: { value: -0.0323, sigma: 0.001 },
      blue,
    },
  );

  it('teach which touches first, and narrow the relation each time', () => {
    const [one, two] = [beliefSection(first)!, beliefSection(second)!];
    expect(one.method).toBe('draws');
    expect(beliefReport.safeParse(one).success).toBe(true);
    expect(one.first!.steep).toBe(1);
    expect(Math.abs(one.firstPosition!.mean - -0.004)).toBeLessThan(0.0005);
    expect(one.firstPosition!.sd).toBeLessThan(0.0012);
    expect(two.relation!.sd).toBeLessThan(one.relation!.sd);
    // the parts of the second are those that 20 µm were taken off
    expect(Math.abs(two.films.steep!.mean - one.films.steep!.mean - 0.02)).toBeLessThan(0.002);
    expect(two.films.steep!.low).toBeLessThan(two.films.steep!.mean);
    expect(two.films.steep!.high).toBeGreaterThan(two.films.steep!.mean);
  });

  it('are told in words, in the person’s units', () => {
    const words = beliefSentences(first, beliefSection(first)!, 'metric').join(' ');
    expect(words).toMatch(
      /^By all that was read the films here are shallow 9\.\d \([34]\.\d to 1\d\.\d\) µm and steep [\d.]+ ± [\d.]+ µm/,
    );
    expect(words).toContain('The steep seat touches first, almost surely.');
    expect(offSentences(first, beliefSection(first)!, 'inch')[0]).toMatch(/ tenths.* \(19 times in 20\)/);
  });

  it('that are others than those drawn are told instead of how far those may be off', () => {
    const belief = beliefSection(first)!;
    const drawn = fitSection(first).seats[1]!.leastFilm!;
    const steep = (mean: number) => ({
      ...belief,
      films: { ...belief.films, steep: { ...belief.films.steep!, likely: mean, off: 0.0006 } },
    });
    // The shift is told wherever the figures differ, and a ± stands with the figure that it is about alone.
    for (const more of [0.001, 0.006])
      expect(offSentences(first, steep(drawn + more) as typeof belief, 'metric')[0]).toMatch(
        /^Where the journal is set the films are, as drawn, shallow [\d.]+ µm and steep 1\d\.\d\d µm, .*; by all that is known and assumed they are .* steep (18|2\d)\.\d \(1\d\.\d to [12]\d\.\d\) µm \(19 times in 20\)\.$/,
      );
    const shallow = fitSection(first).seats[0]!.leastFilm!;
    const asDrawn = steep(drawn) as typeof belief;
    asDrawn.films.shallow = { ...belief.films.shallow!, likely: shallow, off: 0.001 };
    expect(offSentences(first, asDrawn, 'metric')[0]).toMatch(/by how well the parts are known/);
  });

  it('that hardly a pair could give are told to be settled first', () => {
    const belief = { ...beliefSection(first)!, effective: 12 };
    expect(beliefSentences(first, belief, 'metric')).toEqual(offSentences(first, belief, 'metric'));
    expect(beliefSentences(first, belief, 'metric')[0]).toMatch(/do not go together/);
  });

  it('a chance is said as one says it', () => {
    expect([0.999, 0.985, 0.95, 0.9, 0.7, 0.51].map(chanceText)).toEqual([
      'almost surely',
      'more than 19 times in 20',
      '19 times in 20',
      '18 times in 20',
      '7 times in 10',
      '5 times in 10',
    ]);
  });
});
