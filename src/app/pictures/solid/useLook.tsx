/** The materials of one canvas, kept to what is drawn. */
import { useFrame, useThree } from '@react-three/fiber';
import { useEffect, useLayoutEffect, useMemo, useRef } from 'react';
import { BufferAttribute, BufferGeometry } from 'three';
import { radians } from '../../../report/convert.ts';
import type { Drawing } from '../drawing.ts';
import type { Frame } from '../revolve.ts';
import { axisEnds } from './anchors.ts';
import { createLook, type Look } from './look.ts';
import type { Staged } from './staged.ts';

/** Beyond this (scene lengths) nothing stands. */
const FAR_OFF = 1e3;

export function useLook(drawing: Drawing, frame: Frame, staged: Staged, dark: boolean): Look {
  const look = useMemo(createLook, []);
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

export function CentreLine({ frame, dark }: { frame: Frame; dark: boolean }) {
  const line = useMemo(() => {
    const [rear, nose] = axisEnds(frame);
    const places: number[] = [];
    for (let x = rear, k = 0; x < nose; k++) {
      const step = DASHES[k % DASHES.length]!;
      if (k % 2 === 0) places.push(x, 0, 0, Math.min(nose, x + step), 0, 0);
      x += step;
    }
    return new BufferGeometry().setAttribute('position', new BufferAttribute(new Float32Array(places), 3));
  }, [frame]);
  useEffect(() => () => line.dispose(), [line]);
  return (
    <lineSegments geometry={line} frustumCulled={false}>
      <lineBasicMaterial color={dark ? '#c9c2b4' : '#5a5347'} />
    </lineSegments>
  );
}
