/** Dimension lines with their arrow heads, extension lines and figures; angles at the small ends. Pixels. */
import { arrowHead as head } from './arrowHead.ts';
import { ARROW, TAIL } from './dimensionRows.ts';
import type { Dimensions } from './dimensions.ts';
import type { SectionFrame } from './sectionFrame.ts';
import {
  type AngleOnScreen,
  angleOnScreen,
  dimensionsOnScreen,
  FIGURE,
  type Measures,
  onScreen,
  type Placing,
  type SpanOnScreen,
} from './sectionLayout.ts';
import { textWidth } from './textWidth.ts';

/** How far extension lines start from the part and pass the dimension line. */
const CLEAR = 2;
const PAST = 4;

const n = (value: number) => value.toFixed(2);

/** Room between a figure that is assumed and the dashes about it. */
const ABOUT = 3;

/** The middle of its foot at 0, 0. What is assumed stands slanted within dashes, as in the fields. */
function Figure({ text, assumed, className = '' }: { text: string; assumed: boolean; className?: string }) {
  const width = textWidth(text, FIGURE) + 2 * ABOUT;
  return (
    <>
      {assumed && <rect className="assumed" x={n(-width / 2)} y={n(-FIGURE)} width={n(width)} height={FIGURE + 2} />}
      <text className={`${className}${assumed ? ' assumed' : ''}`.trim()} fontSize={FIGURE} textAnchor="middle">
        {text}
      </text>
    </>
  );
}

/** Lengths below the part: everything level, the figure above its line. */
function LengthSpan({ span }: { span: SpanOnScreen }) {
  const { low, high, line, within, from, to, starts, figureAt, text, assumed } = span;
  const inward = within ? 1 : -1;
  return (
    <g className="dimension">
      <path
        className="thin"
        d={`M${n(low)} ${n(starts[0] + CLEAR)}V${n(line + PAST)}M${n(high)} ${n(starts[1] + CLEAR)}V${n(line + PAST)}M${n(from)} ${n(line)}H${n(to)}`}
      />
      <path className="head" d={head(low, line, inward, 0) + head(high, line, -inward, 0)} />
      <g transform={`translate(${n(figureAt)} ${n(line - 4)})`}>
        <Figure text={text} assumed={assumed} />
      </g>
    </g>
  );
}

/** Diameters at an end of the part: everything upright, to be read from the right. */
function DiameterSpan({ span, outward }: { span: SpanOnScreen; outward: 1 | -1 }) {
  const { low, high, line, within, from, to, starts, figureAt, text, assumed } = span;
  const inward = within ? 1 : -1;
  const end = line + outward * PAST;
  return (
    <g className="dimension">
      <path
        className="thin"
        d={`M${n(starts[0] + outward * CLEAR)} ${n(low)}H${n(end)}M${n(starts[1] + outward * CLEAR)} ${n(high)}H${n(end)}M${n(line)} ${n(from)}V${n(to)}`}
      />
      <path className="head" d={head(line, low, 0, inward) + head(line, high, 0, -inward)} />
      <g transform={`translate(${n(line - 4)} ${n(figureAt)}) rotate(-90)`}>
        <Figure text={text} assumed={assumed} />
      </g>
    </g>
  );
}

/** The half angle between the line of a seat and a parallel to the axis through its small end, below the axis. */
function Angle({ angle }: { angle: AngleOnScreen }) {
  const { apex, reference, radius, toward, halfAngle, within, text, assumed, figure } = angle;
  // Angles from the parallel, down the page toward the line.
  const at = (turn: number) => ({ x: apex.x + toward * radius * Math.cos(turn), y: apex.y + radius * Math.sin(turn) });
  const tail = within ? 0 : TAIL / radius;
  const [first, last] = [at(-tail), at(halfAngle + tail)];
  const [low, high] = [at(0), at(halfAngle)];
  const line = {
    x: apex.x + toward * (radius + 6) * Math.cos(halfAngle),
    y: apex.y + (radius + 6) * Math.sin(halfAngle),
  };
  // Along the arc, away from the point of each head; a chord of the head's length, so that it lies on the arc.
  const lean = ARROW / radius / 2;
  const along = (turn: number, way: 1 | -1): [number, number] => [
    -toward * way * Math.sin(turn + way * lean),
    way * Math.cos(turn + way * lean),
  ];
  const way = within ? 1 : -1;
  return (
    <g className="dimension">
      <path
        className="thin"
        d={`M${n(apex.x)} ${n(apex.y)}L${n(reference.x)} ${n(reference.y)}M${n(apex.x)} ${n(apex.y)}L${n(line.x)} ${n(line.y)}M${n(first.x)} ${n(first.y)}A${n(radius)} ${n(radius)} 0 0 ${toward > 0 ? 1 : 0} ${n(last.x)} ${n(last.y)}`}
      />
      <path
        className="head"
        d={head(low.x, low.y, ...along(0, way)) + head(high.x, high.y, ...along(halfAngle, way === 1 ? -1 : 1))}
      />
      <g transform={`translate(${n(figure.x)} ${n(figure.y)})`}>
        <Figure text={text} assumed={assumed} className="on-steel" />
      </g>
    </g>
  );
}

export default function SectionDimensions({
  frame,
  dimensions,
  at,
  size,
  measures,
}: {
  frame: SectionFrame;
  dimensions: Dimensions;
  at: Placing;
  size: { width: number; height: number };
  measures: Measures;
}) {
  const { lengths, rear, nose } = dimensionsOnScreen(frame, dimensions, at, size, measures);
  const datum = onScreen(at, [0, 0], 1);
  return (
    <g className="dimensions">
      {lengths.map((span) => (
        <LengthSpan key={span.name} span={span} />
      ))}
      {rear.map((span) => (
        <DiameterSpan key={span.name} span={span} outward={-1} />
      ))}
      {nose.map((span) => (
        <DiameterSpan key={span.name} span={span} outward={1} />
      ))}
      {dimensions.angles.map((angle) => {
        const shown = angle && angleOnScreen(angle, at, measures);
        return shown && <Angle key={angle.name} angle={shown} />;
      })}
      {at.level === 'full' && (
        <g className="dimension">
          <path className="thin" d={`M${datum.x} ${datum.y - 6}v12`} />
          <text className="on-steel" x={datum.x + 4} y={datum.y - 5} fontSize={FIGURE}>
            0
          </text>
        </g>
      )}
    </g>
  );
}
