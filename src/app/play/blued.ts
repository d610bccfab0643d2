/** The design with a thickness of blue, where it gives none. */
import type { Design } from '../../design/definition.ts';

/** Blue that shows (mm): a thin rub; common practice, no source. */
const THIN = 0.002;

export const bluedDesign = (design: Design): Design => ({ ...design, print: design.print ?? { thickness: THIN } });
