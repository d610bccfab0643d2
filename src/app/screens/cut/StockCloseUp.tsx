/**
 * One seat straightened, as it stands now: along the page the station, up the page the distance square to the bush
 * line. Bush above, journal below; on both the stock that is to come off, between them the film of now.
 */
import { useId, useRef } from 'react';
import type { Design } from '../../../design/definition.ts';
import { fineUnit, type System } from '../../../design/units.ts';
import { metres } from '../../../report/convert.ts';
import { lineOfPart, linesOf } from '../../../report/inFrame.ts';
import { FilmPatterns, FilmShape, pointsOf } from '../../pictures/FilmPaint.tsx';
import { filmRuns } from '../../pictures/filmClass.ts';
import { MARGIN, StraightenedAxes, straightenedScales } from '../../pictures/StraightenedFrame.tsx';
import { type Place, straightened } from '../../pictures/straightened.ts';
import { useSize } from '../../pictures/useSize.ts';

interface Props {
  before: Design;
  after: Design;
  seat: number;
  system: System;
}

const HEIGHT = 240;
/** Of what is shown, free above and below. */
const FREE = 0.16;
/** mm: lines nearer than this are the same. */
const SAME = 1e-9;

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

export function StockCloseUp({ before, after, seat, system }: Props) {
  const box = useRef<HTMLElement>(null);
  const { width } = useSize(box, { width: 600, height: HEIGHT });
  const id = useId();
  const { name } = before.seats[seat]!;
  const { wanted } = linesOf(before)[seat]!;
  const frame = lineOfPart(before.seats[seat]!.bush, 'bush');
  const position = metres(before.position ?? 0);
  const bushOf = (design: Design) => straightened(frame, lineOfPart(design.seats[seat]!.bush, 'bush'), 0);
  const journalOf = (design: Design) =>
    straightened(frame, lineOfPart(design.seats[seat]!.journal, 'journal'), position);
  const parts = [
    { part: 'bush', old: bushOf(before), fresh: bushOf(after) },
    { part: 'journal', old: journalOf(before), fresh: journalOf(after) },
  ] as const;
  const all = parts.flatMap(({ old, fresh }) => [...old, ...fresh]);
  const size = { width, height: HEIGHT };
  const scales = straightenedScales(all, size, FREE, fineUnit(system).size);
  const { path, toEdge } = scales;
  const [bush, journal] = parts;
  return (
    <figure className="chart close-up" ref={box}>
      <svg
        width={width}
        height={HEIGHT}
        role="img"
        aria-label={`The ${name} seat straightened, as it stands, with the stock to come off`}
      >
        <FilmPatterns id={id} />
        {filmRuns(filmAlong(bush.old, journal.old), wanted, between).map(({ kind, places }) => {
          const [above, below] = [places.map(({ z, top }) => [z, top] as const), places.map(onJournal)];
          const outline = `${path(above)}L${path(below.reverse()).slice(1)}Z`;
          return <FilmShape key={`${kind} ${places[0]!.z}`} points={pointsOf(outline)} kind={kind} id={id} />;
        })}
        <path d={toEdge(bush.old, MARGIN.top)} className="bush-fill" />
        <path d={toEdge(journal.old, HEIGHT - MARGIN.bottom)} className="journal-fill" />
        {parts.map(({ part, old, fresh }) => (
          <g key={part}>
            {old.some(
              ([z, out], i) =>
                Math.abs(out - (fresh[i]?.[1] ?? out)) > SAME || Math.abs(z - (fresh[i]?.[0] ?? z)) > SAME,
            ) && <path d={`${path(old)}L${path(fresh.toReversed()).slice(1)}Z`} className="stock" />}
            <path d={path(old)} className="line" />
            <path d={path(fresh)} className="line new" />
          </g>
        ))}
        <StraightenedAxes
          scales={scales}
          size={size}
          title={(unit) => `${name}: ${unit} from the bush as it is`}
          system={system}
        />
      </svg>
    </figure>
  );
}
