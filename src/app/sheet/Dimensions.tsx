/** Dimension lines, leaders and the symbols of cones, for the drawings of the Sheet. */
import { ARROW } from '../picture/dimensionRows.ts';
import { FIGURE, type SpanOnScreen } from '../picture/sectionLayout.ts';
import { textWidth } from '../picture/textWidth.ts';
import { HEAD, lettering, THIN } from './ink.ts';

const CLEAR = 3;
const PAST = 5;
const BARB = 2.4;

const n = (value: number) => value.toFixed(2);

function head(x: number, y: number, dx: number, dy: number): string {
  const [bx, by] = [x + ARROW * dx, y + ARROW * dy];
  return `M${n(x)} ${n(y)}L${n(bx - BARB * dy)} ${n(by + BARB * dx)}L${n(bx + BARB * dy)} ${n(by - BARB * dx)}Z`;
}

/** A length below the part; a theoretically exact one stands in a frame. */
export function Length({ span, exact }: { span: SpanOnScreen; exact: boolean }) {
  const { low, high, line, within, from, to, starts, figureAt, text } = span;
  const inward = within ? 1 : -1;
  const width = textWidth(text, FIGURE) + 6;
  return (
    <g>
      <path {...THIN} d={`M${n(low)} ${n(starts[0] + CLEAR)}V${n(line + PAST)}M${n(high)} ${n(starts[1] + CLEAR)}V${n(line + PAST)}M${n(from)} ${n(line)}H${n(to)}`} />
      <path {...HEAD} d={head(low, line, inward, 0) + head(high, line, -inward, 0)} />
      <text {...lettering(FIGURE)} x={n(figureAt)} y={n(line - 4)} textAnchor="middle">
        {text}
      </text>
      {exact && <rect {...THIN} x={n(figureAt - width / 2)} y={n(line - 4 - FIGURE)} width={n(width)} height={FIGURE + 3} />}
    </g>
  );
}

/** A diameter at an end of the part, to be read from the right. */
export function Diameter({ span, outward }: { span: SpanOnScreen; outward: 1 | -1 }) {
  const { low, high, line, within, from, to, starts, figureAt, text } = span;
  const inward = within ? 1 : -1;
  const end = line + outward * PAST;
  return (
    <g>
      <path {...THIN} d={`M${n(starts[0] + outward * CLEAR)} ${n(low)}H${n(end)}M${n(starts[1] + outward * CLEAR)} ${n(high)}H${n(end)}M${n(line)} ${n(from)}V${n(to)}`} />
      <path {...HEAD} d={head(line, low, 0, inward) + head(line, high, 0, -inward)} />
      <text {...lettering(FIGURE)} transform={`translate(${n(line - 4)} ${n(figureAt)}) rotate(-90)`} textAnchor="middle">
        {text}
      </text>
    </g>
  );
}

/**
 * The symbol of a taper: an isosceles triangle whose point shows the way in which the cone gets smaller.
 * @source ISO 3040, symbol for rate of taper (from memory)
 */
export function TaperSymbol({ x, y, widens }: { x: number; y: number; widens: 1 | -1 }) {
  const [base, point] = widens === 1 ? [x + 16, x] : [x, x + 16];
  return <path {...THIN} strokeWidth={1} d={`M${n(point)} ${n(y)}L${n(base)} ${n(y - 5)}V${n(y + 5)}Z`} />;
}
