/** Every source is cited by its key in src/references.ts, in one form; the README says how many are from memory. */
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { REFERENCES } from '../src/references.ts';

const top = fileURLToPath(new URL('../', import.meta.url));
const read = (file: string) => readFileSync(join(top, file), 'utf8');
const HERE = 'tests/references.test.ts';
const files = execFileSync('git', ['ls-files', '--cached', '--others', '--exclude-standard', '--deduplicate'], {
  cwd: top,
  encoding: 'utf8',
})
  .split('\n')
  .filter((file) => /^(src\/(design|engine|report|lessons|worker|cli)|tests)\/.*\.tsx?$/.test(file) && file !== HERE);

/** The comments of a file as plain text: one between its marks, or lines with // that follow each other. */
const commentsOf = (code: string) =>
  [...code.matchAll(/\/\*[\s\S]*?\*\/|(?:(?<=^|\n)[ \t]*\/\/.*\n)+|(?<=[;,{)] )\/\/.*/g)].map(([comment]) =>
    comment
      .replace(/\*\/$/, '')
      .replace(/^\s*(\/?\*+|\/\/)/gm, '')
      .replace(/\s+/g, ' ')
      .trim(),
  );
const ALL = files.flatMap((file) => commentsOf(read(file)).map((text) => ({ file, text })));
/** KEY, a place without brackets, what of it in brackets. */
const CITED = /^([A-Za-z][\w.-]*)( [^()]+)?( \([^()]+\))?$/;
const OWN = new Set(['derived', 'practice']);
const cited = ALL.flatMap(({ file, text }) =>
  text
    .split('@source')
    .slice(1)
    .flatMap((list) => list.trim().split(/; /))
    .map((entry) => ({ file, entry, key: CITED.exec(entry)?.[1] })),
);

test('a source is a key of src/references.ts, derived or practice, and ends its comment', () => {
  const wrong = cited
    .filter(({ key }) => key === undefined || !(OWN.has(key) || Object.hasOwn(REFERENCES, key)))
    .map(
      ({ file, entry }) =>
        `${file}: “@source ${entry}”; allowed is KEY place (what of it); … with a KEY of src/references.ts, derived or practice`,
    );
  expect(cited.length).toBeGreaterThan(100);
  expect(wrong).toEqual([]);
});

test('no comment says in words of its own that something is from memory or has no source, nor names a page', () => {
  const stray = ALL.filter(({ text }) => /from memory|no source|common practice|\w\.(com|org|net)\//i.test(text)).map(
    ({ file, text }) => `${file}: “${text.slice(0, 80)} …”; say @source KEY, or @source practice`,
  );
  expect(stray).toEqual([]);
});

test('every reference is cited', () => {
  const known = new Set(cited.map(({ key }) => key));
  expect(Object.keys(REFERENCES).filter((key) => !known.has(key))).toEqual([]);
});

test('the README counts what is from memory', () => {
  const all = Object.values(REFERENCES);
  const memory = all.filter(({ seen }) => seen === 'memory').length;
  const told = /\S+ of \S+ references are from memory/.exec(read('README.md').replace(/\s+/g, ' '))?.[0];
  expect(told).toBe(`${memory} of ${all.length} references are from memory`);
});
