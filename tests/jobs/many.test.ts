/** Several jobs in one file: there and back whole, beside what is here; all or none where something is wrong. */
import { expect, test } from 'vitest';
import type { Design } from '../../src/design/definition.ts';
import type { Keeper } from '../../src/jobs/keeper.ts';
import { fileOfJobs, readJobs, takeIn } from '../../src/jobs/many.ts';
import { isFileOfJobs, type OpenedJob } from '../../src/jobs/record.ts';
import { createShelf } from '../../src/jobs/shelf.ts';
import { memoryTables, type Row } from '../../src/jobs/tables.ts';

const surface = { halfAngle: 3, diameter: 22, station: 0, from: -20, to: 0 };
const found = (title: string): OpenedJob => {
  const design: Design = { conepair: 1, title, seats: [{ name: 'seat', journal: surface, bush: surface }] };
  return { design, system: 'inch', factor: 250, unfinished: { entry: '1' }, made: 5, worked: 7, first: 0, at: 0 };
};

/** A device with its own names; as much of a keeper as moving jobs asks for. */
function deviceOf(prefix: string) {
  let names = 0;
  const shelf = createShelf(memoryTables());
  return { shelf, device: { newName: () => `${prefix}${++names}` } } as unknown as Keeper;
}

async function filled() {
  const keeper = deviceOf('a');
  await keeper.shelf.add(['one', 'two', 'gone'].map((title) => ({ id: title, found: found(title) })));
  await keeper.shelf.nameVersion('two', 'as measured', found('two').design, 11);
  await keeper.shelf.delete('gone', 9);
  return keeper;
}

test('all that were not deleted, with units, forms and named versions, beside what is there already', async () => {
  const { text, jobs, left } = await fileOfJobs(await filled());
  expect([jobs, left]).toEqual([2, []]);
  expect(isFileOfJobs(text)).toBe(true);
  const other = deviceOf('b');
  await other.shelf.add([{ id: 'one', found: found('another with that name') }]);
  const read = readJobs(text);
  if (!read.ok) throw new Error(read.errors[0]!.message);
  await takeIn(other, read.jobs);
  const heads = await other.shelf.heads();
  expect(heads.map(({ title }) => title).sort()).toEqual(['another with that name', 'one', 'two']);
  const two = heads.find(({ title }) => title === 'two')!.id;
  const opened = await other.shelf.open(two);
  expect(opened.ok && opened.job.found).toEqual(found('two'));
  expect(await other.shelf.versions(two)).toMatchObject([
    { name: 'as measured', made: 11, design: found('two').design },
  ]);
});

test('a job that was put away is put away there too; one that cannot be read is left out by name', async () => {
  const keeper = await filled();
  await keeper.shelf.putAway('one', true);
  await keeper.shelf.add([{ id: 'broken', found: found('worn spindle') }]);
  for (const slot of await keeper.shelf.tables.all('slots', 'broken'))
    await keeper.shelf.tables.write([{ table: 'slots', put: { ...(slot as Row), text: '{"des' } as Row }]);
  const { text, jobs, left } = await fileOfJobs(keeper);
  expect([jobs, left]).toEqual([2, ['worn spindle']]);
  const read = readJobs(text);
  if (!read.ok) throw new Error(read.errors[0]!.message);
  const other = deviceOf('b');
  await takeIn(other, read.jobs);
  const away = (await other.shelf.heads()).map(({ title, away: put }) => [title, put]).sort();
  expect(away).toEqual([
    ['one', true],
    ['two', false],
  ]);
});

test('more than a file of jobs can hold is not looked into', () => {
  expect(readJobs('x'.repeat(64_000_001))).toMatchObject({
    ok: false,
    errors: [{ message: 'the file has 64000001 characters; a file of jobs has 64000000 at most' }],
  });
});

test('a bad job is left in its file and named, with its title; the sound ones are taken in', async () => {
  const { text } = await fileOfJobs(await filled());
  const raw = JSON.parse(text);
  const bad = { ...raw.jobs[1].design, title: 'worn spindle' };
  bad.seats = [{ ...bad.seats[0], journal: { ...bad.seats[0].journal, diameter: -3 } }, ...bad.seats.slice(1)];
  raw.jobs[1] = { ...raw.jobs[1], design: bad, versions: [] };
  const read = readJobs(JSON.stringify(raw));
  if (!read.ok) throw new Error(read.errors[0]!.message);
  expect(read.errors).toEqual([
    { path: 'jobs[1] “worn spindle”', message: expect.stringMatching(/diameter.*save it there once more/) },
  ]);
  const other = deviceOf('b');
  await takeIn(other, read.jobs);
  expect((await other.shelf.heads()).map(({ title }) => title)).toEqual([raw.jobs[0].design.title]);
});

test('where no job is sound nothing is taken, and every one is named', async () => {
  const { text } = await fileOfJobs(await filled());
  const raw = JSON.parse(text);
  raw.jobs[0].versions = [{ name: 3 }];
  raw.jobs[1] = null;
  const read = readJobs(JSON.stringify(raw));
  expect(read.ok ? [] : read.errors.map(({ path }) => path)).toEqual([
    `jobs[0] “${raw.jobs[0].design.title}”.versions[0]`,
    'jobs[1]',
  ]);
});

test('a job nested however deep is damaged, and the sound one beside it is taken in', async () => {
  const { text } = await fileOfJobs(await filled());
  const deep = `${'['.repeat(100_000)}${']'.repeat(100_000)}`;
  for (const bad of [deep, `{"version":3,"design":{"conepair":1,"seatz":${deep}}}`]) {
    const read = readJobs(text.replace('"jobs":[', `"jobs":[${bad},`));
    expect(read.ok && read.jobs).toHaveLength(2);
    expect(read.ok && read.errors).toEqual([{ path: 'jobs[0]', message: expect.stringMatching(/^it is damaged\. /) }]);
  }
});

test('cut off anywhere, of a newer program, or no list: said, and nothing is read', async () => {
  const { text } = await fileOfJobs(await filled());
  const messageOf = (some: string) => {
    const read = readJobs(some);
    return read.ok ? '' : read.errors[0]!.message;
  };
  for (let length = 20; length < text.length - 2; length += 97)
    expect(messageOf(text.slice(0, length))).toMatch(/not whole.*Save it once more/);
  expect(messageOf('{"conepairJobs":2,"jobs":[]}')).toMatch(/found 2; .* version 1: take a newer one/);
  expect(messageOf('{"conepairJobs":1,"jobs":{}}')).toMatch(/list of at most 500/);
  expect(messageOf(`{"conepairJobs":1,"jobs":[${'0,'.repeat(500)}0]}`)).toMatch(/list of at most 500/);
});

test('a design is no file of jobs', () => {
  expect(isFileOfJobs('{"conepair":1,"notes":"\\"conepairJobs\\":1"}')).toBe(false);
  expect(isFileOfJobs('\uFEFF\n { "conepairJobs" : 1')).toBe(true);
});
