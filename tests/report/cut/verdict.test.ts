/** The verdict on a cut: what it must say for every status, in words and without numbers nobody can hold. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { Design } from '../../../src/design/definition.ts';
import { parseDesign } from '../../../src/design/parse.ts';
import type { System } from '../../../src/design/units.ts';
import { expectedShake } from '../../../src/report/cut/expectedAtTrial.ts';
import { leftVerdict } from '../../../src/report/cut/leftVerdict.ts';
import { cutSection } from '../../../src/report/cut/section.ts';
import { cutVerdict } from '../../../src/report/cut/verdict.ts';

type Cut = NonNullable<Design['cut']>;

function demo(
  name: string,
  cut: Cut | null = null,
  change: (design: Design) => Design = (d) => d,
  system: System = 'metric',
) {
  const parsed = parseDesign(
    readFileSync(new URL(`../../../assets/designs/${name}.conepair.json`, import.meta.url), 'utf8'),
  );
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.errors));
  const design = change(cut ? { ...parsed.design, cut } : parsed.design);
  const { tone, headline, sentences } = cutVerdict(design, cutSection(design)!, system);
  const text = [headline, ...sentences].join(' ');
  expect(text).not.toMatch(/undefined|NaN|null|\{|\s\s/);
  for (const sentence of [headline, ...sentences]) expect(sentence).toMatch(/^[A-Z0-9].*\.$/);
  return { tone, headline, text };
}

test('one surface: how much, in stock and in diameter, and how far the journal then moves', () => {
  const { tone, headline, text } = demo('steep-first');
  // The errors of the set-up are likely more than the film may be off: nothing to call good.
  expect(tone).toBe('mend');
  expect(headline).toBe(
    '76.53 µm off the steep journal (216.5 µm less in diameter) gives every seat its film at one position.',
  );
  expect(text).toMatch(/runs 128\.7 µm further rearward, 62° of the adjuster/);
  expect(text).toMatch(
    /Set the angle of the steep journal by the slide run along a sine bar: that costs 0\.09 µm of film where 0\.17 µm may be lost\./,
  );
  expect(text).toMatch(
    /All errors of the set-up together are likely 0\.95 µm of film on the steep seat, more than its tolerance of 0\.50 µm; the largest is setting the cross-feed dial to half a division, 0\.88 µm: for the last of it go by the gauge, not by the dial\./,
  );
});

test('in inches', () => {
  expect(demo('steep-first', null, undefined, 'inch').headline).toMatch(/^30\.13 tenths off the steep journal/);
});

test('a seat beyond mending draws no other along with it', () => {
  const worn = (more: number) =>
    demo(
      'rear-bearing',
      { allow: (['steep', 'shallow'] as const).map((seat) => ({ seat, part: 'journal' as const })) },
      (d) => ({
        ...d,
        seats: d.seats.map((seat) =>
          seat.name === 'rear'
            ? { ...seat, bush: { ...seat.bush, diameter: seat.bush.diameter + more } }
            : seat.name === 'steep'
              ? { ...seat, journal: { ...seat.journal, diameter: seat.journal.diameter + 0.05 } }
              : seat,
        ),
      }),
    );
  const far = worn(0.004);
  expect(far.tone).toBe('stop');
  expect(far.headline).toMatch(/the nearest is shallow 2\.50 µm, steep 2\.50 µm and rear 4\.50 µm, wanted 2\.50 µm/);
  expect(far.text).toMatch(
    /17\.\d\d µm off the steep journal \(.*\) brings them there\. The rear film stays 2\.00 µm thicker than wanted: no cut makes it less without making another wrong/,
  );
  const near = worn(0.0002);
  // within tolerance; the errors of the set-up likely are not
  expect(near.tone).toBe('mend');
  expect(near.text).toMatch(
    /^17\.\d\d µm off the steep journal .* brings every film within its tolerance\..* The rear film stays 0\.10 µm thicker than wanted/,
  );
});

test('several surfaces: in which order; lapping says when to stop', () => {
  const { headline, text } = demo('shallow-first');
  expect(headline).toMatch(/off the shallow bush .* and 2\.00 µm off the shallow journal .* give every seat its film/);
  expect(text).toMatch(/In this order: shallow bush, then shallow journal\./);
  expect(text).toMatch(
    /Lapped together, the seats all bear after 4\d\.\d\d µm of travel: stop there; the cones then stand \d+\.\d\d µm wrong/,
  );
});

test('a new line', () => {
  const to = (part: 'journal' | 'bush', halfAngle: number): Cut => ({
    allow: [
      { seat: 'shallow', part, renew: true, halfAngle },
      { seat: 'steep', part: 'journal', limit: 1 },
    ],
  });
  expect(demo('half-angle-mismatch', to('bush', 3)).headline).toMatch(
    /^8\.5\d µm off the shallow bush, to a new line \(17\.1\d µm more in diameter\)/,
  );
  expect(demo('half-angle-mismatch', to('journal', 3.02)).headline).toMatch(
    /^Up to 9\.\d\d µm off the shallow journal, to a new line/,
  );
});

test('a limit in the way: the nearest, what cannot hold, and what would do', () => {
  const { tone, text } = demo('steep-first', { allow: [{ seat: 'steep', part: 'journal', limit: 0.05 }] });
  expect(tone).toBe('stop');
  expect(text).toMatch(/the nearest is shallow 4\.46 µm and steep 2\.50 µm, wanted 2\.50 µm/);
  expect(text).not.toMatch(/[^0-9.]0(\.0+)?° of error/);
  expect(text).not.toMatch(/pressed in|Set the angle/);
  expect(text).toMatch(/What stands in the way: .*the steep journal may lose at most 50\.00 µm/);
  expect(text).toMatch(/Any one of these would do: .*76\.53 µm off the steep journal/);
});

test('nothing to cut, wholly or all but', () => {
  expect(demo('opposed-cones', { allow: [{ seat: 'front', part: 'journal' }] })).toMatchObject({ tone: 'good' });
  expect(demo('opposed-cones', { allow: [{ seat: 'front', part: 'journal' }] }).headline).toMatch(
    /^Nothing need be cut: every seat has its film at one position already/,
  );
  const { headline } = demo('correct', { allow: [{ seat: 'shallow', part: 'journal' }] });
  expect(headline).toBe('Nothing need be cut: every seat has its film at one position already.');
});

test('least films that are right are not called films that are right along the whole seat', () => {
  const journals: Cut = { allow: ['shallow', 'steep'].map((seat) => ({ seat, part: 'journal' })) };
  const worn = demo('worn-bell-mouth', journals);
  expect(worn.tone).toBe('mend');
  expect(worn.headline).toBe('Every least film is right, but not every film is even along its seat.');
  expect(worn.text).toMatch(
    /The shallow film is uneven: 2\.50 µm where it is least, 14\.\d\d µm where it is greatest\. To even it, cut the shallow bush “to a straight new line”/,
  );
  const angles = demo('half-angle-mismatch', journals);
  expect(angles).toMatchObject({ tone: 'mend' });
  expect(angles.text).toMatch(
    /To even it, cut the shallow journal “to a straight new line”, at the half angle of what it runs against/,
  );
  const evened = demo('half-angle-mismatch', {
    allow: [
      { seat: 'shallow', part: 'journal', renew: true, halfAngle: 3.02 },
      { seat: 'steep', part: 'journal', limit: 1 },
    ],
  });
  expect(evened.text).not.toMatch(/uneven|To even/);
});

test('a spacer, taken off or made thicker', () => {
  const face = { name: 'the rear spacer', part: 'bush' as const, seats: ['steep'], limit: 0.2 };
  expect(demo('steep-first', { allow: [], faces: [{ ...face, moves: 'rearward' }] }).headline).toMatch(
    /^108\.2 µm off the rear spacer gives every seat its film/,
  );
  expect(demo('steep-first', { allow: [], faces: [{ ...face, moves: 'noseward', add: 0.2 }] }).headline).toMatch(
    /^The rear spacer 108\.2 µm thicker gives/,
  );
});

test('no film wanted, parts apart', () => {
  expect(
    demo('steep-first', null, (d) => ({ ...d, seats: d.seats.map(({ film: _, ...seat }) => seat) })).headline,
  ).toMatch(/No seat says which film it should have/);
  expect(
    demo('steep-first', { allow: [] }, (d) => ({
      ...d,
      seats: [{ ...d.seats[0]!, journal: { ...d.seats[0]!.journal, from: -200, to: -190 } }],
    })).text,
  ).toMatch(/shallow journal does not reach its bush/);
});

test('a film too great already', () => {
  const straight = { halfAngle: 0, diameter: 20, station: 0, from: -9, to: 0 };
  const { tone, text } = demo('correct', { allow: [] }, (d) => ({
    ...d,
    seats: [{ name: 'a', journal: straight, bush: { ...straight, diameter: 20.02 }, film: { target: 0.0025 } }],
  }));
  expect(tone).toBe('stop');
  expect(text).toMatch(/metal cannot be put back/);
});

test('after a trial: what is left, too much off, or a slip', () => {
  const cut: Cut = { allow: [{ seat: 'steep', part: 'journal' }], doubt: 0.001 };
  const trial = (normal: number, value: number) => ({
    ...cut,
    trials: [{ taken: [{ seat: 'steep', part: 'journal' as const, normal }], standOff: { value, sigma: 0.0005 } }],
  });
  expect(demo('steep-first', trial(0.04, -0.06)).text).toMatch(
    /Only \d\.\d\d µm off the steep journal is safe to take now: you are 5\d\.\d+ µm short along the axis, most likely 37 ± 2\d µm off the steep journal; first read the shake at the nose\. Safe to take now: \d\.\d\d µm off the steep journal; 39 times in 40 at least that much is left/,
  );
  expect(demo('steep-first', trial(0.09, -0.1315)).text).toMatch(
    /Nothing that may still be cut brings the films nearer: the shallow film stays \d\.\d\d µm thinner than wanted/,
  );
  expect(demo('steep-first', trial(0, 0.9)).text).toMatch(/look for grit, a burr, or a slip of the pen/);
});

test('what no cut can bring nearer is left, and a seat without film is said to touch', () => {
  expect(demo('steep-first', { allow: [] }).headline).toMatch(
    /leave it; uncut the nearest is shallow 8\.16 µm and steep 2\.50 µm/,
  );
  const { headline, text } = demo('steep-first', { allow: [] }, (d) => ({
    ...d,
    seats: d.seats.map((seat) => ({ ...seat, film: { target: seat.name === 'steep' ? 0 : 0.0025 } })),
  }));
  expect(headline).toMatch(/leave it; uncut the nearest is shallow .* and steep 0\.00 µm/);
  expect(text).toMatch(/the steep seat has no film at all and would touch: it must not be run so/);
});

test('parts that press into each other, within the reach of the journal too, are no good news', () => {
  const tight = demo('opposed-cones', { allow: [] }, (d) => ({
    ...d,
    seats: d.seats.map((s) => ({ ...s, bush: { ...s.bush, diameter: s.journal.diameter - 0.02 } })),
  }));
  expect(tight).toMatchObject({ tone: 'stop' });
  expect(tight.headline).toMatch(/press into each other, at best .*pressed in by/);
  const far = demo('steep-first', { allow: [{ seat: 'steep', part: 'journal', limit: 1 }], reach: { to: -0.5 } });
  expect(far.tone).toBe('stop');
  expect(far.headline).toMatch(/press into each other, at best .*pressed in by/);
  expect(far.text).toMatch(
    /What stands in the way: the journal may go no further noseward than −0\.500 mm\. This would do: the journal at −128\.7|What stands in the way: .*the journal may go no further noseward/,
  );
});

test('a way that was chosen and is too coarse is told with what it costs, beside the one to use', () => {
  const scale = demo('steep-first', null, (d) => ({
    ...d,
    cut: { ...d.cut!, machine: { ...d.cut!.machine, setBy: 'scale' } },
  })).text;
  expect(scale).toMatch(
    /by the slide run along a sine bar: that costs 0\.09 µm .* The scale of the table, as chosen, would cost 0\.72 µm\./,
  );
  expect(scale).toMatch(/All errors of the set-up together are likely 1\.19 µm of film on the steep seat/);
  expect(demo('steep-first').text).toMatch(
    /All errors of the set-up together are likely 0\.95 µm of film on the steep seat/,
  );
  expect(demo('shallow-first').text).toMatch(
    /No way here sets the angle of the shallow bush finely enough: .* an indicator that tells 0\.21 µm along a sine bar, or the one there is over 61 mm of it, would do\./,
  );
});

test('after a trial the first thing said is what is left, with its doubt and what is safe', () => {
  const parsed = parseDesign(
    readFileSync(new URL('../../../assets/designs/steep-first.conepair.json', import.meta.url), 'utf8'),
  );
  if (!parsed.ok) throw new Error('demo');
  const base = parsed.design;
  const of = (trials: NonNullable<Cut['trials']>) => {
    const design = { ...base, cut: { ...base.cut!, trials } };
    return leftVerdict(design, cutSection(design)!, 'metric');
  };
  expect(leftVerdict(base, cutSection(base)!, 'metric')).toBeNull();
  expect(of([{ note: 'only a note' }])).toBeNull();
  const agreeing = { standOff: { value: -0.004, sigma: 0.001 } };
  // 13.5 times the doubt of the shallow film, and that its ends may lean beyond it
  for (const trials of [[agreeing], [agreeing, agreeing]])
    expect(of(trials)!.headline).toMatch(
      /^Take nothing yet: you are 108\.2 µm short along the axis, most likely 77 \(0 to 2[01]\d\) µm off the steep journal; first read the shake at the nose\.$/,
    );
  expect(of([agreeing])!.sentences.join(' ')).toMatch(
    /Nothing of it is safe to take yet: it may be far less than that, and metal cannot be put back\. This trial made it surer: \d\d % of the doubt before it is left\. Most of the doubt is in the film of the shallow seat\. What is to come off the steep journal spreads by ± 1\d\d µm: the shake, read at the nose with the journal held at [\d.]+ µm, would bring that to/,
  );
  expect(of([{ standOff: { value: 0.9, sigma: 0.001 } }])).toMatchObject({ tone: 'stop' });
});

test('a reading that does not go with the rest is named, and its doubt is no narrower than it can tell', () => {
  const parsed = parseDesign(
    readFileSync(new URL('../../../assets/designs/steep-first.conepair.json', import.meta.url), 'utf8'),
  );
  if (!parsed.ok) throw new Error('demo');
  const first = {
    standOff: { value: 0.006, sigma: 0.001 },
    blue: [
      { seat: 'steep', prints: true },
      { seat: 'shallow', prints: false },
    ],
  };
  const shaken = (value: number) => {
    const shake = { value, sigma: 0.001, indicator: 30, position: 0.02, direction: 0 };
    const design: Design = { ...parsed.design, cut: { ...parsed.design.cut!, trials: [first, { shake }] } };
    const cut = cutSection(design)!;
    return {
      ...leftVerdict(design, cut, 'metric')!,
      result: cut.trials![1]!,
      remaining: cut.remaining!,
      expected: expectedShake(design)!,
    };
  };
  // far less than 40 µm, more than the lean of the lines may make of it
  const clashing = shaken(0.003);
  expect(clashing.tone).toBe('stop');
  expect(clashing.headline).toMatch(
    /^The shake of trial 2 does not go with the rest: 3\.00 µm was read, and parts as the rest tells would shake by 40\.\d\d µm, which is no chance\. Read it again/,
  );
  expect(clashing.result.clashes!.map(({ trial, what }) => `${what} ${trial}`)).toEqual([
    'shake 2',
    'blue 1',
    'standOff 1',
  ]);
  // ten times as much is no less likely of these parts than what is expected, and a slip that is often made
  expect(clashing.sentences[0]).toMatch(
    /^If the shake of trial 2 is a slip of ten, 30\.00 µm being meant, all agree: \d\d in 100/,
  );
  expect(clashing.sentences[1]).toMatch(
    /^Or the shake of trial 2 is a slip, which should be 40\.\d\d µm \(\d+ in 100\), or /,
  );
  expect(clashing.sentences[2]).toMatch(/^It may also be the stand-off of trial 1 that is wrong\./);
  expect(clashing.sentences[3]).toBe('Until that is settled nothing is safe to take.');
  expect(clashing.remaining.steps.every(({ safe }) => safe === 0)).toBe(true);
  expect(clashing.result.films!.shallow!.more).toBeCloseTo(-0.00653, 5);
  // a micrometre of shake tells the shallow film to 0.15 µm at best
  expect(clashing.result.films!.shallow!.sigma).toBeGreaterThan(0.00015);
  // what is expected of it does not depend on what is read, and goes with the rest
  expect(clashing.expected.value).toBeCloseTo(shaken(0.03).expected.value, 12);
  const agreeing = shaken(clashing.expected.value);
  expect(agreeing.result.clashes).toBeUndefined();
  expect(agreeing.headline).toMatch(
    /^Only \d+\.\d\d µm off the steep journal is safe to take now: you are [\d.]+ µm short/,
  );
});

test('before any trial the doubt is told too', () => {
  expect(demo('steep-first').text).toMatch(
    /By the doubt of the parts as drawn that is 77 \([01] to 2[01]\d\) µm off the steep journal \(19 times in 20\): assemble for a trial before anything is cut, to be surer\./,
  );
});

test('what cannot be as wished is said: the nose that stays, a tailstock for a steep cone', () => {
  const wish = (change: Partial<Cut>) =>
    demo('steep-first', null, (d) => ({ ...d, cut: { ...d.cut!, ...change } })).text;
  expect(wish({ prefer: { keepPosition: true } })).toMatch(/The nose cannot stay where it is, as was wished/);
  expect(wish({})).not.toMatch(/as was wished/);
  expect(wish({ machine: { setBy: 'tailstock' } })).toMatch(
    /The tailstock set over, as chosen, cannot set the steep journal at 45\.0°: another way is reckoned with there\./,
  );
});

test('lapping is told as another way; a single way out is not one of several', () => {
  expect(demo('shallow-first').text).toMatch(
    /Lapped together, .* That is another way than the steps, and by itself does not give the films wanted\./,
  );
  const straight = { halfAngle: 0, diameter: 20, station: 0, from: -9, to: 0 };
  const { text } = demo('correct', { allow: [] }, (d) => ({
    ...d,
    seats: [{ name: 'a', journal: straight, bush: { ...straight, diameter: 20.002 }, film: { target: 0.0025 } }],
  }));
  expect(text.includes('Any one of these would do: ')).toBe(/would do: .*; /.test(text));
});
