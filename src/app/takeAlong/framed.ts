/**
 * A picture as it leaves the program: above it the job and what is shown, beneath it what the screen says of it, the
 * factor of exaggeration and the meaning of its lines among that.
 */
import { groundOf, SVG, standaloneCopy, svgElement } from '../pictures/standaloneSvg.ts';
import { textWidth } from '../pictures/textWidth.ts';

export interface Framed {
  /** of an SVG file; a canvas is left out of it */
  text: string;
  /** CSS pixels, and how far down the picture begins */
  width: number;
  height: number;
  top: number;
}

/** px */
const PAD = 12;
const LINE = 1.4;
const SIZES = { job: 16, name: 14, told: 13 };
/** A narrow picture has room for words beside it. */
const LEAST_WIDTH = 320;
/** In a caption, what is there for the hand, and what is read elsewhere. */
export const NOT_TOLD = 'button, fieldset, label, input, select, output, .local, .hint, .unseen, svg, details';
/** A caption's words that belong to a mark. */
const KEYS = '.seat, .stock-key, .bar';

export function framed(shown: SVGSVGElement | HTMLCanvasElement, job: string, name: string): Framed {
  const box = shown.getBoundingClientRect();
  const width = Math.max(LEAST_WIDTH, box.width);
  const look = getComputedStyle(shown.parentElement ?? shown);
  const whole = svgElement('svg', { width, 'font-family': look.fontFamily, fill: look.color });
  let y = PAD;
  const line = (text: string, size: number, weight = 400, x = PAD) => {
    const at = { x, y: y + size, 'font-size': size, 'font-weight': weight };
    whole.append(Object.assign(svgElement('text', at), { textContent: text }));
    y += LINE * size;
  };
  const room = width - 2 * PAD;
  for (const text of wrapped(job, SIZES.job, room, 700)) line(text, SIZES.job, 700);
  for (const text of wrapped(name, SIZES.name, room)) line(text, SIZES.name);
  y += PAD / 2;
  const top = y;
  if (shown instanceof SVGSVGElement) {
    const copy = standaloneCopy(shown);
    copy.setAttribute('y', `${top}`);
    whole.append(copy);
  }
  y += box.height + PAD / 2;
  const caption = shown.closest('figure')?.querySelector('figcaption');
  for (const [mark, text] of caption ? keysOf(caption) : []) {
    const size = mark.getBoundingClientRect();
    const copy = standaloneCopy(mark);
    copy.setAttribute('x', `${PAD}`);
    copy.setAttribute('y', `${y + (LINE * SIZES.told - size.height) / 2}`);
    whole.append(copy);
    line(text, SIZES.told, 400, PAD + size.width + 8);
  }
  const told = [...stateOf(shown), caption ? toldIn(caption) : ''];
  for (const text of told.flatMap((one) => wrapped(one, SIZES.told, room))) line(text, SIZES.told);
  const height = Math.ceil(y + PAD);
  whole.prepend(svgElement('rect', { width: '100%', height: '100%', fill: groundOf(shown) }));
  for (const [key, value] of Object.entries({ xmlns: SVG, height, viewBox: `0 0 ${width} ${height}` }))
    whole.setAttribute(key, `${value}`);
  return { text: `${new XMLSerializer().serializeToString(whole)}\n`, width, height, top };
}

/** Of a picture of the pair that a hand moves: what the screen says is so, and where the journal stands. */
function stateOf(shown: Element): string[] {
  const main = shown.closest('main');
  const now = main?.querySelector('.verdict.fit .now')?.textContent;
  if (!now || !(shown instanceof HTMLCanvasElement || shown.matches('.section'))) return [];
  const at = main!.querySelector('[aria-label^="Axial position of the journal"]')?.getAttribute('aria-valuetext');
  return [tidy(now), ...(at ? [`Journal: ${tidy(at)}`] : [])];
}

/** What each mark of a caption stands for. */
const keysOf = (caption: Element): [SVGSVGElement, string][] =>
  [...caption.querySelectorAll(KEYS)].flatMap((key) => {
    const mark = key.querySelector('svg');
    return mark && key.getClientRects().length > 0 ? [[mark, tidy(key.textContent ?? '')]] : [];
  });

function toldIn(caption: Element): string {
  const copy = caption.cloneNode(true) as Element;
  for (const other of copy.querySelectorAll(`${NOT_TOLD}, ${KEYS}`)) other.remove();
  const parts = [...copy.childNodes].map(({ textContent }) => textContent ?? '');
  // Spans stand apart on the screen; words around one another do not.
  return tidy([...copy.children].length > 1 ? parts.filter((part) => part.trim() !== '').join(' · ') : parts.join(''));
}

const tidy = (text: string) => text.replace(/\s+/g, ' ').trim();

/** Lines no wider than the room, but for a word that is; a dot between two parts stays with the one before it. */
export function wrapped(text: string, size: number, room: number, weight = 400, measured = textWidth): string[] {
  const lines: string[] = [];
  for (const word of text.split(/ +(?!·)/).filter((one) => one !== '')) {
    const longer = lines.length === 0 ? word : `${lines[lines.length - 1]} ${word}`;
    if (lines.length > 0 && measured(longer, size, weight) <= room) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}
