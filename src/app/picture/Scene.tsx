/**
 * The pair as solids: journal, bush cut open, film between. Draws what drawn.ts says, nothing of its own.
 * Heavy with three; load it lazily.
 */
import { OrbitControls } from '@react-three/drei';
import { Canvas, type ThreeEvent, useThree } from '@react-three/fiber';
import { type ComponentRef, type RefObject, useEffect, useMemo, useRef, useState } from 'react';
import { BufferAttribute, BufferGeometry, DoubleSide, type PerspectiveCamera, Plane, Raycaster, Vector2, Vector3 } from 'three';
import type { System } from '../../design/units.ts';
import type { Drawn } from './drawn.ts';
import { cssColour, touchColour } from './filmColour.ts';
import { bushCutMesh, bushMesh, type Frame, fillingDistance, filmCutMesh, filmMesh, frameOf, greatestFilm, journalMesh, type Mesh, touchMesh } from './sceneGeometry.ts';
import { panel, SceneLegend, scaleEnd } from './sceneLegend.tsx';

export interface SceneProps {
  drawn: Drawn;
  system: System;
  /** Opening of the bush, degrees. */
  sector: number;
  dark: boolean;
  onDragStart(): void;
  /** True axial displacement (m) since the drag began. */
  onDrag(deltaMetres: number): void;
  onDragEnd(): void;
  /** The machine cannot draw the scene, or no longer. */
  onLost(): void;
}

/** Where the camera stands, seen from the middle; beside the axis at the nose, for on it the cut faces are edge on. */
const VIEWS = {
  'From the side': [0, 0, 1],
  'From the nose': [1, 0.04, 0.12],
  'Three-quarter': [0.56, 0.42, 0.72],
} as const;
type View = keyof typeof VIEWS;

/** Below this share of the axis seen square, a drag along it would be a guess. */
const LEAST_ACROSS = 0.35;

export default function Scene(props: SceneProps) {
  const { drawn, system, dark, onLost } = props;
  const [view, setView] = useState<{ name: View }>({ name: 'Three-quarter' });
  const [able] = useState(canDraw);
  const lost = useRef(onLost);
  lost.current = onLost;
  useEffect(() => {
    if (!able) lost.current();
  }, [able]);
  const max = useMemo(() => scaleEnd(greatestFilm(drawn), system), [drawn, system]);
  if (!able) return null;
  return (
    <div style={{ position: 'relative', width: '100%', height: '100%', minHeight: 240, background: dark ? '#1d232a' : '#f5f0e6' }}>
      <Canvas frameloop="demand" flat dpr={[1, 2]} camera={{ fov: 28, near: 0.1, far: 60 }} role="img" aria-label="Journal, bush and film, the bush cut open; gaps drawn larger, lengths true">
        <Pair {...props} max={max} view={view} lost={lost} />
      </Canvas>
      <fieldset style={{ position: 'absolute', top: 8, left: 8, display: 'flex', flexWrap: 'wrap', gap: 6, margin: 0, padding: 0, border: 0 }}>
        <legend style={{ position: 'absolute', width: 1, height: 1, overflow: 'hidden', clipPath: 'inset(50%)' }}>Look at the pair</legend>
        {(Object.keys(VIEWS) as View[]).map((name) => (
          <button key={name} type="button" onClick={() => setView({ name })} style={{ ...panel(dark), minHeight: 36, cursor: 'pointer' }}>
            {name}
          </button>
        ))}
      </fieldset>
      <SceneLegend drawn={drawn} max={max} system={system} dark={dark} />
    </div>
  );
}

function canDraw(): boolean {
  try {
    const context = document.createElement('canvas').getContext('webgl2');
    context?.getExtension('WEBGL_lose_context')?.loseContext();
    return context !== null;
  } catch {
    return false;
  }
}

interface PairProps extends SceneProps {
  /** Film at the far end of the colour scale, m. */
  max: number;
  view: { name: View };
  lost: RefObject<() => void>;
}

function Pair({ drawn, sector, dark, max, view, lost, onDragStart, onDrag, onDragEnd }: PairProps) {
  const controls = useRef<ComponentRef<typeof OrbitControls>>(null);
  const frame = useMemo(() => frameOf(drawn), [drawn]);
  const journal = useGeometry(() => journalMesh(drawn, frame), [drawn, frame]);
  const bush = useGeometry(() => bushMesh(drawn, frame, sector), [drawn, frame, sector]);
  const cut = useGeometry(() => bushCutMesh(drawn, frame, sector), [drawn, frame, sector]);
  const grab = useDrag(drawn, frame, controls, { onDragStart, onDrag, onDragEnd });
  useLost(lost);
  useView(view, frame, controls);
  return (
    <>
      <hemisphereLight args={['#ffffff', '#8a8074', 1.6]} />
      <directionalLight position={[2, 4, 3]} intensity={1.8} />
      <directionalLight position={[-3, 1, 2]} intensity={0.7} />
      <mesh geometry={journal} onPointerDown={grab}>
        <meshStandardMaterial color="#a3adb6" metalness={0.25} roughness={0.42} />
      </mesh>
      {/* The bush is in front of what it hides: no journal is taken hold of through it. */}
      <mesh geometry={bush} onPointerDown={(event) => event.stopPropagation()}>
        <meshStandardMaterial color="#a9793a" metalness={0.25} roughness={0.5} side={DoubleSide} />
      </mesh>
      {/* Unlit like a drawn section: one face looks up, the other down. */}
      <mesh geometry={cut} onPointerDown={(event) => event.stopPropagation()}>
        <meshBasicMaterial color="#cfa263" side={DoubleSide} />
      </mesh>
      {drawn.seats.map((seat) => (
        <Film key={seat.name} seat={seat} frame={frame} sector={sector} max={max} dark={dark} />
      ))}
      <OrbitControls ref={controls} enableDamping={false} enablePan={false} minDistance={1.2} maxDistance={20} />
    </>
  );
}

