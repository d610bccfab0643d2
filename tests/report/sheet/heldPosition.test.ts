/** Where the journal stands on a sheet. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { Design } from '../../../src/design/definition.ts';
import { parseDesign } from '../../../src/design/parse.ts';
import { fitSection } from '../../../src/report/fit/section.ts';
import { heldPosition } from '../../../src/report/sheet/heldPosition.ts';

function demo(file: string): Design {
  const read = parseDesign(
    readFileSync(join(import.meta.dirname, `../../../assets/designs/${file}.conepair.json`), 'utf8'),
  );
  if (!read.ok) throw new Error(file);
  return read.design;
}

test('where it is, as long as every film is within its tolerance there', () => {
  expect(heldPosition(demo('correct'))).toEqual({ position: 0, good: true });
});

test('else in the middle of where every film is', () => {
  // The notebook’s parts stand 20 µm off the position that gives their films.
  const notebook = demo('notebook');
  const { position, good } = heldPosition(notebook);
  expect(good).toBe(true);
  expect(Math.abs(position)).toBeLessThan(0.001);
  for (const [i, { leastFilm }] of fitSection({ ...notebook, position }).seats.entries()) {
    const { target, tolerance } = notebook.seats[i]!.film!;
    expect(Math.abs(leastFilm! - target)).toBeLessThanOrEqual(tolerance!);
  }
});

test('where there is no such place it stays, and is known not to be good', () => {
  const steep = demo('steep-first');
  expect(heldPosition(steep)).toEqual({ position: steep.position, good: false });
});

test('seats that want no film, and a straight one that has its own, are good where they are', () => {
  const steep = demo('steep-first');
  expect(heldPosition({ ...steep, seats: steep.seats.map(({ film: _, ...seat }) => seat) }).good).toBe(true);
  const straight = (diameter: number): Design => ({
    conepair: 1,
    seats: [
      {
        name: 'only',
        film: { target: 0.0025, tolerance: 0.0005 },
        journal: { halfAngle: 0, diameter: 18, station: 0, from: -30, to: 0 },
        bush: { halfAngle: 0, diameter, station: 0, from: -30, to: 0 },
      },
    ],
  });
  expect(heldPosition(straight(18.005)).good).toBe(true);
  expect(heldPosition(straight(18.01)).good).toBe(false);
});
