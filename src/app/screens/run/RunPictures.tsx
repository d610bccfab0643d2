/** Pressure or film: on the unrolled seats, in section and in the round. */
import { type ReactNode, useMemo, useState } from 'react';
import type { Design } from '../../../design/definition.ts';
import { fineText, type System } from '../../../design/units.ts';
import { neededFilm } from '../../../report/film/neededFilm.ts';
import { MapLegend, type PictureProps, shownLayer } from './MapLegend.tsx';
import { mapScale } from './mapScale.ts';
import { RunSection } from './RunSection.tsx';
import { RunSolid } from './RunSolid.tsx';
import { type Layer, SeatMap } from './SeatMap.tsx';

type Shown = 'maps' | 'section' | 'solid';
const NAMES: Record<Shown, string> = { maps: 'Seats', section: 'Section', solid: 'Solid' };

interface PicturesProps extends PictureProps {
  /** whether there is room for the section below the maps, and for the solid picture elsewhere */
  wide: boolean;
  /** what the picture shows, to be chosen beside which picture; a section has its films whatever is chosen */
  children(layers: boolean): ReactNode;
}

/** Maps and section below each other where there is room; else one picture at a time. */
export function RunPictures({ wide, children, ...props }: PicturesProps) {
  const { fields, design, system, warm, scale } = props;
  const [chosen, setChosen] = useState<Shown>('maps');
  const section = <RunSection fields={fields} design={design} scale={scale} system={system} warm={warm} />;
  return (
    <div className="run-pictures">
      <div className="run-choices">
        {!wide && (
          <fieldset className="buttons which">
            <legend className="visually-hidden">Picture</legend>
            {(['maps', 'section', 'solid'] as const).map((name) => (
              <button key={name} type="button" aria-pressed={chosen === name} onClick={() => setChosen(name)}>
                {NAMES[name]}
              </button>
            ))}
          </fieldset>
        )}
        {children(wide || chosen !== 'section')}
        {(wide || chosen === 'maps') && <HowToRead design={design} system={system} />}
      </div>
      {(wide || chosen === 'maps') && <Maps {...props} />}
      {wide || chosen === 'section' ? section : null}
      {!wide && chosen === 'solid' && <RunSolid {...props} legend />}
    </div>
  );
}

function HowToRead({ design, system }: { design: Design; system: System }) {
  const turning =
    design.run!.speed === 0
      ? ''
      : design.run!.speed > 0
        ? 'The journal drags the oil to the right of the maps.'
        : 'The journal drags the oil to the left of the maps.';
  return (
    <details className="fine how-to-read">
      <summary>
        How to read<span className="the-maps"> the maps</span>
      </summary>
      Each bush unrolled: round it from x toward y across the page, from rear to nose up it. A cross marks the peak
      pressure, a ring the least film{(design.run!.supply ?? []).length > 0 ? ', a box a supply groove' : ''}. {turning}{' '}
      Film: as wanted, thinner and thicker by the same limits as on Fit. A loaded journal lies aside, thinner on one
      side and thicker opposite; only under {fineText(neededFilm(design.run!), system)} does metal rub.
    </details>
  );
}

function Maps(props: PictureProps) {
  const { fields, design, system } = props;
  const layer = shownLayer(props);
  const scale = useMemo(() => mapScale(fields, layer, system), [fields, layer, system]);
  return (
    <div className="run-maps">
      <div className="maps">
        {fields.seats.map((seat) => (
          <SeatMap
            key={seat.name}
            seat={seat}
            index={design.seats.findIndex(({ name }) => name === seat.name)}
            design={design}
            layer={layer}
            colour={scale.colour}
            levels={scale.levels}
            system={system}
          />
        ))}
      </div>
      <MapLegend {...props} layer={layer} />
    </div>
  );
}

interface ChoiceProps {
  layer: Layer;
  setLayer(layer: Layer): void;
  warm: boolean;
  setWarm(warm: boolean): void;
  /** whether the picture shows either */
  layers: boolean;
  /** whether there is a warm state to show */
  canWarm: boolean;
}

/** What the maps show, and in which state. */
export function MapChoice({ layer, setLayer, layers, warm, setWarm, canWarm }: ChoiceProps) {
  return (
    <fieldset className="buttons">
      <legend className="visually-hidden">Shown on the seats</legend>
      {(['pressure', 'film'] as const).map((name) => (
        <button
          key={name}
          type="button"
          aria-pressed={layer === name}
          disabled={!layers}
          onClick={() => setLayer(name)}
        >
          {name === 'pressure' ? 'Pressure' : 'Film'}
        </button>
      ))}
      <span className="apart" />
      {[false, true].map((choice) => (
        <button
          key={`${choice}`}
          type="button"
          aria-pressed={warm === choice}
          disabled={choice && !canWarm}
          onClick={() => setWarm(choice)}
        >
          {choice ? 'Warm' : 'Cold'}
        </button>
      ))}
    </fieldset>
  );
}
