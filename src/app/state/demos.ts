/** The demo designs: files under assets, bundled so that they open without a network; loaded when asked for. */
import index from '../../../assets/demos.json';
import { type Example, exampleFrom } from './opening.ts';

const files = import.meta.glob('../../../assets/designs/*.conepair.json', { eager: true, import: 'default' });

/** In the order in which they teach. */
export const DEMOS: Example[] = index.map(({ file }) => exampleFrom(file, files[`../../../assets/designs/${file}`]));
