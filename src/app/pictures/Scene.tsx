/**
 * The pair as solids: journal, bush cut open, film between. Draws what drawn.ts says, nothing of its own.
 * Heavy with three; load it lazily. While the journal moves nothing here renders but the legend, when it changes.
 */
import { memo, useCallback, useSyncExternalStore } from 'react';
import { listed } from '../../report/listed.ts';
import type { Drawn } from './drawn.ts';
import { ScenePair } from './ScenePair.tsx';
import { Stage } from './Stage.tsx';
import { SceneLegend, scaleEnd } from './sceneLegend.tsx';
import type { SceneProps } from './sceneProps.ts';
import { greatestFilm } from './solid/filmGeometry.ts';
import { stepsOf } from './solid/noseCut.ts';
import { planOf } from './solid/SceneTags.tsx';

/** Which seats the cut from the nose goes through; null: none. */
function cutTold(drawn: Drawn): string | null {
  const names = stepsOf(drawn).map(({ seat }) => drawn.seats[seat]!.name);
  return names.length === 0
    ? null
    : names.length === 1
      ? `${names[0]}, near its nose end`
      : `${listed(names)}, in steps`;
}

function Scene(props: SceneProps) {
  const { drawing, system, dark, onLost, over } = props;
  const max = useSyncExternalStore(drawing.subscribe, () => scaleEnd(greatestFilm(drawing.now()), system));
  const wanted = useSyncExternalStore(drawing.subscribe, () => drawing.now().seats.some((seat) => seat.wanted));
  const plain = useSyncExternalStore(drawing.subscribe, () => drawing.now().seats.some((seat) => !seat.wanted));
  const names = useSyncExternalStore(drawing.subscribe, () => JSON.stringify(drawing.now().seats.map((s) => s.name)));
  const cut = useSyncExternalStore(drawing.subscribe, () => cutTold(drawing.now()));
  const plan = useCallback((across: number) => planOf(JSON.parse(names) as string[], system, across), [names, system]);
  return (
    <Stage
      planOf={plan}
      seen="Journal, bush and film in the round, the bush cut open; gaps drawn larger, lengths true"
      lookAt="Look at the pair"
      dark={dark}
      cut={cut}
      hand="Drag the steel to move it, the ground to turn"
      onLost={onLost}
      over={over}
      legend={
        <SceneLegend
          wanted={wanted}
          plain={plain}
          max={max}
          system={system}
          dark={dark}
          blue={props.prints?.thickness ?? null}
        />
      }
    >
      {(stage) => <ScenePair {...props} {...stage} max={max} />}
    </Stage>
  );
}

export default memo(Scene);
