/** Undo and redo: any run of edits goes back and forth exactly, kept step by step, and within its bounds. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { asStep, createHistory } from '../../src/jobs/history.ts';
import type { Patch } from '../../src/jobs/patch.ts';

interface State {
  a: number;
  list: number[];
}

const START: State = { a: 0, list: [] };
const edit = fc.oneof(
  fc.record({ do: fc.constant('set' as const), to: fc.integer({ min: 0, max: 3 }) }),
  fc.record({ do: fc.constant('add' as const), to: fc.integer() }),
  fc.record({ do: fc.constantFrom('undo' as const, 'redo' as const, 'write' as const, 'fail' as const) }),
);

/** Steps as a store keeps them, changed by what is told to be written alone. */
function keptSteps() {
  const steps = new Map<number, string>();
  return {
    steps,
    take({ put, noneBefore, noneFrom }: ReturnType<ReturnType<typeof createHistory>['write']>) {
      for (const { n, text } of put) steps.set(n, text);
      for (const n of [...steps.keys()])
        if (n < (noneBefore ?? 0) || n >= (noneFrom ?? Number.POSITIVE_INFINITY)) steps.delete(n);
    },
    read: (first: number, at: number) =>
      createHistory({
        first,
        at,
        steps: [...steps].sort(([a], [b]) => a - b).map(([, text]) => asStep(JSON.parse(text) as Patch)),
      }),
  };
}

test('after any run of edits, undo and redo, the history and the one read back from what was written step through the same states', () => {
  fc.assert(
    fc.property(fc.array(edit, { maxLength: 60 }), (edits) => {
      const history = createHistory();
      const kept = keptSteps();
      // The model: whole states.
      const states = [START];
      let at = 0;
      let now = START;
      for (const one of edits) {
        if (one.do === 'set' || one.do === 'add') {
          const next = one.do === 'set' ? { ...now, a: one.to } : { ...now, list: [...now.list, one.to] };
          if (one.do === 'add' || one.to !== now.a) {
            states.splice(at + 1, states.length, next);
            at++;
          }
          history.push(now, next);
          now = next;
        } else if (one.do === 'undo' || one.do === 'redo') {
          now = one.do === 'undo' ? history.undo(now) : history.redo(now);
          at = one.do === 'undo' ? Math.max(0, at - 1) : Math.min(states.length - 1, at + 1);
        } else if (one.do === 'write') kept.take(history.write());
        else history.write().failed();
        expect(now).toEqual(states[at]);
        expect([history.at - history.first, history.end - history.at]).toEqual([at, states.length - 1 - at]);
      }
      kept.take(history.write());
      const again = kept.read(history.first, history.at);
      for (let k = at; k > 0; k--) {
        now = again.undo(now);
        expect(now).toEqual(states[k - 1]);
      }
      for (let k = 1; k < states.length; k++) {
        now = again.redo(now);
        expect(now).toEqual(states[k]);
      }
      expect(again.redo(now)).toBe(now);
    }),
    { numRuns: 400 },
  );
});

test('a number that is set again and again is one step, until a second has gone by or something else is done', () => {
  const history = createHistory();
  const set = (from: number, to: number, time?: number) => history.push({ a: from, b: 0 }, { a: to, b: 0 }, time);
  set(0, 1, 1000);
  set(1, 2, 1900);
  set(2, 3, 2800);
  expect(history.at).toBe(1);
  set(3, 4, 3900);
  expect(history.at).toBe(2);
  expect(history.undo({ a: 4, b: 0 })).toEqual({ a: 3, b: 0 });
  expect(history.undo({ a: 3, b: 0 })).toEqual({ a: 0, b: 0 });
  history.redo({ a: 0, b: 0 });
  history.redo({ a: 3, b: 0 });
  // Undone and done again, it is another step; so are another field and a drag.
  set(4, 5, 4000);
  history.push({ a: 5, b: 0 }, { a: 5, b: 1 }, 4100);
  set(5, 6);
  set(6, 7);
  expect(history.at).toBe(6);
});

test('a number set and set back within the second leaves no step', () => {
  const history = createHistory();
  history.push({ a: 0 }, { a: 1 }, 0);
  history.push({ a: 1 }, { a: 0 }, 10);
  expect(history.at).toBe(0);
  expect(history.end).toBe(0);
});

test('another step writes one, whatever stands before it; a changed past is taken away', () => {
  const history = createHistory();
  for (let i = 0; i < 250; i++) history.push({ a: i }, { a: i + 1 });
  expect(history.write().put).toHaveLength(250);
  history.push({ a: 250 }, { a: 251 });
  expect(history.write()).toMatchObject({ put: [{ n: 250 }], noneBefore: null, noneFrom: null });
  expect(history.write().put).toEqual([]);
  let now = { a: 251 };
  for (let i = 0; i < 20; i++) now = history.undo(now);
  expect(history.write().put).toEqual([]);
  history.push(now, { a: -1 });
  expect(history.write()).toMatchObject({ put: [{ n: 231 }], noneBefore: null, noneFrom: 232 });
});

test('five hundred steps are held, fewer only where they are very large, and the last one always', () => {
  const many = createHistory();
  for (let i = 0; i < 700; i++) many.push({ a: i }, { a: i + 1 });
  expect(many.at - many.first).toBe(500);
  expect(many.write()).toMatchObject({ noneBefore: 200 });
  let now = { a: 700 };
  while (many.at > many.first) now = many.undo(now);
  expect(now).toEqual({ a: 200 });
  const large = createHistory();
  const texts = Array.from({ length: 9 }, (_, i) => `${i}`.repeat(1_200_000));
  for (let i = 0; i < 8; i++) large.push({ a: texts[i] }, { a: texts[i + 1] });
  expect(large.at - large.first).toBeLessThan(5);
  expect(large.undo({ a: texts[8] })).toEqual({ a: texts[7] });
});
