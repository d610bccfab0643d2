/** How a lesson goes: predict, see, be told; less help each round; what comes back when. */
import { describe, expect, test } from 'vitest';
import { checksum } from '../../src/jobs/checksum.ts';
import { deal } from '../../src/lessons/deal.ts';
import {
  AFTER,
  ASIDE,
  dayOf,
  NONE,
  type Progress,
  readBegun,
  readProgress,
  standing,
  visited,
  writeBegun,
  writeProgress,
} from '../../src/lessons/progress.ts';
import { begun, bySure, type Course, lastRound, type Step, seedOf, stepped } from '../../src/lessons/runner.ts';
import { exampleDesign, lessonOf } from './lessons.ts';

const lesson = lessonOf('tenth');
const dealtOf = (seed: number) => {
  const found = deal(lesson, seed, exampleDesign);
  if (!found.ok) throw new Error(found.message);
  return found.value;
};
const dealt = dealtOf(1);

test('nothing is told before it is committed, and what was seen is asked before why', () => {
  let course = begun(lesson, 'first');
  const go = (step: Step) => {
    course = stepped(course, step, dealt);
    return course.stage;
  };
  expect(go({ do: 'on' })).toBe('ask');
  expect(go({ do: 'saw', option: 0 })).toBe('ask');
  expect(go({ do: 'commit', answer: 2 * Number(dealt.questions[0]!.right), sure: 'sure' })).toBe('released');
  expect(course.given).toMatchObject({ found: { kind: 'mistake', index: 0 }, seen: null });
  expect(go({ do: 'commit', answer: dealt.questions[0]!.right, sure: 'sure' })).toBe('released');
  expect(course.given!.found.kind).toBe('mistake');
  expect(go({ do: 'on' })).toBe('released');
  expect(go({ do: 'saw', option: dealt.questions[0]!.saw })).toBe('told');
  expect(course.log).toHaveLength(1);
  expect(course.log[0]).toMatchObject({ round: 0, question: 0, sawRight: true, sure: 'sure' });
  expect(go({ do: 'on' })).toBe('ask');
  expect(course).toMatchObject({ question: 1, round: 0, given: null });
});

function walked(visit: 'first' | 'again', answer: (course: Course) => number): Course {
  let course = begun(lesson, visit);
  for (let steps = 0; !course.done; steps++) {
    expect(steps).toBeLessThan(100);
    const step: Step =
      course.stage === 'ask'
        ? { do: 'commit', answer: answer(course), sure: course.round === 0 ? 'sure' : 'guess' }
        : course.stage === 'released'
          ? { do: 'saw', option: 0 }
          : { do: 'on' };
    course = stepped(course, step, dealt);
  }
  return course;
}

test('first without help, then with all of it, then with a step less; one that comes back has none', () => {
  expect(begun(lesson, 'first').help).toEqual([0, 3, 2]);
  expect(begun(lesson, 'again').help).toEqual([0]);
  expect(walked('first', () => 0).log.map(({ round, question }) => [round, question])).toEqual([
    [0, 0],
    [0, 1],
    [1, 0],
    [1, 1],
    [2, 0],
    [2, 1],
  ]);
});

test('it counts by the last round, and tells what being sure was worth', () => {
  const right = ({ question }: Course) => Number(dealt.questions[question]!.right);
  const learnt = walked('first', (course) => (course.round === 2 ? right(course) : 0));
  expect(lastRound(learnt)).toEqual({ right: 2, of: 2 });
  expect(bySure(learnt.log)).toEqual([
    { sure: 'guess', right: 2, of: 4 },
    { sure: 'sure', right: 0, of: 2 },
  ]);
  expect(lastRound(walked('first', (course) => (course.round === 0 ? right(course) : 0)))).toEqual({ right: 0, of: 2 });
  expect(stepped(learnt, { do: 'on' }, dealt)).toBe(learnt);
});

test('rounds of one visit have numbers of their own, the same each time', () => {
  expect(dealtOf(seedOf(1, 1)).numbers).not.toEqual(dealt.numbers);
  expect(dealtOf(seedOf(1, 1))).toEqual(dealtOf(seedOf(1, 1)));
});

