/** Where an earlier program kept its work: in the browser's other store, a text a piece. */
export type OldStore = Pick<Storage, 'getItem' | 'removeItem' | 'key' | 'length'>;

export const PREFIX = 'conepair.work.';

export const oldKeys = (old: OldStore): string[] =>
  Array.from({ length: old.length }, (_, i) => old.key(i) ?? '').filter((key) => key.startsWith(PREFIX));

export const isOldWork = (old: OldStore | null): boolean => old !== null && oldKeys(old).length > 0;
