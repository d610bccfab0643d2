/** mm: a difference of film along a seat that no one would remark on. */
export const UNEVEN = 1e-4;
