/** Numbers drawn for a visit, a class or a sheet, and what is kept of them: other devices have others. */
import { checksum } from '../../../jobs/checksum.ts';
import type { Lesson } from '../../../lessons/definition.ts';
import { courseOf, courseText, type Left } from '../../../lessons/keptCourse.ts';

const MOST_SEEDS = 1_000_000;
/** Called out, or typed in from paper: short. */
const MOST_SHORT = 100_000;

const upTo = (most: number): number => 1 + Math.floor(Math.random() * most);
/** Of one who learns alone. */
export const drawnSeed = (): number => upTo(MOST_SEEDS);
/** Of a class or a sheet, in whose link it stands. */
export const drawnShort = (): number => upTo(MOST_SHORT);

/** What the browser does not keep lasts as long as the page. */
const here = new Map<string, string>();

type Kept = 'localStorage' | 'sessionStorage';

function put(key: string, text: string | null, on: Kept = 'localStorage'): void {
  if (text === null) here.delete(key);
  else here.set(key, text);
  try {
    if (text === null) window[on].removeItem(key);
    else window[on].setItem(key, text);
  } catch {
    // As above.
  }
}

function take(key: string, on: Kept = 'localStorage'): string | null {
  try {
    return window[on].getItem(key);
  } catch {
    return here.get(key) ?? null;
  }
}

const classKey = (id: string) => `conepair.classNumbers.${id}`;
const lessonKey = (id: string) => `conepair.lessonCourse.${id}`;

/** The class that is under way here, so that its answers are found again; else a new one. */
export function classSeed(id: string): number {
  const kept = Number(take(classKey(id)));
  return Number.isInteger(kept) && kept > 0 ? kept : drawnShort();
}
export const keepClassSeed = (id: string, seed: number): void => put(classKey(id), `${seed}`);

/** One that was begun before it was kept is gone on with too. */
export const leftCourse = (id: string, lesson: Lesson): Left | null =>
  courseOf(lesson, take(lessonKey(id)), checksum) ?? leftHere(lesson);
/** `left`: null once it was gone through. */
export const keepCourse = (id: string, lesson: Lesson, left: Left | null): void =>
  put(lessonKey(id), left && courseText(lesson, left, checksum));

/** Of one from a file or a link, which this device does not keep: as long as the page is open, as the lesson is. */
const OPENED = 'conepair.lessonOpenedCourse';
export const leftHere = (lesson: Lesson): Left | null => courseOf(lesson, take(OPENED, 'sessionStorage'), checksum);
export const keepHere = (lesson: Lesson, left: Left | null): void =>
  put(OPENED, left && courseText(lesson, left, checksum), 'sessionStorage');

/** Of a lesson that is taken away. */
export function forgetDrawn(id: string): void {
  put(classKey(id), null);
  put(lessonKey(id), null);
}
