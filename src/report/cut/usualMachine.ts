/** The machine of the shop in place of what the design does not say. */
import type { Design } from '../../design/definition.ts';
import type { System } from '../../design/units.ts';
import { USUAL_MACHINE } from '../../design/usualMachine.ts';

/** One for each design, so that what was worked out of it is found again. */
const filled = new WeakMap<Design, Design>();

/**
 * The design as a shop with such tools has it: what its machine is taken to be is filled in. Files stay as they are.
 */
export function withShopTools(design: Design, tools: System): Design {
  if (tools === 'metric' || !design.cut) return design;
  const made = filled.get(design) ?? {
    ...design,
    cut: { ...design.cut, machine: { ...USUAL_MACHINE[tools], ...design.cut.machine } },
  };
  filled.set(design, made);
  return made;
}
