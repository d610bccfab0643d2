/**
 * The solids inside the canvas. Their buffers follow the drawing directly; React sees another part, not another
 * position.
 */
import { OrbitControls } from '@react-three/drei';
import { useThree } from '@react-three/fiber';
import { type RefObject, useEffect, useImperativeHandle, useMemo, useRef, useSyncExternalStore } from 'react';
import { DoubleSide, type PerspectiveCamera, Spherical, Vector3 } from 'three';
import type { PrintMap } from '../../engine/play/print.ts';
import { BLUE } from './blue.ts';
import type { Drawn, Point } from './drawn.ts';
import { cssColour, type Rgb, touchColour } from './filmColour.ts';
import { printMesh } from './printGeometry.ts';
import type { Frame } from './revolve.ts';
import {
  bushCutMesh,
  bushMesh,
  fillingDistance,
  filmCutMesh,
  filmMesh,
  frameOf,
  journalMesh,
  touchMesh,
} from './sceneGeometry.ts';
import type { Controls, SceneProps } from './sceneProps.ts';
import { useSceneDrag } from './useSceneDrag.ts';
import { useSolid } from './useSolid.ts';

/** Where the camera stands, seen from the middle; beside the axis at the nose, for on it the cut faces are edge on. */
export const VIEWS = {
  'From the side': [0, 0, 1],
  'From the nose': [1, 0.04, 0.12],
  'Three-quarter': [0.56, 0.42, 0.72],
} as const;
export type View = keyof typeof VIEWS;

/** How the keyboard moves the camera. */
export interface Look {
  /** Angles (rad) to the right and upward round the pair, and how many times closer. */
  turn(across: number, up: number, closer: number): void;
}

const NEAREST = 1.2;
const FURTHEST = 20;

export interface ScenePairProps extends SceneProps {
  /** Film at the far end of the colour scale, m. */
  max: number;
  view: { name: View };
  lost: RefObject<() => void>;
  look: RefObject<Look | null>;
}

