/**
 * The running pair in the round: pressure as a skin raised off every seat, or film in its colours; the spindle where it
 * lies in its films, turning. Heavy with three; load it lazily. Drawn on demand, but for the turning.
 */
import { OrbitControls } from '@react-three/drei';
import { useThree } from '@react-three/fiber';
import { memo, useCallback, useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react';
import { BufferAttribute, BufferGeometry, DoubleSide } from 'three';
import type { System } from '../../../design/units.ts';
import { createDrawing, type Drawing } from '../../pictures/drawing.ts';
import type { Drawn } from '../../pictures/drawn.ts';
import type { Frame } from '../../pictures/revolve.ts';
import { type OnStage, Stage } from '../../pictures/Stage.tsx';
import { bushCutMesh, bushMesh, journalMesh } from '../../pictures/sceneGeometry.ts';
import { scaleEnd } from '../../pictures/sceneLegend.tsx';
import type { Controls } from '../../pictures/sceneProps.ts';
import { seenFrom } from '../../pictures/solid/camera.ts';
import { greatestFilm } from '../../pictures/solid/filmGeometry.ts';
import { Ground } from '../../pictures/solid/Ground.tsx';
import type { Look } from '../../pictures/solid/look.ts';
import { pageColourText } from '../../pictures/solid/metals.ts';
import { NoseCutFaces } from '../../pictures/solid/NoseCutFaces.tsx';
import { cutStation } from '../../pictures/solid/noseCut.ts';
import { planOf, SceneTags } from '../../pictures/solid/SceneTags.tsx';
import { createStaged } from '../../pictures/solid/staged.ts';
import { FURTHEST, NEAREST, useCamera, useLost } from '../../pictures/solid/useCamera.ts';
import { useDiscs, useFrameOf } from '../../pictures/solid/useFrameOf.ts';
import { CentreLine, useLook } from '../../pictures/solid/useLook.tsx';
import { useTurning } from '../../pictures/solid/useTurning.ts';
import { useMedia } from '../../pictures/useMedia.ts';
import { never, useSolid, write } from '../../pictures/useSolid.ts';
import type { Skin } from './skinGeometry.ts';

export interface RunSceneProps {
  drawn: Drawn;
  /** one a seat, made for the frame of `drawn` */
  skinsFor(frame: Frame): Skin[];
  layer: 'pressure' | 'film';
  /** rev/min, from x toward y */
  speed: number;
  system: System;
  dark: boolean;
  /** The machine cannot draw the scene, or no longer. */
  onLost(): void;
}

const SEEN = { pressure: 'pressure raised as a skin off', film: 'film in the colours of the maps on' };
/** Degrees of the bush left out, so that the skin is seen. */
const OPEN = 200;

function RunScene(props: RunSceneProps) {
  const { drawn, layer, speed, system, dark, onLost } = props;
  const [drawing] = useState(() => createDrawing(drawn));
  useLayoutEffect(() => drawing.set(drawn), [drawing, drawn]);
  const still = useMedia('(prefers-reduced-motion: reduce)');
  const [asked, setAsked] = useState<boolean | null>(null);
  // A device too slow to show it evenly stands still, until asked again.
  const turning = speed !== 0 && (asked ?? !still);
  const onSlow = useCallback(() => setAsked(false), []);
  const names = JSON.stringify(drawn.seats.map(({ name }) => name));
  const plan = useCallback((across: number) => planOf(JSON.parse(names) as string[], system, across), [names, system]);
  return (
    <Stage
      seen={`Spindle as it runs, with the oil's ${SEEN[layer]} every seat, the bush faint round it`}
      lookAt={`Look at the ${layer}`}
      dark={dark}
      onLost={onLost}
      planOf={plan}
      legend={
        speed !== 0 && (
          <button type="button" aria-pressed={turning} onClick={() => setAsked(!turning)}>
            {turning ? 'Stop it turning' : 'Let it turn'}
          </button>
        )
      }
    >
      {(stage) => (
        <Solids {...props} {...stage} drawing={drawing} turns={turning ? Math.sign(speed) : 0} onSlow={onSlow} />
      )}
    </Stage>
  );
}

export default memo(RunScene);

interface SolidsProps extends RunSceneProps, OnStage {
  drawing: Drawing;
  /** -1, 0, 1: which way it turns */
  turns: number;
  onSlow(): void;
}

function Solids(props: SolidsProps) {
  const { drawing, drawn, skinsFor, dark, lost, plan, system, tagged, inks, turns, onSlow } = props;
  const controls: Controls = useRef(null);
  const frame = useFrameOf(drawing);
  const [staged] = useState(() => createStaged({ clip: Number.POSITIVE_INFINITY, sector: OPEN }));
  const look = useLook(drawing, frame, staged, dark, true);
  const discs = useDiscs(drawing, frame);
  const cut = frame.scale * (cutStation(drawn) - frame.centre);
  useLost(lost);
  useCamera({
    ...{ ...props, band: plan.band, sector: OPEN, side: seenFrom(drawn) },
    ...{ frame, cut, discs, staged, controls, look },
  });
  useTurning(look, turns, onSlow);
  const journal = useSolid(drawing, (now) => journalMesh(now, frame), [frame]);
  const bush = useSolid(drawing, (now) => bushMesh(now, frame, staged.now().sector), [frame], never, staged);
  const faces = useSolid(drawing, (now) => bushCutMesh(now, frame, staged.now().sector), [frame], never, staged);
  const skins = useMemo(() => skinsFor(frame), [skinsFor, frame]);
  const max = scaleEnd(greatestFilm(drawn), system);
  const bronze = useMemo(() => pageColourText('scene-faint', dark), [dark]);
  const faint = { color: bronze, transparent: true, depthWrite: false, side: DoubleSide };
  const clipped = { clippingPlanes: [look.plane] };
  return (
    <>
      <mesh geometry={journal} material={look.materials.steel} frustumCulled={false} />
      <mesh geometry={bush} frustumCulled={false} renderOrder={2}>
        <meshBasicMaterial {...faint} {...clipped} opacity={0.14} />
      </mesh>
      <mesh geometry={faces} frustumCulled={false} renderOrder={3}>
        <meshBasicMaterial {...faint} {...clipped} opacity={0.5} />
      </mesh>
      {skins.map((skin, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a seat is known here by its place in the design
        <SkinSolid key={i} skin={skin} dark={dark} look={look} />
      ))}
      <NoseCutFaces {...{ drawing, frame, staged, look, max }} bushFace={false} />
      <Ground {...{ frame, staged, look }} />
      <CentreLine {...{ frame, staged, look, dark }} />
      <OrbitControls
        ref={controls}
        enableDamping={false}
        enablePan={false}
        minDistance={NEAREST}
        maxDistance={FURTHEST}
      />
      <SceneTags
        {...{ drawing, frame, staged, system, plan, tagged }}
        inSteps={false}
        colour={inks.text}
        ground={inks.ground}
      />
    </>
  );
}

/** Unlit, so that a colour is the legend's; the lines give it its shape. */
function SkinSolid({ skin, dark, look }: { skin: Skin; dark: boolean; look: Look }) {
  const geometry = useGeometry(skin.mesh);
  const net = useMemo(() => pageColourText('scene-net', dark), [dark]);
  const invalidate = useThree((state) => state.invalidate);
  const lines = useMemo(() => new BufferGeometry(), []);
  useLayoutEffect(() => {
    const old = lines.getAttribute('position');
    if (old?.array.length === skin.lines.length) {
      (old.array as Float32Array).set(skin.lines);
      old.needsUpdate = true;
    } else {
      lines.dispose();
      lines.setAttribute('position', new BufferAttribute(skin.lines.slice(), 3));
    }
    invalidate();
  }, [lines, skin, invalidate]);
  useEffect(() => () => lines.dispose(), [lines]);
  return (
    <>
      <mesh geometry={geometry} material={look.materials.skin} frustumCulled={false} />
      <lineSegments geometry={lines} frustumCulled={false}>
        <lineBasicMaterial color={net} transparent opacity={0.55} clippingPlanes={[look.plane]} />
      </lineSegments>
    </>
  );
}

/** One geometry, written over as its mesh changes. */
function useGeometry(mesh: Parameters<typeof write>[1]): BufferGeometry {
  const invalidate = useThree((state) => state.invalidate);
  const geometry = useMemo(() => new BufferGeometry(), []);
  useLayoutEffect(() => {
    write(geometry, mesh);
    invalidate();
  }, [geometry, mesh, invalidate]);
  useEffect(() => () => geometry.dispose(), [geometry]);
  return geometry;
}
