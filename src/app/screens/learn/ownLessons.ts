/**
 * Lessons of one's own, kept on the device: each a text with its checksum, and the one in the making after each change.
 * What cannot be read is set aside whole, and said.
 */
import { checksum } from '../../../jobs/checksum.ts';
import type { Lesson } from '../../../lessons/definition.ts';
import { draftOf } from '../../../lessons/draft.ts';
import { LONGEST_LINK, packedText, unpackedText } from '../../takeAlong/link.ts';
import { forgetDrawn } from './drawn.ts';

const KEPT = 'conepair.lesson.';
const DRAFT = 'conepair.lessonDraft';
const BEFORE = 'conepair.lessonDraft.before';
const ASIDE = '.aside';
export const OWN = 'own-';
/** Of somebody else, kept from a link or a file. */
export const FROM = 'from-';
/** Behind `#learn/`. */
export const CARRIED = 'lesson=';

export interface Read {
  lesson: Lesson | null;
  /** something was there and could not be read; it lies aside */
  damaged: boolean;
}

const written = (lesson: Lesson): string => {
  const text = JSON.stringify(lesson);
  return `${checksum(text)} ${text}`;
};

/** Whether the device keeps it. */
function put(key: string, text: string): boolean {
  try {
    window.localStorage.setItem(key, text);
    return true;
  } catch {
    return false;
  }
}

function take(key: string): Read {
  try {
    return readFrom(window.localStorage, key);
  } catch {
    return { lesson: null, damaged: false };
  }
}

/** Throws where nothing may be kept. */
function readFrom(storage: Storage, key: string): Read {
  const found = storage.getItem(key);
  if (found === null) return { lesson: null, damaged: false };
  const cut = found.indexOf(' ');
  const text = found.slice(cut + 1);
  const lesson = Number(found.slice(0, cut)) === checksum(text) ? parsed(text) : null;
  if (lesson) return { lesson, damaged: false };
  storage.setItem(key + ASIDE, found);
  storage.removeItem(key);
  return { lesson: null, damaged: true };
}

function parsed(text: string): Lesson | null {
  try {
    return draftOf(JSON.parse(text));
  } catch {
    return null;
  }
}

export const readDraft = (): Read => take(DRAFT);
/** The draft that stood there makes room for another, and can be had back. */
export function setDraftAside(next: Lesson): void {
  try {
    const found = window.localStorage.getItem(DRAFT);
    if (found !== null && found !== written(next)) window.localStorage.setItem(BEFORE, found);
  } catch {
    // Nothing was kept.
  }
}
export const draftBefore = (): Lesson | null => take(BEFORE).lesson;
export const writeDraft = (lesson: Lesson): boolean => put(DRAFT, written(lesson));

/** Keeps it: one's own under its title, so that it takes the place of what was there; another's beside all others. */
export function keepLesson(lesson: Lesson, of: typeof OWN | typeof FROM = OWN): string | null {
  const id = of === OWN ? idOf(lesson) : othersId(lesson);
  return put(KEPT + id, written(lesson)) ? id : null;
}

const slugOf = (title: string): string =>
  title
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-|-$/g, '')
    .slice(0, 40) || checksum(title).toString(36);

export const idOf = ({ title }: Lesson): string => OWN + slugOf(title);

/** Two people may give one title to two lessons; the same one twice is one. */
export const othersId = (lesson: Lesson): string =>
  `${FROM}${slugOf(lesson.title).slice(0, 32)}-${checksum(JSON.stringify(lesson)).toString(36)}`;

export const isKept = (id: string): boolean => id.startsWith(OWN) || id.startsWith(FROM);

export const ownLesson = (id: string): Read => take(KEPT + id);

export function forgetLesson(id: string): void {
  try {
    window.localStorage.removeItem(KEPT + id);
    forgetDrawn(id);
  } catch {
    // It was never kept.
  }
}

export interface KeptLesson {
  id: string;
  title: string;
  about: string;
  /** who made it and when, where that is told */
  by: string;
  damaged: boolean;
}

export function ownLessons(of: typeof OWN | typeof FROM = OWN): KeptLesson[] {
  try {
    const ids = Object.keys(window.localStorage)
      .filter((key) => key.startsWith(KEPT + of) && !key.endsWith(ASIDE))
      .map((key) => key.slice(KEPT.length));
    return ids.sort().map((id) => {
      const { lesson, damaged } = ownLesson(id);
      return { id, title: lesson?.title ?? id, about: lesson?.about ?? '', by: lesson ? byText(lesson) : '', damaged };
    });
  } catch {
    return [];
  }
}

/** “made by …, 2026-11-28”, “given out on 2026-11-28”; '' where neither is told. */
export const byText = ({ by, day }: Pick<Lesson, 'by' | 'day'>): string =>
  by ? [`made by ${by}`, ...(day ? [day] : [])].join(', ') : day ? `given out on ${day}` : '';

const OPENED = 'conepair.lessonOpened';
/** One from a file or a link that is not kept: it is had back as long as the page is open. */
export function holdOpened(lesson: Lesson | null): void {
  try {
    if (lesson) window.sessionStorage.setItem(OPENED, written(lesson));
    else window.sessionStorage.removeItem(OPENED);
  } catch {
    // It is gone with the page then, as it says.
  }
}
export function heldOpened(): Lesson | null {
  try {
    const { lesson } = readFrom(window.sessionStorage, OPENED);
    return lesson && ownLesson(othersId(lesson)).lesson === null ? lesson : null;
  } catch {
    return null;
  }
}

/** A link that carries the whole lesson; null where it would be too long. */
export function lessonLink(lesson: Lesson, page: string): string | null {
  const link = `${page}#learn/${CARRIED}${packedText(JSON.stringify(lesson))}`;
  return link.length <= LONGEST_LINK ? link : null;
}

/** Which class an answer is for: its lesson on the instructor's device, and the form it had as it was given out. */
export interface OfClass {
  id: string;
  of?: string | undefined;
}

/** Of a lesson that comes with the program there is one form; one that is kept can be changed. */
export const formOf = (id: string, lesson: Lesson): string | undefined =>
  isKept(id) ? checksum(JSON.stringify(lesson)).toString(36) : undefined;

/**
 * The link that a class answers by; one that the program has not carries the lesson whole. `text`: null where it would
 * be too long.
 */
export function classLink(
  id: string,
  lesson: Lesson,
  seed: number,
  page: string,
): { text: string | null; long: number } {
  const of = formOf(id, lesson);
  const what = of === undefined ? id : `${CARRIED}${packedText(JSON.stringify(lesson))}`;
  const text = `${page}#learn/${what}/answer/${seed}${of === undefined ? '' : `/${id}/${of}`}`;
  return { text: text.length <= LONGEST_LINK ? text : null, long: text.length };
}

/** Whose class it is that a link asks for, by what stands behind its seed. */
export function classOf(id: string, lesson: Lesson, behind: readonly string[]): OfClass {
  const [named = '', of = ''] = behind;
  if (!id.startsWith(CARRIED)) return { id, of: formOf(id, lesson) };
  return isKept(named) && /^[a-z0-9-]{1,60}$/.test(named) && /^[a-z0-9]{1,12}$/.test(of)
    ? { id: named, of }
    : { id: othersId(lesson), of: formOf(othersId(lesson), lesson) };
}

export function carriedText(behind: string): string | null {
  return unpackedText(behind.slice(CARRIED.length));
}
