/** Jobs on the shelf: two checked slots, steps that join on, lists, copies and named versions. */
import { expect, test } from 'vitest';
import type { Design } from '../../src/design/definition.ts';
import { createHistory } from '../../src/jobs/history.ts';
import type { OpenedJob } from '../../src/jobs/record.ts';
import { createShelf, type Opened } from '../../src/jobs/shelf.ts';
import { memoryTables, type Row, type Tables } from '../../src/jobs/tables.ts';

const surface = { halfAngle: 3, diameter: 22, station: 0, from: -20, to: 0 };
const design = (position: number): Design => ({
  conepair: 1,
  title: 'mine',
  seats: [{ name: 'seat', journal: surface, bush: surface }],
  position,
});
const state = (position: number, first = 0, at = 0): OpenedJob => ({
  design: design(position),
  system: 'metric',
  factor: 400,
  unfinished: {},
  made: 1,
  worked: 2,
  first,
  at,
});
const opened = (answer: Opened) => {
  if (!answer.ok) throw new Error('not open');
  return answer.job;
};

/** A job worked on step by step, saved after each: positions 1 to `steps`. */
async function worked(steps: number) {
  const tables = memoryTables();
  const shelf = createShelf(tables);
  const history = createHistory();
  let place = { slot: 1 as 0 | 1, turn: 0 };
  for (let i = 1; i <= steps; i++) {
    history.push(design(i - 1), design(i));
    place = await shelf.save('j', state(i, history.first, history.at), history, place);
  }
  return { tables, shelf };
}

type Slot = Row & { turn: number; text: string };
const slots = async (tables: Tables) =>
  ((await tables.all('slots', 'j')) as Slot[]).sort((a, b) => b.turn - a.turn) as [Slot, Slot];

const DAMAGES: [string, (row: Slot) => Row][] = [
  ['a character of its text is another', (row) => ({ ...row, text: row.text.replace('mine', 'mime') })],
  ['its end is missing', (row) => ({ ...row, text: row.text.slice(0, -9) })],
  ['its checksum is another', (row) => ({ ...row, sum: 7 }) as Row],
  ['it has no text', ({ text: _, ...row }) => row],
];

test.each(DAMAGES)(
  'where in the newest state %s, the one before it is open, that is said, and work goes on',
  async (_, damage) => {
    const { tables, shelf } = await worked(5);
    const [newest] = await slots(tables);
    await tables.write([{ table: 'slots', put: damage(newest) }]);
    const job = opened(await shelf.open('j'));
    expect(job.found.design.position).toBe(4);
    expect(job.older?.why).toMatch(/damaged/);
    // Undo joins on to that state.
    expect(job.history.undo(job.found.design).position).toBe(3);
    job.history.redo(design(3));
    job.history.push(job.found.design, design(40));
    const place = await shelf.save('j', state(40, 0, job.history.at), job.history, job.place);
    const again = opened(await shelf.open('j'));
    expect(again.found.design.position).toBe(40);
    expect(again.older).toBeNull();
    expect(place.turn).toBeGreaterThan(newest.turn);
  },
);

test('a damaged slot that is not the newest is nothing to speak of', async () => {
  const { tables, shelf } = await worked(5);
  const [, before] = await slots(tables);
  await tables.write([{ table: 'slots', put: { ...before, text: 'x' } as Row }]);
  expect(opened(await shelf.open('j'))).toMatchObject({ older: null, found: { design: { position: 5 } } });
});

test('each save leaves the one before it whole', async () => {
  const { tables } = await worked(5);
  const [newest, before] = await slots(tables);
  expect(JSON.parse(newest.text).design.position).toBe(5);
  expect(JSON.parse(before.text).design.position).toBe(4);
});

test('where both states are damaged the job is told as it is, and nothing of it is touched', async () => {
  const { tables, shelf } = await worked(2);
  for (const slot of await slots(tables))
    await tables.write([{ table: 'slots', put: { ...slot, text: '{"design' } as Row }]);
  const answer = await shelf.open('j');
  expect(answer).toMatchObject({
    ok: false,
    id: 'j',
    why: 'it is damaged',
    file: { name: 'mine.txt', text: '{"design' },
  });
  expect(await slots(tables)).toHaveLength(2);
  expect(await shelf.open('nobody')).toEqual({ ok: false, id: null });
});

test('where a step is damaged the history begins after it', async () => {
  const { tables, shelf } = await worked(6);
  const row = (await tables.get('steps', 'j', 2)) as Row & { text: string };
  await tables.write([{ table: 'steps', put: { ...row, text: '[]' } as Row }]);
  const { history, found } = opened(await shelf.open('j'));
  expect([history.first, history.at]).toEqual([3, 6]);
  let now = found.design;
  for (let i = 5; i >= 3; i--) {
    now = history.undo(now);
    expect(now.position).toBe(i);
  }
  expect(history.undo(now)).toBe(now);
});

test('a save of a job with 300 steps writes one step', async () => {
  const written: number[] = [];
  const tables = memoryTables();
  const counting: Tables = {
    ...tables,
    write: (changes) => {
      written.push(changes.filter((change) => 'put' in change && change.table === 'steps').length);
      return tables.write(changes);
    },
  };
  const shelf = createShelf(counting);
  const history = createHistory();
  let place = { slot: 1 as 0 | 1, turn: 0 };
  for (let i = 1; i <= 300; i++) history.push(design(i - 1), design(i));
  place = await shelf.save('j', state(300, 0, 300), history, place);
  history.push(design(300), design(301));
  await shelf.save('j', state(301, 0, 301), history, place);
  expect(written).toEqual([300, 1]);
});

test('the list tells title, dates, size and counts; put away, deleted and brought back are of the list alone', async () => {
  const { tables, shelf } = await worked(3);
  const [head] = await shelf.heads();
  expect(head).toMatchObject({ id: 'j', title: 'mine', made: 1, worked: 2, seats: 1, readings: 0, trials: 0 });
  expect(head!.size).toBe((await slots(tables))[0].text.length);
  await shelf.putAway('j', true);
  await shelf.delete('j', 77);
  expect(await shelf.heads()).toMatchObject([{ away: true, deleted: 77, title: 'mine' }]);
  await shelf.delete('j', null);
  expect(await shelf.heads()).toMatchObject([{ away: true, deleted: null }]);
  expect(opened(await shelf.open('j')).found.design.position).toBe(3);
  await shelf.remove(['j']);
  expect(await shelf.heads()).toEqual([]);
  expect(await tables.all('steps')).toEqual([]);
});

test('versions are named, listed in their order, and taken off one by one; a damaged one is left out', async () => {
  const { tables, shelf } = await worked(1);
  await shelf.nameVersion('j', 'as measured', design(1), 10);
  await shelf.nameVersion('j', 'after first grind', design(2), 20);
  await shelf.nameVersion('j', 'lapped', design(3), 30);
  expect((await shelf.versions('j')).map(({ name, made, design: d }) => [name, made, d.position])).toEqual([
    ['as measured', 10, 1],
    ['after first grind', 20, 2],
    ['lapped', 30, 3],
  ]);
  await shelf.dropVersion('j', 1);
  await shelf.nameVersion('j', 'run in', design(4), 40);
  expect((await shelf.versions('j')).map(({ name }) => name)).toEqual(['as measured', 'lapped', 'run in']);
  const row = (await tables.get('versions', 'j', 2)) as Row & { text: string };
  await tables.write([{ table: 'versions', put: { ...row, text: row.text.slice(1) } as Row }]);
  expect((await shelf.versions('j')).map(({ name }) => name)).toEqual(['as measured', 'run in']);
});
