/**
 * Every seat magnified, side by side and all at one scale: the bush's edge lying level, the journal's below it, the oil
 * between, and the film wanted. One move of the journal shuts one seat while it hardly stirs another.
 */
import './lenses.css';
import { scaleLinear } from 'd3-scale';
import { memo, useId, useMemo, useRef } from 'react';
import type { Millimetres } from '../../../design/dimension.ts';
import { fineText, fineUnit, type System } from '../../../design/units.ts';
import { metres, millimetres } from '../../../report/convert.ts';
import type { FitReport, SeatFitReport } from '../../../report/fit/definition.ts';
import { SAME, type Wanted } from '../../../report/inFrame.ts';
import { betweenPlaces, type Drawn, type DrawnSeat, type FilmPlace } from '../../pictures/drawn.ts';
import { FilmPatterns, FilmShape } from '../../pictures/FilmPaint.tsx';
import { CLASS_TEXT, classOf, filmRuns } from '../../pictures/filmClass.ts';
import { thinned } from '../../pictures/thinned.ts';
import { useSize } from '../../pictures/useSize.ts';
import { lensDepth, thinnestSections } from './lens.ts';

interface Props {
  drawn: Drawn;
  /** where the journal stood when it was taken hold of */
  ghost: Drawn | null;
  fit: FitReport;
  system: System;
  /** m: how deep they look, where what is to come is known; else by the films wanted */
  deep?: number;
  /** whether films are told in figures */
  figures?: boolean;
  /** how a film (mm) is told, where that is not as everywhere */
  say?: Say;
  /** what they are called, where others stand beside them */
  label?: string;
}

type Say = (film: Millimetres, system: System) => string;

/** px: while it is yet to learn its room */
const HEIGHT = 144;
/** Metal of the bush above its edge, as a share of the height; px: of the journal at the deepest film shown. */
const METAL = 0.2;
const FOOT = 14;
/** px: the highest that the journal's edge is drawn, bush above it */
const HEAD = 10;
const RULER = 46;
/** px: where the scale is left out, from the foot and from the bush's edge; the deepest film drawn below it */
const BREAK = { foot: FOOT + 6, head: 8 };
const BEYOND = FOOT - 5;
const MOST_POINTS = 300;

function Lenses(props: Props) {
  const { drawn, ghost, fit, system, deep, figures = true, say = fineText } = props;
  const { label = 'Each seat magnified, all at one scale' } = props;
  const depth = deep ?? lensDepth(drawn.seats);
  const sections = useMemo(() => thinnestSections(drawn), [drawn]);
  return (
    <section className="lenses" aria-label={label}>
      {inOrder(sections).map((i) => (
        <Lens
          key={sections[i]!.name}
          seat={sections[i]!}
          was={ghost?.seats[i] ?? null}
          told={fit.seats[i]!}
          pulled={drawn.pulled}
          depth={depth}
          system={system}
          figures={figures}
          say={say}
        />
      ))}
    </section>
  );
}

/** Places of the seats from the rear to the nose, as they stand in the section: of the bush, for it stands still. */
const inOrder = (seats: readonly DrawnSeat[]) =>
  seats.map((_, i) => i).sort((a, b) => middle(seats[a]!) - middle(seats[b]!));
const middle = ({ bush }: DrawnSeat) => bush[0]![0] + bush[bush.length - 1]![0];

export default memo(Lenses);

interface LensProps {
  seat: DrawnSeat;
  was: DrawnSeat | null;
  told: SeatFitReport;
  pulled: boolean;
  /** m */
  depth: number;
  system: System;
  figures: boolean;
  say: Say;
}

