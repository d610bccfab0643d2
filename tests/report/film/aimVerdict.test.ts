/** The film to aim for in words: what works, what is taken over, which to believe, what helps where none works. */
import { expect, test } from 'vitest';
import type { Design } from '../../../src/design/definition.ts';
import type { Condition } from '../../../src/engine/run/limits.ts';
import { aimVerdict } from '../../../src/report/film/aimVerdict.ts';
import { type AimReport, aimedSeats, type CutPoint } from '../../../src/report/film/limits.ts';

const surface = { halfAngle: 3, diameter: 22, station: 0, from: -20, to: 0 };
const seat = (name: string, target?: number, halfAngle = 3): Design['seats'][number] => ({
  name,
  journal: { ...surface, halfAngle },
  bush: { ...surface, halfAngle, diameter: 22.005 },
  ...(target === undefined ? {} : { film: { target } }),
});
const design: Design = { conepair: 1, seats: [seat('shallow', 0.0025), seat('steep', 0.0025, 45)] };
const point = (at: number, condition: Condition): CutPoint => ({
  at,
  condition,
  journal: 30,
  bush: 25,
  leastFilm: at / 2,
  coldFilm: at / 2,
  coldPower: 5,
  power: 3,
});
const stretch = { from: 0.0016, to: 0.0063, openBelow: false, openAbove: false };
const found: AimReport = { stretch, aim: { film: 0.00318, tolerance: 0.00126 }, seats: ['shallow', 'steep'] };

test('headline and button speak of the same figures, in steps that can be read; the tolerance is never rounded up', () => {
  const metric = aimVerdict(design, [point(0.003, 'works')], found, 'metric');
  expect(metric.headline).toBe('Aim for a film of 3.20 µm ± 1.25 µm in the shallow and steep seats, set cold.');
  expect(metric.wanted).toEqual({ target: 0.0032, tolerance: 0.00125 });
  expect(metric.sentences).toEqual([
    'Between 1.60 µm and 6.30 µm it runs on a full film, cold and warm, calm, not too hot, with no more drag than a small motor turns.',
  ]);
  const inch = aimVerdict(design, [point(0.003, 'works')], found, 'inch');
  // a tenth is 2.54 µm: 1.25 and 0.496 of it, in fiftieths
  expect(inch.wanted!.target / 0.00254).toBeCloseTo(1.26, 9);
  expect(inch.wanted!.tolerance / 0.00254).toBeCloseTo(0.48, 9);
  expect(inch.headline).toMatch(/tenths/);
});

test('a film wanted that does not work: believe the run, and why', () => {
  const tight = aimVerdict(design, [], { ...found, stretch: { ...stretch, from: 0.003 } }, 'metric');
  expect(tight.sentences.join(' ')).toMatch(
    /wants 2\.50 µm in the shallow seat and 2\.50 µm in the steep seat\. Believe this: .*load, oil, speed and heat decide/,
  );
  const loose = aimVerdict(design, [], { ...found, stretch: { ...stretch, to: 0.002 } }, 'metric');
  expect(loose.sentences.join(' ')).toMatch(/Believe this/);
});

test('ends beyond which nothing was tried are told so', () => {
  const told = (change: Partial<typeof stretch>) =>
    aimVerdict(design, [], { ...found, stretch: { ...stretch, ...change } }, 'metric').sentences[0];
  expect(told({ openAbove: true })).toMatch(/^From 1\.60 µm up .* as far as was looked/);
  expect(told({ openBelow: true })).toMatch(/^Up to 6\.30 µm .* thinner was not tried/);
  expect(told({ openAbove: true, openBelow: true })).toMatch(/^Every film tried works, cold and warm/);
});

test('which film is too thin where less is cut to: the cold one, the warm one, or both', () => {
  const running: Design = {
    ...design,
    run: { speed: 600, oil: { grade: 10 }, roughness: { journal: 3e-4, bush: 4e-4 } },
  };
  const told = (coldFilm: number | null, leastFilm: number, condition: Condition = 'thin') =>
    aimVerdict(
      running,
      [point(0.001, 'seizes'), { ...point(0.0015, condition), coldFilm, leastFilm }, point(0.003, 'works')],
      found,
      'metric',
    ).sentences.slice(1);
  // three times 0.5 µm
  const than = 'thinner than the 1.50 µm that part the surfaces.';
  expect(told(0.0014, 0.0016)).toEqual([`Cut to less, the film is as it starts, cold, ${than}`]);
  expect(told(0.0016, 0.0014)).toEqual([`Cut to less, the film is once warm ${than}`]);
  expect(told(0.0014, 0.0014)).toEqual([`Cut to less, the film is cold and warm ${than}`]);
  expect(told(null, 0.0016)).toEqual([`Cut to less, the film is as it starts, cold, ${than}`]);
  expect(told(0.0016, 0.0014, 'hot')).toEqual([]);
});

test('too much drag where less is cut to is told as such, and is a reason of its own where nothing works', () => {
  const heavy = { ...point(0.0015, 'drags'), coldPower: 447 };
  const running: Design = { ...design, run: { speed: 600, oil: { grade: 10 } } };
  const cut = aimVerdict(running, [heavy, point(0.003, 'works')], found, 'metric');
  expect(cut.sentences.slice(1)).toEqual([
    'Cut to less, it takes more than the 370 W of a small lathe’s motor to turn it cold: 447 W at 1.50 µm.',
  ]);
  const none = aimVerdict(design, [heavy], { ...found, stretch: null, aim: null }, 'metric');
  expect(none.sentences).toEqual([expect.stringMatching(/^Cold, its drag is more than .*370 W.*thinner oil/)]);
});

test('where none works: the remedy for what is most in the way first, two at most, and nothing to take over', () => {
  const points = [
    ...(['thin', 'thin', 'thin'] as const).map((c, i) => point(0.003 + i / 1e3, c)),
    ...(['hot', 'hot'] as const).map((c, i) => point(0.001 + i / 1e3, c)),
    point(0.009, 'loose'),
  ];
  const verdict = aimVerdict(design, points, { ...found, stretch: null, aim: null }, 'metric');
  expect(verdict.wanted).toBeNull();
  expect(verdict.headline).toMatch(/^No film of the shallow and steep seats works, whatever/);
  expect(verdict.sentences).toHaveLength(2);
  expect(verdict.sentences[0]).toMatch(/thicker oil, more speed/);
  expect(verdict.sentences[1]).toMatch(/thinner oil, less speed/);
});

test('aimed at are the seats that want a film; else the cones; else all', () => {
  const of = (...seats: Design['seats']) => aimedSeats({ conepair: 1, seats });
  expect(of(seat('a'), seat('b', 0.002), seat('c', undefined, 0))).toEqual([false, true, false]);
  expect(of(seat('a'), seat('c', undefined, 0))).toEqual([true, false]);
  expect(of(seat('c', undefined, 0), seat('d', undefined, 0))).toEqual([true, true]);
});
