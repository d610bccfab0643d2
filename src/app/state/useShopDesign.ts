/** A design as the shop has it: with inch tools where the person works with those and the design names no others. */
import type { Design } from '../../design/definition.ts';
import type { System } from '../../design/units.ts';
import { withShopTools } from '../../report/cut/usualMachine.ts';
import { toolsOf } from './tools.ts';

type Tools = ReturnType<typeof toolsOf>;

/** The same object for the same design on every screen, so that what was worked out for it is found again. */
const known = new WeakMap<Design, { tools: Tools; shop: Design }>();

export function useShopDesign(design: Design, system: System): Design {
  const tools = toolsOf(design, system);
  const found = known.get(design);
  if (found && found.tools === tools) return found.shop;
  const shop = withShopTools(design, tools);
  known.set(design, { tools, shop });
  return shop;
}
