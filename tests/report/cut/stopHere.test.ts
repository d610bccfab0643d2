/** Metal cannot be put back: what may be left as it is, and where to stop first, is said before what may come off. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Design } from '../../../src/design/definition.ts';
import { parseDesign } from '../../../src/design/parse.ts';
import type { CutReport } from '../../../src/report/cut/definition.ts';
import { expectedTouch } from '../../../src/report/cut/expectedAtTrial.ts';
import { leftVerdict, safeSentences } from '../../../src/report/cut/leftVerdict.ts';
import { diameterOf } from '../../../src/report/cut/metalDoubt.ts';
import { cutSection } from '../../../src/report/cut/section.ts';
import { cutVerdict } from '../../../src/report/cut/verdict.ts';
import { fitSection } from '../../../src/report/fit/section.ts';

const parsed = parseDesign(
  readFileSync(new URL('../../../assets/designs/steep-first.conepair.json', import.meta.url), 'utf8'),
);
if (!parsed.ok) throw new Error('demo');
const { design } = parsed;
const planned = cutSection(design)!;
const [step] = planned.steps as [CutReport['steps'][number]];
type Trial = NonNullable<NonNullable<Design['cut']>['trials']>[number];

/** The design after trials whose stand-off is just what the parts taken so would read. */
function tried(short: number, doubt: number): Design {
  const trial: Trial = { taken: [{ seat: step.seat, part: step.part, normal: step.normal - short, sigma: 0.0001 }] };
  const cut = { ...design.cut!, doubt };
  const expected = expectedTouch({ ...design, cut: { ...cut, trials: [trial] } })!;
  return { ...design, cut: { ...cut, trials: [{ ...trial, standOff: { value: expected.value, sigma: 0.0002 } }] } };
}

/** Of the films as they would be at a position, by the fit alone: none out of its tolerance. */
const within = (of: Design, position: number) =>
  fitSection({ ...of, position }).seats.every(({ name, leastFilm }) => {
    const film = of.seats.find((seat) => seat.name === name)?.film;
    return !film || (leastFilm !== null && Math.abs(leastFilm - film.target) <= (film.tolerance ?? 0) + 1e-9);
  });

describe('a pair that would do as it is', () => {
  it('is told so after a trial, before anything that may still come off', () => {
    const short = tried(0.0003, 0.0005);
    const cut = cutSection(short)!;
    expect(cut.remaining!.steps[0]!.normal).toBeGreaterThan(0.0002);
    const { asTheyAre } = cut.remaining!;
    const off = {
      ...design,
      seats: design.seats.map((seat) =>
        seat.name === step.seat
          ? {
              ...seat,
              [step.part]: {
                ...seat[step.part],
                diameter: seat[step.part].diameter + diameterOf(design, step.seat, step.part, step.normal - 0.0003),
              },
            }
          : seat,
      ),
    };
    expect(within(off, asTheyAre!.position)).toBe(true);
    const { tone, headline, sentences } = leftVerdict(short, cut, 'metric')!;
    expect(headline).toMatch(/^Leave it as it stands: .*, and no cut makes that likelier\.$/);
    expect(tone).toBe('mend');
    expect(sentences.shift()).toMatch(/^Most likely they are so with the journal at /);
    // 0.5 µm is as much as the tolerances, and 19 times in 20 it is twice that
    expect(sentences[0]).toMatch(/^There they are shallow .* ± .*known less well than the tolerances.*surer\.$/);
    expect(sentences.join(' ')).not.toMatch(/(Take|You are)/);
    const sure = tried(0.0003, 0.00005);
    expect(leftVerdict(sure, cutSection(sure)!, 'metric')!.sentences[0]).not.toMatch(/less well/);
  });

  it('is not told so where a film is still out of its tolerance', () => {
    const far = cutSection(tried(0.02, 0.0005))!;
    expect(far.remaining!.asTheyAre).toBeUndefined();
    expect(leftVerdict(tried(0.02, 0.0005), far, 'metric')!.headline).not.toMatch(/may stop/);
    expect(planned.asTheyAre).toBeUndefined();
  });

  it('is told so before any trial too', () => {
    const near = {
      ...design,
      seats: design.seats.map((seat) =>
        seat.name === step.seat
          ? {
              ...seat,
              [step.part]: {
                ...seat[step.part],
                diameter: seat[step.part].diameter + diameterOf(design, step.seat, step.part, step.normal - 0.0003),
              },
            }
          : seat,
      ),
    };
    const cut = cutSection(near)!;
    expect(cut.steps).toHaveLength(1);
    expect(within(near, cut.asTheyAre!.position)).toBe(true);
    expect(cutVerdict(near, cut, 'metric').sentences[0]).toMatch(
      /^As drawn every film is within its tolerance already.*the parts may be left uncut, since a cut only brings the films nearer to what is wanted\.$/,
    );
  });
});

describe('a step of which only a part is safe', () => {
  const sure = cutSection({ ...design, cut: { ...design.cut!, doubt: 0.002 } })!;
  const [safely] = sure.steps as [CutReport['steps'][number]];

  it('tells the part by every feed, in the proportion of the stock, and its readings', () => {
    const { first, safe } = safely;
    expect(safe!).toBeGreaterThan(0.01);
    expect(safe!).toBeLessThan(safely.normal);
    const share = safe! / safely.normal;
    for (const key of [
      'normal',
      'diameter',
      'crossFeed',
      'crossDivisions',
      'tableFeed',
      'axialFeed',
      'axialDivisions',
    ] as const)
      expect(first![key]! / safely[key]!).toBeCloseTo(share, 9);
    for (const { before, safe: read, stop } of safely.gauges)
      if (before !== null && stop !== null) expect((read! - before) / (stop - before)).toBeCloseTo(share, 4);
  });

  it('has a first stop in the order of work, and no half way', () => {
    const cuts = (cut: CutReport) => cut.work.filter(({ id }) => id.startsWith('cut ')).map(({ text }) => text);
    expect(cuts(sure)).toEqual([expect.stringMatching(/to its first stop, gauge, and try it/)]);
    expect(cuts(cutSection({ ...design, cut: { ...design.cut!, doubt: 1e-9 } })!)).toEqual([
      expect.stringMatching(/half way, gauge, then to the stop reading/),
    ]);
    // once there are trials they say what is left, and no stop reading of the plan
    expect(cuts(cutSection(tried(0.02, 0.0005))!)).toEqual([expect.stringMatching(/to its first stop/)]);
  });
});

it('less than can be set on the dial is told as that', () => {
  const fine = cutSection(tried(0.0008, 0.00001))!;
  const [left] = fine.remaining!.steps;
  expect(left!.safe).toBeGreaterThan(0.0001);
  expect(left!.safeDivisions).toBeLessThan(0.5);
  const told = (of: Design) => safeSentences(of, fine.remaining!, 'metric').join(' ');
  expect(told(design)).toMatch(
    /less than half a division of the cross feed for the steep journal: stone or lap it off, a few strokes at a time, and try it again, or let it be\./,
  );
  // Whoever has gauges gauges it.
  const gauge = { kind: 'diameter', seat: 'steep', part: 'journal', station: 2, value: 25, sigma: 0.001 } as const;
  expect(told({ ...design, readings: [gauge] })).toMatch(/stone or lap it off and gauge it, or let it be\./);
});
