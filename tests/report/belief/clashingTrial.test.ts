/** A trial that does not go with the readings is said so on every screen, and nothing is believed of it. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { fitLines } from '../../../src/app/screens/fit/fitLines.ts';
import { retoldBy } from '../../../src/app/screens/fit/retold.ts';
import type { Design } from '../../../src/design/definition.ts';
import { parseDesign } from '../../../src/design/parse.ts';
import { beliefSection } from '../../../src/report/belief/section.ts';
import { beliefSentences, offSentences } from '../../../src/report/belief/words.ts';
import { cutNow } from '../../../src/report/cut/now.ts';
import { cutSection } from '../../../src/report/cut/section.ts';
import { withheldBy } from '../../../src/report/cut/withheld.ts';
import { fitOf } from '../../../src/report/fit/fitOf.ts';
import { measureSection } from '../../../src/report/measure/section.ts';

const read = parseDesign(
  readFileSync(new URL('../../../assets/designs/notebook.conepair.json', import.meta.url), 'utf8'),
);
if (!read.ok) throw new Error('notebook');
const seat = read.design.seats.at(-1)!.name;

/** A trial after 5 µm off, its stand-off as far from what the readings tell as this (mm). */
function tried(off: number): Design {
  const { firstPosition } = measureSection(read.ok ? read.design : ({} as Design))!.consequences;
  const standOff = { value: firstPosition!.value - 0.005 / Math.SQRT2 + off, sigma: 0.0005 };
  const trials = [{ taken: [{ seat, part: 'journal' as const, normal: 0.005 }], standOff }];
  return { ...(read.ok ? read.design : ({} as Design)), cut: { allow: [{ seat, part: 'journal' }], trials } };
}

/** As Fit has it: what is withheld is asked of the one rule for all screens. */
function linesOf(design: Design) {
  const belief = beliefSection(design)!;
  const withheld = withheldBy(null, belief);
  return fitLines({
    design,
    fit: fitOf(design),
    system: 'metric',
    way: 'half',
    holding: null,
    belief: withheld ? null : belief,
    retold: retoldBy('plain', withheld, { drawn: design.seats, believed: null }),
  });
}

// So far that hardly a pair goes with both, and so far that none does.
test.each([0.01, 0.2])('where it does not go with them: %f mm', (off) => {
  const design = tried(off);
  const belief = beliefSection(design)!;
  expect(belief.notAsRead).toBe('trials');
  const { now, why, tone } = linesOf(design);
  expect(tone).toBe('stop');
  expect(why).toMatch(/^What was read at a trial does not go with the rest/);
  expect(now).toMatch(/^As drawn: /);
  for (const told of [beliefSentences(design, belief, 'metric'), offSentences(design, belief, 'metric')])
    expect(told).toEqual([expect.stringMatching(/do not go together: see Cut/)]);
  // Cut tells which reading, and what the rest would have.
  const cut = cutSection(design)!;
  expect(cut.notAsRead).toBeUndefined();
  const last = cut.trials!.at(-1)!;
  expect(last.status !== 'updated' || last.clashes!.length > 0).toBe(true);
  expect(cutNow(cut, { mustNotRun: false }, 'metric')).toMatch(/do not go together: take nothing/);
});

test('where it does', () => {
  const design = tried(0);
  expect(beliefSection(design)!.notAsRead).toBeUndefined();
  expect(linesOf(design).why).not.toMatch(/trial does not go/);
  expect(cutSection(design)!.trials!.at(-1)!.clashes ?? []).toEqual([]);
});

// A shop without gauges: what an earlier trial told is told by itself, whatever a later one clashes with.
test('what an earlier trial told stays as it was told while a later one clashes', () => {
  const steep = parseDesign(
    readFileSync(new URL('../../../assets/designs/steep-first.conepair.json', import.meta.url), 'utf8'),
  );
  if (!steep.ok) throw new Error('steep-first');
  const of = (...standOffs: number[]) => {
    const trials = standOffs.map((value) => ({ standOff: { value, sigma: 0.001 } }));
    const { design } = steep;
    return cutSection({ ...design, cut: { ...design.cut!, trials } })!;
  };
  const [alone, clashing] = [of(-0.004, -0.0045), of(-0.004, -0.0045, 0.002)];
  expect(clashing.trials!.at(-1)!.clashes!.length).toBeGreaterThan(0);
  expect(clashing.trials!.at(-1)!.drawn).toBeUndefined();
  for (const [k, trial] of alone.trials!.entries()) {
    expect(trial.drawn).toBe(true);
    expect(clashing.trials![k]).toMatchObject({ films: trial.films, drawn: true });
  }
});
