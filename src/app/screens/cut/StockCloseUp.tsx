/**
 * One seat straightened, now and after side by side: along the page the station, up the page the distance square to
 * the bush line as it is, bush above, journal below. Now: on both the stock that is to come off, dashed where it ends.
 * After: the journal moved from that dashed line to where it will stand. Every seat at one scale up the page, so that
 * one move is seen to close a steep film much and a shallow one little.
 */
import { useId, useRef } from 'react';
import type { Design } from '../../../design/definition.ts';
import { fineText, fineUnit, type System } from '../../../design/units.ts';
import { metres } from '../../../report/convert.ts';
import { linesOf } from '../../../report/inFrame.ts';
import { arrowHead } from '../../pictures/arrowHead.ts';
import { ARROW } from '../../pictures/dimensionRows.ts';
import { FilmPatterns, FilmShape, pointsOf } from '../../pictures/FilmPaint.tsx';
import { filmRuns } from '../../pictures/filmClass.ts';
import {
  MARGIN,
  StraightenedAxes,
  type StraightenedScales,
  straightenedScales,
} from '../../pictures/StraightenedFrame.tsx';
import type { Place } from '../../pictures/straightened.ts';
import { useSize } from '../../pictures/useSize.ts';
import { allPlaces, type CloseUpPlaces } from './closeUpPlaces.ts';
import { moveText } from './StockMove.tsx';

interface Props {
  before: Design;
  after: Design;
  seat: number;
  places: CloseUpPlaces;
  /** mm: from where to where all close-ups reach up the page */
  reach: readonly [low: number, high: number];
  system: System;
}

const HEIGHT = 250;
/** Of what is shown, free above and below. */
const FREE = 0.2;
/** mm: lines nearer than this are the same. */
const SAME = 1e-9;
/** px between both pictures, and of their lettering. */
const BETWEEN = 10;
const LETTERS = 12;

/** mm along the bush and outward from its line, as both surfaces stand there; the film between in m. */
interface FilmThere {
  z: number;
  top: number;
  bottom: number;
  film: number;
}

const between = (a: FilmThere, b: FilmThere, share: number): FilmThere => {
  const at = (key: keyof FilmThere) => a[key] + share * (b[key] - a[key]);
  return { z: at('z'), top: at('top'), bottom: at('bottom'), film: at('film') };
};

const onJournal = ({ z, bottom }: FilmThere): Place => [z, bottom];

/** Where both surfaces are, at every corner of either. */
function filmAlong(bush: readonly Place[], journal: readonly Place[]): FilmThere[] {
  const ends = [bush, journal].map((line) => [line[0]![0], line[line.length - 1]![0]].sort((a, b) => a - b));
  const [from, to] = [Math.max(ends[0]![0]!, ends[1]![0]!), Math.min(ends[0]![1]!, ends[1]![1]!)];
  const corners = [...bush, ...journal].map(([z]) => z).filter((z) => z > from && z < to);
  if (from >= to) return [];
  return [from, ...new Set(corners.sort((a, b) => a - b)), to].map((z) => {
    const [top, bottom] = [outAt(bush, z), outAt(journal, z)];
    return { z, top, bottom, film: metres(top - bottom) };
  });
}

/** Between the corners of a line it is straight. */
function outAt(line: readonly Place[], z: number): number {
  const inOrder = line[0]![0] <= line[line.length - 1]![0] ? line : line.toReversed();
  const k = Math.max(
    1,
    inOrder.findIndex(([at], i) => i > 0 && at >= z),
  );
  const [[z0, out0], [z1, out1]] = [inOrder[k - 1]!, inOrder[k]!];
  return z1 === z0 ? out0 : out0 + ((out1 - out0) * (z - z0)) / (z1 - z0);
}

const isMoved = (old: readonly Place[], fresh: readonly Place[]) =>
  old.some(([z, out], i) => Math.abs(out - (fresh[i]?.[1] ?? out)) > SAME || Math.abs(z - (fresh[i]?.[0] ?? z)) > SAME);

