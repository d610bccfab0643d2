/** Small pieces that the grammar is made of. */
import fc from 'fast-check';

export const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
/** Evenly by the logarithm, so that every size has its turn. */
export const sized = (min: number, max: number) => between(Math.log(min), Math.log(max)).map(Math.exp);
/** There or not: `often` times for each time it is not. */
export const perhaps = <T>(of: fc.Arbitrary<T>, often = 1) => fc.option(of, { nil: undefined, freq: often + 1 });
