/** What every store of jobs must do, whatever it is made of. */
import { expect, test } from 'vitest';
import type { Row, Tables } from '../../src/jobs/tables.ts';

const row = (job: string, n: number, text = ''): Row => ({ job, n, text }) as Row;
const textsOf = (rows: unknown[]) => rows.map((one) => (one as { text: string }).text);

export function tablesContract(open: () => Promise<Tables>) {
  test('rows are read back by job and number, in order, and are copies', async () => {
    const tables = await open();
    const put = row('b', 2, 'b2');
    await tables.write([
      { table: 'steps', put },
      { table: 'steps', put: row('b', 10, 'b10') },
      { table: 'steps', put: row('b', 0, 'b0') },
      { table: 'steps', put: row('a', 5, 'a5') },
      { table: 'heads', put: row('b', 0, 'head') },
    ]);
    Object.assign(put, { text: 'changed since' });
    expect(textsOf(await tables.all('steps', 'b'))).toEqual(['b0', 'b2', 'b10']);
    expect(textsOf(await tables.all('steps'))).toEqual(['a5', 'b0', 'b2', 'b10']);
    expect(await tables.get('steps', 'b', 2)).toMatchObject({ text: 'b2' });
    expect(await tables.get('heads', 'b')).toMatchObject({ text: 'head' });
    expect(await tables.get('heads', 'c')).toBeUndefined();
    expect(await tables.all('versions', 'b')).toEqual([]);
  });

  test('a range of a job is dropped with both its ends, and nothing of others', async () => {
    const tables = await open();
    const numbers = [0, 1, 2, 3, 4];
    await tables.write(
      ['a', 'b'].flatMap((job) => numbers.map((n) => ({ table: 'steps' as const, put: row(job, n, `${n}`) }))),
    );
    await tables.write([{ table: 'steps', drop: { job: 'a', from: 1, to: 2 } }]);
    expect(textsOf(await tables.all('steps', 'a'))).toEqual(['0', '3', '4']);
    await tables.write([
      { table: 'steps', drop: { job: 'a', to: 0 } },
      { table: 'steps', drop: { job: 'a', from: 4 } },
    ]);
    expect(textsOf(await tables.all('steps', 'a'))).toEqual(['3']);
    await tables.write([{ table: 'steps', drop: { job: 'a' } }]);
    expect(await tables.all('steps', 'a')).toEqual([]);
    expect(textsOf(await tables.all('steps', 'b'))).toHaveLength(5);
  });

  test('what is written together is all there once it is done, later changes over earlier ones', async () => {
    const tables = await open();
    await Promise.all([
      tables.write([{ table: 'slots', put: row('a', 0, 'first') }]),
      tables.write([
        { table: 'slots', put: row('a', 0, 'second') },
        { table: 'heads', put: row('a', 0, 'second') },
      ]),
    ]);
    expect(textsOf(await tables.all('slots', 'a'))).toEqual(['second']);
    expect(textsOf(await tables.all('heads', 'a'))).toEqual(['second']);
  });

  test('where one of the changes cannot be made none is, and that is told', async () => {
    const tables = await open();
    await tables.write([{ table: 'slots', put: row('a', 0, 'before') }]);
    const unfit = { job: 'a', n: 1, text: () => {} } as unknown as Row;
    await expect(
      tables.write([
        { table: 'slots', put: row('a', 0, 'after') },
        { table: 'slots', put: unfit },
      ]),
    ).rejects.toThrow();
    expect(textsOf(await tables.all('slots', 'a'))).toEqual(['before']);
  });
}
