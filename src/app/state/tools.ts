/**
 * Which system's tools the shop works with: as the units of the screen, until the person says otherwise of this job.
 */
import type { Design } from '../../design/definition.ts';
import type { System } from '../../design/units.ts';

export const toolsOf = ({ shop }: Pick<Design, 'shop'>, system: System): System => shop?.tools ?? system;

type Shop = NonNullable<Design['shop']>;

/** The job with another word of its shop; without it where none is given. */
export function withShop<K extends keyof Shop>(design: Design, key: K, value: Shop[K] | null): Design {
  const { shop, ...rest } = design;
  const { [key]: _, ...others } = shop ?? {};
  const said: Shop = value === null || value === undefined ? others : { ...others, [key]: value };
  return Object.keys(said).length > 0 ? { ...rest, shop: said } : rest;
}
