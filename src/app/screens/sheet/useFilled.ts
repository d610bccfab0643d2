/**
 * Drawings as tall as the page has room for: what else stands on it is measured as it will be printed, whatever it
 * looks like on the screen.
 */
import { type RefObject, useLayoutEffect, useState } from 'react';
import { MARGIN, PAPERS, type Paper } from './papers.ts';

/** Shown so while it is measured (sheet.css). */
const AS_PRINTED = 'as-printed';
export const TIGHT = 'tight';
/** mm: what rounding may add. */
const SLACK = 2;
/** mm: a difference that nobody sees. */
const SAME = 0.3;

export interface Heights {
  least: number;
  most: number;
  /** where not even the least has room and the leaf goes on to a further page anyway */
  apart: number;
}

export interface Filled {
  /** mm */
  height: number;
  /** whether the leaf is set closer, since it then has room on its page */
  tight: boolean;
  /** whether the leaf goes on to a further page */
  runsOn: boolean;
}

/**
 * Heights (mm) of what is marked `data-fill` on every leaf of `pages`: as many as there are on a leaf share its room.
 * @param bounds the least and greatest height on every leaf
 */
export function useFilled(pages: RefObject<HTMLElement | null>, paper: Paper, bounds: readonly Heights[]): Filled[] {
  const [heights, setHeights] = useState<Filled[]>(() =>
    bounds.map(({ least }) => ({ height: least, tight: false, runsOn: false })),
  );
  // After every drawing of the pages: anything on them may have changed.
  useLayoutEffect(() => {
    const element = pages.current;
    if (!element) return;
    element.classList.add(AS_PRINTED);
    const filled = [...element.querySelectorAll<HTMLElement>('.leaf')].map((leaf, i) =>
      filledLeaf(leaf, paper, bounds[i]!),
    );
    element.classList.remove(AS_PRINTED);
    if (
      filled.length !== heights.length ||
      filled.some(
        ({ height, tight, runsOn }, i) =>
          runsOn !== heights[i]!.runsOn || tight !== heights[i]!.tight || Math.abs(height - heights[i]!.height) > SAME,
      )
    )
      setHeights(filled);
  });
  return heights;
}

/** Loosely where that goes on its page, else tight where that does, else loosely over more pages. */
function filledLeaf(leaf: HTMLElement, paper: Paper, bounds: Heights): Filled {
  const shown = leaf.classList.contains(TIGHT);
  leaf.classList.remove(TIGHT);
  const loose = filledHeight(leaf, paper, bounds);
  leaf.classList.add(TIGHT);
  const tight = loose.runsOn ? filledHeight(leaf, paper, bounds) : loose;
  leaf.classList.toggle(TIGHT, shown);
  return tight.runsOn ? { ...loose, tight: false } : { ...tight, tight: loose.runsOn };
}

function filledHeight(leaf: HTMLElement, paper: Paper, { least, most, apart }: Heights): Omit<Filled, 'tight'> {
  const content = leaf.firstElementChild as HTMLElement;
  const { width, height } = PAPERS[paper];
  // Lengths are taken against the known width, so that a page shown smaller makes no difference.
  const box = content.getBoundingClientRect();
  const scale = (width - 2 * MARGIN.side) / box.width;
  const fills = [...content.querySelectorAll('[data-fill]')];
  const others = box.height - fills.reduce((sum, fill) => sum + fill.getBoundingClientRect().height, 0);
  const room = height - MARGIN.top - MARGIN.bottom - SLACK - others * scale;
  if (fills.length === 0) return { height: least, runsOn: room < 0 };
  const share = room / fills.length;
  return share < least
    ? { height: apart, runsOn: true }
    : { height: Math.floor(10 * Math.min(most, share)) / 10, runsOn: false };
}
