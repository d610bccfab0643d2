/** Width (CSS pixels) of a line of the page's lettering, before it is set. */
let context: CanvasRenderingContext2D | null | undefined;

/** Where the browser gives no canvas to measure on: a wide letter for each. */
const WIDE = 0.64;
const MOST_KEPT = 2000;
const widths = new Map<string, number>();

export function textWidth(text: string, size: number, weight = 400): number {
  context ??= document.createElement('canvas').getContext('2d');
  if (!context) return text.length * size * WIDE;
  // Figures are as wide as each other on the page, so that what only counts on is known already.
  const like = text.replace(/[0-9]/g, '0');
  const key = `${weight} ${size} ${like}`;
  const known = widths.get(key);
  if (known !== undefined) return known;
  context.font = `${weight} ${size}px ${getComputedStyle(document.body).fontFamily}`;
  const { width } = context.measureText(like);
  if (widths.size > MOST_KEPT) widths.clear();
  widths.set(key, width);
  return width;
}

/** The text, cut with an ellipsis where it is wider than the room. */
export function fitted(text: string, size: number, room: number, width = textWidth): string {
  if (width(text, size) <= room) return text;
  let kept = text.length - 1;
  while (kept > 1 && width(`${text.slice(0, kept)}…`, size) > room) kept--;
  return `${text.slice(0, kept)}…`;
}
