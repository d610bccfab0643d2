/** The machine of the shop in place of what the design does not say. */
import type { Design } from '../../design/definition.ts';
import type { System } from '../../design/units.ts';
import { USUAL_LIMIT, USUAL_MACHINE } from '../../design/usualMachine.ts';

/** One for each design, so that what was worked out of it is found again. */
const filled = new WeakMap<Design, Design>();

/**
 * The design as a shop with such tools has it: what its machine is taken to be is filled in, and what
 * may be cut at most. Files stay as they are.
 */
export function withShopTools(design: Design, tools: System): Design {
  if (tools === 'metric' || !design.cut) return design;
  const { cut } = design;
  const limited = <T extends { cleanup?: number | undefined; limit?: number | undefined }>(one: T): T =>
    one.limit === undefined ? { ...one, limit: Math.max(USUAL_LIMIT[tools], one.cleanup ?? 0) } : one;
  const made = filled.get(design) ?? {
    ...design,
    cut: {
      ...cut,
      allow: cut.allow.map(limited),
      ...(cut.faces && { faces: cut.faces.map(limited) }),
      machine: { ...USUAL_MACHINE[tools], ...cut.machine },
    },
  };
  filled.set(design, made);
  return made;
}
