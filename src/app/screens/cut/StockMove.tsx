/** How far the journal goes by the plan, along the axis: a dimension below the rear end of both its places. */
import type { Millimetres } from '../../../design/dimension.ts';
import { fineText, type System } from '../../../design/units.ts';
import { metres } from '../../../report/convert.ts';
import { arrowHead } from '../../pictures/arrowHead.ts';
import { ARROW, TAIL } from '../../pictures/dimensionRows.ts';
import type { SectionFrame } from '../../pictures/sectionFrame.ts';
import { FIGURE, onScreen, type Placing } from '../../pictures/sectionLayout.ts';
import { textWidth } from '../../pictures/textWidth.ts';

/** mm: a move that rounding makes is none. */
const NONE = 1e-6;
/** px: from the journal to the arrow, past it, and from it to its figure. */
const BELOW = 13;
const PAST = 4;
const CLEAR = 6;

/** null where the journal stays. */
export const moveText = (move: Millimetres, system: System): string | null =>
  Math.abs(move) < NONE ? null : `${fineText(Math.abs(move), system)} ${move < 0 ? 'rearward' : 'noseward'}`;

interface Props {
  /** before and after */
  frames: readonly [SectionFrame, SectionFrame];
  at: Placing;
  text: string;
}

export function StockMove({ frames, at, text }: Props) {
  const [from, to] = frames.map(({ journalLeft }) => onScreen(at, [metres(journalLeft), 0], -1).x) as [number, number];
  const foot = onScreen(at, [0, metres(frames[1].journal.above[0]![1])], -1).y;
  const y = foot + BELOW;
  const way = to < from ? -1 : 1;
  // A move shorter than its head has the shaft come from further off.
  const shaft = Math.abs(to - from) > ARROW + 2 ? from : to - way * (ARROW + TAIL);
  // Clear of the bush, as far as the picture has room.
  const end = Math.max(from, to, onScreen(at, [metres(frames[1].rear), 0], -1).x - PAST);
  const width = textWidth(text, FIGURE);
  return (
    <g className="dimension note" data-move={(to - from).toFixed(3)}>
      <path className="thin" d={`M${from} ${foot + 2}V${y + PAST}M${to} ${foot + 2}V${y + PAST}M${shaft} ${y}H${to}`} />
      <path className="head" d={arrowHead(to, y, -way, 0)} />
      <text x={Math.max(end, 1.05 * width + CLEAR)} y={y + PAST + FIGURE} fontSize={FIGURE} textAnchor="end">
        {text}
      </text>
    </g>
  );
}
