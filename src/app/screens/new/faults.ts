/** What of the figures on a drawing does not go together: of the shapes, and of the design they would make. */
import type { Design } from '../../../design/definition.ts';
import { quantityIfAt } from '../../../design/place.ts';
import { inSystem } from '../../../design/quantity.ts';
import type { DesignError } from '../../../design/rules.ts';
import type { System } from '../../../design/units.ts';
import { placeName } from '../../../report/placeName.ts';
import type { Arrangement } from './arrangements.ts';
import { type Impossible, impossibleIn } from './impossible.ts';
import { type Ask, idOf } from './newDesign.ts';

type Sizes = Readonly<Record<string, number>>;

/** @param refused why the design of these sizes is none, and that design; null where it is one */
export function faultsOf(
  plan: Arrangement,
  sizes: Sizes,
  refused: { errors: readonly DesignError[]; design: Design } | null,
  system: System,
): Impossible[] {
  const shapes = impossibleIn(plan, sizes, system);
  const told = new Set(shapes.filter(({ stops }) => stops).flatMap(({ ids }) => ids));
  // What the shapes say already is not said once more in the words of the file.
  const others = (refused?.errors ?? [])
    .map((error) => ofError(plan, sizes, error, refused!.design, system))
    .filter(({ ids }) => !ids.some((id) => told.has(id)));
  const seen = new Set<string>();
  return [...shapes, ...others].filter(({ text }) => !seen.has(text) && seen.add(text));
}

const WHOLE: readonly Ask[] = ['diameter', 'bore', 'angle', 'length'];

function ofError(
  plan: Arrangement,
  sizes: Sizes,
  { path, message }: DesignError,
  design: Design,
  system: System,
): Impossible {
  const [, index, part, key] = /^seats\[(\d+)\](?:\.(\w+))?(?:\.(\w+))?/.exec(path) ?? [];
  const seat = index === undefined ? undefined : plan.seats[Number(index)];
  const quantity = quantityIfAt(path)?.quantity ?? 'length';
  const name = seat && key === undefined ? `${seat.title}, ${part ?? 'whole'}` : placeName(design, path);
  const asks: readonly Ask[] =
    key === 'diameter'
      ? [part === 'bush' ? 'bore' : 'diameter']
      : key === 'halfAngle'
        ? ['angle']
        : key === undefined
          ? WHOLE
          : ['length', 'behind'];
  return {
    ids: seat ? asks.map((ask) => idOf(seat, ask)).filter((id) => id in sizes) : [],
    text: `${name[0]!.toUpperCase()}${name.slice(1)}: ${inSystem(message, system, quantity)}`,
    stops: true,
  };
}

/** What is said of one field. */
export const faultAt = (faults: readonly Impossible[], id: string): string | undefined =>
  faults.find(({ ids, stops }) => stops && ids.includes(id))?.text;
