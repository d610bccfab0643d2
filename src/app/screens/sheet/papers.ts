/** Papers and their margins, mm. */
import { INCH } from '../../../design/units.ts';

export const PAPERS = {
  A4: { width: 210, height: 297 },
  Letter: { width: 215.9, height: 279.4 },
} as const;

export type Paper = keyof typeof PAPERS;

export const MARGIN = { side: 12, top: 10, bottom: 14 };

/** CSS pixels to a millimetre: 96 to an inch. */
export const PIXELS_PER_MM = 96 / INCH;

/** What a print is told of its paper; the foot names the design and counts the pages. */
export const pageRule = (paper: Paper, title: string) => {
  const { width, height } = PAPERS[paper];
  const quoted = title.replace(/[\\"\n\r<>]/g, ' ');
  const foot = 'font: 8pt sans-serif; color: #000;';
  return `@page { size: ${width}mm ${height}mm; margin: ${MARGIN.top}mm ${MARGIN.side}mm ${MARGIN.bottom}mm; @bottom-left { content: "${quoted}"; ${foot} } @bottom-right { content: "page " counter(page) " of " counter(pages); ${foot} } }`;
};
