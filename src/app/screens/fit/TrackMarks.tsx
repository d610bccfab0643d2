/** On the track: how far apart two seats would have the journal, and where a bar goes on past the end. */
import { arrowHead } from '../../pictures/arrowHead.ts';
import { textWidth } from '../../pictures/textWidth.ts';

/** px: lettering, clear of its line, and past its dimension line of a line that leads to it */
const LETTERS = 13;
const CLEAR = 6;
const OVER = 3;

interface DimensionProps {
  /** px: from bar to bar, the middle of each */
  from: { x: number; y: number };
  to: { x: number; y: number };
  width: number;
  text: string;
}

/** Between two bars of neighbouring rows; where there is no room for its figure within, it stands beside. */
export function TrackDimension({ from, to, width, text }: DimensionProps) {
  const [left, right] = from.x <= to.x ? [from, to] : [to, from];
  // Above the middle: the lower of the two has its touch there.
  const y = (from.y + to.y) / 2 - 4;
  const wide = textWidth(text, LETTERS);
  const within = right.x - left.x > wide + 4 * CLEAR + 16;
  const beside = right.x + CLEAR + wide < width ? right.x + CLEAR : left.x - CLEAR - wide;
  const x = within ? (left.x + right.x - wide) / 2 : beside;
  const lead = ({ x: at, y: bar }: { x: number; y: number }) => `M${at} ${bar}V${y + Math.sign(y - bar) * OVER}`;
  return (
    <g className="apart">
      <path d={`${lead(left)}${lead(right)}`} />
      {/* Broken for the figure: a halo alone lets it through between the figure and its unit. */}
      <path d={`M${left.x} ${y}H${within ? `${x - CLEAR}M${x + wide + CLEAR} ${y}H` : ''}${right.x}`} />
      {right.x - left.x > 24 && (
        <path className="tip" d={`${arrowHead(left.x, y, 1, 0)}${arrowHead(right.x, y, -1, 0)}`} />
      )}
      <text x={x} y={y + 4.5} fontSize={LETTERS}>
        {text}
      </text>
    </g>
  );
}

/** px: half the height of the sign, how far aslant, and between its two strokes */
const SIGN = { half: 6, lean: 3, between: 4 };

/** The bar goes on past the end of what is shown. `inward`: to which side the rest of it lies. */
export function GoesOn({ x, y, inward }: { x: number; y: number; inward: 1 | -1 }) {
  const stroke = (at: number) => `M${at - SIGN.lean / 2} ${y + SIGN.half}L${at + SIGN.lean / 2} ${y - SIGN.half}`;
  const [near, far] = [x + inward * 6, x + inward * (6 + SIGN.between)];
  return (
    <g className="goes-on">
      <title>goes on past the end of what is shown</title>
      <path className="gap" d={stroke((near + far) / 2)} />
      <path d={`${stroke(near)}${stroke(far)}`} />
    </g>
  );
}
