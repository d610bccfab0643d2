/**
 * Which fields of a form stand open: typed in and not taken, or refused. What follows from them is not to be shown, nor
 * to be written down.
 */
import { useState } from 'react';

export interface OpenFields {
  any: boolean;
  titles: string[];
  /** For the `pending` of a field. */
  of(title: string): (open: boolean) => void;
  /** These were given another value, or are gone: what was typed in them with it; all of them where none is named. */
  close(...titles: string[]): void;
}

export function useOpenFields(): OpenFields {
  const [open, setOpen] = useState<ReadonlySet<string>>(new Set());
  const without = (now: ReadonlySet<string>, titles: readonly string[]) =>
    new Set([...now].filter((title) => !titles.includes(title)));
  return {
    any: open.size > 0,
    titles: [...open],
    of: (title) => (isOpen) =>
      setOpen((now) => (now.has(title) === isOpen ? now : isOpen ? new Set([...now, title]) : without(now, [title]))),
    close: (...titles) => setOpen((now) => (titles.length === 0 ? new Set() : without(now, titles))),
  };
}

/** Stands where a result would while a field is open. */
export const openText = ({ titles }: OpenFields): string =>
  `No result while ${titles.map((title) => title.toLowerCase()).join(' and ')} ${titles.length === 1 ? 'is' : 'are'} not taken: finish with Enter, or leave with Escape.`;
