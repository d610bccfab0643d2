import { bench, describe } from 'vitest';
import { consequencesOf } from '../src/engine/belief/consequences.ts';
import { nextFor, wholePairOf } from '../src/engine/gauging/nextReading.ts';
import {
  disturbed,
  doubleCone,
  estimated,
  noisy,
  normals,
  notebook,
  straightnessNotebook,
  UM,
} from './engine/gauging/pairs.ts';

const truth = disturbed(doubleCone(), [0.4, -0.3, -0.4, 0.5, -0.8, 0.2, 0.9, -0.6]);
const once = notebook(doubleCone(), truth);
/** Forty readings: the notebook of every surface, and as many of it read again as make forty. */
const forty = noisy([...once, ...once].slice(0, 40), normals(1));
const found = estimated(doubleCone(), forty);

describe('a notebook of 40 readings', () => {
  bench('estimate', () => {
    estimated(doubleCone(), forty);
  });
  bench('what follows, 2,000 drawn shapes', () => {
    consequencesOf(found, 10 * UM);
  });
  bench('what to read next', () => {
    nextFor(wholePairOf(found, forty), { of: 'relation' }, 10 * UM);
  });
});

describe.each([10, 30, 100, 300])('straightness at %i stations of one surface besides', (stations) => {
  const readings = noisy(straightnessNotebook(stations).readings, normals(2));
  const shape = estimated(doubleCone(), readings);
  bench('estimate', () => {
    estimated(doubleCone(), readings);
  });
  bench('what follows, 2,000 drawn shapes', () => {
    consequencesOf(shape, 10 * UM);
  });
  bench('what to read next', () => {
    nextFor(wholePairOf(shape, readings), { of: 'relation' }, 10 * UM);
  });
});
