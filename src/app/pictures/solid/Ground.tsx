/** The shadow on the ground on which the pair seems to stand; seen from above only, and not where the pair is cut. */
import { useFrame } from '@react-three/fiber';
import { useEffect, useMemo, useRef } from 'react';
import { BufferAttribute, BufferGeometry, type Mesh } from 'three';
import type { Frame } from '../revolve.ts';
import type { Look } from './look.ts';
import type { Staged } from './staged.ts';

/** How far the shadow reaches past the pair (below 0: short of it), and how far the ground is from it, to the outside of the bush. */
const REACH = -0.25;
const BELOW = 1.02;

export function Ground({ frame, staged, look }: { frame: Frame; staged: Staged; look: Look }) {
  const mesh = useRef<Mesh>(null);
  const { halfLength, halfHeight } = frame;
  const [long, wide] = [halfLength + REACH * halfHeight, (1 + REACH) * halfHeight];
  const plane = useMemo(() => {
    const y = -BELOW * halfHeight;
    const corners = [-long, y, -wide, -long, y, wide, long, y, -wide, long, y, wide];
    const geometry = new BufferGeometry();
    geometry.setAttribute('position', new BufferAttribute(new Float32Array(corners), 3));
    geometry.setIndex([0, 1, 2, 2, 1, 3]);
    return geometry;
  }, [halfHeight, long, wide]);
  useEffect(() => () => plane.dispose(), [plane]);
  useFrame(() => {
    look.materials.shadow.uniforms.size!.value.set(long, wide);
    if (mesh.current) mesh.current.visible = !Number.isFinite(staged.now().clip);
  });
  return <mesh ref={mesh} geometry={plane} material={look.materials.shadow} renderOrder={-1} frustumCulled={false} />;
}
