/** What lies between the parts: oil, or the prints of the blue; and where they touch. */
import { useThree } from '@react-three/fiber';
import { useEffect, useMemo, useRef, useSyncExternalStore } from 'react';
import { ConeGeometry, CylinderGeometry, MeshBasicMaterial, type Plane } from 'three';
import type { PrintMap } from '../../../report/print/maps.ts';
import type { Drawing } from '../drawing.ts';
import type { Point } from '../drawn.ts';
import { cssColour } from '../filmColour.ts';
import { printMesh } from '../printGeometry.ts';
import type { Frame } from '../revolve.ts';
import { never, useSolid } from '../useSolid.ts';
import { type Arrow, arrowsOf, dashesOf } from './contact.ts';
import { filmCutMesh, filmMesh, GLOW, touchMesh } from './filmGeometry.ts';
import { blueOf, type Look } from './look.ts';
import { litMetal, pageColour } from './metals.ts';
import type { Staged } from './staged.ts';

interface Between {
  drawing: Drawing;
  frame: Frame;
  staged: Staged;
  look: Look;
}

export function SolidFilm({ drawing, seat, frame, staged, look, max }: Between & { seat: number; max: number }) {
  const shell = useSolid(drawing, (drawn, last) => filmMesh(drawn, seat, frame, max, last), [frame, max, seat]);
  const section = useSolid(
    drawing,
    (drawn) => filmCutMesh(drawn, seat, frame, staged.now().sector, max),
    [frame, max, seat],
    never,
    staged,
  );
  return (
    <>
      <mesh geometry={section} material={look.materials.oilCut} frustumCulled={false} />
      <mesh geometry={shell} material={look.materials.oil} renderOrder={1} frustumCulled={false} />
    </>
  );
}

export function SolidTouch({ drawing, seat, frame, look }: Omit<Between, 'staged'> & { seat: number }) {
  const core = useSolid(drawing, (drawn) => touchMesh(drawn, seat, frame), [frame, seat]);
  const glow = useSolid(drawing, (drawn) => touchMesh(drawn, seat, frame, GLOW), [frame, seat]);
  return (
    <>
      <mesh geometry={glow} material={look.materials.glow} renderOrder={2} frustumCulled={false} />
      <mesh geometry={core} material={look.materials.touch} renderOrder={3} frustumCulled={false} />
    </>
  );
}

interface PrintProps extends Between {
  map: PrintMap;
  thickness: number;
  dark: boolean;
}

export function SolidPrint({ drawing, map, thickness, frame, staged, look, dark }: PrintProps) {
  const blue = blueOf(dark);
  const metal = useMemo(() => litMetal(map.part === 'journal' ? 'steel' : 'bronze', dark), [map.part, dark]);
  const skin = useSolid(
    drawing,
    (drawn) => printMesh(drawn, map, thickness, frame, staged.now().sector, metal, blue),
    [map, thickness, frame, metal, blue],
    never,
    staged,
  );
  return <mesh geometry={skin} material={look.materials.print} renderOrder={1} frustumCulled={false} />;
}

/** Length of an arrow for a share of 1, scene lengths. */
const ARROW = 0.34;

/** Arrows that end where a seat bears on the journal, as long as their share is large; none is hidden. */
export function Arrows({ drawing, frame, sector, look, dark }: Omit<Between, 'staged'> & Opened) {
  const last = useRef<readonly Arrow[]>([]);
  const arrows = useSyncExternalStore(drawing.subscribe, () => {
    const next = arrowsOf(drawing.now(), sector);
    if (JSON.stringify(next) !== JSON.stringify(last.current)) last.current = next;
    return last.current;
  });
  const invalidate = useThree((state) => state.invalidate);
  // biome-ignore lint/correctness/useExhaustiveDependencies: other arrows are another picture
  useEffect(invalidate, [arrows]);
  const pen = useMemo(() => cssColour(pageColour('scene-text', dark)), [dark]);
  const clippingPlanes = useMemo(() => [look.plane], [look.plane]);
  // Kept while no arrow is shown: they come and go with every touch.
  const { shaft, tip } = useMemo(
    () => ({
      shaft: new CylinderGeometry(ARROW / 26, ARROW / 26, 1, 10),
      tip: new ConeGeometry(ARROW / 9, ARROW / 3, 16),
    }),
    [],
  );
  const ink = useMemo(() => {
    const color = cssColour(pageColour('clash', dark));
    return new MeshBasicMaterial({ color, depthTest: false, transparent: true, clippingPlanes });
  }, [dark, clippingPlanes]);
  useEffect(() => () => ink.dispose(), [ink]);
  useEffect(
    () => () => {
      shaft.dispose();
      tip.dispose();
    },
    [shaft, tip],
  );
  return arrows.map(({ key, theta, at: [z, r], way, share, past }) => {
    const long = ARROW * (0.4 + 0.6 * share);
    // In the turned group the seat lies toward z, and the arrow points up: toward (way along the axis, way outward).
    const lean = Math.atan2(way[0], -way[1]);
    return (
      <group key={key} rotation={[-theta, 0, 0]}>
        <Past line={past} frame={frame} colour={pen} clippingPlanes={clippingPlanes} />
        <group position={[frame.scale * (z - frame.centre), 0, frame.scale * r]} rotation={[0, -lean, 0]}>
          <group rotation={[-Math.PI / 2, 0, 0]}>
            <mesh
              position={[0, -long / 2 - ARROW / 3, 0]}
              scale={[1, long, 1]}
              geometry={shaft}
              material={ink}
              renderOrder={5}
            />
            <mesh position={[0, -ARROW / 6, 0]} geometry={tip} material={ink} renderOrder={5} />
          </group>
        </group>
      </group>
    );
  });
}

/** Lengths of a dash, of the space after it, and of its thickness: scene lengths. */
const DASH = { long: 0.045, space: 0.03, thick: 0.009 };

interface PastProps {
  line: readonly Point[];
  frame: Frame;
  colour: string;
  clippingPlanes: Plane[];
}

/** The drawn journal ends before what holds it: its line goes on in dashes, as in the section. */
function Past({ line, frame, colour, clippingPlanes }: PastProps) {
  const inScene = line.map(([z, r]): Point => [frame.scale * (z - frame.centre), frame.scale * r]);
  return dashesOf(inScene, DASH.long, DASH.space).map(([[x0, z0], [x1, z1]]) => (
    <mesh
      key={`${x0} ${z0}`}
      name="past-drawn"
      position={[(x0 + x1) / 2, 0, (z0 + z1) / 2]}
      rotation={[0, -Math.atan2(z1 - z0, x1 - x0), 0]}
      renderOrder={4}
    >
      <boxGeometry args={[Math.hypot(x1 - x0, z1 - z0), DASH.thick, DASH.thick]} />
      <meshBasicMaterial color={colour} depthTest={false} transparent clippingPlanes={clippingPlanes} />
    </mesh>
  ));
}

interface Opened {
  sector: number;
  dark: boolean;
}
