/** A kept job as text: one saved file of each version is read; what is no job of this program is told, and whole. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { fileText, MOST_FACTOR, readRecord, recordText, USUAL_FACTOR, VERSION } from '../../src/jobs/record.ts';

const saved = (version: number) => readFileSync(new URL(`saved/record-${version}.json`, import.meta.url), 'utf8');
const found = (text: string) => {
  const read = readRecord(text);
  if (!read.ok) throw new Error(read.why);
  return read.found;
};

const NEW = { unfinished: {}, first: 0, at: 0 };
const THEN = 1767600000000;

test.each([
  [1, { ...NEW, system: 'inch', factor: 900, made: null, worked: null }, 'Kept by the first'],
  [2, { ...NEW, system: 'metric', factor: 250, made: THEN, worked: THEN }, 'Kept by the second'],
  [
    3,
    {
      unfinished: { trial: { draft: { note: 'half written' }, at: 'new' } },
      first: 3,
      at: 12,
      system: 'inch',
      factor: 400,
      made: 1767500000000,
      worked: THEN,
    },
    'Kept by the third',
  ],
])('the saved file of version %i is read', (version, besides, title) => {
  const { design, ...rest } = found(saved(version));
  expect(rest).toEqual(besides);
  expect(design).toMatchObject({ title, position: 0.007, seats: [{ name: 'shallow' }, { name: 'steep' }] });
});

test('there is a saved file of this version, and what is written is read back the same', () => {
  expect(JSON.parse(saved(VERSION)).version).toBe(VERSION);
  const job = found(saved(VERSION));
  expect(found(recordText(job))).toEqual(job);
});

const design = () => JSON.parse(saved(1)).design;

test.each([
  ['damaged', saved(3).slice(0, 70), /damaged/, saved(3).slice(0, 70)],
  ['empty', '', /damaged/, ''],
  ['no job at all', '7', /damaged/, '7'],
  ['nothing', 'null', /damaged/, 'null'],
  ['without a design', '{"version":3}', /damaged/, '{"version":3}'],
  [
    'of a newer program',
    JSON.stringify({ version: VERSION + 1, design: design() }),
    /newer version/,
    fileText(design()),
  ],
  ['of no known version', JSON.stringify({ version: 'x', design: design() }), /newer version/, fileText(design())],
  [
    'of a later format',
    JSON.stringify({ design: { ...design(), conepair: 2 } }),
    /conepair/,
    fileText({ ...design(), conepair: 2 }),
  ],
  [
    'no longer valid',
    JSON.stringify({ design: { ...design(), seats: [] } }),
    /seats/,
    fileText({ ...design(), seats: [] }),
  ],
])('a text that is %s is told why, with all of it to be saved', (_, text, why, file) => {
  const read = readRecord(text);
  expect(read.ok).toBe(false);
  if (read.ok) return;
  expect(read.why).toMatch(why);
  expect(read.file.text).toBe(file);
});

test('what stands beside the design may be anything, and is then as if left out', () => {
  const job = JSON.parse(saved(3));
  const odd = { ...job, system: 'ells', factor: MOST_FACTOR + 1, unfinished: [1], made: 'once', worked: null, at: 'x' };
  expect(found(JSON.stringify(odd))).toMatchObject({
    system: 'metric',
    factor: USUAL_FACTOR,
    unfinished: {},
    made: null,
    worked: null,
    at: 0,
  });
});