function Lens({ seat, was, told, pulled, depth, system, figures, say }: LensProps) {
  const id = useId();
  const box = useRef<HTMLDivElement>(null);
  const size = useSize(box, { width: 420, height: HEIGHT });
  const { width, height } = size;
  const metal = metalOf(height);
  const places = useMemo(() => thinned(seat.film, MOST_POINTS, ({ film }) => film), [seat]);
  const least = places.length === 0 ? null : Math.min(...places.map(({ film }) => film));
  const [left, right] = [2, Math.max(60, width - RULER)];
  const y = depthScale(depth, height);
  const ends = places.length > 1 ? [places[0]!.along, places[places.length - 1]!.along] : [0, 1];
  const x = scaleLinear(ends, [left, right]);
  const at = (along: number, out: number) => `${x(along).toFixed(1)} ${y(out).toFixed(1)}`;
  const edge = places.map(({ along, edge: out }) => at(along, out)).join('L');
  // Off the scale it is shown to be so: the edge at the foot or the head, a break before it.
  const broken = least === null ? null : least > depth ? 'foot' : y(least) < HEAD ? 'head' : null;
  const journalAt = ({ along, edge, film }: FilmPlace) =>
    broken ? `${x(along).toFixed(1)} ${broken === 'foot' ? height - BEYOND : HEAD}` : at(along, edge + film);
  const journalEdge = places.map(journalAt);
  const kind = least === null ? null : classOf(least, seat.wanted);
  const touching = kind === 'touch';
  return (
    <figure className={`lens ${touching ? 'touching' : (kind ?? 'apart')}`}>
      <figcaption>
        <strong>{seat.name}</strong>
        <span className="film-is">{kind === null || kind === 'plain' ? '' : CLASS_TEXT[kind]}</span>
        <span className="film-now">{least === null ? 'apart' : say(millimetres(least), system)}</span>
        <span className="travel">
          {!pulled && meanText(told, least, system)}
          {travelText(told, system)}
        </span>
      </figcaption>
      <div className="lens-room" ref={box}>
        <svg
          width={width}
          height={height}
          viewBox={`0 0 ${width} ${height}`}
          role="img"
          aria-label={
            figures
              ? labelOf(told.name, least === null ? null : say(millimetres(least), system))
              : `The ${told.name} seat magnified`
          }
        >
          <Defined id={id} left={left} right={right} height={height} />
          <g clipPath={`url(#${id}lens)`}>
            {places.length > 1 && (
              <>
                <BushMetal id={id} edge={edge} left={left} right={right} />
                <polygon
                  fill={`url(#${id}journal)`}
                  points={`${journalEdge.join(' ')} ${right} ${height} ${left} ${height}`}
                />
                {filmRuns(places, seat.wanted, betweenPlaces).map(({ name, kind: run, places: along }) => (
                  <FilmShape
                    key={name}
                    id={id}
                    kind={run}
                    points={[...along.map((p) => at(p.along, p.edge)), ...along.map(journalAt).reverse()].join(' ')}
                  />
                ))}
                {was && (
                  <path className="ghost" d={`M${was.film.map((p) => at(p.along, p.edge + p.film)).join('L')}`} />
                )}
                <BushEdge edge={edge} />
                <polyline className="edge" points={journalEdge.join(' ')} />
                {broken && (
                  <Break left={left} right={right} y={broken === 'foot' ? height - BREAK.foot : metal - BREAK.head} />
                )}
                {touching && <Touches places={places} at={at} />}
              </>
            )}
          </g>
          <Frame left={left} right={right} height={height} />
          <Ruler
            wanted={seat.wanted}
            depth={depth}
            left={left}
            right={right}
            height={height}
            system={system}
            broken={broken === 'foot'}
          />
          {broken && (
            <text
              x={(left + right) / 2}
              y={broken === 'foot' ? height - BREAK.foot - 10 : metal + 56}
              textAnchor="middle"
              className="beyond"
            >
              {broken === 'foot' ? '↓' : '↑'} {say(millimetres(least!), system)}
            </text>
          )}
        </svg>
      </div>
    </figure>
  );
}

interface Across {
  left: number;
  right: number;
  height: number;
}

// What stands still while the journal moves is drawn once: the bush's edge as a text, the same while it is.
const Defined = memo(function Defined({ id, left, right, height }: Across & { id: string }) {
  return (
    <>
      <FilmPatterns id={id} />
      <Hatching id={`${id}bush`} turn={-45} fill="bush-fill" />
      <Hatching id={`${id}journal`} turn={45} fill="journal-fill" />
      <clipPath id={`${id}lens`}>
        <rect x={left} y={1} width={right - left} height={height - 2} />
      </clipPath>
    </>
  );
});

const BushMetal = memo(function BushMetal({
  id,
  edge,
  left,
  right,
}: Omit<Across, 'height'> & { id: string; edge: string }) {
  return <path fill={`url(#${id}bush)`} d={`M${edge}L${right} 0L${left} 0Z`} />;
});

const BushEdge = memo(function BushEdge({ edge }: { edge: string }) {
  return <path className="edge" d={`M${edge}`} />;
});

const Frame = memo(function Frame({ left, right, height }: Across) {
  return <rect className="frame" x={left} y={1} width={right - left} height={height - 2} />;
});

