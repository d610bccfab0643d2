/** The chance that is allowed of less being left to cut than is said to be safe. */
import { defaultAt } from '../../design/place.ts';
import type { Cut } from './toCut.ts';

export const riskOf = ({ risk }: Pick<Cut, 'risk'>): number => risk ?? defaultAt('cut.risk');

/** How often it is so all the same: 39 times in 40. */
export const surelyText = (risk: number): string => {
  const of = Math.round(1 / risk);
  return `${of - 1} times in ${of}`;
};
