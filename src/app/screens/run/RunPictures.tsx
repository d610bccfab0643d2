/** Pressure or film on the unrolled seats, and the pressure in the round. */
import { type ReactNode, useCallback, useMemo, useState } from 'react';
import type { Design } from '../../../design/definition.ts';
import type { System } from '../../../design/units.ts';
import { radians } from '../../../report/convert.ts';
import type { FilmReport } from '../../../report/film/definition.ts';
import type { RunFields } from '../../../report/film/fields.ts';
import { onDemand } from '../../frame/onDemand.tsx';
import type { Frame } from '../../pictures/revolve.ts';
import { useMedia } from '../../pictures/useMedia.ts';
import type { Scale } from '../../pictures/useScale.ts';
import type { Work } from '../../state/store.ts';
import { FilmLegend, PressureLegend } from './MapLegend.tsx';
import { mapScale } from './mapScale.ts';
import { RunSection } from './RunSection.tsx';
import { leaningAt, runningPair } from './runningPair.ts';
import { runningWanted } from './runningWanted.ts';
import { type Layer, SeatMap } from './SeatMap.tsx';
import { skinOf } from './skinGeometry.ts';
import { useEased } from './useEased.ts';

const RunScene = onDemand(() => import('./RunScene.tsx'), {
  what: 'The solid picture',
  loading: 'The solid picture is loading.',
});

interface Props {
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

/** Whether oil runs, or nothing is known yet; where none does there is no pressure to show. */
export const flows = (fields: RunFields | null) =>
  fields === null || fields.status === 'held' || fields.status === 'found' || fields.status === 'stopped';

type Shown = 'maps' | 'section' | 'solid';
const NAMES: Record<Shown, string> = { maps: 'Seats', section: 'Section', solid: 'Solid' };

interface PicturesProps extends Props {
  /** whether there is room for the section below the maps, and for the solid picture elsewhere */
  wide: boolean;
  /** what the maps show, to be chosen beside which picture */
  children: ReactNode;
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
        {children}
        {(wide || chosen === 'maps') && <HowToRead design={design} />}
      </div>
      {(wide || chosen === 'maps') && <Maps {...props} />}
      {wide || chosen === 'section' ? section : null}
      {!wide && chosen === 'solid' && <RunSolid {...props} />}
    </div>
  );
}

function HowToRead({ design }: { design: Design }) {
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
      Film: too thin where it does not part the surfaces; too thick where it is more than twice the film wanted, which a
      journal right to one side would leave.
    </details>
  );
}

function Maps({ fields, design, layer: asked, system }: Props) {
  // Where no oil runs there is no pressure to show.
  const layer = flows(fields) ? asked : 'film';
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
      {layer === 'pressure' ? (
        <PressureLegend max={scale.max} levels={scale.levels} colour={scale.colour} system={system} />
      ) : (
        <FilmLegend
          wanted={fields.seats.map(({ name }) => runningWanted(design, name))}
          levels={scale.levels}
          system={system}
        />
      )}
    </div>
  );
}

/** The pair in the round, its pressures raised. */
export function RunSolid({ fields, design, warm, system, work, scale: { factor } }: Omit<Props, 'layer'>) {
  const [lost, setLost] = useState(false);
  const onLost = useCallback(() => setLost(true), []);
  if (lost) return <p role="status">This device cannot draw the solid picture; the maps show the same pressure.</p>;
  return (
    <figure className="picture">
      <div className="scene">
        <Raised {...{ fields, design, factor, warm, system, work, onLost }} />
      </div>
      <figcaption>
        {flows(fields)
          ? 'Pressure raised off every seat; height and colour as in the maps. The spindle turns slowed, where its films hold it; from the nose: cut through the least steep seat.'
          : 'No oil runs in this state, so nothing is raised.'}{' '}
        Arrow keys turn the view, plus and minus zoom.
      </figcaption>
    </figure>
  );
}

interface ChoiceProps {
  layer: Layer;
  setLayer(layer: Layer): void;
  warm: boolean;
  setWarm(warm: boolean): void;
  /** whether there is a warm state to show */
  canWarm: boolean;
}

/** What the maps show, and in which state. */
export function MapChoice({ layer, setLayer, warm, setWarm, canWarm }: ChoiceProps) {
  return (
    <fieldset className="buttons">
      <legend className="visually-hidden">Shown on the seats</legend>
      {(['pressure', 'film'] as const).map((name) => (
        <button key={name} type="button" aria-pressed={layer === name} onClick={() => setLayer(name)}>
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

function Raised({
  fields: newestFields,
  design: newestDesign,
  factor,
  warm,
  system,
  work,
  onLost,
}: Omit<Props, 'layer' | 'scale'> & { factor: number; onLost(): void }) {
  // Held back together: fields of one design mean nothing on the seats of another.
  const newest = useMemo(
    () => ({ fields: newestFields, design: newestDesign, warm }),
    [newestFields, newestDesign, warm],
  );
  const shown = useEased(newest, work.dragging);
  const { fields, design } = shown;
  const dark = useMedia('(prefers-color-scheme: dark)');
  const { seats } = design;
  const drawn = useMemo(
    () => leaningAt(runningPair(shown.design, shown.fields, Math.PI / 2, shown.warm), factor),
    [shown, factor],
  );
  const skinsFor = useCallback(
    (frame: Frame) => {
      const { max, colour } = mapScale(fields, 'pressure', system);
      return fields.seats.map((seat) =>
        skinOf(seat, radians(seats.find(({ name }) => name === seat.name)!.bush.halfAngle), { frame, max, colour }),
      );
    },
    [fields, seats, system],
  );
  return <RunScene {...{ drawn, skinsFor, system, dark, onLost }} speed={design.run!.speed} />;
}
