/** The pictures and tables that stand on the screen now, each by its name. */
import Papa from 'papaparse';
import { curveRows, curvesOf } from '../charts/curveTables.ts';
import { isRedrawn, pictureOf, redrawn } from '../pictures/redraw.ts';
import { SVG, standaloneCopy } from '../pictures/standaloneSvg.ts';
import { framed } from './framed.ts';
import { withUnits } from './withUnits.ts';

export interface OnScreen {
  name: string;
  /** a drawing; a canvas has no SVG */
  svg: SVGSVGElement | null;
  canvas: HTMLCanvasElement | null;
  /** rows of words and numbers */
  rows: (() => readonly (readonly (string | number)[])[]) | null;
}

const LONGEST_NAME = 60;

const isShown = (element: Element) => element.getClientRects().length > 0;
const named = (text: string) => {
  const first = text.split(/[;:,(.]/)[0]!.trim();
  return first.length > LONGEST_NAME ? `${first.slice(0, LONGEST_NAME)}…` : first;
};

export function allOnScreen(main: ParentNode): OnScreen[] {
  const drawings = [...main.querySelectorAll<SVGSVGElement>('svg[aria-label]')].filter(isShown).map((svg): OnScreen => {
    const curves = curvesOf(svg);
    return {
      name: named(svg.getAttribute('aria-label')!),
      svg,
      canvas: null,
      rows: curves && (() => curveRows(curves)),
    };
  });
  const solids = [...main.querySelectorAll('canvas')]
    .filter((canvas) => isShown(canvas) && isRedrawn(canvas))
    .map((canvas): OnScreen => ({ name: 'Solid picture', svg: null, canvas, rows: null }));
  const tables = [...main.querySelectorAll('table')].filter(isShown).map(
    (table): OnScreen => ({
      name: tableName(table),
      svg: null,
      canvas: null,
      rows: () => withUnits(tableRows(table)),
    }),
  );
  return [...drawings, ...solids, ...tables];
}

/** A table is called by its caption, or by what it stands under. */
function tableName(table: HTMLTableElement): string {
  const told = table.caption ?? table.closest('section, details, figure')?.querySelector('h2, h3, h4, summary');
  return `Table: ${named(told?.textContent ?? 'figures')}`;
}

function tableRows(table: HTMLTableElement): string[][] {
  return [...table.rows].map((row) =>
    [...row.cells].flatMap((cell) => {
      const field = cell.querySelector<HTMLInputElement | HTMLSelectElement>('input:not([type=checkbox]), select');
      const text = (field?.value ?? cell.textContent ?? '').replace(/\s+/g, ' ').trim();
      return [text, ...new Array<string>(cell.colSpan - 1).fill('')];
    }),
  );
}

/** Of a number in a table: what is beyond is rounding. */
const DIGITS = 9;
/** A figure that begins with its sign: a number, and no formula. */
const SIGNED = /^[+-]\d+(?:\.\d+)?(?:e[+-]?\d+)?$/i;

/** A word that a spreadsheet would take for a formula has an apostrophe before it. */
export const csvOf = (rows: readonly (readonly (string | number)[])[]): string =>
  `\uFEFF${Papa.unparse(
    rows.map((row) => row.map(cellOf)),
    { escapeFormulae: true },
  )}`;

function cellOf(cell: string | number): string | number {
  if (typeof cell === 'number') return Number(cell.toPrecision(DIGITS));
  return SIGNED.test(cell) ? Number(cell) : cell;
}

/** Dots of the picture to one of the screen: enough for print. */
export const FINER = 3;

/** @param job its title, which stands above the picture */
export const svgOf = (svg: SVGSVGElement, job: string, name: string): string => framed(svg, job, name).text;

export async function pngOf({ svg, canvas, name }: OnScreen, job: string): Promise<Blob> {
  const { text, width, height, top } = framed((svg ?? canvas)!, job, name);
  const image = await pictured(text);
  const paper = document.createElement('canvas');
  paper.width = Math.round(width * FINER);
  paper.height = Math.round(height * FINER);
  const ink = paper.getContext('2d')!;
  ink.drawImage(image, 0, 0, paper.width, paper.height);
  if (canvas) {
    const { width: wide, height: high } = canvas.getBoundingClientRect();
    const solid = await createImageBitmap(await redrawn(canvas));
    ink.drawImage(solid, 0, FINER * top, FINER * wide, FINER * high);
    // Its labels stand over it.
    const labels = canvas.closest('.stage-picture')?.querySelector<SVGSVGElement>('.stage-tags');
    if (labels) ink.drawImage(await imageOf(labels), 0, FINER * top, FINER * wide, FINER * high);
  }
  return pictureOf(paper);
}

export async function pictured(svg: string): Promise<HTMLImageElement> {
  const image = new Image();
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svg)}`;
  await image.decode();
  return image;
}

function imageOf(svg: SVGSVGElement): Promise<HTMLImageElement> {
  const copy = standaloneCopy(svg);
  copy.setAttribute('xmlns', SVG);
  return pictured(new XMLSerializer().serializeToString(copy));
}