export function StockCloseUp({ before, after, seat, places, reach, system }: Props) {
  const box = useRef<HTMLElement>(null);
  const { width } = useSize(box, { width: 600, height: HEIGHT });
  const { name } = before.seats[seat]!;
  const { bush, journal } = places;
  // Both as wide as each other; the second has no scale of its own.
  const one = { width: (width + MARGIN.left - BETWEEN) / 2, height: HEIGHT };
  const at = bush.now[0]![0];
  const shown = [...allPlaces(places), ...reach.map((out): Place => [at, out])];
  const scales = straightenedScales(shown, one, FREE, fineUnit(system).size);
  const common = { scales, width: one.width, wanted: linesOf(before)[seat]!.wanted };
  const axes = { scales, size: one, system, title: (unit: string) => `${name}: ${unit} from the bush as it is` };
  const move = moveText((after.position ?? 0) - (before.position ?? 0), system);
  return (
    <figure className="chart close-up" ref={box}>
      <svg
        width={width}
        height={HEIGHT}
        role="img"
        aria-label={`The ${name} seat straightened: as it stands, with the stock to come off, and after${move === null ? '' : `, the journal ${move}`}`}
      >
        <g data-state="now">
          <Pair {...common} bush={bush.now} journal={journal.now} />
          {[
            { part: 'bush', old: bush.now, fresh: bush.after },
            { part: 'journal', old: journal.now, fresh: journal.cut },
          ].map(
            ({ part, old, fresh }) =>
              isMoved(old, fresh) && (
                <g key={part}>
                  <path d={`${scales.path(old)}L${scales.path(fresh.toReversed()).slice(1)}Z`} className="stock" />
                  <path d={scales.path(fresh)} className="line new" />
                </g>
              ),
          )}
          <Said text="now" />
          <StraightenedAxes {...axes} />
        </g>
        <g data-state="after" transform={`translate(${one.width - MARGIN.left + BETWEEN} 0)`}>
          <Pair {...common} bush={bush.after} journal={journal.after} />
          <Said text="after" />
          {move !== null && <Moved scales={scales} from={journal.cut} to={journal.after} move={move} system={system} />}
          <StraightenedAxes {...axes} bare />
        </g>
      </svg>
    </figure>
  );
}

interface PairProps {
  scales: StraightenedScales;
  width: number;
  wanted: ReturnType<typeof linesOf>[number]['wanted'];
  bush: readonly Place[];
  journal: readonly Place[];
}

/** Both parts in one state, the film between them. */
function Pair({ scales, width, wanted, bush, journal }: PairProps) {
  const id = useId();
  const { path, toEdge } = scales;
  return (
    <>
      <FilmPatterns id={id} />
      <clipPath id={`${id}plot`}>
        <rect x={MARGIN.left} y={0} width={Math.max(0, width - MARGIN.left - MARGIN.right)} height={HEIGHT} />
      </clipPath>
      <g clipPath={`url(#${id}plot)`}>
        {filmRuns(filmAlong(bush, journal), wanted, between).map(({ kind, places }) => {
          const [above, below] = [places.map(({ z, top }) => [z, top] as const), places.map(onJournal)];
          const outline = `${path(above)}L${path(below.reverse()).slice(1)}Z`;
          return <FilmShape key={`${kind} ${places[0]!.z}`} points={pointsOf(outline)} kind={kind} id={id} />;
        })}
        <path d={toEdge(bush, MARGIN.top)} className="bush-fill" />
        <path d={toEdge(journal, HEIGHT - MARGIN.bottom)} className="journal-fill" />
        <path d={path(bush)} className="line" />
        <path d={path(journal)} className="line" />
      </g>
    </>
  );
}

/** A few words in the metal: the state in the bush's, what is so of it in the journal's. */
function Said({ text, row = 0 }: { text: string; row?: number }) {
  const y = row === 0 ? MARGIN.top + LETTERS + 2 : HEIGHT / 2 + row * (LETTERS + 5);
  return (
    <text
      className={row === 0 ? 'said' : 'said of-move'}
      x={MARGIN.left + 6}
      y={y}
      fontSize={LETTERS}
      fontWeight={row === 0 ? 700 : 400}
    >
      {text}
    </text>
  );
}

interface MovedProps {
  scales: StraightenedScales;
  from: readonly Place[];
  to: readonly Place[];
  move: string;
  system: System;
}

/** How far along its line the arrow stands, clear of the words. */
const ALONG = 0.96;

/** Where the journal would lie without its move, and by how much that closes this film, or opens it. */
function Moved({ scales: { x, y, path }, from, to, move, system }: MovedProps) {
  const [first, last] = [to[0]![0], to[to.length - 1]![0]];
  const z = Math.min(first, last) + ALONG * Math.abs(last - first);
  const [was, is] = [outAt(from, z), outAt(to, z)];
  const [start, end] = [y(was), y(is)];
  return (
    <>
      <path d={path(from)} className="line new" />
      {Math.abs(end - start) > ARROW + 2 && (
        <g className="dimension">
          <path className="thin" d={`M${x(z)} ${start}V${end}`} />
          <path className="head" d={arrowHead(x(z), end, 0, end < start ? 1 : -1)} />
        </g>
      )}
      <Said text={move} row={1} />
      <Said text={`${is > was ? 'closes it' : 'opens it'} ${fineText(Math.abs(is - was), system)}`} row={2} />
    </>
  );
}
