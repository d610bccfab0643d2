/**
 * Points that fill the unit cube more evenly than chance does: Sobol' sequence, each coordinate scrambled at random.
 *
 *   x_d(n) = ⊕ over the bits k of gray(n) that are set, of v_{d,k}        v_{d,k} = m_{d,k}/2^k
 *   m_k = 2c_1·m_{k-1} ⊕ 2²c_2·m_{k-2} ⊕ … ⊕ 2^s·m_{k-s} ⊕ m_{k-s}      c_i coefficients of a primitive polynomial
 *   u_d(n) = (scrambled x_d(n) + ½)/2³²
 *
 * Any 2^m points from a multiple of 2^m on are a (t, m, s)-net in base 2: each box of volume 2^{t-m} with sides that
 * are powers of ½ holds 2^t of them. Scrambling after Owen keeps that: each binary digit is turned or not, by chance
 * that depends on the digits before it, here by a hash of them. A point is then uniform in the cube by itself, means
 * have no bias, and the error of the mean of a smooth function falls nearly as n^-1.5. A point is known from its number
 * alone, so that any worker makes any block.
 *
 * Dimensions beyond the table go through it again: with other scrambling, and points in another order (the bits of n
 * scrambled the same way, blocks of 2^m kept together). Each coordinate alone is then as even as before (a Latin
 * hypercube for every 2^m points); between one group of dimensions and another the evenness is that of chance.
 * @source Sobol1967; JoeKuo2008 (direction numbers); AntonovSaleev1979 (the order by Gray's code); Owen1997
 * (scrambling, rate); LaineKarras2011 (scrambling by a hash); Vegdahl2021 (the hash); Burley2020 (dimensions beyond the
 * table)
 */
import { DIRECTION_NUMBERS } from './directionNumbers.ts';

export const TABLED = DIRECTION_NUMBERS.length + 1;
const BITS = 32;

/** Coordinates of points `from`, `from` + 1, … of one dimension, into `out`. */
type FillDimension = (dimension: number, from: number, out: Float64Array) => void;

/** Points of one seed; null: not scrambled, for which only the dimensions of the table are given. */
export function sobolPoints(seed: number | null): FillDimension {
  return (dimension, from, out) => {
    if (!Number.isInteger(from) || from < 0 || from + out.length > 2 ** BITS)
      throw new RangeError(`points ${from} to ${from + out.length - 1}: allowed are 0 to ${2 ** BITS - 1}`);
    if (!Number.isInteger(dimension) || dimension < 0 || (seed === null && dimension >= TABLED))
      throw new RangeError(
        `dimension ${dimension}: allowed are whole numbers from 0${seed === null ? ` to ${TABLED - 1}` : ''}`,
      );
    const v = directions(dimension % TABLED);
    if (seed === null) return plain(v, from, out);
    const scramble = mixed(mixed(seed) ^ dimension);
    const group = Math.floor(dimension / TABLED);
    if (group === 0) return inTurn(v, from, scramble, out);
    const order = mixed(mixed(~seed) ^ group);
    for (let k = 0; k < out.length; k++)
      out[k] = unitOf(owen(pointAt(v, turned(owen(turned(from + k), order)) >>> 0), scramble));
  };
}

/** Each point from the one before it by one direction number: that of the lowest bit set in its number. */
function inTurn(v: Int32Array, from: number, scramble: number, out: Float64Array): void {
  if (out.length === 0) return;
  let x = pointAt(v, from);
  out[0] = unitOf(owen(x, scramble));
  for (let k = 1; k < out.length; k++) {
    const n = (from + k) | 0;
    x ^= v[31 - Math.clz32(n & -n)]!;
    out[k] = unitOf(owen(x, scramble));
  }
}

function plain(v: Int32Array, from: number, out: Float64Array): void {
  for (let k = 0; k < out.length; k++) out[k] = (turned(pointAt(v, from + k)) >>> 0) / 2 ** BITS;
}

/** Point n, its digits turned round: the first binary place is the lowest bit. */
function pointAt(v: Int32Array, n: number): number {
  let gray = (n ^ (n >>> 1)) >>> 0;
  let x = 0;
  for (let k = 0; gray !== 0; k++, gray >>>= 1) if (gray & 1) x ^= v[k]!;
  return x;
}

/** From the digits turned round, ½ of the last place added: never 0, never 1. */
const unitOf = (x: number) => ((turned(x) >>> 0) + 0.5) / 2 ** BITS;

/** A permutation in which each bit depends on those below it alone: of digits turned round, on the digits before. */
function owen(bits: number, seed: number): number {
  let x = bits;
  x ^= Math.imul(x, 0x3d20adea);
  x = (x + seed) | 0;
  x = Math.imul(x, (seed >>> 16) | 1);
  x ^= Math.imul(x, 0x05526c56);
  x ^= Math.imul(x, 0x53a22864);
  return x;
}

/** The bits in the other order. */
function turned(bits: number): number {
  let x = bits;
  x = ((x >>> 1) & 0x55555555) | ((x & 0x55555555) << 1);
  x = ((x >>> 2) & 0x33333333) | ((x & 0x33333333) << 2);
  x = ((x >>> 4) & 0x0f0f0f0f) | ((x & 0x0f0f0f0f) << 4);
  x = ((x >>> 8) & 0x00ff00ff) | ((x & 0x00ff00ff) << 8);
  return (x >>> 16) | (x << 16);
}

/** A whole number mixed well, so that seeds beside each other have nothing to do with each other. */
export function mixed(seed: number): number {
  let x = (seed + 0x9e3779b9) | 0;
  x = Math.imul(x ^ (x >>> 16), 0x21f0aaad);
  x = Math.imul(x ^ (x >>> 15), 0x735a2d97);
  return x ^ (x >>> 15);
}

const made = new Map<number, Int32Array>();

/** Direction numbers of a dimension of the table, their digits turned round. */
function directions(dimension: number): Int32Array {
  const known = made.get(dimension);
  if (known) return known;
  const v = new Int32Array(BITS);
  const [polynomial = 1, ...m] = dimension === 0 ? [] : DIRECTION_NUMBERS[dimension - 1]!.split(' ').map(Number);
  const degree = m.length;
  for (let k = 0; k < BITS; k++) {
    // v_k as a whole number of 2^-32: m_k·2^(31 - k), the degree's bit of the polynomial left out.
    let x = degree === 0 ? 1 << (31 - k) : k < degree ? m[k]! << (31 - k) : 0;
    if (degree > 0 && k >= degree) {
      x = v[k - degree]! ^ (v[k - degree]! >>> degree);
      for (let i = 1; i < degree; i++) if ((polynomial >>> (degree - i)) & 1) x ^= v[k - i]!;
    }
    v[k] = x;
  }
  for (let k = 0; k < BITS; k++) v[k] = turned(v[k]!);
  made.set(dimension, v);
  return v;
}
