/** What is begun on the page of a new job: of no job, undone by itself, and read back whatever stands there. */
import { expect, test } from 'vitest';
import { formOf } from '../../../src/app/screens/new/form.ts';
import { createBegun } from '../../../src/app/state/begun.ts';

const form = (title: string) => ({ arrangement: 'double', title, sizes: {}, system: null });

test('each change is a step, one field written on is one; all of them go back to nothing and forth', () => {
  const kept: unknown[] = [];
  let time = 0;
  const begun = createBegun(
    null,
    (written) => kept.push(written),
    () => time,
  );
  const now = () => begun.store.getState();
  begun.write(form(''));
  for (const title of ['B', 'Be', 'Ben']) {
    time += 200;
    begun.write(form(title));
  }
  time += 5000;
  begun.write({ ...form('Ben'), sizes: { 'shallow diameter': { value: 22 } } });
  expect(now().steps).toEqual({ back: 3, forth: 0 });
  begun.undo();
  expect(now().written).toEqual(form('Ben'));
  begun.undo();
  expect(now().written).toEqual(form(''));
  begun.undo();
  expect(now()).toMatchObject({ written: null, steps: { back: 0, forth: 3 } });
  begun.undo();
  begun.redo();
  begun.redo();
  begun.redo();
  expect(now().written).toMatchObject({ sizes: { 'shallow diameter': { value: 22 } } });
  // Started, it is cleared; and can be had back.
  begun.write(null);
  begun.undo();
  expect(now().written).toMatchObject({ title: 'Ben' });
  expect(kept.at(-1)).toMatchObject({ written: now().written });
  // Loaded anew its steps go back and forth as before.
  const again = createBegun(
    structuredClone(kept.at(-1)),
    () => {},
    () => 0,
  );
  expect(again.store.getState()).toEqual(now());
  again.redo();
  expect(again.store.getState().written).toBeNull();
  for (const _ of [1, 2, 3, 4]) again.undo();
  expect(again.store.getState()).toMatchObject({ written: null, steps: { back: 0, forth: 4 } });
  again.redo();
  expect(again.store.getState().written).toEqual(form(''));
});

test('of a long way back the newest hundred steps are kept', () => {
  const kept: unknown[] = [];
  let time = 0;
  const begun = createBegun(
    null,
    (written) => kept.push(written),
    () => (time += 5000),
  );
  for (let i = 0; i < 130; i++) begun.write(form(`${i}`));
  const again = createBegun(
    kept.at(-1),
    () => {},
    () => 0,
  );
  expect(again.store.getState()).toMatchObject({ written: form('129'), steps: { back: 100, forth: 0 } });
  for (let i = 0; i < 120; i++) again.undo();
  expect(again.store.getState().written).toEqual(form('29'));
});

test('what an earlier program kept, and steps that are none, leave what is written', () => {
  const found = (kept: unknown) =>
    createBegun(
      kept,
      () => {},
      () => 0,
    ).store.getState();
  const none = { back: 0, forth: 0 };
  expect(found(form('Old'))).toMatchObject({ written: form('Old'), steps: none });
  for (const undo of [
    {},
    { at: 0 },
    { at: 3, steps: [] },
    { at: 0.5, steps: [[]] },
    { at: 0, steps: [7] },
    { at: 0, steps: [[{}]] },
  ])
    expect(found({ written: form('New'), undo })).toMatchObject({ written: form('New'), steps: none });
});

test('given up it says so, until anything else is written or it is had back', () => {
  const begun = createBegun(
    null,
    () => {},
    () => 0,
  );
  const { getState } = begun.store;
  begun.write(form('A'));
  expect(getState().givenUp).toBe(false);
  begun.write(null, true);
  expect(getState()).toMatchObject({ written: null, givenUp: true });
  begun.undo();
  expect(getState()).toMatchObject({ written: form('A'), givenUp: false });
  begun.write(null, true);
  begun.write(form('B'));
  expect(getState().givenUp).toBe(false);
});

test('what stood there is gone on with, as far as it is a form', () => {
  const empty = { arrangement: null, title: '', sizes: {}, system: null };
  for (const wrong of [undefined, null, 7, 'x', [], {}, { arrangement: 3, title: {}, sizes: [], system: 'yard' }])
    expect(formOf(wrong)).toEqual(empty);
  const good = { a: { value: 3 }, b: { text: 'wide', why: 'no number' } };
  expect(
    formOf({
      ...form('Mine'),
      system: 'inch',
      sizes: { ...good, c: { value: Number.NaN }, d: { value: '3' }, e: 7, f: { text: 'x' }, g: null },
    }),
  ).toEqual({ ...form('Mine'), system: 'inch', sizes: good });
});
