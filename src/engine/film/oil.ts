/**
 * Viscosity of an oil against temperature.
 *
 *   log₁₀ log₁₀ Z = A - B·log₁₀ T        Z = ν + 0.7 + exp(-1.47 - 1.84 ν - 0.51 ν²)
 *
 * ν kinematic viscosity (mm²/s) · T temperature (K) · A, B of the oil, from two points. ASTM D341; the exponential
 * matters below 2 mm²/s only. Holds from 0.21 to 2·10⁷ mm²/s, between the cloud point and the start of boiling; read
 * far beyond the two points it is a guess, and beyond that range the end of the range is taken.
 *
 * A grade gives ν at 40 °C; with the viscosity index the other point, ν at 100 °C = Y, follows from ASTM D2270 turned
 * round:
 *
 *   VI = 100·(L - ν₄₀)/(L - H) up to 100        VI = 100 + (10^N - 1)/0.00715,  N = (log H - log ν₄₀)/log Y  above
 *
 * L, H (mm²/s) the two reference oils, quadratic in Y by pieces.
 * @source ASTM-D341; ASTM-D2270; ASTM-D2270-examples (held in tests/published/oil.test.ts)
 */
import { kilogramsPerCubicMetre, squareMetresPerSecond } from '../../design/dimension.ts';
import { USUAL_DENSITY, USUAL_INDEX } from '../../design/usualOil.ts';

export interface Oil {
  /** Pa·s at a temperature (°C) */
  viscosity(celsius: number): number;
  /** kg/m³ at a temperature (°C) */
  density(celsius: number): number;
  /** mm²/s at 40 and at 100 °C; null where the viscosity is constant */
  kinematic: [number, number] | null;
}

/** ISO 3448: what a grade stands for at 40 °C where it is not its own number (mm²/s). @source ISO3448 */
const MIDPOINTS: Readonly<Record<number, number>> = { 2: 2.2, 3: 3.2, 5: 4.6, 7: 6.8 };
/** The grades of ISO 3448. */
export const ISO_GRADES = [
  2, 3, 5, 7, 10, 15, 22, 32, 46, 68, 100, 150, 220, 320, 460, 680, 1000, 1500, 2200, 3200,
] as const;
/** mm²/s at 40 °C; limits are a tenth to each side. */
export const gradeMidpoint = (grade: number) => MIDPOINTS[grade] ?? grade;

const KELVIN = 273.15;
/** kg/m³ */
const DENSITY = kilogramsPerCubicMetre(USUAL_DENSITY);

/** Z of a viscosity (mm²/s). */
const zOf = (v: number) => v + 0.7 + Math.exp(-1.47 - 1.84 * v - 0.51 * v * v);

/** The viscosity of a Z. @source ASTM-D341 (its inverse) */
function viscosityOfZ(z: number): number {
  const d = z - 0.7;
  return d - Math.exp(-0.7487 - 3.295 * d + 0.6119 * d * d - 0.3193 * d * d * d);
}

/** A and B of an oil known at two temperatures: [°C, mm²/s]. */
export function d341(first: readonly [number, number], second: readonly [number, number]): { A: number; B: number } {
  const y = ([, v]: readonly [number, number]) => Math.log10(Math.log10(zOf(v)));
  const x = ([t]: readonly [number, number]) => Math.log10(t + KELVIN);
  const B = (y(first) - y(second)) / (x(second) - x(first));
  return { A: y(first) + B * x(first), B };
}

/** °C: colder it is wax, hotter it burns; what a search passes through on its way is taken from these ends. */
const COLDEST = -100;
const HOTTEST = 400;
/** mm²/s, the range of ASTM D341. */
const THINNEST = 0.21;
const THICKEST = 2e7;

/** mm²/s at a temperature (°C). */
export function kinematicAt({ A, B }: { A: number; B: number }, celsius: number): number {
  const z = 10 ** (10 ** (A - B * Math.log10(celsius + KELVIN)));
  return z < THICKEST ? Math.max(THINNEST, viscosityOfZ(z)) : THICKEST;
}

/**
 * From Y up to the next: L = aY² + bY + c, H = dY² + eY + f. The last row is its equations for 70 mm²/s and more.
 * @source ASTM-D2270 appendix
 */
