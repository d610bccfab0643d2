/**
 * One seat straightened, as it stands now: along the page the station, up the page the distance square to the bush
 * line. Bush above, journal below; on both the stock that is to come off, between them the film of now.
 */
import { useRef } from 'react';
import type { Design } from '../../../design/definition.ts';
import { fineUnit, type System } from '../../../design/units.ts';
import { metres } from '../../../report/convert.ts';
import { lineOfPart } from '../../../report/inFrame.ts';
import { MARGIN, StraightenedAxes, straightenedScales } from '../../pictures/StraightenedFrame.tsx';
import { straightened } from '../../pictures/straightened.ts';
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

export function StockCloseUp({ before, after, seat, system }: Props) {
  const box = useRef<HTMLElement>(null);
  const { width } = useSize(box, { width: 600, height: HEIGHT });
  const { name } = before.seats[seat]!;
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
        <path d={`${path(bush.old)}L${path(journal.old.toReversed()).slice(1)}Z`} className="film" />
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
