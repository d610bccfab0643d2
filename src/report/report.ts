/** A design solved: every section whose inputs the design has. A new section is one folder and one line here. */
import type { Design } from '../design/definition.ts';
import { beliefSection } from './belief/section.ts';
import { cutSection } from './cut/section.ts';
import type { Report } from './definition.ts';
import { filmSection } from './film/section.ts';
import { fitSection } from './fit/section.ts';
import { measureSection } from './measure/section.ts';
import { oddsSection } from './odds/section.ts';
import { playSection } from './play/section.ts';
import { printSection } from './print/section.ts';

/** What stands at the head of a report: all else of it is a section. */
type Head = 'conepair' | 'file' | 'title' | 'errors';

/** Each makes its section, or nothing where the design lacks what it needs. */
export const SECTIONS = {
  fit: fitSection,
  play: playSection,
  print: printSection,
  film: filmSection,
  measure: measureSection,
  belief: beliefSection,
  cut: cutSection,
  odds: oddsSection,
} satisfies { [name in keyof Omit<Report, Head>]-?: (design: Design) => Report[name] | undefined };

export type SectionName = keyof typeof SECTIONS;
export const SECTION_NAMES = Object.keys(SECTIONS) as SectionName[];

export function solve(design: Design, file: string, only: readonly SectionName[] = SECTION_NAMES): Report {
  const report: Report = { conepair: 1, file };
  if (design.title !== undefined) report.title = design.title;
  for (const name of only) put(report, name, SECTIONS[name](design));
  return report;
}

function put<N extends SectionName>(report: Report, name: N, section: Report[N] | undefined): void {
  if (section !== undefined) report[name] = section;
}
