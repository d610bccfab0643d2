import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { readCall } from '../../src/cli/call.ts';
import { type Report, report } from '../../src/report/definition.ts';
import { SECTION_NAMES } from '../../src/report/report.ts';
import { LONG } from '../long.ts';

const top = fileURLToPath(new URL('../../', import.meta.url));
const demos = readdirSync(join(top, 'assets/designs'))
  .filter((name) => name.endsWith('.conepair.json'))
  .map((name) => `assets/designs/${name}`);
const demo = 'assets/designs/steep-first.conepair.json';

function solve(args: string[], input = '') {
  const { status, stdout, stderr } = spawnSync(process.execPath, ['--import', 'tsx', 'src/cli/solve.ts', ...args], {
    cwd: top,
    input,
    encoding: 'utf8',
  });
  const lines = stdout.split('\n');
  expect(lines.pop()).toBe('');
  return { status, stderr, reports: lines.map((line) => report.parse(JSON.parse(line)) as Report) };
}

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'conepair-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function written(name: string, text: string): string {
  const file = join(folder, name);
  writeFileSync(file, text);
  return file;
}

describe('solve', () => {
  // The films of them all are for the long run: those take minutes, and .ci/run asks for them too.
  test('solves every demo: status 0, one line a file in the order named, nothing on standard error', () => {
    const still = SECTION_NAMES.filter((name) => name !== 'film');
    const { status, stderr, reports } = solve(LONG > 1 ? demos : ['--only', still.join(), ...demos]);
    expect(status).toBe(0);
    expect(stderr).toBe('');
    expect(demos.length).toBeGreaterThanOrEqual(7);
    expect(reports.map((r) => r.file)).toEqual(demos);
    for (const r of reports) {
      expect(r.errors).toBeUndefined();
      expect(r.title).toBeTruthy();
      expect(r.fit?.seats.length).toBeGreaterThanOrEqual(2);
    }
  }, 180_000);

  test('names what is wrong with a bad file, ends with 1 and still solves the others', () => {
    const broken = JSON.parse(readFileSync(join(top, demo), 'utf8'));
    broken.seats[0].journal.from = 5;
    const bad = written('bad.conepair.json', JSON.stringify(broken));
    const { status, stderr, reports } = solve(['--only', 'fit', bad, demo]);
    expect(status).toBe(1);
    expect(reports.map((r) => r.file)).toEqual([bad, demo]);
    expect(reports[0]!.fit).toBeUndefined();
    expect(reports[0]!.errors!.map((e) => e.path)).toContain('seats[0].journal.to');
    expect(reports[1]!.errors).toBeUndefined();
    expect(reports[1]!.fit?.first).toBe('steep');
    // told once, in the JSON; standard error only says where to look
    const { length } = reports[0]!.errors!;
    expect(stderr).toBe(`${bad}: ${length} ${length === 1 ? 'error' : 'errors'}, see its line\n`);
  });

  test('no JSON, an empty file, no object, another version: status 1 and an error of each, no stack', () => {
    const odd = ['{"conepair": 1,', '', '[]', '{"conepair": 2, "seats": []}'];
    const { status, stderr, reports } = solve(odd.map((text, i) => written(`odd${i}.json`, text)));
    expect(status).toBe(1);
    expect(reports).toHaveLength(odd.length);
    for (const { errors } of reports) expect(errors!.length).toBeGreaterThan(0);
    expect(stderr).not.toMatch(/\n\s+at /);
  });

  test('a file that is not there is an error of that file', () => {
    const { status, reports } = solve([join(folder, 'missing.json'), demo]);
    expect(status).toBe(1);
    expect(reports[0]!.errors).toEqual([{ path: '', message: 'cannot be read: there is no such file' }]);
    // asked for nothing less, every section of what it has
    for (const name of ['fit', 'play', 'film', 'cut'] as const) expect(reports[1]![name]).toBeDefined();
  });

  test('a design that takes too long is given up in its own line, and the others are solved', () => {
    const { status, stderr, reports } = solve(['--seconds', '0.001', demo]);
    expect(status).toBe(1);
    expect(reports[0]!.errors).toEqual([
      {
        path: '',
        message: 'given up: it takes more than 0.001 s to solve (--seconds allows more, --only asks for less)',
      },
    ]);
    expect(stderr).toBe(`${demo}: given up after 0.001 s, see its line\n`);
    expect(solve(['--seconds=100', '--only', 'fit', demo]).status).toBe(0);
  });

  test('nested a hundred thousand deep, a file without end, bytes that are no text: each an error of its own, the last is solved', () => {
    const deep = written('deep.json', `{"conepair":1,"seats":${'['.repeat(100_000)}${']'.repeat(100_000)}}`);
    const bytes = written('bytes.json', '\u0000\uFFFF{');
    const { status, reports } = solve([
      '--only',
      'fit',
      deep,
      '/dev/zero',
      bytes,
      written('newer.json', '{"conepair": 2, "seats": 7}'),
      demo,
    ]);
    expect(status).toBe(1);
    expect(reports.map(({ errors }) => errors?.[0]?.message)).toEqual([
      expect.stringContaining('a list of 1'),
      'cannot be read: it has more than 130 MB, and no design is so long',
      expect.stringContaining('not JSON: line 1, column 1'),
      expect.stringContaining('a newer program made this file'),
      undefined,
    ]);
    expect(reports[4]!.fit).toBeDefined();
  });

  test('reads UTF-16 with a byte-order mark', () => {
    const file = join(folder, 'wide.json');
    writeFileSync(file, Buffer.from(`\uFEFF${readFileSync(join(top, demo), 'utf8')}`, 'utf16le'));
    const { status, reports } = solve(['--only', 'fit', file]);
    expect(status).toBe(0);
    expect(reports[0]!.title).toMatch(/^Instrument lathe/);
  });

  test('a reader that has read enough ends it quietly', () => {
    const files = Array.from({ length: 30 }, () => demo).join(' ');
    const { status, stdout, stderr } = spawnSync(
      'bash',
      ['-c', `set -o pipefail; "${process.execPath}" --import tsx src/cli/solve.ts --only fit ${files} | head -1`],
      { cwd: top, encoding: 'utf8' },
    );
    expect(status).toBe(0);
    expect(stdout.split('\n').filter(Boolean)).toHaveLength(1);
    expect(stderr).toBe('');
  });

  test('misuse: status 2, how to use it on standard error, nothing on standard output', () => {
    const { status, stderr, reports } = solve(['--only', 'weather', demo]);
    expect(status).toBe(2);
    expect(reports).toEqual([]);
    expect(stderr).toContain('found "weather"');
    expect(stderr).toContain('usage:');
  });

  test.each([
    ['no file', [], /no file/],
    ['--seconds of nothing', ['--seconds', '0', demo], /found "0"/],
    ['--seconds of a word', ['--seconds=soon', demo], /found "soon"/],
    ['--seconds with nothing after it', [demo, '--seconds'], /found nothing/],
    ['an unknown option', ['--fast', demo], /unknown option --fast/],
    ['an unknown section', ['--only', 'weather', demo], /found "weather"/],
    ['--only with nothing after it', ['--only'], /found nothing/],
  ])('misuse (%s) is told', (_, args, told) => {
    expect(readCall(args)).toMatch(told);
  });

  test('--help: every section and every exit status, on standard output, status 0', () => {
    const { status, stdout, stderr } = spawnSync(process.execPath, ['--import', 'tsx', 'src/cli/solve.ts', '--help'], {
      cwd: top,
      encoding: 'utf8',
    });
    expect(status).toBe(0);
    expect(stderr).toBe('');
    for (const name of SECTION_NAMES) expect(stdout).toMatch(new RegExp(`^ +${name} +\\S.{20}`, 'm'));
    expect(stdout).toMatch(/Exit status: 0 .*; 1 .*; 2 /);
    expect(stdout).toContain('usage:');
  });

  test('- reads standard input', () => {
    const { status, reports } = solve(['--only', 'fit', '-'], readFileSync(join(top, demo), 'utf8'));
    expect(status).toBe(0);
    expect(reports).toHaveLength(1);
    expect(reports[0]!.file).toBe('-');
    expect(reports[0]!.fit).toEqual(solve(['--only', 'fit', demo]).reports[0]!.fit);
  });

  test('--only=fit limits the sections, as --only fit does', () => {
    const { status, reports } = solve(['--only=fit', demo]);
    expect(status).toBe(0);
    expect(Object.keys(reports[0]!).sort()).toEqual(['conepair', 'file', 'fit', 'title']);
  });
});
