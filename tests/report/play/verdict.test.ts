/** Seat and play in words, for every kind of design: what must be said, and what must not. */

import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { Design } from '../../../src/design/definition.ts';
import { parseDesign } from '../../../src/design/parse.ts';
import { fitSection } from '../../../src/report/fit/section.ts';
import { playSection } from '../../../src/report/play/section.ts';
import { shakeRead } from '../../../src/report/play/shakeRead.ts';
import { playVerdict, sharedNote } from '../../../src/report/play/verdict.ts';

function demo(name: string, change: (design: Design) => Design = (d) => d, system: 'metric' | 'inch' = 'metric') {
  const result = parseDesign(
    readFileSync(new URL(`../../../assets/designs/${name}.conepair.json`, import.meta.url), 'utf8'),
  );
  if (!result.ok) throw new Error(result.errors[0]!.message);
  const design = change(result.design);
  const play = playSection(design)!;
  const { tone, headline, sentences } = playVerdict(design, play, fitSection(design), system);
  const text = [headline, ...sentences].join(' ');
  expect(text).not.toMatch(/undefined|NaN|null|Infinity|-0\.0/);
  return { tone, headline, text, shared: sharedNote(play.seated) };
}

test('steep first: sits in the steep seat all round, and shakes here by what the shallow one leaves', () => {
  const { tone, headline, text } = demo('steep-first');
  // Held when pressed home, and yet no praise: the films are wrong.
  expect(tone).toBe('plain');
  expect(headline).toBe('Pushed home, the spindle bears in the steep seat alone, all round, at both ends of its line.');
  expect(text).toMatch(
    /At this position an indicator at station 30\.000 mm reads 63\.56 µm from side to side, stopped by the shallow seat\./,
  );
  expect(text).toMatch(
    /Kept pressed home in the steep seat it cannot rock; backed off to a film, or pulled off the seat, it can\./,
  );
  expect(text).not.toMatch(/sticks|End play/);
});

test('shallow first: a self-holding seat takes the push, and what it takes to free it', () => {
  const { tone, text } = demo('shallow-first');
  expect(tone).toBe('mend');
  expect(text).toMatch(/bears in the shallow seat alone/);
  expect(text).toMatch(/at 3\.0° with a friction of 0\.12 it sticks: pressed home with 100 N it takes 39 N to free/);
  expect(demo('shallow-first', (d) => ({ ...d, friction: 0.04 })).text).not.toMatch(/sticks/);
});

test('opposed cones: end play, and the seat named by where it bears', () => {
  const { tone, text } = demo('opposed-cones');
  expect(tone).toBe('good');
  expect(text).toMatch(/End play between the stops is 10\.07 µm/);
});

test('in inches', () => {
  expect(demo('opposed-cones', (d) => d, 'inch').text).toMatch(/End play between the stops is 3\.96 tenths/);
});

test('a straight bearing alone: nothing stops it, and its shake is told all the same', () => {
  const { tone, headline, text } = demo('correct', (d) => ({
    ...d,
    seats: [
      {
        name: 'plain',
        journal: { halfAngle: 0, diameter: 19.99, station: 0, from: -20, to: 0 },
        bush: { halfAngle: 0, diameter: 20, station: 0, from: -20, to: 0 },
      },
    ],
  }));
  expect(tone).toBe('mend');
  expect(headline).toBe('Nothing stops the spindle axially, either way.');
  expect(text).toMatch(/reads 40\.00 µm from side to side/);
});

test('a cone that closes noseward only: the stop is named the right way round', () => {
  const { headline } = demo('opposed-cones', (d) => ({ ...d, seats: d.seats.slice(1) }));
  expect(headline).toMatch(/Nothing stops the spindle going rearward; going noseward it stops at 6\.52 µm/);
});

test('a straight bearing too large: it does not go in, and by how much', () => {
  const { tone, headline } = demo('rear-bearing', (d) => ({
    ...d,
    seats: d.seats.map((s) =>
      s.name === 'rear' ? { ...s, journal: { ...s.journal, diameter: s.bush.diameter + 0.004 } } : s,
    ),
  }));
  expect(tone).toBe('stop');
  expect(headline).toMatch(/does not go in: however it lies, it is 2\.00 µm into a bush/);
});

