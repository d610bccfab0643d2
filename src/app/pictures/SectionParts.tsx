/**
 * The two parts and the films between them: outlines in mm under one transform, hatching and lines as wide as on paper.
 */
import { memo } from 'react';
import { metres, millimetres } from '../../report/convert.ts';
import { betweenPlaces, type Drawn, type DrawnSeat } from './drawn.ts';
import { FilmPatterns, FilmShape } from './FilmPaint.tsx';
import { filmRuns } from './filmClass.ts';
import { inMm, MOST_POINTS, type PointInMm, type SectionFrame, sectionFrame } from './sectionFrame.ts';
import { onScreen, type Placing } from './sectionLayout.ts';
import { thinned } from './thinned.ts';

/** Between hatch lines, px. */
const HATCH = { bush: 9, journal: 11 };

interface PartProps {
  frame: SectionFrame;
  at: Placing;
  id: string;
}

/** mm, station and radius, to the screen; `side` -1 is below the axis. */
const transform = (at: Placing, side: 1 | -1) =>
  `translate(${at.middle.x - at.station * at.scale} ${at.middle.y}) scale(${at.scale} ${-side * at.scale})`;

const listOf = (points: readonly PointInMm[]) => points.map(([z, r]) => `${z.toFixed(5)} ${r.toFixed(5)}`).join(' ');

function pathOf(points: readonly PointInMm[], closed = true): string {
  return `M${points.map(([z, r]) => `${z.toFixed(5)} ${r.toFixed(5)}`).join('L')}${closed ? 'Z' : ''}`;
}

/** `moved`: drawn displacement, mm; the hatching goes with it. */
function Journal({ frame, at, id, moved }: PartProps & { moved: number }) {
  const step = HATCH.journal / at.scale;
  const outline = [...frame.journal.above, ...frame.journal.below.toReversed().map(([z, r]) => [z, -r] as const)];
  return (
    <g transform={transform(at, 1)}>
      <pattern
        id={`${id}j`}
        width={step}
        height={step}
        patternUnits="userSpaceOnUse"
        patternTransform={`translate(${moved} 0) rotate(45)`}
      >
        <rect width="100%" height="100%" className="journal-fill" />
        <path d={`M0 0V${step}`} className="hatch" />
      </pattern>
      <polygon points={listOf(outline)} fill={`url(#${id}j)`} className="outline" />
    </g>
  );
}

/** Stays as it is while the journal moves. */
function Bush({ frame, at, id }: PartProps) {
  const step = HATCH.bush / at.scale;
  return ([1, -1] as const).map((side) => (
    <g key={side} transform={transform(at, side)}>
      <pattern
        id={`${id}b${side}`}
        width={step}
        height={step}
        patternUnits="userSpaceOnUse"
        patternTransform={`rotate(${-45 * side})`}
      >
        <rect width="100%" height="100%" className="bush-fill" />
        <path d={`M0 0V${step}`} className="hatch" />
      </pattern>
      <path
        d={pathOf(side === 1 ? frame.bush.above : frame.bush.below)}
        fill={`url(#${id}b${side})`}
        className="outline bush"
      />
    </g>
  ));
}

const samePlacing = (a: Placing, b: Placing) =>
  a.scale === b.scale && a.middle.x === b.middle.x && a.middle.y === b.middle.y && a.station === b.station;

function sameBush(a: PartProps, b: PartProps): boolean {
  const sameLine = (one: readonly PointInMm[], other: readonly PointInMm[]) =>
    one.length === other.length && one.every(([z, r], i) => z === other[i]![0] && r === other[i]![1]);
  return (
    a.id === b.id &&
    samePlacing(a.at, b.at) &&
    sameLine(a.frame.bush.above, b.frame.bush.above) &&
    sameLine(a.frame.bush.below, b.frame.bush.below)
  );
}

const sameGhost = (a: { drawn: Drawn; at: Placing }, b: { drawn: Drawn; at: Placing }) =>
  a.drawn === b.drawn && samePlacing(a.at, b.at);

const SAME_M = 1e-12;

function Films({ drawn, frame, at, id }: PartProps & { drawn: Drawn }) {
  return (
    <>
      <FilmPatterns id={id} scale={at.scale} />
      {([1, -1] as const).map((side) => (
        <Pressed key={side} {...{ drawn, frame, at, id, side }} />
      ))}
      {([1, -1] as const).map((side) => (
        <g key={side} transform={transform(at, side)}>
          {(side === 1 ? drawn.seats : drawn.below).map((seat) => (
            <SeatFilm key={seat.name} seat={seat} id={id} />
          ))}
        </g>
      ))}
    </>
  );
}

