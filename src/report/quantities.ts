/** Numbers of the report, with their unit in their description. */
import * as z from 'zod/mini';

export const mm = (description: string) => z.number().check(z.meta({ description: `${description}, mm` }));
export const mmOrNull = (description: string) => z.nullable(mm(description));