test('three lobes: where they bear', () => {
  const { text } = demo('correct', (d) => ({
    ...d,
    seats: d.seats.map((s) =>
      s.name === 'steep' ? { ...s, journal: { ...s.journal, lobes: [{ count: 3, amplitude: 0.001, phase: 90 }] } } : s,
    ),
  }));
  expect(text).toMatch(/steep seat alone, at three places round \(90°, 210° and 330°\), at both ends of its line/);
});

test('two seats that touch together: how much each carries, as equal springs', () => {
  const { headline, shared, text } = demo('correct', (d) => ({
    ...d,
    seats: d.seats.map((s) => ({ ...s, bush: { ...s.journal } })),
  }));
  // as springs pressed alike their shares are as the sines of their half angles: sin 3° to sin 45°
  expect(headline).toBe('Pushed home, the spindle bears in the steep seat (93 %) and shallow seat (7 %).');
  expect(shared).toMatch(/all give alike, as equal springs do/);
  expect(text).not.toMatch(/springs/);
});

/** The demo's verdict with its spindle bearing in one seat at a station (mm), the seat 20 mm long. */
function bearingAt(halfAngle: number, from: number, station: number) {
  const result = parseDesign(
    readFileSync(new URL('../../../assets/designs/steep-first.conepair.json', import.meta.url), 'utf8'),
  );
  if (!result.ok) throw new Error('demo');
  const surface = { halfAngle, diameter: 22, station: 0, from, to: from + 20 };
  const design: Design = { ...result.design, seats: [{ name: 'only', journal: surface, bush: surface }] };
  const play = playSection(result.design)!;
  return playVerdict(
    design,
    {
      ...play,
      selfHolding: [],
      seated: {
        ...play.seated,
        contacts: [{ seat: 'only', station, journalStation: station, angle: 0, ring: true, share: 1 }],
      },
    },
    fitSection(design),
    'metric',
  ).headline;
}

test.each([
  [3, -25, 'toward its small end'],
  [3, -21.1, 'toward its small end'],
  [3, -20.9, 'part way along'],
  [3, -9.1, 'part way along'],
  [3, -8.9, 'toward its large end'],
  [-3, -24, 'toward its large end'],
  [-3, -6, 'toward its small end'],
  [0, -24, 'toward its rear end'],
  [0, -6, 'toward its nose end'],
])(
  'a seat of %s° from -25 to -5 touched at %s: %s; and so one that stands 30 mm further forward',
  (halfAngle, station, place) => {
    for (const on of [0, 30]) {
      const told = (station + on).toFixed(3).replace('-', '−');
      expect(bearingAt(halfAngle, on - 25, station + on)).toBe(
        `Pushed home, the spindle bears in the only seat alone, all round, ${place} (station ${told} mm).`,
      );
    }
  },
);

test('two stops: by how much they overlap, and none where they meet', () => {
  const result = parseDesign(
    readFileSync(new URL('../../../assets/designs/opposed-cones.conepair.json', import.meta.url), 'utf8'),
  );
  if (!result.ok) throw new Error('demo');
  const { design } = result;
  const at = (endPlay: number) =>
    playVerdict(design, { ...playSection(design)!, endPlay }, fitSection(design), 'metric');
  expect(at(-0.0123)).toMatchObject({
    tone: 'stop',
    headline: 'The spindle does not go in: its two stops overlap by 12.30 µm.',
  });
  for (const endPlay of [0, -5e-5, 5e-5]) {
    expect(at(endPlay).headline).toMatch(/^Pushed home/);
    expect(at(endPlay).sentences.join(' ')).toMatch(/it cannot rock\./);
  }
  expect(at(0.002).sentences.join(' ')).toMatch(/it cannot rock; backed off/);
});

test('pressed past the touch: how far in it is here', () => {
  expect(demo('steep-first', (d) => ({ ...d, position: -0.01 })).text).toMatch(
    /At this position it is 4\.24 µm into a bush however it lies/,
  );
});

test('a shake of nothing is read back as standing against the stop', () => {
  const result = parseDesign(
    readFileSync(new URL('../../../assets/designs/correct.conepair.json', import.meta.url), 'utf8'),
  );
  if (!result.ok) throw new Error('demo');
  const home = playSection(result.design)!.seated.pose!.z;
  const read = shakeRead(result.design, 0);
  if (read.status !== 'solved') throw new Error(read.status);
  expect(read.answers).toHaveLength(1);
  expect(read.answers[0]!.position).toBeCloseTo(home, 9);
  expect(Math.min(...read.answers[0]!.films.map((film) => film!))).toBeCloseTo(0, 9);
});
