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

function put(key: string, text: string | null): void {
  if (text === null) here.delete(key);
  else here.set(key, text);
  try {
    if (text === null) window.localStorage.removeItem(key);
    else window.localStorage.setItem(key, text);
  } catch {
    // As above.
  }
}

function take(key: string): string | null {
  try {
    return window.localStorage.getItem(key);
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
export function leftHere(lesson: Lesson): Left | null {
  try {
    return courseOf(lesson, window.sessionStorage.getItem(OPENED), checksum);
  } catch {
    return courseOf(lesson, here.get(OPENED) ?? null, checksum);
  }
}
export function keepHere(lesson: Lesson, left: Left | null): void {
  const text = left && courseText(lesson, left, checksum);
  if (text === null) here.delete(OPENED);
  else here.set(OPENED, text);
  try {
    if (text === null) window.sessionStorage.removeItem(OPENED);
    else window.sessionStorage.setItem(OPENED, text);
  } catch {
    // As above.
  }
}

/** Of a lesson that is taken away. */
export function forgetDrawn(id: string): void {
  put(classKey(id), null);
  put(lessonKey(id), null);
}
