/** Numbers of the report, with their unit in their description. */
import * as z from 'zod/mini';
import type { Millimetres } from '../design/dimension.ts';

export const mm = (description: string) =>
  z.number().check(z.meta({ description: `${description}, mm` })) as z.ZodMiniType<Millimetres, Millimetres>;
export const mmOrNull = (description: string) => z.nullable(mm(description));
