/** Small pieces that the grammar is made of. */
import fc from 'fast-check';

export const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
/** Evenly by the logarithm, so that every size has its turn. */
export const sized = (min: number, max: number) => between(Math.log(min), Math.log(max)).map(Math.exp);
/** There or not. */
export const perhaps = <T>(of: fc.Arbitrary<T>, freq = 1) => fc.option(of, { nil: undefined, freq });