const Hatching = memo(function Hatching({ id, turn, fill }: { id: string; turn: number; fill: string }) {
  return (
    <pattern id={id} width={9} height={9} patternUnits="userSpaceOnUse" patternTransform={`rotate(${turn})`}>
      <rect width={9} height={9} className={fill} />
      <path d="M0 0V9" className="hatch" />
    </pattern>
  );
});

/** px: of a break line's teeth */
const TOOTH = 9;

/** Where the scale is left out. */
const Break = memo(function Break({ left, right, y }: Omit<Across, 'height'> & { y: number }) {
  const teeth = Array.from({ length: Math.ceil((right - left) / TOOTH) }, (_, i) => `l${TOOTH} ${i % 2 ? 5 : -5}`);
  return (
    <g className="break">
      {[0, 5].map((down) => (
        <path key={down} className="gap" d={`M${left} ${y + down}${teeth.join('')}`} />
      ))}
      {[-2, 7].map((down) => (
        <path key={down} className="side" d={`M${left} ${y + down}${teeth.join('')}`} />
      ))}
    </g>
  );
});

function Touches({ places, at }: { places: readonly FilmPlace[]; at(along: number, out: number): string }) {
  const touching = places.filter(({ film }) => Math.abs(film) <= SAME).map(({ along, edge }) => at(along, edge));
  return <path className="touch" d={`M${touching.join('L')}${touching.length === 1 ? `L${touching[0]}` : ''}`} />;
}

interface RulerProps extends Across {
  wanted: Wanted | null;
  depth: number;
  system: System;
  /** deeper than it reaches: it ends where the scale is left out */
  broken: boolean;
}

const metalOf = (height: number) => Math.round(METAL * height);
/** px of a film (m) */
const depthScale = (depth: number, height: number) => scaleLinear([0, depth], [metalOf(height), height - FOOT]);

/** px: a figure of the ruler clear of the break; heights from which on it has more of them, and below which fewer */
const CLEAR = 7;
const TALL = 260;
const LOW = 120;
/** px: the highest that its unit stands without being cut */
const UNIT = 12;

/** The film counted from the bush's edge, and the band of the film wanted from left to right, where it stands. */
const Ruler = memo(function Ruler({ wanted, depth, left, right, height, system, broken }: RulerProps) {
  const y = depthScale(depth, height);
  const fine = fineUnit(system);
  const unit = metres(fine.size);
  const end = broken ? height - BREAK.foot - CLEAR : height;
  const ticks = scaleLinear([0, depth / unit], [0, 1])
    .ticks(height > TALL ? 10 : height < LOW ? 3 : 5)
    .filter((tick) => y(tick * unit) <= end);
  return (
    <g className="ruler">
      {wanted && (
        <>
          {[wanted.target - wanted.tolerance, wanted.target + wanted.tolerance].map((edge, i) => (
            <path key={i === 0 ? 'low' : 'high'} className="wanted-edge" d={`M${left} ${y(edge)}H${right}`} />
          ))}
          <rect
            className="wanted-band"
            x={right}
            width={7}
            y={y(wanted.target - wanted.tolerance)}
            height={Math.max(1.5, y(wanted.target + wanted.tolerance) - y(wanted.target - wanted.tolerance))}
          />
        </>
      )}
      {ticks.map((tick) => (
        <g key={tick}>
          <path className="tick" d={`M${right} ${y(tick * unit)}h${7}`} />
          <text x={right + 10} y={y(tick * unit) + 4}>
            {tick}
          </text>
        </g>
      ))}
      <text x={right + 4} y={Math.max(UNIT, metalOf(height) - 14)}>
        {fine.name}
      </text>
    </g>
  );
});

/** @param film m, as it is drawn: of a journal pulled aside the least all round */
const labelOf = (name: string, film: string | null) =>
  `The ${name} seat magnified: ${film === null ? 'apart' : `film ${film}`}`;

/** Of a seat with lobes: the least all round is drawn here, and elsewhere the film of the mean lines is told. */
const meanText = ({ leastFilm }: SeatFitReport, film: number | null, system: System) =>
  film === null || leastFilm === null || Math.abs(leastFilm - millimetres(film)) < SEEN
    ? ''
    : `least of its lobes; ${fineText(leastFilm, system)} by its mean lines; `;
/** mm: figures that differ by less are told alike */
const SEEN = 5e-6;

function travelText({ sensitivity }: SeatFitReport, system: System): string {
  if (sensitivity === null) return '';
  if (Math.abs(sensitivity) < 1e-9) return 'no axial move changes it';
  const { size, name } = fineUnit(system);
  return `${fineText(Math.abs(sensitivity) * 10 * size, system)} per 10 ${name} moved`;
}
