/** Every place of a design that the editor of lessons offers is said in words, and no two of them alike. */
import { readdirSync } from 'node:fs';
import { expect, test } from 'vitest';
import { hasNumberAt } from '../../src/lessons/deal.ts';
import { placesOf, placeWords } from '../../src/lessons/places.ts';
import { exampleDesign } from './lessons.ts';

const files = readdirSync(new URL('../../assets/designs', import.meta.url)).filter((file) => file.endsWith('.json'));

test.each(files)('%s', (file) => {
  const design = exampleDesign(file)!;
  const places = placesOf(design);
  expect(places.length).toBeGreaterThan(10);
  expect(places[0]![0] === 'position' || design.position === undefined).toBe(true);
  for (const [path, words] of places) {
    expect(hasNumberAt(design, path)).toBe(true);
    expect(words).not.toMatch(/[[\]_]|\w\.\w|[a-z][A-Z]/);
    if (/\W/.test(path)) expect(words).not.toBe(path);
  }
  expect(new Set(places.map(([, words]) => words)).size).toBe(places.length);
});

test('of which seat and part, and what of it', () => {
  const design = exampleDesign('correct.conepair.json')!;
  expect(placeWords(design, 'seats[1].bush.halfAngle')).toBe('steep bush: half angle');
  expect(placeWords(design, 'seats[0].film.target')).toBe('shallow film: film wanted');
  expect(placeWords(design, 'run.speed')).toBe('run: speed');
  expect(placesOf(design).map(([path]) => path)).not.toContain('conepair');
});
