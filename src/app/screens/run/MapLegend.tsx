/** What the colours of the maps mean, with the lines of equal value. */

import { figures, unitOf } from '../../../design/measures.ts';
import { fineUnit, type System } from '../../../design/units.ts';
import type { Rgb } from '../../pictures/colourScale.ts';
import { cssColour } from '../../pictures/filmColour.ts';
import type { Layer } from './SeatMap.tsx';

interface Props {
  layer: Layer;
  /** far end, MPa or mm */
  max: number;
  levels: readonly number[];
  colour(value: number): Rgb;
  system: System;
}

export function MapLegend({ layer, max, levels, colour, system }: Props) {
  const unit = layer === 'pressure' ? unitOf('pressure', system) : fineUnit(system);
  const stops = Array.from({ length: 17 }, (_, i) => cssColour(colour((max * i) / 16))).join(', ');
  return (
    <div className="map-legend">
      <div className="ramp" aria-hidden="true" style={{ background: `linear-gradient(to right, ${stops})` }}>
        {levels.map((level) => (
          <i key={level} style={{ left: `${(100 * level) / max}%` }} />
        ))}
      </div>
      <p>
        <span>0</span>
        <span>{layer === 'pressure' ? 'pressure above that at the ends' : 'film'}</span>
        <span>
          {figures(max / unit.size)} {unit.name}
        </span>
      </p>
    </div>
  );
}
