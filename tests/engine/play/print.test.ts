/** Marking blue: each fault leaves its known print. mm, degrees in. */

import { describe, expect, it, vi } from 'vitest';
import type { Surface } from '../../../src/design/definition.ts';
import type { SeatInput } from '../../../src/engine/contact/fit.ts';
import { type PrintMap, printOf } from '../../../src/engine/play/print.ts';
import { type PrintShape, printShape } from '../../../src/engine/play/printShape.ts';
import { toSeats } from '../../../src/report/convert.ts';
import { ALL, coneSeat } from './designs.ts';

// a busy machine is no fault
vi.setConfig({ testTimeout: 60_000 });

const BLUE = 2e-6;

/** A true pair of 20°, either surface changed. */
function pair(change: { journal?: Partial<Surface>; bush?: Partial<Surface> }): SeatInput[] {
  const surface: Surface = { halfAngle: 20, diameter: 30, station: -5, from: -10, to: 0 };
  return toSeats({
    conepair: 1,
    seats: [
      {
        name: 'cone',
        journal: { ...surface, from: -11, to: 1, ...change.journal },
        bush: { ...surface, ...change.bush },
      },
    ],
  });
}

function prints(
  seats: SeatInput[],
  turns: number,
  name = 'cone',
): { journal: PrintShape; bush: PrintShape; maps: PrintMap[] } {
  const print = printOf(seats, ALL, { thickness: BLUE, turns });
  if (print.status !== 'solved') throw new Error(print.status);
  const of = (part: 'journal' | 'bush') =>
    printShape(
      print.maps.find((m) => m.part === part && m.seat === name)!,
      BLUE,
      seats.find((s) => s.name === name)!.bush.halfAngle >= 0,
    );
  return { journal: of('journal'), bush: of('bush'), maps: print.maps };
}

const microns = (values: number[]): [number, number][] =>
  values.map((value, i) => [-10 + (10 * i) / (values.length - 1), value / 1000]);

describe('one press of a true round', () => {
  it('a pair that agrees prints all over', () => {
    const { bush } = prints(pair({}), 1);
    expect(bush).toMatchObject({ word: 'whole', covered: 1, patches: 0, oneSided: expect.closeTo(0, 12) });
  });

  it.each<[PrintShape['word'], Parameters<typeof pair>[0]]>([
    ['smallEnd', { journal: { halfAngle: 19.95 } }],
    ['largeEnd', { journal: { halfAngle: 20.05 } }],
    ['bothEnds', { bush: { profile: microns([0, -6, -8, -6, 0]) } }],
    ['band', { bush: { profile: microns([-20, -6, 0, -6, -20]) } }],
    // worn to a bell mouth at the nose, where it is large
    ['smallEnd', { bush: { profile: microns([0, 0, -3, -8, -15]) } }],
  ])('%s', (word, change) => {
    const { bush } = prints(pair(change), 1);
    expect(bush.word).toBe(word);
    expect(bush.patches).toBe(0);
  });

  it('what the other part does not reach is no bare end', () => {
    // the journal ends 2 mm short of the mouth
    const { bush } = prints(pair({ journal: { to: -2 } }), 1);
    expect(bush).toMatchObject({ word: 'whole', coveredOverlap: 1, bare: { small: 0, middle: 0, large: 0 } });
    expect(bush.covered).toBeCloseTo(bush.overlap, 12);
    expect(bush.overlap).toBeGreaterThan(0.7);
    expect(bush.overlap).toBeLessThan(0.85);
  });

  it('the bare end is as long as the film is thicker than the blue, on an opposed cone too', () => {
    const difference = 0.05;
    const bare = 1 - 0.002 / Math.tan((difference * Math.PI) / 180) / (10 / Math.cos((20 * Math.PI) / 180));
    const { bush } = prints(pair({ journal: { halfAngle: 20 - difference } }), 1);
    expect(Math.abs(bush.bare.large - bare)).toBeLessThan(1 / 40);
    expect(bush.bare.small).toBe(0);
    expect(bush.films!.small).toBeCloseTo(0, 12);
    expect(bush.films!.large).toBeCloseTo(
      (10e-3 / Math.cos((20 * Math.PI) / 180)) * Math.tan((difference * Math.PI) / 180),
      7,
    );
  });

  it('the print of a mismatch ends where the film grows past the blue', () => {
    const difference = 0.05;
    const { bush } = prints(pair({ journal: { halfAngle: 20 - difference } }), 1);
    // touches at the rear end; along the line the film grows by its length times the tangent of the difference
    const length = 0.002 / Math.tan((difference * Math.PI) / 180);
    expect(bush.from! * 1000).toBeCloseTo(-10, 6);
    expect(Math.abs(bush.to! * 1000 - (-10 + length * Math.cos((20 * Math.PI) / 180)))).toBeLessThan(10 / 47);
  });

  it('an opposed cone has its small end at the nose', () => {
    const seats = toSeats({
      conepair: 1,
      seats: [
        {
          name: 'front',
          journal: { halfAngle: 45, diameter: 30, station: 0, from: 0, to: 4 },
          bush: { halfAngle: 45, diameter: 30, station: 0, from: 0, to: 4 },
        },
        {
          name: 'rear',
          journal: { halfAngle: -19.95, diameter: 30, station: -40, from: -50, to: -40 },
          bush: { halfAngle: -20, diameter: 30, station: -40, from: -50, to: -40 },
        },
      ],
    });
    const { bush } = prints(seats, 1, 'rear');
    expect(bush.word).toBe('smallEnd');
    expect(bush.to! * 1000).toBeCloseTo(-40, 6);
  });
});

