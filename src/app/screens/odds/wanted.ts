/** How often the pair is to work, as one asks for it. */
import type { Design } from '../../../design/definition.ts';
import { defaultAt, without, withValue } from '../../../design/place.ts';

const CHANCES = [
  { value: '0.9', text: '9 times in 10' },
  { value: '0.95', text: '19 times in 20' },
  { value: '0.975', text: '39 times in 40' },
  { value: '0.99', text: '99 times in 100' },
];

/** With what a file asks for besides. */
export const wantedChoices = (wanted: number): typeof CHANCES =>
  CHANCES.some(({ value }) => Number(value) === wanted)
    ? CHANCES
    : [...CHANCES, { value: `${wanted}`, text: `${Number((100 * wanted).toPrecision(3))} times in 100` }];

/** What is meant where nothing is said is not written down. */
export function withWanted(design: Design, wanted: number): Design {
  if (wanted !== defaultAt('odds.wanted')) return withValue(design, 'odds.wanted', wanted);
  const emptied = without(design, 'odds.wanted');
  return Object.keys(emptied.odds ?? {}).length === 0 ? without(emptied, 'odds') : emptied;
}
