/** What the colours of the maps mean, with the lines of equal value. */

import { useMemo } from 'react';
import type { Design } from '../../../design/definition.ts';
import { figures, unitOf } from '../../../design/measures.ts';
import { fineText, fineUnit, type System } from '../../../design/units.ts';
import { millimetres } from '../../../report/convert.ts';
import type { FilmReport } from '../../../report/film/definition.ts';
import type { RunFields } from '../../../report/film/fields.ts';
import type { Rgb } from '../../pictures/colourScale.ts';
import { bandOf } from '../../pictures/filmClass.ts';
import { CLASS_FILL, cssColour, PLAIN } from '../../pictures/filmColour.ts';
import { Mark, MetalMarks, WantedMarks } from '../../pictures/sceneLegend.tsx';
import type { Scale } from '../../pictures/useScale.ts';
import type { Work } from '../../state/store.ts';
import { mapScale } from './mapScale.ts';
import { flows, type Held, heldAgainst } from './runningFilm.ts';
import type { Layer } from './SeatMap.tsx';

export interface PictureProps {
  fields: RunFields;
  /** the design the fields belong to */
  design: Design;
  layer: Layer;
  system: System;
  work: Work;
  /** the warm state the fields show; null: cold */
  warm: FilmReport['steady'];
  /** of section and solid picture alike */
  scale: Scale;
}

/** Where no oil runs there is no pressure to show. */
export const shownLayer = ({ fields, layer }: PictureProps): Layer => (flows(fields) ? layer : 'film');

interface Props {
  /** far end, MPa */
  max: number;
  levels: readonly number[];
  colour(value: number): Rgb;
  system: System;
}

function PressureLegend({ max, levels, colour, system }: Props) {
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
/**
 * The classes of every picture, by its limits, in words that blame nothing: a journal that carries a load is thinner on
 * one side than wanted and thicker on the other, right as it may be.
 */
const RUNNING_TEXT = { thin: 'thinner', right: 'as wanted', thick: 'thicker' };

interface FilmProps {
  /** of every seat shown */
  held: readonly Held[];
  /** mm */
  levels: readonly number[];
  /** whether the picture rules what rubs */
  rubs: boolean;
  system: System;
}

/** The colours of every picture, what they begin and end at where that is the same for all seats, and the lines. */
function FilmLegend({ held, levels, rubs, system }: FilmProps) {
  const bands = held.flatMap(({ wanted }) => (wanted ? [bandOf(wanted)] : []));
  const told = (end: 0 | 1, word: string) => {
    const places = bands.map((band) => band[end]);
    const same = places.every((place) => Math.abs(place - places[0]!) < ALIKE);
    return same && places.length > 0 ? `, ${word} ${fineText(millimetres(places[0]!), system)}` : '';
  };
  const fine = fineUnit(system);
  return (
    <div className="map-legend of-films">
      <div className="stage-legend">
        {bands.length > 0 && (
          <WantedMarks says={RUNNING_TEXT} of={{ thin: told(0, 'under'), thick: told(1, 'over') }} />
        )}
        {bands.length < held.length && <Mark colour={cssColour(PLAIN)} text="no film wanted" />}
        {rubs && held[0] && (
          <Mark colour={CLASS_FILL.thin} kind="rubs" text={`rubs, under ${fineText(held[0].needed, system)}`} />
        )}
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

/** Of the solid picture too, which has no lines: neither of equal film nor over what rubs. */
export function MapLegend({ fields, design, layer, system, lines = true }: PictureProps & { lines?: boolean }) {
  const { max, colour, levels } = useMemo(() => mapScale(fields, layer, system), [fields, layer, system]);
  if (layer === 'pressure') return <PressureLegend max={max} levels={levels} colour={colour} system={system} />;
  const held = fields.seats.map(({ name }) => heldAgainst(design, name));
  return <FilmLegend held={held} levels={lines ? levels : []} rubs={lines} system={system} />;
}
