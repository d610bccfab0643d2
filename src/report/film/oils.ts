/**
 * Spindle oils by ISO grade, no brands: what a maker is offered. @source practice (what each is used for)
 */
export interface OilChoice {
  grade: number;
  index: number;
  use: string;
}

export const SPINDLE_OILS: readonly OilChoice[] = [
  { grade: 2, index: 95, use: 'fastest spindles, films of a micrometre or two' },
  { grade: 5, index: 95, use: 'fast grinding spindles with close films' },
  { grade: 10, index: 95, use: 'small lathe spindles in plain bearings' },
  { grade: 15, index: 95, use: 'small lathes, slower or more open' },
  { grade: 22, index: 95, use: 'bench lathes, general' },
  { grade: 32, index: 95, use: 'larger headstocks, oil bath' },
  { grade: 46, index: 95, use: 'slow spindles with open films' },
  { grade: 68, index: 95, use: 'heavy, slow work' },
];
