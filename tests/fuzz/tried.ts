/** One look of the fuzz at a design: solved, and its report held against the laws. */
import type { Design } from '../../src/design/definition.ts';
import { type DesignError, validateDesign } from '../../src/design/validate.ts';
import { MOST_EFFORT } from '../../src/engine/run/running.ts';
import type { Report } from '../../src/report/definition.ts';
import { filmSection } from '../../src/report/film/section.ts';
import { SECTION_NAMES, solve } from '../../src/report/report.ts';
import { brokenLaws } from './laws.ts';

/** of the work that is spent on a running bearing otherwise, so that a look takes seconds */
const SHARE = 1 / 50;
const LESS = Object.fromEntries(
  Object.entries(MOST_EFFORT).map(([what, most]) => [what, most * SHARE]),
) as typeof MOST_EFFORT;

/** What is broken; a throw is told like a broken law. */
export function tried(design: Design, told: (report: Report) => void = () => {}): string[] {
  try {
    const report: Report = solve(
      design,
      'fuzz',
      SECTION_NAMES.filter((name) => name !== 'film'),
    );
    const film = filmSection(design, LESS);
    const whole = film ? { ...report, film } : report;
    told(whole);
    return brokenLaws(design, whole);
  } catch (error) {
    return [`throws ${(error as Error).stack?.split('\n').slice(0, 3).join(' | ')}`];
  }
}

/** Characters of what is told. */
const LONGEST = 300;

/** Errors that cannot be read. */
export const triedErrors = (errors: readonly DesignError[]): string[] =>
  errors.flatMap(({ path, message }) =>
    message.length > LONGEST || path.length > LONGEST || message.trim() === ''
      ? [`words: ${path.slice(0, 80)}: ${message.slice(0, 80)}… of ${message.length}`]
      : [],
  );

/** Of a value that need not be a design: an answer in any case, whose messages can be read. */
export function triedRaw(raw: unknown): string[] {
  try {
    const result = validateDesign(raw);
    if (result.ok) return tried(result.design);
    return triedErrors(result.errors);
  } catch (error) {
    return [`throws ${(error as Error).stack?.split('\n').slice(0, 3).join(' | ')}`];
  }
}
