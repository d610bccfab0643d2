/** A design solved: every section whose inputs the design has. A new section is one file and one line here. */
import type { Design } from '../design/definition.ts';
import type { Report } from './definition.ts';
import { fitSection } from './fitSection.ts';

export const SECTIONS = {
  fit: fitSection,
};

export type SectionName = keyof typeof SECTIONS;
export const SECTION_NAMES = Object.keys(SECTIONS) as SectionName[];

export function solve(design: Design, file: string, only: readonly SectionName[] = SECTION_NAMES): Report {
  const report: Report = { conepair: 1, file };
  if (design.title !== undefined) report.title = design.title;
  for (const name of only) report[name] = SECTIONS[name](design);
  return report;
}