const REFERENCE: readonly (readonly [number, number, number, number, number, number, number])[] = [
  [2, 1.14673, 1.7576, -0.109, 0.84155, 1.5521, -0.077],
  [3.8, 3.38095, -15.4952, 33.196, 0.78571, 1.7929, -0.183],
  [4.4, 2.5, -7.2143, 13.812, 0.82143, 1.5679, 0.119],
  [5, 0.101, 16.635, -45.469, 0.04985, 9.1613, -18.557],
  [6.4, 3.35714, -23.5643, 78.466, 0.22619, 7.7369, -16.656],
  [7, 0.01191, 21.475, -72.87, 0.79762, -0.7321, 14.61],
  [7.7, 0.41858, 16.1558, -56.04, 0.05794, 10.5156, -28.24],
  [9, 0.88779, 7.5527, -16.6, 0.26665, 6.7015, -10.81],
  [12, 0.7672, 10.7972, -38.18, 0.20073, 8.4658, -22.49],
  [15, 0.97305, 5.3135, -2.2, 0.28889, 5.9741, -4.93],
  [18, 0.97256, 5.25, -0.98, 0.24504, 7.416, -16.73],
  [22, 0.91413, 7.4759, -21.82, 0.20323, 9.1267, -34.23],
  [28, 0.87031, 9.7157, -50.77, 0.18411, 10.1015, -46.75],
  [40, 0.84703, 12.6752, -133.31, 0.17029, 11.4866, -80.62],
  [55, 0.85921, 11.1009, -83.19, 0.1713, 11.368, -76.94],
  [70, 0.8353, 14.67, -216, 0.1684, 11.85, -97],
];

/**
 * L and H (mm²/s) of the viscosity at 100 °C (mm²/s). Below 2, where the standard ends, its first piece is carried on.
 */
export function referenceOils(y: number): { L: number; H: number } {
  const [, a, b, c, d, e, f] = REFERENCE.findLast(([from]) => y >= from) ?? REFERENCE[0]!;
  return { L: a * y * y + b * y + c, H: d * y * y + e * y + f };
}

/** Viscosity index of an oil with these viscosities (mm²/s) at 40 and 100 °C. */
export function viscosityIndex(v40: number, v100: number): number {
  const { L, H } = referenceOils(v100);
  if (v40 >= H) return (100 * (L - v40)) / (L - H);
  return 100 + (10 ** ((Math.log10(H) - Math.log10(v40)) / Math.log10(v100)) - 1) / 0.00715;
}

/** Viscosity at 100 °C (mm²/s) of an oil of this viscosity at 40 °C (mm²/s) and index. */
export function viscosityAt100(v40: number, index: number): number {
  // More at 100 °C is a higher index. Near and below 1 mm²/s the index says nothing: log Y → 0.
  let low = Math.min(1.02, v40 * 0.2);
  let high = v40;
  for (let i = 0; i < 100; i++) {
    const middle = (low + high) / 2;
    if (viscosityIndex(v40, middle) < index) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/**
 * kg/m³ at a temperature (°C) of a mineral oil of density ρ₁₅ (kg/m³):  ρ = ρ₁₅·exp(-α·t·(1 + 0.8·α·t)), α =
 * 0.6278/ρ₁₅, t = T - 15
 * @source API-MPMS11.1 table 54D (lubricating oils)
 */
export function densityAt(density15: number, celsius: number): number {
  const expansion = 0.6278 / density15;
  const t = celsius - 15;
  return density15 * Math.exp(-expansion * t * (1 + 0.8 * expansion * t));
}

/** An oil known at two temperatures: [°C, mm²/s] each; density at 15 °C (kg/m³). */
export function oilFromPoints(
  first: readonly [number, number],
  second: readonly [number, number],
  density = DENSITY,
): Oil {
  const law = d341(first, second);
  const within = (celsius: number) => Math.min(HOTTEST, Math.max(COLDEST, celsius));
  return {
    viscosity: (celsius) =>
      squareMetresPerSecond(kinematicAt(law, within(celsius))) * densityAt(density, within(celsius)),
    density: (celsius) => densityAt(density, within(celsius)),
    kinematic: [kinematicAt(law, 40), kinematicAt(law, 100)],
  };
}

/** An oil of an ISO grade. */
export function oilOfGrade(grade: number, index = USUAL_INDEX, density = DENSITY): Oil {
  const v40 = gradeMidpoint(grade);
  return oilFromPoints([40, v40], [100, viscosityAt100(v40, index)], density);
}

/** An oil whose viscosity (Pa·s) does not change. */
export function constantOil(viscosity: number, density = DENSITY): Oil {
  return { viscosity: () => viscosity, density: () => density, kinematic: null };
}
