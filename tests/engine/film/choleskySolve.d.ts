declare module 'cholesky-solve' {
  /** Factors a sparse symmetric matrix given by its entries on and above the diagonal. */
  export function prepare(
    entries: readonly (readonly [number, number, number])[],
    n: number,
    order?: readonly number[],
  ): (b: readonly number[]) => number[];
}
