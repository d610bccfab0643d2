/**
 * Before an answer is committed nothing on the screen depends on it: every lesson is opened by numbers that have other
 * answers, and all that is coloured, marked or worded is the same, figures apart.
 */
import { describe, expect, test, vi } from 'vitest';
import { page as browser, userEvent } from 'vitest/browser';
import { ENTRIES, loadLesson } from '../../src/app/screens/learn/builtIn.ts';
import { checksum } from '../../src/jobs/checksum.ts';
import { type Dealt, deal } from '../../src/lessons/deal.ts';
import type { Lesson } from '../../src/lessons/definition.ts';
import { NONE, visited, writeProgress } from '../../src/lessons/progress.ts';
import { answerSaid } from '../../src/lessons/sheets.ts';
import { page } from './page.tsx';

page('#learn');

const there = async <E extends Element>(selector: string): Promise<E> => {
  await expect.poll(() => document.querySelector(selector), { timeout: 60_000 }).not.toBeNull();
  return document.querySelector<E>(selector)!;
};

/** Those that plan or run take seconds for a seed. */
const SLOW = /(before|after)\.(cut|run|film|odds)\b/;
const SEEDS = [1, 5, 9, 14, 20, 27, 33, 40];

function dealtBy(lesson: Lesson, seed: number): Dealt {
  const found = deal(lesson, seed, () => undefined);
  if (!found.ok) throw new Error(found.message);
  return found.value;
}

/** Sets of numbers whose answers differ from the first: each choice once, and two numbers. */
function othersOf(lesson: Lesson): number[] {
  const taken = new Map<string, number>();
  for (const seed of SLOW.test(JSON.stringify(lesson)) ? SEEDS.slice(0, 2) : SEEDS) {
    const answers = dealtBy(lesson, seed).questions.map(({ right }) => (typeof right === 'string' ? right : ''));
    const key = answers.join() || `${taken.size}`;
    if (!taken.has(key) || taken.size < 2) taken.set(taken.has(key) ? `${key} ${seed}` : key, seed);
  }
  return [...taken.values()];
}

async function opened(id: string, seed: number): Promise<void> {
  localStorage.clear();
  // What is kept is read as the screen is opened; one that comes back has numbers that are drawn.
  window.location.hash = '#jobs';
  await expect.poll(() => document.querySelector('.learn')).toBeNull();
  vi.spyOn(Math, 'random').mockReturnValue((seed - 0.5) / 1_000_000);
  writeProgress(localStorage, visited(NONE, id, { right: 1, of: 1 }, 1), checksum);
  window.location.hash = `#learn/${id}`;
  await there('.ask');
}

/** Where the spindle stands is known, to which side too. */
const blanked = (text: string) =>
  text
    .replaceAll(/−?\d[\d.,]*/g, '#')
    .replaceAll(/(# ?)+/g, '#')
    .replaceAll(/noseward|rearward/g, 'to a side');

interface Sight {
  /** classes, and colours of what is filled or lined */
  classes: string[];
  colours: string[];
  words: string[];
}

/** All that is seen of a question, its own texts apart: those are what is known. */
function sight(): Sight {
  const parts = [...document.querySelectorAll('.round .lesson-picture *, .round .ask *, .round .mark-chart *')].filter(
    (one) => !one.closest('.choices') && !one.matches('.note .second, .note .second *, defs *'),
  );
  const unique = (all: string[]) => [...new Set(all)].filter((one) => one !== '').sort();
  return {
    classes: unique(parts.flatMap((one) => [...one.classList])),
    colours: unique(
      parts.flatMap((one) => {
        const { fill, stroke, visibility } = getComputedStyle(one);
        return one instanceof SVGGeometryElement && visibility !== 'hidden' && !fill.startsWith('url')
          ? [`${fill} ${stroke}`]
          : [];
      }),
    ),
    words: unique(
      parts.flatMap((one) => [
        ...[...one.childNodes].flatMap((node) =>
          node.nodeType === Node.TEXT_NODE ? [blanked(node.textContent!)] : [],
        ),
        blanked(one.getAttribute('aria-label') ?? ''),
        blanked(one.getAttribute('aria-valuetext') ?? ''),
      ]),
    ),
  };
}

/** What is right, committed, so that the next question is asked. */
async function answered(lesson: Lesson, dealt: Dealt, at: number): Promise<void> {
  const { answer } = lesson.questions[at]!;
  const { right } = dealt.questions[at]!;
  if (answer.kind === 'choice') {
    const which = answer.options.findIndex(({ key }) => key === right);
    await userEvent.click(document.querySelectorAll('.choices input')[which]!);
  } else {
    const as = answer.kind === 'move' ? 'fine' : answer.as;
    const scale = as === 'share' ? 100 : as === 'turn' ? 360 : 1;
    const unit = ['fine', 'tenths', 'micrometres', 'length'].includes(as) ? ' mm' : as === 'angle' ? '°' : '';
    await userEvent.fill(document.querySelector('.answer-field input')!, `${Number(right) * scale}${unit}`);
  }
  await userEvent.click(document.querySelectorAll('.sure input')[1]!);
  await userEvent.click(document.querySelector('.ask button.main')!);
  await userEvent.click(await there('.saw-options button'));
  await userEvent.click(await there('.why button.main'));
}

/** Of every day; the others in the long run. */
const DAILY = ['touches-first', 'blue', 'real-pair'];

describe.each(ENTRIES)('$title', ({ id }) => {
  test('tells nothing before an answer', { timeout: 240_000, tags: DAILY.includes(id) ? [] : ['long'] }, () =>
    alike(id),
  );
});

async function alike(id: string): Promise<void> {
  await browser.viewport(820, 1180);
  const lesson = await loadLesson(id);
  const seeds = othersOf(lesson);
  expect(seeds.length).toBeGreaterThan(1);
  const speech = { system: 'metric', way: 'half' } as const;
  const sights: Sight[][] = [];
  for (const seed of seeds) {
    const dealt = dealtBy(lesson, seed);
    await opened(id, seed);
    const mine: Sight[] = [];
    for (const [at, { answer }] of lesson.questions.entries()) {
      await expect.poll(() => document.querySelector('.ask') && document.querySelector('.why')).toBeNull();
      await there('.ask');
      mine.push(sight());
      if (answer.kind !== 'choice') {
        const right = answerSaid(answer, dealt.questions[at]!.right, dealt.questions[at]!, speech);
        for (const part of document.querySelectorAll('.round .lesson-picture, .round .ask, .round .mark-chart'))
          expect(part.textContent, `${id}, numbers ${seed}`).not.toContain(right);
      }
      if (at + 1 < lesson.questions.length) await answered(lesson, dealt, at);
    }
    sights.push(mine);
  }
  const [first, ...others] = sights;
  for (const [k, other] of others.entries())
    for (const [at, one] of other.entries())
      expect(one, `${id}, question ${at + 1}, numbers ${seeds[0]} and ${seeds[k + 1]}`).toEqual(first![at]);
}
