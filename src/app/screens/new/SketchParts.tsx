/** The parts of an arrangement as they are drawn, not to scale: journal and bush in section, a film between. */
import type { Arrangement, SeatPlan } from './arrangements.ts';

/** In the drawing: the axis, the bush's outside, the ends of the journal, and the film between. */
export const AXIS = 250;
const OUTER = 118;
const REACH = 46;
const FILM = 5;
const RELIEF = 9;

type Point = readonly [x: number, r: number];

export const leftOf = ({ seats }: Arrangement) => seats[0]!.x[0] - REACH;
export const rightOf = ({ seats }: Arrangement) => seats.at(-1)!.x[1] + REACH;

/** The line of the journal, or of the bore above it, along all seats; relieved where they stand far apart. */
function line(seats: readonly SeatPlan[], off: number): Point[] {
  return seats.flatMap(({ x, r }, i): Point[] => {
    const next = seats[i + 1];
    const own: Point[] = [
      [x[0], r[0] + off],
      [x[1], r[1] + off],
    ];
    if (!next || next.x[0] - x[1] < 80) return own;
    const waist = off > 0 ? Math.max(r[1], next.r[0]) + off + RELIEF : Math.min(r[1], next.r[0]) - RELIEF;
    return [...own, [x[1], waist], [next.x[0], waist]];
  });
}

const path = (points: readonly Point[], side: 1 | -1) =>
  `M${points.map(([x, r]) => `${x} ${AXIS - side * r}`).join('L')}Z`;

export function SketchParts({ plan }: { plan: Arrangement }) {
  const { seats } = plan;
  const [left, right] = [leftOf(plan), rightOf(plan)];
  const [first, last] = [seats[0]!, seats.at(-1)!];
  const bore = line(seats, FILM);
  const body: Point[] = [[left, first.r[0] - 4], [first.x[0], first.r[0] - 4], ...line(seats, 0), [right, last.r[1]]];
  const bush: Point[] = [...bore, [last.x[1], OUTER], [first.x[0], OUTER]];
  const outline = [...body, ...body.toReversed().map(([x, r]): Point => [x, -r])];
  return (
    <g className="parts">
      {([1, -1] as const).map((side) => (
        <g key={side}>
          <path d={path(bush, side)} className="bush-fill outline" />
          {seats.map(({ name, x, r }) => (
            <path
              key={name}
              d={path(
                [
                  [x[0], r[0]],
                  [x[1], r[1]],
                  [x[1], r[1] + FILM],
                  [x[0], r[0] + FILM],
                ],
                side,
              )}
              className="film"
            />
          ))}
        </g>
      ))}
      <path d={path(outline, 1)} className="journal-fill outline" />
      <path d={`M${left - 14} ${AXIS}H${right + 14}`} className="axis" />
    </g>
  );
}

/** A small section of it, to choose by. */
export function Thumbnail({ plan }: { plan: Arrangement }) {
  const [left, right] = [leftOf(plan) - 14, rightOf(plan) + 14];
  return (
    <svg viewBox={`${left} ${AXIS - OUTER - 6} ${right - left} ${2 * OUTER + 12}`} aria-hidden="true">
      <SketchParts plan={plan} />
    </svg>
  );
}
