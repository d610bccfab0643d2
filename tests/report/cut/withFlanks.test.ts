/**
 * The flank of a tool off the centre in the design that is drawn after the cut: the exact hyperbola, and what it does
 * to the film.
 */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { Design } from '../../../src/design/definition.ts';
import { cutSection } from '../../../src/report/cut/section.ts';
import { designWithCut, withFlanks } from '../../../src/report/cut/withCut.ts';
import { fitSection } from '../../../src/report/fit/section.ts';

const demo = JSON.parse(
  readFileSync(new URL('../../../assets/designs/steep-first.conepair.json', import.meta.url), 'utf8'),
) as Design;
const drawn = (toolHeight: number) => {
  const design = { ...demo, cut: { ...demo.cut!, machine: { ...demo.cut!.machine, toolHeight } } } as Design;
  const cut = cutSection(design)!;
  return { cut, after: designWithCut(design, cut), ...withFlanks(designWithCut(design, cut), cut) };
};

test('a tool a millimetre off leaves r = √((r₀ + Z tan a)² + k²), and the film follows it', () => {
  const { cut, after, design, shown } = drawn(1);
  expect(shown).toBe(true);
  const { journal } = design.seats[1]!;
  const profile = journal.profile!;
  expect(profile.length).toBeGreaterThan(8);
  // Against the hyperbola itself, up to the one constant and the one slope that gauging and setting take out.
  const [first, last] = [profile[0]!, profile[profile.length - 1]!];
  const a = (journal.halfAngle * Math.PI) / 180;
  const straight = (z: number) => journal.diameter / 2 + (z - journal.station) * Math.tan(a);
  const hyperbola = (z: number) => (Math.sqrt(straight(z) ** 2 + 1) - straight(z)) * Math.cos(a);
  const chord = (z: number, of: (z: number) => number) =>
    of(first[0]) + ((of(last[0]) - of(first[0])) * (z - first[0])) / (last[0] - first[0]);
  for (const [z, deviation] of profile) {
    const hollow = deviation - (first[1] + ((last[1] - first[1]) * (z - first[0])) / (last[0] - first[0]));
    expect(Math.abs(hollow - (hyperbola(z) - chord(z, hyperbola)))).toBeLessThan(2e-5);
  }
  const films = (d: Design) => fitSection(d).seats[1]!;
  expect(films(after).leastFilm).toBeCloseTo(cut.films.steep!, 9);
  const proudest = Math.max(...profile.map(([, deviation]) => deviation));
  expect(films(design).leastFilm).toBeCloseTo(cut.films.steep! - proudest, 5);
});

test('a flank nobody would see is left straight', () => {
  const { design, after, shown } = drawn(0.02);
  expect(shown).toBe(false);
  expect(design.seats).toEqual(after.seats);
});
