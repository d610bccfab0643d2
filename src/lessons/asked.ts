/**
 * What a lesson may ask of a design: the sections of its report, by name, and `run`, how it runs cold and warm in a
 * part of the time that the whole section on the film takes. Each is worked out only where a formula names it.
 */
import type { Design } from '../design/definition.ts';
import { type CutPoint, clearanceWork } from '../report/film/limits.ts';
import { SECTION_NAMES, SECTIONS, type SectionName } from '../report/report.ts';
import type { Scope } from './formula.ts';

export type AskedName = SectionName | 'run';
export const ASKED_NAMES: readonly AskedName[] = [...SECTION_NAMES, 'run'];

/** Least film cold (`coldFilm`) and warm (`leastFilm`), temperatures and power, as it is set. */
function runOf(design: Design): CutPoint | undefined {
  const { run } = design;
  if (!run) return undefined;
  // The first point of it has nothing added to the films.
  const { value } = clearanceWork({ ...design, run }, [0]).next();
  return value && 'coldFilm' in value ? value : undefined;
}

export type Asking = (design: Design, names: readonly AskedName[]) => Scope;

/** Answers of designs, each worked out once: what comes after one question is what stands before the next. */
export function asking(): Asking {
  const known = new Map<Design, Map<AskedName, unknown>>();
  return (design, names) => {
    const sections = known.get(design) ?? new Map<AskedName, unknown>();
    known.set(design, sections);
    for (const name of names)
      if (!sections.has(name)) sections.set(name, name === 'run' ? runOf(design) : SECTIONS[name](design));
    return { design, ...Object.fromEntries(names.map((name) => [name, sections.get(name)])) };
  };
}
