/** The demo designs: files under assets, bundled so that they open without a network. */
import index from '../../../assets/demos.json';
import type { Design } from '../../design/definition.ts';
import { validateDesign } from '../../design/validate.ts';

const files = import.meta.glob('../../../assets/designs/*.conepair.json', { eager: true, import: 'default' });

export interface Demo {
  file: string;
  design: Design;
}

/** In the order in which they teach. */
export const DEMOS: Demo[] = index.map(({ file }) => {
  const result = validateDesign(files[`../../../assets/designs/${file}`]);
  if (!result.ok) throw new Error(`demo design ${file}: ${result.errors[0]?.message}`);
  return { file, design: result.design };
});

export const openingDesign = (): Design => DEMOS[0]!.design;

const textOf = ({ position: _, ...design }: Design) => JSON.stringify(design);
const demoTexts = new Set(DEMOS.map(({ design }) => textOf(design)));

/** Whether a design is a person's own work: anything but a demo whose journal was moved at most. */
export const isOwn = (design: Design): boolean => !demoTexts.has(textOf(design));
