/** A solid whose buffers follow the drawing: written over in place while it fits, made larger when it does not. */
import { useFrame, useThree } from '@react-three/fiber';
import { useEffect, useLayoutEffect, useMemo, useRef } from 'react';
import { BufferAttribute, BufferGeometry, DynamicDrawUsage } from 'three';
import type { Drawing } from './drawing.ts';
import type { Drawn } from './drawn.ts';
import type { Mesh } from './revolve.ts';
import type { Staged } from './solid/staged.ts';

/** Room to spare in a new buffer, for the film's breakpoints come and go as the journal moves. */
const SPARE = 1.5;
/**
 * Corners that a buffer has room for at least, a ring where two seats touch: at first touch the solids that were empty
 * before need no new ones, which would take longer than all else of the move. Three indices to a corner.
 */
const LEAST = 3000;

export const never = (_a: Drawn, _b: Drawn) => false;

/**
 * `make`: given the mesh before, which it may write over. `on`: what else the solid depends on. `same`: whether two
 * drawings give the same solid; left out, none do. `staged`: the opening that it follows.
 */
export function useSolid(
  drawing: Drawing,
  make: (drawn: Drawn, last: Mesh | null) => Mesh,
  on: readonly unknown[],
  same = never,
  staged?: Staged,
): BufferGeometry {
  const invalidate = useThree((state) => state.invalidate);
  const geometry = useMemo(() => new BufferGeometry(), []);
  const made = useRef<Drawn | null>(null);
  const last = useRef<Mesh | null>(null);
  // Made just before it is drawn: however often it changes between two frames, once is enough.
  useFrame(() => {
    if (made.current !== null) return;
    made.current = drawing.now();
    last.current = make(made.current, last.current);
    write(geometry, last.current);
  });
  // biome-ignore lint/correctness/useExhaustiveDependencies: the caller names what the solid depends on
  useLayoutEffect(() => {
    made.current = null;
    invalidate();
  }, [geometry, drawing, ...on]);
  useEffect(
    () =>
      drawing.subscribe(() => {
        if (made.current !== null && same(made.current, drawing.now())) return;
        made.current = null;
        invalidate();
      }),
    [drawing, same, invalidate],
  );
  useEffect(
    () =>
      staged?.subscribe(() => {
        made.current = null;
        invalidate();
      }),
    [staged, invalidate],
  );
  useEffect(() => () => geometry.dispose(), [geometry]);
  return geometry;
}

/** Numbers a corner; three where it is not told. */
const SIZES: Record<string, number> = { edge: 4 };

export function write(geometry: BufferGeometry, { positions, normals, indices, colours, edges }: Mesh): void {
  const parts = {
    position: positions,
    normal: normals,
    ...(colours ? { color: colours } : {}),
    ...(edges ? { edge: edges } : {}),
  };
  const fits =
    Object.entries(parts).every(([name, { length }]) => (geometry.getAttribute(name)?.array.length ?? -1) >= length) &&
    geometry.index!.array.length >= indices.length;
  if (!fits) geometry.dispose();
  for (const [name, values] of Object.entries(parts)) {
    const size = SIZES[name] ?? 3;
    if (!fits)
      geometry.setAttribute(
        name,
        new BufferAttribute(new Float32Array(roomFor(values.length / size) * size), size).setUsage(DynamicDrawUsage),
      );
    written(geometry.getAttribute(name) as BufferAttribute, values);
  }
  if (!fits)
    geometry.setIndex(
      new BufferAttribute(new Uint32Array(3 * roomFor(indices.length / 3)), 1).setUsage(DynamicDrawUsage),
    );
  written(geometry.index!, indices);
  geometry.setDrawRange(0, indices.length);
  // Where it is sorted in stands once it is made, and no ray is turned away by how large it was.
  if (!fits || geometry.boundingSphere === null) {
    geometry.boundingSphere = null;
    geometry.computeBoundingSphere();
  }
  geometry.boundingSphere!.radius = Number.POSITIVE_INFINITY;
  geometry.boundingBox = null;
}

const roomFor = (many: number) => Math.max(LEAST, Math.ceil(many * SPARE));

/** Handed to the graphics as far as it is another. */
function written(attribute: BufferAttribute, values: Float32Array | Uint32Array): void {
  const array = attribute.array as Float32Array;
  let from = 0;
  let to = values.length;
  while (from < to && array[from] === values[from]) from++;
  while (to > from && array[to - 1] === values[to - 1]) to--;
  if (from === to) return;
  for (let i = from; i < to; i++) array[i] = values[i]!;
  attribute.addUpdateRange(from, to - from);
  attribute.needsUpdate = true;
}
