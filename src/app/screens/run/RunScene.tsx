/** Pressure as a skin raised off the journal, in the round. Heavy with three; load it lazily. Drawn on demand. */
import { OrbitControls } from '@react-three/drei';
import { useThree } from '@react-three/fiber';
import { memo, useEffect, useLayoutEffect, useMemo, useRef } from 'react';
import { BufferAttribute, BufferGeometry, DoubleSide } from 'three';
import type { Drawn } from '../../pictures/drawn.ts';
import type { Frame } from '../../pictures/revolve.ts';
import { useLook, useLost, useView } from '../../pictures/ScenePair.tsx';
import { type OnStage, Stage } from '../../pictures/Stage.tsx';
import { bushCutMesh, bushMesh, frameOf, journalMesh } from '../../pictures/sceneGeometry.ts';
import type { Controls } from '../../pictures/sceneProps.ts';
import { write } from '../../pictures/useSolid.ts';
import type { Skin } from './skinGeometry.ts';

export interface RunSceneProps {
  drawn: Drawn;
  /** one a seat, made for the frame of `drawn` */
  skinsFor(frame: Frame): Skin[];
  dark: boolean;
  /** The machine cannot draw the scene, or no longer. */
  onLost(): void;
}

const NEAREST = 1.2;
const FURTHEST = 20;
/** Degrees of the bush left out, so that the skin is seen. */
const OPEN = 200;

function RunScene(props: RunSceneProps) {
  return (
    <Stage
      seen="Journal with the oil's pressure raised as a skin off every seat, the bush faint round it"
      lookAt="Look at the pressure"
      dark={props.dark}
      onLost={props.onLost}
    >
      {(stage) => <Solids {...props} {...stage} />}
    </Stage>
  );
}

export default memo(RunScene);

function Solids({ drawn, skinsFor, dark, view, lost, look }: RunSceneProps & OnStage) {
  const controls: Controls = useRef(null);
  const frame = useMemo(() => frameOf(drawn), [drawn]);
  const journal = useGeometry(useMemo(() => journalMesh(drawn, frame), [drawn, frame]));
  const bush = useGeometry(useMemo(() => bushMesh(drawn, frame, OPEN), [drawn, frame]));
  const cut = useGeometry(useMemo(() => bushCutMesh(drawn, frame, OPEN), [drawn, frame]));
  const skins = useMemo(() => skinsFor(frame), [skinsFor, frame]);
  useLost(lost);
  useView(view, frame, controls);
  useLook(look, controls);
  return (
    <>
      <hemisphereLight args={['#ffffff', '#8a8074', 1.6]} />
      <directionalLight position={[2, 4, 3]} intensity={1.8} />
      <directionalLight position={[-3, 1, 2]} intensity={0.7} />
      <mesh geometry={journal} frustumCulled={false}>
        <meshStandardMaterial color="#a3adb6" metalness={0.25} roughness={0.42} />
      </mesh>
      <mesh geometry={bush} frustumCulled={false} renderOrder={2}>
        <meshBasicMaterial
          color={dark ? '#d7a55f' : '#a9793a'}
          transparent
          opacity={0.16}
          depthWrite={false}
          side={DoubleSide}
        />
      </mesh>
      <mesh geometry={cut} frustumCulled={false} renderOrder={3}>
        <meshBasicMaterial
          color={dark ? '#d7a55f' : '#a9793a'}
          transparent
          opacity={0.55}
          depthWrite={false}
          side={DoubleSide}
        />
      </mesh>
      {skins.map((skin, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a seat is known here by its place in the design
        <SkinSolid key={i} skin={skin} dark={dark} />
      ))}
      <OrbitControls
        ref={controls}
        enableDamping={false}
        enablePan={false}
        minDistance={NEAREST}
        maxDistance={FURTHEST}
      />
    </>
  );
}

/** Unlit, so that a colour is the legend's; the lines give it its shape. */
function SkinSolid({ skin, dark }: { skin: Skin; dark: boolean }) {
  const geometry = useGeometry(skin.mesh);
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
      <mesh geometry={geometry} frustumCulled={false}>
        <meshBasicMaterial
          vertexColors
          side={DoubleSide}
          polygonOffset
          polygonOffsetFactor={1}
          polygonOffsetUnits={1}
        />
      </mesh>
      <lineSegments geometry={lines} frustumCulled={false}>
        <lineBasicMaterial color={dark ? '#11161a' : '#3a332a'} transparent opacity={0.55} />
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
