/** The pair in the round: its pressures raised off every seat, or its films laid on it in the colours of the maps. */
import { useCallback, useMemo, useState } from 'react';
import { metres, radians } from '../../../report/convert.ts';
import { onDemand } from '../../frame/onDemand.tsx';
import { classOf } from '../../pictures/filmClass.ts';
import type { Frame } from '../../pictures/revolve.ts';
import { useMedia } from '../../pictures/useMedia.ts';
import { colourOf } from './filmMap.ts';
import { MapLegend, type PictureProps, shownLayer } from './MapLegend.tsx';
import { mapScale } from './mapScale.ts';
import { flows, heldAgainst } from './runningFilm.ts';
import { leaningAt, runningPair } from './runningPair.ts';
import { skinOf } from './skinGeometry.ts';
import { useEased } from './useEased.ts';

const RunScene = onDemand(() => import('./RunScene.tsx'), {
  what: 'The solid picture',
  loading: 'The solid picture is loading.',
});

/** `legend`: where no map beside it has one. */
export function RunSolid({ legend = false, ...props }: PictureProps & { legend?: boolean }) {
  const { fields } = props;
  const layer = shownLayer(props);
  const [lost, setLost] = useState(false);
  const onLost = useCallback(() => setLost(true), []);
  if (lost) return <p role="status">This device cannot draw the solid picture; the maps show the same.</p>;
  const turns = 'The spindle turns slowed, where its films hold it; from the nose: cut through the least steep seat.';
  return (
    <figure className="picture">
      <div className="scene">
        <Raised {...props} layer={layer} onLost={onLost} />
      </div>
      <figcaption>
        {layer === 'film'
          ? `Film laid on every seat in the colours of the maps. ${flows(fields) ? turns : 'No oil runs in this state.'}`
          : `Pressure raised off every seat; height and colour as in the maps. ${turns}`}{' '}
        Arrow keys turn the view, plus and minus zoom.
      </figcaption>
      {legend && <MapLegend {...props} layer={layer} lines={false} />}
    </figure>
  );
}

function Raised({
  fields: newestFields,
  design: newestDesign,
  layer: newestLayer,
  scale: { factor },
  warm,
  system,
  work,
  onLost,
}: PictureProps & { onLost(): void }) {
  // Held back together: fields of one design mean nothing on the seats of another.
  const newest = useMemo(
    () => ({ fields: newestFields, design: newestDesign, layer: newestLayer, warm }),
    [newestFields, newestDesign, newestLayer, warm],
  );
  const shown = useEased(newest, work.dragging);
  const { fields, design, layer } = shown;
  const dark = useMedia('(prefers-color-scheme: dark)');
  const drawn = useMemo(
    () => leaningAt(runningPair(shown.design, shown.fields, Math.PI / 2, shown.warm), factor),
    [shown, factor],
  );
  const skinsFor = useCallback(
    (frame: Frame) => {
      const { max, colour: pressure } = mapScale(fields, 'pressure', system);
      return fields.seats.map((seat) => {
        const { wanted } = heldAgainst(design, seat.name);
        const film = (value: number) => colourOf(classOf(metres(value), wanted), dark);
        const { halfAngle } = design.seats.find(({ name }) => name === seat.name)!.bush;
        return skinOf(seat, radians(halfAngle), { frame, layer, max, colour: layer === 'film' ? film : pressure });
      });
    },
    [fields, design, layer, system, dark],
  );
  return <RunScene {...{ drawn, skinsFor, layer, system, dark, onLost }} speed={design.run!.speed} />;
}
