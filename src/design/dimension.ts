/**
 * Numbers that know their unit: one does not go where another is asked for, while a plain number, as every sum and
 * product is, goes anywhere. The file and the report have mm and degrees, the engine m and rad: what turns one into the
 * other stands here, once; designs and reports cross in `report/convert.ts`.
 */
type In<Unit extends string> = number & { readonly unit?: Unit };

export type Millimetres = In<'mm'>;
export type Degrees = In<'degrees'>;
export type Metres = In<'m'>;
export type Radians = In<'rad'>;

/** m */
export const MICROMETRE: Metres = 1e-6;

export const metres = (mm: Millimetres): Metres => mm / 1000;
export const millimetres = (m: Metres): Millimetres => m * 1000;
export const radians = (degrees: Degrees): Radians => (degrees * Math.PI) / 180;
export const degrees = (radians: Radians): Degrees => (radians * 180) / Math.PI;

/** In whole thousandths of a micrometre, as a slider tells it. */
export const micrometres = (mm: Millimetres) => Math.round(mm * 1e6) / 1e3;
/** Up to the next whole micrometre. */
export const upToMicrometre = (m: Metres): Millimetres => Math.ceil(m * 1e6) / 1e3;
/** N/m to N/mm, and whatever else is by the millimetre. */
export const perMillimetre = (perMetre: number) => perMetre * 1e-3;
export const squareMetres = (mm2: number) => mm2 * 1e-6;
export const cubicMillimetres = (m3: number) => m3 * 1e9;
export const pascals = (mpa: number) => mpa * 1e6;
export const megapascals = (pa: number) => pa * 1e-6;
/** Pa·s to mPa·s */
export const millipascalSeconds = (pas: number) => pas * 1000;
/** g/cm³ to kg/m³ */
export const kilogramsPerCubicMetre = (density: number) => density * 1000;
/** mm³/(N·m) to m²/N: wear */
export const wearInMetres = (wear: number) => wear * 1e-9;
export const radPerSecond = (revPerMinute: number) => (revPerMinute * Math.PI) / 30;
export const revPerMinute = (radPerSecond: number) => (radPerSecond * 30) / Math.PI;
/** ms to s */
export const seconds = (ms: number) => ms / 1000;
/** s to ms */
export const milliseconds = (s: number) => s * 1000;
/** mm²/s (cSt) to m²/s */
export const squareMetresPerSecond = (cst: number) => cst * 1e-6;
