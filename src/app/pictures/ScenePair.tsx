/**
 * The solids inside the canvas. Their buffers follow the drawing directly; React sees another part, not another
 * position.
 */
import { OrbitControls } from '@react-three/drei';
import { useRef, useState, useSyncExternalStore } from 'react';
import type { Drawn, Point } from './drawn.ts';
import type { OnStage } from './Stage.tsx';
import { bushCutMesh, bushMesh, journalMesh } from './sceneGeometry.ts';
import type { Controls, SceneProps } from './sceneProps.ts';
import { seenFrom } from './solid/camera.ts';
import { Ground } from './solid/Ground.tsx';
import { NoseCutFaces } from './solid/NoseCutFaces.tsx';
import { cutStation } from './solid/noseCut.ts';
import { SceneTags } from './solid/SceneTags.tsx';
import { Arrows, SolidFilm, SolidPrint, SolidTouch } from './solid/SolidFilm.tsx';
import { createStaged } from './solid/staged.ts';
import { FURTHEST, NEAREST, useCamera, useLost } from './solid/useCamera.ts';
import { useDiscs, useFrameOf } from './solid/useFrameOf.ts';
import { CentreLine, useLook } from './solid/useLook.tsx';
import { useHandCursor } from './useHandCursor.ts';
import { useSceneDrag } from './useSceneDrag.ts';
import { useSolid } from './useSolid.ts';

export interface ScenePairProps extends SceneProps, OnStage {
  /** Film at the far end of the colour scale, m. */
  max: number;
}

export function ScenePair(props: ScenePairProps) {
  const { drawing, sector, prints, dark, max, lost, system, plan, tagged, inks } = props;
  const controls: Controls = useRef(null);
  const frame = useFrameOf(drawing);
  const seats = useSyncExternalStore(drawing.subscribe, () => drawing.now().seats.length);
  const side = useSyncExternalStore(drawing.subscribe, () => seenFrom(drawing.now()));
  const station = useSyncExternalStore(drawing.subscribe, () => cutStation(drawing.now()));
  const [staged] = useState(() => createStaged({ clip: Number.POSITIVE_INFINITY, sector }));
  const look = useLook(drawing, frame, staged, dark);
  const grab = useSceneDrag(props, frame, controls);
  useLost(lost);
  useHandCursor();
  const cut = frame.scale * (station - frame.centre);
  const discs = useDiscs(drawing, frame);
  useCamera({ ...props, band: plan.band, frame, side, cut, discs, staged, controls, look });
  const journal = useSolid(drawing, (drawn, last) => journalMesh(drawn, frame, last), [frame]);
  const bush = useSolid(drawing, (drawn) => bushMesh(drawn, frame, staged.now().sector), [frame], sameBush, staged);
  const faces = useSolid(drawing, (drawn) => bushCutMesh(drawn, frame, staged.now().sector), [frame], sameBush, staged);
  const { materials } = look;
  const list = Array.from({ length: seats }, (_, seat) => seat);
  return (
    <>
      <mesh name="journal" geometry={journal} material={materials.steel} onPointerDown={grab} frustumCulled={false} />
      {/* The bush is in front of what it hides: no journal is taken hold of through it. */}
      <mesh
        name="bush"
        geometry={bush}
        material={materials.bronze}
        onPointerDown={(event) => event.stopPropagation()}
        frustumCulled={false}
      />
      <mesh
        geometry={faces}
        material={materials.bronzeCut}
        onPointerDown={(event) => event.stopPropagation()}
        frustumCulled={false}
      />
      {prints
        ? prints.maps.map((map) => (
            <SolidPrint
              key={`${map.seat} ${map.part}`}
              {...{ drawing, map, frame, staged, look, dark }}
              thickness={prints.thickness}
            />
          ))
        : list.map((seat) => <SolidFilm key={seat} {...{ drawing, seat, frame, staged, look, max }} />)}
      {list.map((seat) => (
        <SolidTouch key={seat} {...{ drawing, seat, frame, look }} />
      ))}
      <NoseCutFaces {...{ drawing, frame, staged, look, max }} />
      <Arrows {...{ drawing, frame, sector, look, dark }} />
      <Ground {...{ frame, staged, look }} />
      <CentreLine {...{ frame, staged, look, dark }} />
      <OrbitControls
        ref={controls}
        enableDamping={false}
        enablePan={false}
        minDistance={NEAREST}
        maxDistance={FURTHEST}
      />
      <SceneTags {...{ drawing, frame, staged, system, plan, tagged }} colour={inks.text} ground={inks.ground} />
    </>
  );
}

/** The bush's solids stay while it does. */
const sameBush = (a: Drawn, b: Drawn) =>
  a.seats.length === b.seats.length && a.seats.every(({ bush }, i) => samePoints(bush, b.seats[i]!.bush));
const samePoints = (a: readonly Point[], b: readonly Point[]) =>
  a.length === b.length && a.every(([z, r], i) => z === b[i]![0] && r === b[i]![1]);
