/**
 * Numbers that know their unit: one does not go where another is asked for, while a plain number, as every sum and
 * product is, goes anywhere. The file and the report have mm and degrees, the engine m and rad; `report/convert.ts` is
 * the edge between them.
 */
type In<Unit extends string> = number & { readonly unit?: Unit };

export type Millimetres = In<'mm'>;
export type Degrees = In<'degrees'>;
export type Metres = In<'m'>;
export type Radians = In<'rad'>;
