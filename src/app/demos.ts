/** The demo designs: files under assets, bundled so that they open without a network. */
import index from '../../assets/demos.json';
import type { Design } from '../design/definition.ts';
import { validateDesign } from '../design/validate.ts';

const files = import.meta.glob('../../assets/designs/*.conepair.json', { eager: true, import: 'default' });

export interface Demo {
  file: string;
  design: Design;
}

/** In the order in which they teach. */
export const DEMOS: Demo[] = index.map(({ file }) => {
  const result = validateDesign(files[`../../assets/designs/${file}`]);
  if (!result.ok) throw new Error(`demo design ${file}: ${result.errors[0]?.message}`);
  return { file, design: result.design };
});

export const openingDesign = (): Design => DEMOS[0]!.design;
