/** A design as the shop has it: with inch tools where the person works with those and the design names no others. */
import { useMemo } from 'react';
import type { Design } from '../../design/definition.ts';
import type { System } from '../../design/units.ts';
import { withShopTools } from '../../report/cut/usualMachine.ts';
import { toolsOf } from './tools.ts';

export function useShopDesign(design: Design, system: System): Design {
  const tools = toolsOf(design, system);
  return useMemo(() => withShopTools(design, tools), [design, tools]);
}