/** All of the journal that lies in the bush, once a seat is pressed in: interference is overlap. */
function Pressed({ drawn, frame, at, id, side }: PartProps & { drawn: Drawn; side: 1 | -1 }) {
  const seats = side === 1 ? drawn.seats : drawn.below;
  if (!seats.some(({ film }) => film.some((place) => place.film < -SAME_M))) return null;
  const half = side === 1 ? 'above' : 'below';
  const line = frame.journal[half];
  const points = listOf([...line, [line[line.length - 1]![0], millimetres(0)], [line[0]![0], millimetres(0)]]);
  return (
    <g transform={transform(at, side)}>
      <clipPath id={`${id}in${half}`}>
        <path d={pathOf(frame.bush[half])} />
      </clipPath>
      <g clipPath={`url(#${id}in${half})`}>
        <FilmShape points={points} kind="pressed" id={id} />
        <polygon points={points} className="outline within-bush" />
      </g>
    </g>
  );
}

function SeatFilm({ seat: { film: whole, oil, wanted }, id }: { seat: DrawnSeat; id: string }) {
  const film = thinned(oil, MOST_POINTS, (place) => place.film);
  if (whole.length < 2) return null;
  const least = Math.min(...whole.map((place) => place.film));
  const places =
    Math.abs(least) > SAME_M ? [] : inMm(whole.filter((f) => Math.abs(f.film) <= SAME_M).map((f) => f.bush));
  return (
    <g>
      {filmRuns(film, wanted, betweenPlaces).map(({ name, kind, places: run }) => {
        // That is shown with all else that lies in the bush.
        if (kind === 'pressed') return null;
        const outline = inMm([...run.map((f) => f.bush), ...run.map((f) => f.journal).reverse()]);
        return <FilmShape key={name} points={listOf(outline)} kind={kind} id={id} />;
      })}
      {places.length > 0 && (
        <path d={pathOf(places.length === 1 ? [places[0]!, places[0]!] : places, false)} className="touch" />
      )}
    </g>
  );
}

/** Where the journal stood; it stays while the hand moves on. */
function Ghost({ drawn, at }: { drawn: Drawn; at: Placing }) {
  const frame = sectionFrame(drawn);
  return (
    <g transform={transform(at, 1)}>
      {[frame.journal.above, frame.journal.below.map(([z, r]) => [z, -r] as const)].map((line, i) => (
        <path key={i === 0 ? 'above' : 'below'} d={pathOf(line, false)} className="ghost" />
      ))}
    </g>
  );
}

/** px past the ends of the journal. */
const PAST = 8;

/** The axis of the bush; of a journal that lies aside or tilted its own too. */
function Axes({ drawn, frame, at }: { drawn: Drawn; frame: SectionFrame; at: Placing }) {
  const ends = [metres(frame.journalLeft), metres(frame.journalRight)] as const;
  const [left, right] = ends.map((z) => onScreen(at, [z, 0], 1).x) as [number, number];
  const [from, to] = ends.map((z) => onScreen(at, [z, drawn.aside(z, Math.PI / 2)], 1).y) as [number, number];
  return (
    <>
      <path d={`M${left - PAST} ${at.middle.y}H${right + PAST}`} className="axis" />
      {drawn.pulled && <path d={`M${left} ${from}L${right} ${to}`} className="axis of-journal" />}
    </>
  );
}

/** That the journal moves along its axis, while nothing is held. */
function Moves({ frame, at }: { frame: SectionFrame; at: Placing }) {
  const [{ x: left, y }, { x: right }] = [frame.journalLeft, frame.journalRight].map((z) =>
    onScreen(at, [metres(z), 0], 1),
  ) as [{ x: number; y: number }, { x: number; y: number }];
  const x = (left + right) / 2;
  return (
    <g className="hint moves" transform={`translate(${x} ${y})`}>
      {ARROWS}
    </g>
  );
}

const BOTH_WAYS = 'M-18 0h36M-12 -6l-7 6l7 6M12 -6l7 6l-7 6';
const ARROWS = (
  <>
    <path d={BOTH_WAYS} className="halo" />
    <path d={BOTH_WAYS} />
  </>
);

export const SectionParts = { Journal, Bush: memo(Bush, sameBush), Films, Ghost: memo(Ghost, sameGhost), Axes, Moves };