export function ScenePair(props: ScenePairProps) {
  const { drawing, sector, prints, dark, max, view, lost, look } = props;
  const controls: Controls = useRef(null);
  const frame = useFrameOf(drawing);
  const seats = useSyncExternalStore(drawing.subscribe, () => drawing.now().seats.length);
  const journal = useSolid(drawing, (drawn) => journalMesh(drawn, frame), [frame]);
  const bush = useSolid(drawing, (drawn) => bushMesh(drawn, frame, sector), [frame, sector], sameBush);
  const cut = useSolid(drawing, (drawn) => bushCutMesh(drawn, frame, sector), [frame, sector], sameBush);
  const grab = useSceneDrag(props, frame, controls);
  useLost(lost);
  useView(view, frame, controls);
  useLook(look, controls);
  return (
    <>
      <hemisphereLight args={['#ffffff', '#8a8074', 1.6]} />
      <directionalLight position={[2, 4, 3]} intensity={1.8} />
      <directionalLight position={[-3, 1, 2]} intensity={0.7} />
      <mesh name="journal" geometry={journal} onPointerDown={grab} frustumCulled={false}>
        <meshStandardMaterial color="#a3adb6" metalness={0.25} roughness={0.42} />
      </mesh>
      {/* The bush is in front of what it hides: no journal is taken hold of through it. */}
      <mesh name="bush" geometry={bush} onPointerDown={(event) => event.stopPropagation()} frustumCulled={false}>
        <meshStandardMaterial color="#a9793a" metalness={0.25} roughness={0.5} side={DoubleSide} />
      </mesh>
      {/* Unlit like a drawn section: one face looks up, the other down. */}
      <mesh geometry={cut} onPointerDown={(event) => event.stopPropagation()} frustumCulled={false}>
        <meshBasicMaterial color="#cfa263" side={DoubleSide} />
      </mesh>
      {prints
        ? prints.maps.map((map) => (
            <Print
              key={`${map.seat} ${map.part}`}
              drawing={drawing}
              map={map}
              thickness={prints.thickness}
              frame={frame}
              sector={sector}
              dark={dark}
            />
          ))
        : Array.from({ length: seats }, (_, seat) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a seat is known here by its place in the design
            <Film key={seat} drawing={drawing} seat={seat} frame={frame} sector={sector} max={max} dark={dark} />
          ))}
      <Forces drawing={drawing} frame={frame} dark={dark} />
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

/** The bush's solids stay while it does. */
const sameBush = (a: Drawn, b: Drawn) =>
  a.seats.length === b.seats.length && a.seats.every(({ bush }, i) => samePoints(bush, b.seats[i]!.bush));
const samePoints = (a: readonly Point[], b: readonly Point[]) =>
  a.length === b.length && a.every(([z, r], i) => z === b[i]![0] && r === b[i]![1]);

/** The frame, the same object while its numbers are the same. */
function useFrameOf(drawing: SceneProps['drawing']): Frame {
  const last = useRef<Frame>(null);
  return useSyncExternalStore(drawing.subscribe, () => {
    const next = frameOf(drawing.now());
    if (!last.current || Object.entries(next).some(([key, value]) => last.current![key as keyof Frame] !== value))
      last.current = next;
    return last.current;
  });
}

interface FilmProps {
  drawing: SceneProps['drawing'];
  seat: number;
  frame: Frame;
  sector: number;
  max: number;
  dark: boolean;
}

/** Unlit, so that a colour is the legend's. */
function Film({ drawing, seat, frame, sector, max, dark }: FilmProps) {
  const skin = useSolid(drawing, (drawn) => filmMesh(drawn, seat, frame, max), [frame, max, seat]);
  const section = useSolid(drawing, (drawn) => filmCutMesh(drawn, seat, frame, sector, max), [
    frame,
    sector,
    max,
    seat,
  ]);
  const rings = useSolid(drawing, (drawn) => touchMesh(drawn, seat, frame), [frame, seat]);
  const blue = useMemo(() => cssColour(touchColour(dark)), [dark]);
  return (
    <>
      <mesh geometry={skin} renderOrder={1} frustumCulled={false}>
        <meshBasicMaterial
          vertexColors
          transparent
          opacity={0.82}
          depthWrite={false}
          polygonOffset
          polygonOffsetFactor={-1}
          polygonOffsetUnits={-4}
        />
      </mesh>
      <mesh geometry={section} frustumCulled={false}>
        <meshBasicMaterial
          vertexColors
          side={DoubleSide}
          polygonOffset
          polygonOffsetFactor={-1}
          polygonOffsetUnits={-4}
        />
      </mesh>
      <mesh geometry={rings} renderOrder={2} frustumCulled={false}>
        <meshBasicMaterial color={blue} />
      </mesh>
    </>
  );
}

const STEEL: Rgb = [0.64, 0.68, 0.71];
const BRONZE: Rgb = [0.73, 0.55, 0.31];

interface PrintProps {
  drawing: SceneProps['drawing'];
  map: PrintMap;
  thickness: number;
  frame: Frame;
  sector: number;
  dark: boolean;
}

function Print({ drawing, map, thickness, frame, sector, dark }: PrintProps) {
  const blue = dark ? BLUE.dark : BLUE.light;
  const skin = useSolid(
    drawing,
    (drawn) => printMesh(drawn, map, thickness, frame, sector, map.part === 'journal' ? STEEL : BRONZE, blue),
    [map, thickness, frame, sector, blue],
  );
  return (
    <mesh geometry={skin} renderOrder={1} frustumCulled={false}>
      <meshStandardMaterial
        vertexColors
        metalness={0.1}
        roughness={0.6}
        polygonOffset
        polygonOffsetFactor={-1}
        polygonOffsetUnits={-4}
      />
    </mesh>
  );
}

/**
 * Arrows on the journal where a seat holds it, as long as their share is large; through the bush, so that none is
 * hidden.
 */
function Forces({ drawing, frame, dark }: { drawing: SceneProps['drawing']; frame: Frame; dark: boolean }) {
  const forces = useSyncExternalStore(drawing.subscribe, () => drawing.now().forces);
  const invalidate = useThree((state) => state.invalidate);
  // biome-ignore lint/correctness/useExhaustiveDependencies: other forces are another picture
  useEffect(invalidate, [forces]);
  const colour = dark ? '#ff8a7a' : '#b3261e';
  return forces.map(({ seat, angle, share, at: [z, r] }) => {
    const long = ARROW * (0.4 + 0.6 * Math.min(1, share));
    return (
      <group key={`${seat} ${z} ${angle}`} position={[frame.scale * (z - frame.centre), 0, 0]} rotation={[angle, 0, 0]}>
        {/* In the turned group the seat lies toward -z: angles run from x, to the right seen from in front. */}
        <group position={[0, 0, -frame.scale * r]} rotation={[Math.PI / 2, 0, 0]} renderOrder={3}>
          <mesh position={[0, -long / 2 - ARROW / 3, 0]} renderOrder={3}>
            <cylinderGeometry args={[ARROW / 14, ARROW / 14, long, 10]} />
            <meshBasicMaterial color={colour} depthTest={false} transparent />
          </mesh>
          <mesh position={[0, -ARROW / 6, 0]} renderOrder={3}>
            <coneGeometry args={[ARROW / 6, ARROW / 3, 16]} />
            <meshBasicMaterial color={colour} depthTest={false} transparent />
          </mesh>
        </group>
      </group>
    );
  });
}

/** Length of an arrow for a share of 1, scene lengths. */
const ARROW = 0.34;

/** Says when the graphics context is taken away; not when the scene itself gives it up. */
export function useLost(lost: RefObject<() => void>) {
  const canvas = useThree(({ gl }) => gl.domElement);
  useEffect(() => {
    const tell = (event: Event) => {
      event.preventDefault();
      lost.current();
    };
    canvas.addEventListener('webglcontextlost', tell);
    return () => canvas.removeEventListener('webglcontextlost', tell);
  }, [canvas, lost]);
}

/** Puts the camera where a view wants it, the pair filling the view. A drag does not change the frame, so it stays. */
export function useView(view: { name: View }, frame: Frame, controls: Controls) {
  const get = useThree((state) => state.get);
  const shape = (frame.halfLength / frame.halfHeight).toFixed(1);
  // biome-ignore lint/correctness/useExhaustiveDependencies: only another view or another shape of the pair moves the camera
  useEffect(() => {
    const { size, invalidate } = get();
    const camera = get().camera as PerspectiveCamera;
    const toward = new Vector3(...VIEWS[view.name]).normalize();
    const tanUp = Math.tan((camera.fov * Math.PI) / 360) * 0.92;
    camera.position
      .copy(toward)
      .multiplyScalar(
        fillingDistance(frame, [toward.x, toward.y, toward.z], tanUp, (tanUp * size.width) / Math.max(1, size.height)),
      );
    camera.lookAt(0, 0, 0);
    controls.current?.target.set(0, 0, 0);
    controls.current?.update();
    invalidate();
  }, [view, shape, get, controls]);
}

/** The camera goes round the middle of the pair; never over the top, where up would turn over. */
export function useLook(look: RefObject<Look | null>, controls: Controls) {
  const get = useThree((state) => state.get);
  useImperativeHandle(
    look,
    () => ({
      turn(across, up, closer) {
        const { camera, invalidate } = get();
        const at = new Spherical().setFromVector3(camera.position);
        at.theta += across;
        at.phi = Math.min(Math.PI - 0.02, Math.max(0.02, at.phi - up));
        at.radius = Math.min(FURTHEST, Math.max(NEAREST, at.radius / closer));
        camera.position.setFromSpherical(at);
        camera.lookAt(0, 0, 0);
        controls.current?.update();
        invalidate();
      },
    }),
    [get, controls],
  );
}