describe('out of round', () => {
  const lobes = [{ count: 3, amplitude: 0.004, phase: 90 }];

  it('one press of a lobed journal: as many patches as lobes, on its crests, on both parts alike', () => {
    const { journal, bush, maps } = prints(pair({ journal: { lobes } }), 1);
    expect(bush).toMatchObject({ word: 'lobes', patches: 3 });
    expect(journal).toMatchObject({ word: 'lobes', patches: 3 });
    const map = maps.find((m) => m.part === 'bush')!;
    const row = map.film.subarray(20 * map.columns, 21 * map.columns);
    // a crest at 90°, and every 120° from there
    const nearest = (row.indexOf(Math.min(...row)) * 360) / map.columns;
    expect([90, 210, 330]).toContain(nearest);
  });

  it('turned, a lobed journal keeps its patches and smears a ring in the bush; a lobed bush the other way', () => {
    const byJournal = prints(pair({ journal: { lobes } }), 48);
    expect(byJournal.journal).toMatchObject({ word: 'lobes', patches: 3 });
    expect(byJournal.bush).toMatchObject({ word: 'whole', patches: 0 });
    const byBush = prints(pair({ bush: { lobes } }), 48);
    expect(byBush.bush).toMatchObject({ word: 'lobes', patches: 3 });
    expect(byBush.journal).toMatchObject({ patches: 0 });
    expect(byBush.journal.covered).toBeGreaterThan(0.7);
  });

  it('a turned journal comes at least as near everywhere as one that is not', () => {
    const seats = pair({ journal: { lobes }, bush: { lobes: [{ count: 2, amplitude: 0.002, phase: 10 }] } });
    const [once, turned] = [prints(seats, 1).maps, prints(seats, 24).maps];
    once.forEach((map, i) => {
      map.film.forEach((film, k) => {
        expect(turned[i]!.film[k]!).toBeLessThanOrEqual(film);
      });
    });
  });
});

it('a second seat out of line tilts the journal: the cone prints on opposite sides at its two ends', () => {
  // the sleeve's metal leans to one side (a lobe of count 1), with no room to spare; a narrow one lets the journal tilt
  const sleeve = (from: number) =>
    coneSeat('rear', 0, 19.999, 20, [from, -70], [-85, -55], { bush: [{ count: 1, amplitude: 0.03, phase: 0 }] });
  const narrow = prints([...pair({}), sleeve(-71)], 1).bush;
  expect(narrow.word).toBe('crossed');
  expect(narrow.covered).toBeLessThan(0.8);
  // a wide one keeps it parallel, and presses the cone over
  const wide = prints([...pair({}), sleeve(-90)], 1).bush;
  expect(wide.word).toBe('oneSide');
  expect(Math.cos(wide.side)).toBeLessThan(-0.99);
});

it('the film of a map is that of the pose', () => {
  const seats = pair({ journal: { lobes: [{ count: 3, amplitude: 0.001, phase: 15 }], halfAngle: 20.02 } });
  const print = printOf(seats, ALL, { thickness: BLUE, turns: 1, rows: 7, columns: 36 });
  if (print.status !== 'solved') throw new Error(print.status);
  const map = print.maps.find((m) => m.part === 'bush')!;
  // nothing is pressed in, something touches, and no place of the bush is left out
  expect(Math.min(...map.film)).toBeGreaterThan(-1e-12);
  expect(Math.min(...map.film)).toBeLessThan(1e-7);
  expect(map.film.every(Number.isFinite)).toBe(true);
  expect(map.stations[0]! * 1000).toBeCloseTo(-10, 9);
});

it('nothing to stop the journal: no print', () => {
  expect(printOf([coneSeat('plain', 0, 19.99, 20, [-20, 0])], ALL, { thickness: BLUE, turns: 1 }).status).toBe(
    'unbounded',
  );
});