interface FilmProps {
  seat: Drawn['seats'][number];
  frame: Frame;
  sector: number;
  max: number;
  dark: boolean;
}

/** Unlit, so that a colour is the legend's. */
function Film({ seat, frame, sector, max, dark }: FilmProps) {
  const skin = useGeometry(() => filmMesh(seat, frame, max), [seat, frame, max]);
  const section = useGeometry(() => filmCutMesh(seat, frame, sector, max), [seat, frame, sector, max]);
  const rings = useGeometry(() => touchMesh(seat, frame), [seat, frame]);
  return (
    <>
      <mesh geometry={skin} renderOrder={1}>
        <meshBasicMaterial vertexColors transparent opacity={0.82} depthWrite={false} polygonOffset polygonOffsetFactor={-1} polygonOffsetUnits={-4} />
      </mesh>
      <mesh geometry={section}>
        <meshBasicMaterial vertexColors side={DoubleSide} polygonOffset polygonOffsetFactor={-1} polygonOffsetUnits={-4} />
      </mesh>
      <mesh geometry={rings} renderOrder={2}>
        <meshBasicMaterial color={cssColour(touchColour(dark))} />
      </mesh>
    </>
  );
}

/** A geometry made anew when what it depends on changes; the old one gives its memory back. */
function useGeometry(make: () => Mesh, on: readonly unknown[]): BufferGeometry {
  // biome-ignore lint/correctness/useExhaustiveDependencies: the caller names what the geometry depends on
  const geometry = useMemo(() => geometryOf(make()), on);
  useEffect(() => () => geometry.dispose(), [geometry]);
  return geometry;
}

function geometryOf({ positions, normals, indices, colours }: Mesh): BufferGeometry {
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(positions, 3));
  geometry.setAttribute('normal', new BufferAttribute(normals, 3));
  if (colours) geometry.setAttribute('color', new BufferAttribute(colours, 3));
  geometry.setIndex(new BufferAttribute(indices, 1));
  return geometry;
}

/** Says when the graphics context is taken away; not when the scene itself gives it up. */
function useLost(lost: RefObject<() => void>) {
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
function useView(view: { name: View }, frame: Frame, controls: RefObject<ComponentRef<typeof OrbitControls> | null>) {
  const get = useThree((state) => state.get);
  const shape = (frame.halfLength / frame.halfHeight).toFixed(1);
  // biome-ignore lint/correctness/useExhaustiveDependencies: only another view or another shape of the pair moves the camera
  useEffect(() => {
    const { size, invalidate } = get();
    const camera = get().camera as PerspectiveCamera;
    const toward = new Vector3(...VIEWS[view.name]).normalize();
    const tanUp = Math.tan((camera.fov * Math.PI) / 360) * 0.92;
    camera.position.copy(toward).multiplyScalar(fillingDistance(frame, [toward.x, toward.y, toward.z], tanUp, (tanUp * size.width) / Math.max(1, size.height)));
    camera.lookAt(0, 0, 0);
    controls.current?.target.set(0, 0, 0);
    controls.current?.update();
    invalidate();
  }, [view, shape, get, controls]);
}

/** Takes hold of the journal and moves it along the axis; listens to the window, so that a fast hand does not lose it. */
function useDrag(drawn: Drawn, frame: Frame, controls: RefObject<ComponentRef<typeof OrbitControls> | null>, calls: Pick<SceneProps, 'onDragStart' | 'onDrag' | 'onDragEnd'>) {
  const get = useThree((state) => state.get);
  const latest = useRef(calls);
  latest.current = calls;
  const drop = useRef<(() => void) | null>(null);
  useEffect(() => () => drop.current?.(), []);

  return (event: ThreeEvent<PointerEvent>) => {
    if (event.button !== 0 || drop.current) return;
    const { camera, gl } = get();
    // The plane through the axis' direction that faces the viewer most.
    const facing = event.ray.direction.clone().setX(0);
    if (facing.length() < LEAST_ACROSS) return;
    event.stopPropagation();
    const plane = new Plane().setFromNormalAndCoplanarPoint(facing.normalize(), event.point);
    const from = event.point.x;
    const metres = 1 / (frame.scale * drawn.factor);
    const { pointerId } = event;
    const ray = new Raycaster();
    const hit = new Vector3();
    const listening = new AbortController();
    const mine = (act: (e: PointerEvent) => void) => (e: PointerEvent) => {
      if (e.pointerId === pointerId) act(e);
    };
    const end = () => {
      listening.abort();
      drop.current = null;
      if (controls.current) controls.current.enabled = true;
      latest.current.onDragEnd();
    };
    const move = (e: PointerEvent) => {
      const box = gl.domElement.getBoundingClientRect();
      ray.setFromCamera(new Vector2((2 * (e.clientX - box.left)) / box.width - 1, 1 - (2 * (e.clientY - box.top)) / box.height), camera);
      if (ray.ray.intersectPlane(plane, hit)) latest.current.onDrag((hit.x - from) * metres);
    };
    drop.current = end;
    if (controls.current) controls.current.enabled = false;
    window.addEventListener('pointermove', mine(move), { signal: listening.signal });
    window.addEventListener('pointerup', mine(end), { signal: listening.signal });
    window.addEventListener('pointercancel', mine(end), { signal: listening.signal });
    latest.current.onDragStart();
  };
}
