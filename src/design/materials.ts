/**
 * Materials of journals and bushes: thermal expansion (1/K) and specific heat (J/(kg·K)) near room temperature.
 * @source Callister appendix B, tables B.6 and B.8
 */
export interface Material {
  name: string;
  expansion: number;
  specificHeat: number;
}

export const MATERIALS: readonly Material[] = [
  { name: 'plain carbon steel', expansion: 11.3e-6, specificHeat: 486 },
  { name: 'austenitic stainless steel', expansion: 17.2e-6, specificHeat: 500 },
  { name: 'grey cast iron', expansion: 11.4e-6, specificHeat: 544 },
  { name: 'bearing bronze', expansion: 18e-6, specificHeat: 376 },
  { name: 'brass', expansion: 19.9e-6, specificHeat: 375 },
  { name: 'aluminium alloy', expansion: 23.6e-6, specificHeat: 896 },
];

/** What is taken of a part whose design says nothing. */
export const USUAL = { journal: 'plain carbon steel', bush: 'bearing bronze' } as const;

export const usualMaterial = (part: keyof typeof USUAL): Material =>
  MATERIALS.find(({ name }) => name === USUAL[part])!;
