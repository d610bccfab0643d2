/** The models of a design as the pictures draw it; three is loaded for them when asked. */
import type { Design } from '../../design/definition.ts';
import { metres } from '../../report/convert.ts';
import { linesOf } from '../../report/inFrame.ts';
import { drawnPair } from '../pictures/drawn.ts';

export async function solids(
  design: Design,
  factor: number,
  what: 'journal' | 'bush' | 'pair',
): Promise<{ content: ArrayBuffer; drawn: number }> {
  const { gltfOf, stlOf } = await import('./solids.ts');
  const drawn = drawnPair(linesOf(design), metres(design.position ?? 0), factor);
  return { content: what === 'pair' ? await gltfOf(drawn) : stlOf(drawn, what), drawn: Math.round(drawn.factor) };
}
