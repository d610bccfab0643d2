/** The answers of a class, kept on the instructor’s device until they are forgotten there. */
import { type ClassAnswer, classAnswerOf, fragmentOf, withAnswer } from '../../../lessons/classAnswer.ts';

const keyOf = (lesson: string, seed: number) => `conepair.class.${lesson}.${seed}`;
/** Where the browser keeps nothing they last as long as the page. */
const here = new Map<string, string>();

export function answersHere(lesson: string, seed: number): ClassAnswer[] {
  const key = keyOf(lesson, seed);
  let text = here.get(key) ?? '';
  try {
    // Of the device, since a link that a camera opens stands in a window of its own.
    text = window.localStorage.getItem(key) ?? text;
  } catch {
    // As above.
  }
  return text
    .split('\n')
    .map(classAnswerOf)
    .filter((one) => one !== null)
    .reduce<ClassAnswer[]>(withAnswer, []);
}

export function keepAnswers(lesson: string, seed: number, all: readonly ClassAnswer[]): void {
  const text = all.map(fragmentOf).join('\n');
  here.set(keyOf(lesson, seed), text);
  try {
    window.localStorage.setItem(keyOf(lesson, seed), text);
  } catch {
    // As above.
  }
}
