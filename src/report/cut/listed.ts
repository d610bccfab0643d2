import { NO_STEP } from '../../engine/cutting/problem.ts';
import { millimetres } from '../convert.ts';

export { listed } from '../listed.ts';

/** Less than this (mm) nobody can take off, or see. */
export const NOTHING = millimetres(NO_STEP);