describe('what comes back', () => {
  const well = { right: 2, of: 2 };
  const badly = { right: 1, of: 2 };
  const due = (progress: Progress) => progress.lessons.a!.due;

  test('after a day, three days, a week; then no more', () => {
    let progress = visited(NONE, 'a', well, 100);
    expect(due(progress)).toBe(100 + AFTER[0]);
    expect(standing(progress.lessons.a, 100)).toEqual({ is: 'waits', days: 1 });
    expect(standing(progress.lessons.a, 101)).toEqual({ is: 'due', days: 0 });
    progress = visited(progress, 'a', well, 101);
    expect(due(progress)).toBe(104);
    progress = visited(progress, 'a', well, 106);
    expect(due(progress)).toBe(113);
    progress = visited(progress, 'a', well, 113);
    expect(due(progress)).toBeNull();
    expect(standing(progress.lessons.a, 999)).toEqual({ is: 'done', days: 0 });
    expect(standing(undefined, 5)).toEqual({ is: 'new', days: 0 });
  });

  test('what went wrong comes tomorrow, from the beginning', () => {
    const progress = visited(visited(NONE, 'a', well, 100), 'a', badly, 101);
    expect(progress.lessons.a).toMatchObject({ stage: 0, due: 102, visits: 2 });
    expect(due(visited(progress, 'a', well, 102))).toBe(103);
  });

  test('practised early it keeps its day, but a slip then brings it back', () => {
    const progress = visited(visited(NONE, 'a', well, 100), 'a', well, 101);
    expect(due(visited(progress, 'a', well, 102))).toBe(104);
    expect(due(visited(progress, 'a', badly, 102))).toBe(103);
  });

  test('a day is that of the clock on the wall', () => {
    expect(dayOf(new Date(2026, 10, 28, 0, 1)) - dayOf(new Date(2026, 10, 27, 23, 59))).toBe(1);
    expect(dayOf(new Date(2026, 10, 28, 0, 1))).toBe(dayOf(new Date(2026, 10, 28, 23, 59)));
  });
});

describe('what is kept', () => {
  const store = () => {
    const rows = new Map<string, string>();
    return {
      rows,
      getItem: (key: string) => rows.get(key) ?? null,
      setItem: (key: string, text: string) => void rows.set(key, text),
    };
  };
  const progress = visited(NONE, 'tenth', { right: 1, of: 2 }, 20_000);

  test('is read as it was written', () => {
    const storage = store();
    expect(readProgress(storage, checksum)).toEqual({ progress: NONE, damaged: false });
    writeProgress(storage, progress, checksum);
    expect(readProgress(storage, checksum)).toEqual({ progress, damaged: false });
  });

  test.each([
    ['one character altered', (text: string) => text.replace('"right":1', '"right":2')],
    ['cut short', (text: string) => text.slice(0, -4)],
    ['another text', () => 'hello'],
    ['sound, and not of this form', () => `${checksum('{"version":2}')} {"version":2}`],
  ])('%s is set aside whole, and said', (_, damage) => {
    const storage = store();
    writeProgress(storage, progress, checksum);
    const [key, text] = [...storage.rows][0]!;
    storage.rows.set(key, damage(text));
    expect(readProgress(storage, checksum)).toEqual({ progress: NONE, damaged: true });
    expect(storage.rows.get(ASIDE)).toBe(damage(text));
  });
});

test('a lesson that was begun and left stands as begun, until it is gone through; what only a link carries is not kept', () => {
  const kept = new Map<string, string>();
  const storage = {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, text: string) => void kept.set(key, text),
  };
  expect(readBegun(storage)).toEqual([]);
  expect(writeBegun(storage, 'tenth', true)).toEqual(['tenth']);
  writeBegun(storage, 'blue', true);
  expect(writeBegun(storage, 'tenth', true)).toEqual(['blue', 'tenth']);
  expect(writeBegun(storage, 'lesson=xYz_', true)).toEqual(['blue', 'tenth']);
  expect(writeBegun(storage, 'blue', false)).toEqual(['tenth']);
  expect(readBegun(storage)).toEqual(['tenth']);
  expect(standing(undefined, 5, true).is).toBe('begun');
  expect(standing(undefined, 5).is).toBe('new');
  const gone = visited(NONE, 'tenth', { right: 1, of: 1 }, 5);
  expect(standing(gone.lessons.tenth, 5, true).is).toBe('waits');
});
