/**
 * One seat straightened, as it stands now: along the page the station, up the page the distance square to the bush
 * line. Bush above, journal below; on both the stock that is to come off, between them the film of now.
 */
import { ticks } from 'd3-array';
import { scaleLinear } from 'd3-scale';
import { useRef } from 'react';
import type { Design } from '../../design/definition.ts';
import { fineUnit, lengthUnit, type System } from '../../design/units.ts';
import { lineOf } from '../../engine/geometry/line.ts';
import { metres, toSurface } from '../../report/toEngine.ts';
import { type Place, straightened } from '../picture/straightened.ts';
import { useSize } from '../useSize.ts';

interface Props {
  before: Design;
  after: Design;
  seat: number;
  system: System;
}

const HEIGHT = 240;
const MARGIN = { left: 52, right: 14, top: 26, bottom: 40 };
/** mm: lines nearer than this are the same. */
const SAME = 1e-9;

export function StockCloseUp({ before, after, seat, system }: Props) {
  const box = useRef<HTMLElement>(null);
  const { width } = useSize(box, { width: 600, height: HEIGHT });
  const unit = fineUnit(system);
  const long = lengthUnit(system);
  const { name } = before.seats[seat]!;
  const frame = lineOf(toSurface(before.seats[seat]!.bush), 'outside');
  const position = metres(before.position ?? 0);
  const bushOf = (design: Design) => straightened(frame, lineOf(toSurface(design.seats[seat]!.bush), 'outside'), 0);
  const journalOf = (design: Design) => straightened(frame, lineOf(toSurface(design.seats[seat]!.journal), 'inside'), position);
  const parts = [
    { part: 'bush', old: bushOf(before), fresh: bushOf(after) },
    { part: 'journal', old: journalOf(before), fresh: journalOf(after) },
  ] as const;
  const all = parts.flatMap(({ old, fresh }) => [...old, ...fresh]);
  const [low, high] = [Math.min(...all.map(([, out]) => out)), Math.max(...all.map(([, out]) => out))];
  const pad = 0.16 * Math.max(high - low, unit.size);
  const x = scaleLinear([Math.min(...all.map(([z]) => z)), Math.max(...all.map(([z]) => z))], [MARGIN.left, width - MARGIN.right]);
  const y = scaleLinear([low - pad, high + pad], [HEIGHT - MARGIN.bottom, MARGIN.top]);
  const path = (places: readonly Place[]) => `M${places.map(([z, out]) => `${x(z).toFixed(2)} ${y(out).toFixed(2)}`).join('L')}`;
  const toEdge = (places: readonly Place[], edge: number) => `${path(places)}V${edge}H${x(places[0]![0]).toFixed(2)}Z`;
  const [bush, journal] = parts;
  return (
    <figure className="chart close-up" ref={box}>
      <svg width={width} height={HEIGHT} role="img" aria-label={`The ${name} seat straightened, as it stands, with the stock to come off`}>
        <path d={`${path(bush.old)}L${path(journal.old.toReversed()).slice(1)}Z`} className="film" />
        <path d={toEdge(bush.old, MARGIN.top)} className="bush-fill" />
        <path d={toEdge(journal.old, HEIGHT - MARGIN.bottom)} className="journal-fill" />
        {parts.map(({ part, old, fresh }) => (
          <g key={part}>
            {old.some(([z, out], i) => Math.abs(out - (fresh[i]?.[1] ?? out)) > SAME || Math.abs(z - (fresh[i]?.[0] ?? z)) > SAME) && <path d={`${path(old)}L${path(fresh.toReversed()).slice(1)}Z`} className="stock" />}
            <path d={path(old)} className="line" />
            <path d={path(fresh)} className="line new" />
          </g>
        ))}
        {ticks((low - pad) / unit.size, (high + pad) / unit.size, 5).map((t) => (
          <g key={t} className="grid">
            <path d={`M${MARGIN.left - 5} ${y(t * unit.size)}h5`} />
            <text x={MARGIN.left - 8} y={y(t * unit.size) + 4} textAnchor="end">
              {`${t}`.replace('-', '−')}
            </text>
          </g>
        ))}
        {ticks(x.domain()[0]! / long.size, x.domain()[1]! / long.size, width < 500 ? 4 : 8).map((t) => (
          <text key={t} x={x(t * long.size)} y={HEIGHT - MARGIN.bottom + 16} textAnchor="middle">
            {`${t}`.replace('-', '−')}
          </text>
        ))}
        <text x={12} y={14}>
          {name}: {unit.name} from the bush as it is
        </text>
        <text x={width - MARGIN.right} y={HEIGHT - 6} textAnchor="end">
          station, {long.name}
        </text>
      </svg>
    </figure>
  );
}
