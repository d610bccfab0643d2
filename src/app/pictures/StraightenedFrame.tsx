/**
 * The ground of a seat straightened: station along the page, distance square to the bush line up the page, much larger.
 */
import { ticks } from 'd3-array';
import { type ScaleLinear, scaleLinear } from 'd3-scale';
import { fineUnit, lengthUnit, type System } from '../../design/units.ts';
import type { Place } from './straightened.ts';
import { textWidth } from './textWidth.ts';
import type { Size } from './useSize.ts';

export const MARGIN = { left: 52, right: 14, top: 26, bottom: 40 };

export interface StraightenedScales {
  x: ScaleLinear<number, number>;
  y: ScaleLinear<number, number>;
  /** a line through places, and the ground between one and an edge (px from the top) */
  path(places: readonly Place[]): string;
  toEdge(places: readonly Place[], edge: number): string;
}

/**
 * @param share of what is shown that stays free above and below it · least what that is a share of at least, mm · strip
 * px kept free besides
 */
export function straightenedScales(
  shown: readonly Place[],
  { width, height }: Size,
  share: number,
  least: number,
  strip = 0,
): StraightenedScales {
  const [low, high] = [Math.min(...shown.map(([, out]) => out)), Math.max(...shown.map(([, out]) => out))];
  const pad = share * Math.max(high - low, least);
  const x = scaleLinear(
    [Math.min(...shown.map(([z]) => z)), Math.max(...shown.map(([z]) => z))],
    [MARGIN.left, width - MARGIN.right],
  );
  const y = scaleLinear([low - pad, high + pad], [height - MARGIN.bottom - strip, MARGIN.top + strip]);
  const path = (places: readonly Place[]) =>
    `M${places.map(([z, out]) => `${x(z).toFixed(2)} ${y(out).toFixed(2)}`).join('L')}`;
  const at = (place: Place) => x(place[0]).toFixed(2);
  return {
    x,
    y,
    path,
    toEdge: (places, edge) => `${path(places)}L${at(places[places.length - 1]!)} ${edge}L${at(places[0]!)} ${edge}Z`,
  };
}

/** px */
const LETTERING = 14;
const minus = (value: number) => `${value}`.replace('-', '−');

/** Scales and what they count; `title` stands before the unit of the upright one, which `bare` leaves out. */
export function StraightenedAxes({
  scales: { x, y },
  size: { width, height },
  title,
  system,
  bare = false,
}: {
  scales: StraightenedScales;
  size: Size;
  title: (unit: string) => string;
  system: System;
  bare?: boolean;
}) {
  const fine = fineUnit(system);
  const long = lengthUnit(system);
  return (
    <>
      {!bare &&
        ticks(y.domain()[0]! / fine.size, y.domain()[1]! / fine.size, 5).map((t) => (
          <g key={t} className="grid">
            <path d={`M${MARGIN.left - 5} ${y(t * fine.size)}h5`} />
            <text x={MARGIN.left - 8} y={y(t * fine.size) + 4} textAnchor="end">
              {minus(t)}
            </text>
          </g>
        ))}
      {ticks(x.domain()[0]! / long.size, x.domain()[1]! / long.size, width < 260 ? 2 : width < 500 ? 4 : 8).map((t) => (
        <text
          key={t}
          // At the edge of the drawing it would be cut in two.
          x={Math.min(x(t * long.size), width - 2 - textWidth(minus(t), LETTERING) / 2)}
          y={height - MARGIN.bottom + 16}
          textAnchor="middle"
        >
          {minus(t)}
        </text>
      ))}
      {!bare && (
        <text x={12} y={14}>
          {title(fine.name)}
        </text>
      )}
      <text x={width - MARGIN.right} y={height - 6} textAnchor="end">
        station, {long.name}
      </text>
    </>
  );
}
