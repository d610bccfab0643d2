/** The materials of one canvas, kept to what is drawn. */
import { useFrame, useThree } from '@react-three/fiber';
import { useEffect, useLayoutEffect, useMemo, useRef } from 'react';
import { BufferAttribute, BufferGeometry, type LineSegments } from 'three';
import { radians } from '../../../report/convert.ts';
import type { Drawing } from '../drawing.ts';
import type { Frame } from '../revolve.ts';
import { axisEnds } from './anchors.ts';
import { createLook, type Look } from './look.ts';
import { pageColourText } from './metals.ts';
import type { Staged } from './staged.ts';

/** Beyond this (scene lengths) nothing stands. */
const FAR_OFF = 1e3;

/** `marked`: the journal bears what shows that it turns. */
export function useLook(drawing: Drawing, frame: Frame, staged: Staged, dark: boolean, marked = false): Look {
  const look = useMemo(() => createLook(marked), [marked]);
  const gl = useThree((state) => state.gl);
  useLayoutEffect(() => {
    gl.localClippingEnabled = true;
  }, [gl]);
  const dpr = useThree((state) => state.viewport.dpr);
  const invalidate = useThree((state) => state.invalidate);
  const stale = useRef(true);
  useLayoutEffect(() => {
    look.themed(dark, dpr);
    stale.current = true;
    invalidate();
  }, [look, dark, dpr, invalidate]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: in another frame everything stands elsewhere
  useLayoutEffect(() => {
    stale.current = true;
  }, [frame, drawing]);
  useEffect(
    () =>
      drawing.subscribe(() => {
        stale.current = true;
      }),
    [drawing],
  );
  useFrame(() => {
    const { clip, sector } = staged.now();
    look.shared.clip.value = Math.min(FAR_OFF, clip + 1e-4);
    look.plane.constant = look.shared.clip.value;
    look.shared.open.value = radians(sector) / 2;
    if (!stale.current) return;
    stale.current = false;
    look.placed(drawing.now(), frame);
  });
  useEffect(() => () => look.dispose(), [look]);
  return look;
}

/** Dash, dot, to the whole: a centre line as it is drawn. */
const DASHES = [0.1, 0.022, 0.012, 0.022];

/** Pairs of points of a centre line from one place of the x axis to another. */
function dashed(from: number, to: number, put: (at: number) => [number, number, number]): number[] {
  const places: number[] = [];
  for (let x = from, k = 0; x < to; k++) {
    const step = DASHES[k % DASHES.length]!;
    if (k % 2 === 0) places.push(...put(x), ...put(Math.min(to, x + step)));
    x += step;
  }
  return places;
}

const lines = (places: number[]) =>
  new BufferGeometry().setAttribute('position', new BufferAttribute(new Float32Array(places), 3));

/** Half of the cross at the journal's own centre, to the outside of the bush. */
const CROSS = 0.09;
/** In front of the cut. */
const RAISED = 3e-3;

interface LinesProps {
  frame: Frame;
  staged: Staged;
  look: Look;
  dark: boolean;
}

/** The axis; and on a cut from the nose the bush's centre lines with the journal's centre, which may lie aside. */
export function CentreLine({ frame, staged, look, dark }: LinesProps) {
  const size = frame.halfHeight;
  const made = useMemo(() => {
    const [rear, nose] = axisEnds(frame);
    const across = dashed(-1.04 * size, 1.04 * size, (y) => [0, y, 0]);
    const upright = dashed(-1.04 * size, 1.04 * size, (z) => [0, 0, z]);
    const half = CROSS * size;
    return {
      axis: lines(dashed(rear, nose, (x) => [x, 0, 0])),
      bush: lines([...across, ...upright]),
      journal: lines([0, -half, 0, 0, half, 0, 0, 0, -half, 0, 0, half]),
    };
  }, [frame, size]);
  useEffect(() => () => Object.values(made).forEach((one) => void one.dispose()), [made]);
  const [axis, bush, journal] = [useRef<LineSegments>(null), useRef<LineSegments>(null), useRef<LineSegments>(null)];
  useFrame(() => {
    const { clip } = staged.now();
    const cut = Number.isFinite(clip);
    if (!axis.current || !bush.current || !journal.current) return;
    axis.current.visible = !cut;
    bush.current.visible = cut;
    journal.current.visible = cut;
    if (!cut) return;
    const { x, y, z, w } = look.shared.axis.value;
    bush.current.position.x = clip + RAISED;
    journal.current.position.set(clip + 2 * RAISED, x + z * clip, y + w * clip);
  });
  const colours = useMemo(
    () => (['axis', 'bush', 'journal'] as const).map((of) => pageColourText(`scene-${of}`, dark)),
    [dark],
  );
  return (
    <>
      <lineSegments ref={axis} geometry={made.axis} frustumCulled={false}>
        <lineBasicMaterial color={colours[0]!} />
      </lineSegments>
      <lineSegments ref={bush} geometry={made.bush} visible={false} frustumCulled={false}>
        <lineBasicMaterial color={colours[1]!} />
      </lineSegments>
      <lineSegments ref={journal} geometry={made.journal} visible={false} frustumCulled={false}>
        <lineBasicMaterial color={colours[2]!} />
      </lineSegments>
    </>
  );
}
