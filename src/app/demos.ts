/** The demo designs: files under assets, bundled so that they open without a network. */
import type { Design } from '../design/definition.ts';
import { validateDesign } from '../design/validate.ts';

const files = import.meta.glob('../../assets/designs/*.conepair.json', { eager: true, import: 'default' });

export interface Demo {
  file: string;
  design: Design;
}

const OPENING = 'steep-first.conepair.json';

export const DEMOS: Demo[] = Object.entries(files).flatMap(([path, raw]) => {
  const result = validateDesign(raw);
  return result.ok ? [{ file: path.split('/').pop()!, design: result.design }] : [];
});

export const openingDesign = (): Design => (DEMOS.find(({ file }) => file === OPENING) ?? DEMOS[0]!).design;
