/**
 * Several drawings as they stand beside one another on the screen, with what is said of them, as one picture: the job
 * and what is so now above them.
 */
import { pictureOf } from '../pictures/redraw.ts';
import { groundOf, SVG, standaloneCopy, svgElement } from '../pictures/standaloneSvg.ts';
import { NOT_TOLD, wrapped } from './framed.ts';
import { FINER, pictured } from './onScreen.ts';

/** px */
const PAD = 16;
const LINE = 1.4;
/** px: of the words above, and of those above a picture too narrow for them */
const HEAD = { now: 30, job: 18 };
const SMALL = { now: 20, job: 14 };
const NARROW = 600;

export interface Whole {
  text: string;
  width: number;
  height: number;
}

/** `now`: what is so, in words; it stands above. */
export function wholeOf(area: HTMLElement, job: string, now: string): Whole {
  const box = area.getBoundingClientRect();
  const look = getComputedStyle(area);
  const width = Math.ceil(box.width + 2 * PAD);
  const above = headOf(now, job, width);
  const head = above.height;
  const height = Math.ceil(head + box.height + 2 * PAD);
  const whole = svgElement('svg', {
    xmlns: SVG,
    width,
    height,
    viewBox: `0 0 ${width} ${height}`,
    'font-family': look.fontFamily,
    fill: look.color,
  });
  const add = (text: string, at: Record<string, string | number>) =>
    whole.append(Object.assign(svgElement('text', at), { textContent: text }));
  whole.append(svgElement('rect', { width: '100%', height: '100%', fill: groundOf(area) }));
  for (const { text, ...at } of above.lines) add(text, at);
  const placed = ({ left, top }: DOMRect) => ({ x: left - box.left + PAD, y: top - box.top + PAD + head });
  for (const figure of area.querySelectorAll('figure')) {
    const frame = figure.getBoundingClientRect();
    const { borderLeftColor, borderLeftWidth } = getComputedStyle(figure);
    const stroke = Number.parseFloat(borderLeftWidth) > 0 ? borderLeftColor : 'none';
    const size = { width: frame.width, height: frame.height };
    whole.append(svgElement('rect', { ...placed(frame), ...size, fill: groundOf(figure), stroke }));
  }
  for (const drawing of area.querySelectorAll<SVGSVGElement>('svg[aria-label]')) {
    const copy = standaloneCopy(drawing);
    for (const [key, value] of Object.entries(placed(drawing.getBoundingClientRect())))
      copy.setAttribute(key, `${value}`);
    whole.append(copy);
  }
  for (const { text, rect, style, zoom } of saidIn(area)) {
    const { x, y } = placed(rect);
    const size = zoom * Number.parseFloat(style.fontSize);
    const at = { x, y: y + (rect.height + 0.72 * size) / 2 };
    add(text, { ...at, 'font-size': size, 'font-weight': style.fontWeight, fill: style.color });
  }
  return { text: new XMLSerializer().serializeToString(whole), width, height };
}

/** The words above, in as many lines as they take. */
function headOf(now: string, job: string, width: number) {
  const sizes = width < NARROW ? SMALL : HEAD;
  let height = PAD;
  const lines = [
    { words: now, size: sizes.now, weight: 700 },
    { words: job, size: sizes.job, weight: 400 },
  ].flatMap(({ words, size, weight }) =>
    wrapped(words, size, width - 2 * PAD, weight).map((text) => {
      const y = height + size;
      height += LINE * size;
      return { text, x: PAD, y, 'font-size': size, 'font-weight': weight };
    }),
  );
  return { lines, height };
}

/** The words of all captions where they stand, a piece for every line they take. */
function saidIn(area: HTMLElement) {
  const found: { text: string; rect: DOMRect; style: CSSStyleDeclaration; zoom: number }[] = [];
  for (const caption of area.querySelectorAll('figcaption')) {
    const walk = document.createTreeWalker(caption, NodeFilter.SHOW_TEXT);
    for (let node = walk.nextNode(); node; node = walk.nextNode()) {
      const parent = node.parentElement!;
      if (parent.closest(NOT_TOLD)) continue;
      const style = getComputedStyle(parent);
      const zoom = parent.offsetWidth > 0 ? parent.getBoundingClientRect().width / parent.offsetWidth : 1;
      for (const [from, to] of linesOf(node)) {
        const range = document.createRange();
        range.setStart(node, from);
        range.setEnd(node, to);
        const text = range.toString().trim();
        if (text !== '') found.push({ text, rect: range.getBoundingClientRect(), style, zoom });
      }
    }
  }
  return found;
}

/** From where to where a text stands on one line. */
function linesOf(node: Node): [from: number, to: number][] {
  const long = node.textContent!.length;
  const range = document.createRange();
  const topOf = (i: number) => {
    range.setStart(node, i);
    range.setEnd(node, i + 1);
    return range.getClientRects()[0]?.top;
  };
  const lines: [number, number][] = [];
  let [from, top] = [0, topOf(0)];
  for (let i = 1; i < long; i++) {
    const here = topOf(i);
    if (here === undefined || top === undefined || Math.abs(here - top) > 2) {
      if (here === undefined) continue;
      if (top !== undefined) lines.push([from, i]);
      [from, top] = [i, here];
    }
  }
  return top === undefined ? lines : [...lines, [from, long]];
}

export async function wholePicture(area: HTMLElement, job: string, now: string): Promise<Blob> {
  const { text, width, height } = wholeOf(area, job, now);
  const paper = document.createElement('canvas');
  paper.width = Math.round(width * FINER);
  paper.height = Math.round(height * FINER);
  paper.getContext('2d')!.drawImage(await pictured(text), 0, 0, paper.width, paper.height);
  return pictureOf(paper);
}
