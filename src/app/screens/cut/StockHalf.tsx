/** The pieces of Cut's section: metal hatched, films, and the stock on the state before. */
import { metres } from '../../../report/convert.ts';
import { betweenPlaces, type Drawn, type DrawnSeat, type Point } from '../../pictures/drawn.ts';
import { FilmShape, pointsOf } from '../../pictures/FilmPaint.tsx';
import { filmRuns } from '../../pictures/filmClass.ts';
import type { PointInMm, SectionFrame } from '../../pictures/sectionFrame.ts';
import { onScreen, type Placing } from '../../pictures/sectionLayout.ts';

/** Above the axis or below it. */
export type Side = 1 | -1;

const HATCH = 9;
const FILLS = ['bush', 'journal'] as const;

export function Hatching({ id }: { id: string }) {
  return (
    <defs>
      {FILLS.map((part) => (
        <pattern
          key={part}
          id={`${id}${part}`}
          width={HATCH}
          height={HATCH}
          patternUnits="userSpaceOnUse"
          patternTransform={`rotate(${part === 'bush' ? 45 : -45})`}
        >
          <rect width="100%" height="100%" className={`${part}-fill`} />
          <path d={`M0 0V${HATCH}`} className="hatch" />
        </pattern>
      ))}
    </defs>
  );
}

export const path = (points: readonly Point[], at: Placing, side: Side) =>
  `M${points
    .map((point) => {
      const { x, y } = onScreen(at, point, side);
      return `${x.toFixed(2)} ${y.toFixed(2)}`;
    })
    .join('L')}Z`;

const inMetres = (points: readonly PointInMm[]): Point[] => points.map(([z, r]) => [metres(z), metres(r)]);

/** The half section of the journal, down to the axis. */
export const journalHalf = ({ journal: { above } }: SectionFrame): Point[] =>
  inMetres([...above, [above[above.length - 1]![0], 0], [above[0]![0], 0]]);
const bushHalf = ({ bush }: SectionFrame): Point[] => inMetres(bush.above);

/** Where there is metal, so that the stock is drawn on it alone. */
export function Metal({ frame, at, id }: { frame: SectionFrame; at: Placing; id: string }) {
  return FILLS.map((part) => (
    <clipPath key={part} id={`${id}${part}metal`}>
      <path d={path(part === 'journal' ? journalHalf(frame) : bushHalf(frame), at, 1)} />
    </clipPath>
  ));
}

/** One side of the axis in one state. */
export function Half({
  side,
  drawn,
  frame,
  at,
  id,
}: {
  side: Side;
  drawn: Drawn;
  frame: SectionFrame;
  at: Placing;
  id: string;
}) {
  return (
    <g>
      <path d={path(journalHalf(frame), at, side)} fill={`url(#${id}journal)`} className="outline" />
      <path d={path(bushHalf(frame), at, side)} fill={`url(#${id}bush)`} className="outline bush" />
      {drawn.seats.map(({ name, oil, wanted }) =>
        filmRuns(oil, wanted, betweenPlaces).map(({ name: run, kind, places }) => (
          <FilmShape
            key={`${name} ${run}`}
            points={pointsOf(path([...places.map((f) => f.bush), ...places.map((f) => f.journal).reverse()], at, side))}
            kind={kind}
            id={`${id}film`}
          />
        )),
      )}
    </g>
  );
}

/** What comes off a seat's two surfaces, on the state before. */
export function Stock({
  seat,
  to,
  at,
  id,
}: {
  seat: DrawnSeat;
  to: { journal: Point[]; bush: Point[] };
  at: Placing;
  id: string;
}) {
  return (['journal', 'bush'] as const).map((part) => {
    const [old, fresh] = [seat[part], to[part]];
    const moved =
      old.length !== fresh.length || old.some(([z, r], i) => Math.hypot(z - fresh[i]![0], r - fresh[i]![1]) > 1e-12);
    return (
      moved && (
        <path
          key={part}
          d={path([...old, ...fresh.toReversed()], at, 1)}
          className="stock"
          clipPath={`url(#${id}${part}metal)`}
          data-stock={`${seat.name} ${part}`}
        />
      )
    );
  });
}
