/** What the colours of the maps mean, with the lines of equal value. */

import { figures, unitOf } from '../../../design/measures.ts';
import { fineText, fineUnit, type System } from '../../../design/units.ts';
import { millimetres } from '../../../report/convert.ts';
import type { Wanted } from '../../../report/inFrame.ts';
import type { Rgb } from '../../pictures/colourScale.ts';
import { bandOf } from '../../pictures/filmClass.ts';
import { cssColour } from '../../pictures/filmColour.ts';
import { MetalMarks, WantedMarks } from '../../pictures/sceneLegend.tsx';

interface Props {
  /** far end, MPa */
  max: number;
  levels: readonly number[];
  colour(value: number): Rgb;
  system: System;
}

export function PressureLegend({ max, levels, colour, system }: Props) {
  const unit = unitOf('pressure', system);
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
        <span>pressure above that at the ends</span>
        <span>
          {figures(max / unit.size)} {unit.name}
        </span>
      </p>
    </div>
  );
}

/** m: told alike */
const ALIKE = 1e-9;
/** m: beyond it no film is too thick */
const MOST = 0.1;

interface FilmProps {
  /** of every seat shown */
  wanted: readonly Wanted[];
  /** mm */
  levels: readonly number[];
  system: System;
}

/** The colours of every picture, what they begin and end at where that is the same for all seats, and the lines. */
export function FilmLegend({ wanted, levels, system }: FilmProps) {
  const bands = wanted.map(bandOf);
  const told = (end: 0 | 1, word: string) => {
    const places = bands.map((band) => band[end]);
    const same = places.every((place) => Math.abs(place - places[0]!) < ALIKE && place < MOST);
    return same && places.length > 0 ? `, ${word} ${fineText(millimetres(places[0]!), system)}` : '';
  };
  const fine = fineUnit(system);
  return (
    <div className="map-legend of-films">
      <div className="stage-legend">
        <WantedMarks of={{ thin: told(0, 'under'), thick: told(1, 'over') }} />
        <MetalMarks />
        {levels.length > 0 && (
          <span>
            lines: {levels.map((level) => figures(level / fine.size)).join(', ')} {fine.name}
          </span>
        )}
      </div>
    </div>
  );
}
