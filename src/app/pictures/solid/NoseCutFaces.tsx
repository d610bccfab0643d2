/** The faces of the cut that is seen from the nose; nothing where nothing is cut. */
import { useRef } from 'react';
import type { Drawing } from '../drawing.ts';
import type { Drawn } from '../drawn.ts';
import type { Frame } from '../revolve.ts';
import { never, useSolid } from '../useSolid.ts';
import type { Look } from './look.ts';
import { type NoseCut, noseCutMeshes } from './noseCut.ts';
import type { Staged } from './staged.ts';

interface Props {
  drawing: Drawing;
  frame: Frame;
  staged: Staged;
  look: Look;
  max: number;
  /** whether the bush is shown cut; not where something stands round the journal instead */
  bushFace?: boolean;
}

/** Three faces of one cut: worked out once for all of them. */
export function NoseCutFaces({ drawing, frame, staged, look, max, bushFace = true }: Props) {
  const known = useRef<{ of: NoseCut; by: readonly unknown[] } | null>(null);
  const at = (drawn: Drawn): NoseCut => {
    const { clip, sector } = staged.now();
    const by = [drawn, frame, clip, sector, max];
    const last = known.current;
    if (last && by.every((one, i) => one === last.by[i])) return last.of;
    const of = noseCutMeshes(drawn, frame, clip, sector, max, bushFace);
    known.current = { of, by };
    return of;
  };
  const journal = useSolid(drawing, (drawn) => at(drawn).journal, [frame, max], never, staged);
  const bush = useSolid(drawing, (drawn) => at(drawn).bush, [frame, max], never, staged);
  const film = useSolid(drawing, (drawn) => at(drawn).film, [frame, max], never, staged);
  const { materials } = look;
  return (
    <>
      <mesh geometry={journal} material={materials.steelCut} frustumCulled={false} />
      {bushFace && <mesh geometry={bush} material={materials.bronzeCut} frustumCulled={false} />}
      <mesh geometry={film} material={materials.oilCut} frustumCulled={false} />
    </>
  );
}
