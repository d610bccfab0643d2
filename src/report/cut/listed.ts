/** Words in a row: a, b and c. */
export const listed = (words: readonly string[]) =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words[words.length - 1]}`;

import { NO_STEP } from '../../engine/cutting/problem.ts';
import { millimetres } from '../convert.ts';

/** Less than this (mm) nobody can take off, or see. */
export const NOTHING = millimetres(NO_STEP);
