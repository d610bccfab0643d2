/**
 * What a page opens with, and what marks an example: the others are loaded when asked for, and yet a person's own work
 * must be told from them at every change.
 */
import opening from '../../../assets/designs/steep-first.conepair.json';
import type { Design } from '../../design/definition.ts';
import { validateDesign } from '../../design/validate.ts';
import { checksum } from '../../jobs/checksum.ts';

export interface Example {
  file: string;
  design: Design;
}

/** @throws where a file that comes with the program is no design */
export function exampleFrom(file: string, content: unknown): Example {
  const result = validateDesign(content);
  if (!result.ok) throw new Error(`example ${file}: ${result.errors[0]?.message}`);
  return { file, design: result.design };
}

export const OPENING = exampleFrom('steep-first.conepair.json', opening);

/** The example that was being looked at; the opening one where there is none, or it cannot be loaded. */
export async function exampleNamed(file: string | null): Promise<Design> {
  if (!file || file === OPENING.file) return OPENING.design;
  const found = await import('./demos.ts').catch(() => null);
  return found?.DEMOS.find((demo) => demo.file === file)?.design ?? OPENING.design;
}

/** Length and checksum of a design without where its journal stands. */
export function markOf({ position: _, ...design }: Design): string {
  const text = JSON.stringify(design);
  return `${text.length} ${checksum(text)}`;
}

/** Of every example (tests/app/state/opening.test.ts says what they are, where one was changed). */
export const MARKS: ReadonlySet<string> = new Set([
  '1101 2554931713',
  '1146 1622922343',
  '1160 1754873935',
  '1222 3559596052',
  '1289 3747538430',
  '1323 2115728819',
  '1389 4282518213',
  '2772 1633958319',
]);

/** Whether a design is a person's own work: anything but an example whose journal was moved at most. */
export const isOwn = (design: Design): boolean => !MARKS.has(markOf(design));
