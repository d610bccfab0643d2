/** The machine of the shop in place of what the design does not say. */
import type { Design } from '../../design/definition.ts';
import type { System } from '../../design/units.ts';
import { USUAL_MACHINE } from '../../design/usualMachine.ts';

/**
 * The design as a shop with such tools has it: what its machine is taken to be is filled in. Files stay as they are.
 */
export function withShopTools(design: Design, tools: System): Design {
  if (tools === 'metric' || !design.cut) return design;
  return { ...design, cut: { ...design.cut, machine: { ...USUAL_MACHINE[tools], ...design.cut.machine } } };
}
