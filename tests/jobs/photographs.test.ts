/** Photographs on the device: kept whole, shared by copies, and swept only when nothing names them. */
import { expect, test } from 'vitest';
import { photographsOf } from '../../src/jobs/photographs.ts';
import { memoryTables, type Row } from '../../src/jobs/tables.ts';

const DAY = 24 * 3_600_000;
const photograph = (made: number) => ({
  blob: new Blob(['picture'], { type: 'image/jpeg' }),
  width: 4,
  height: 3,
  made,
});

test('what is put is got back; what is not there, or damaged, is none', async () => {
  const tables = memoryTables();
  const photographs = photographsOf(tables);
  await photographs.put('a', photograph(1));
  const found = await photographs.get('a');
  expect(found).toMatchObject({ width: 4, height: 3 });
  expect(await found!.blob.text()).toBe('picture');
  expect(await photographs.get('b')).toBeNull();
  await tables.write([{ table: 'photographs', put: { job: 'c', n: 0, blob: 'no picture' } as Row }]);
  expect(await photographs.get('c')).toBeNull();
});

test('swept: what is a day old and stands in no job, history, version or what was set aside', async () => {
  const tables = memoryTables();
  const photographs = photographsOf(tables);
  const places = ['slots', 'steps', 'versions', 'aside'] as const;
  for (const name of [...places, 'nowhere']) await photographs.put(`in-${name}`, photograph(0));
  await photographs.put('young', photograph(2 * DAY));
  await tables.write(
    places.map((table) => ({ table, put: { job: 'j', n: 0, text: `{"photograph":"in-${table}"}` } as Row })),
  );
  await photographs.sweep(2 * DAY + 1);
  const left = await Promise.all([...places.map((name) => `in-${name}`), 'young', 'in-nowhere'].map(photographs.get));
  expect(left.map((one) => one !== null)).toEqual([true, true, true, true, true, false]);
});
