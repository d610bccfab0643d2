/**
 * The fitted lines of one seat over the drawn ones, straightened: along the page the station, up the page the
 * distance square to the bush line as drawn. Bush above, journal below, the film between, each with the band
 * in which it lies 19 times in 20.
 */
import { ticks } from 'd3-array';
import { scaleLinear } from 'd3-scale';
import { useRef } from 'react';
import type { Design } from '../../design/definition.ts';
import { fineUnit, lengthUnit, type System } from '../../design/units.ts';
import { lineOf } from '../../engine/geometry/line.ts';
import type { MeasureReport } from '../../report/measure/definition.ts';
import { lineUncertainty } from '../../report/measure/lineUncertainty.ts';
import { metres, toSurface } from '../../report/toEngine.ts';
import { type Place, straightened } from '../picture/straightened.ts';
import { useSize } from '../useSize.ts';

interface Props {
  drawn: Design;
  fitted: Design;
  measure: MeasureReport;
  seat: number;
  system: System;
}

const HEIGHT = 250;
const MARGIN = { left: 52, right: 14, top: 26, bottom: 40 };
/** Half widths of the band in standard uncertainties: 95 in 100 of a normal spread. */
const COVER = 1.96;
const PIECES = 24;
/** px above and below every line, for the names of the parts. */
const STRIP = 24;

export function ShapePicture({ drawn, fitted, measure, seat, system }: Props) {
  const box = useRef<HTMLElement>(null);
  const { width } = useSize(box, { width: 600, height: HEIGHT });
  const unit = fineUnit(system);
  const long = lengthUnit(system);
  const lines = { drawn: placesOf(drawn, drawn, seat), fitted: placesOf(drawn, fitted, seat) };
  const bands = (['bush', 'journal'] as const).map((part) => ({ part, band: bandOf(fitted, measure, seat, part, lines.fitted[part]) }));
  const all = [...lines.drawn.bush, ...lines.drawn.journal, ...lines.fitted.bush, ...lines.fitted.journal, ...bands.flatMap(({ band }) => band ?? [])];
  const [low, high] = [Math.min(...all.map(([, v]) => v)), Math.max(...all.map(([, v]) => v))];
  const pad = 0.06 * Math.max(high - low, 0.001);
  const x = scaleLinear([Math.min(...all.map(([z]) => z)), Math.max(...all.map(([z]) => z))], [MARGIN.left, width - MARGIN.right]);
  const y = scaleLinear([low - pad, high + pad], [HEIGHT - MARGIN.bottom - STRIP, MARGIN.top + STRIP]);
  const path = (places: readonly Place[]) => `M${places.map(([z, v]) => `${x(z).toFixed(2)} ${y(v).toFixed(2)}`).join('L')}`;
  const toEdge = (places: readonly Place[], edge: number) => `${path(places)}L${x(places[places.length - 1]![0]).toFixed(2)} ${edge}L${x(places[0]![0]).toFixed(2)} ${edge}Z`;
  const { name } = drawn.seats[seat]!;
  return (
    <figure className="chart shape" ref={box}>
      <svg width={width} height={HEIGHT} role="img" aria-label={`Fitted lines of the ${name} seat over the drawn ones`}>
        <path d={toEdge(lines.fitted.bush, MARGIN.top)} className="metal bush" />
        <path d={toEdge(lines.fitted.journal, HEIGHT - MARGIN.bottom)} className="metal journal" />
        {bands.map(({ part, band }) => band && <path key={part} d={`${path(band)}Z`} className="band" />)}
        {(['bush', 'journal'] as const).map((part) => (
          <g key={part}>
            <path d={path(lines.drawn[part])} className="as-drawn" />
            <path d={path(lines.fitted[part])} className="fitted" />
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
          {unit.name} from the drawn bush
        </text>
        <text x={width - MARGIN.right} y={HEIGHT - 6} textAnchor="end">
          station, {long.name}
        </text>
        <text x={width - MARGIN.right - 6} y={MARGIN.top + 16} textAnchor="end" className="name">
          {name} bush
        </text>
        <text x={width - MARGIN.right - 6} y={HEIGHT - MARGIN.bottom - 8} textAnchor="end" className="name">
          {name} journal
        </text>
      </svg>
    </figure>
  );
}

/** Both lines of a seat in the frame of the bush as drawn, the journal at the position of the design. */
function placesOf(drawn: Design, shown: Design, seat: number): { bush: Place[]; journal: Place[] } {
  const frame = lineOf(toSurface(drawn.seats[seat]!.bush), 'outside');
  const position = metres(drawn.position ?? 0);
  return {
    bush: straightened(frame, lineOf(toSurface(shown.seats[seat]!.bush), 'outside'), 0),
    journal: straightened(frame, lineOf(toSurface(shown.seats[seat]!.journal), 'inside'), position),
  };
}

/** The band round a fitted line; null where the readings leave it open. */
function bandOf(fitted: Design, measure: MeasureReport, seat: number, part: 'journal' | 'bush', line: readonly Place[]): Place[] | null {
  const { name } = fitted.seats[seat]!;
  const found = measure.surfaces.find((s) => s.seat === name && s.part === part);
  if (!found) return null;
  const surface = fitted.seats[seat]![part];
  const [z0, z1] = [line[0]![0], line[line.length - 1]![0]];
  const edge = (sign: number) =>
    Array.from({ length: PIECES + 1 }, (_, i): Place | null => {
      const t = i / PIECES;
      const sigma = lineUncertainty(surface, found, surface.from + t * (surface.to - surface.from));
      return sigma === null ? null : [z0 + t * (z1 - z0), outAt(line, z0 + t * (z1 - z0)) + sign * COVER * sigma];
    });
  const places = [...edge(1), ...edge(-1).reverse()];
  return places.some((place) => place === null) ? null : (places as Place[]);
}

function outAt(line: readonly Place[], z: number): number {
  let k = 0;
  while (k < line.length - 2 && line[k + 1]![0] < z) k++;
  const [[z0, v0], [z1, v1]] = [line[k]!, line[k + 1]!];
  return v0 + ((v1 - v0) * (z - z0)) / (z1 - z0 || 1);
}
