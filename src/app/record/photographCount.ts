import type { Design } from '../../design/definition.ts';

/** How many photographs there are: they stay behind where the design goes along as a file or a link. */
export const photographCount = ({ record = [] }: Pick<Design, 'record'>): number =>
  record.filter(({ photograph }) => photograph !== undefined).length;
