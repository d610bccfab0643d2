/**
 * Whirl: whether a rigid rotor on its films, nudged, comes back.
 *
 *   M q̈ + (B + G) q̇ + K q = 0,   q = x, y, z, tiltX, tiltY        stable while every root s of det(M s² + (B + G) s +
 *   K) has Re s < 0
 *
 * K, B stiffness and damping of the oil (stiffness.ts) · M rigid rotor: mass m (kg) at a station (m), transverse
 * inertia I and polar inertia Iₚ (kg·m²) about its centre · G gyroscopic: Iₚ ω between the tilts. Rigid shaft, rigid
 * housing, small motions, broken film staying where it is. Whirl sets in near half the speed of turning.
 * @source Lund1987
 */
import { EigenvalueDecomposition, Matrix } from 'ml-matrix';
import { inverseTimes } from '../algebra/elimination.ts';
import type { Coefficients } from './stiffness.ts';

export interface Rotor {
  /** kg */
  mass: number;
  /** m, station of its centre */
  centre: number;
  /** kg·m², about the centre: across, and about the axis */
  transverse: number;
  polar: number;
}

/**
 * A plain cylinder of this mass from `from` to `to` (m) with radius r (m): what is assumed of a spindle nothing more is
 * known of.
 */
export function cylinderRotor(mass: number, from: number, to: number, r: number): Rotor {
  return {
    mass,
    centre: (from + to) / 2,
    transverse: (mass * (3 * r * r + (to - from) ** 2)) / 12,
    polar: (mass * r * r) / 2,
  };
}

export interface Whirl {
  stable: boolean;
  /** rad/s, of the root that dies away least */
  frequency: number;
  /** 1/s, how fast it dies away; below 0 it grows */
  decay: number;
}

/** M and G of a rotor in the five coordinates; ω in rad/s. */
export function rotorMatrices(
  { mass: m, centre: c, transverse, polar }: Rotor,
  omega: number,
): { mass: number[][]; gyro: number[][] } {
  const tilt = transverse + m * c * c;
  const mass = [
    [m, 0, 0, 0, m * c],
    [0, m, 0, -m * c, 0],
    [0, 0, m, 0, 0],
    [0, -m * c, 0, tilt, 0],
    [m * c, 0, 0, 0, tilt],
  ];
  const gyro = Array.from({ length: 5 }, () => [0, 0, 0, 0, 0]);
  gyro[3]![4] = polar * omega;
  gyro[4]![3] = -polar * omega;
  return { mass, gyro };
}

/** Beyond this (of motions scaled to one) numbers are lost, and the search for eigenvalues need not end. */
const LOST = 1e100;

/**
 * The least damped motion; null where masses and films are so far apart that it has no number. Any number of
 * coordinates; `free` picks some of them.
 */
export function whirl(
  mass: readonly (readonly number[])[],
  damping: readonly (readonly number[])[],
  stiffness: readonly (readonly number[])[],
  free = mass.map((_, i) => i),
): Whirl | null {
  const n = free.length;
  const pick = (a: readonly (readonly number[])[]) => free.map((i) => free.map((j) => a[i]![j]!));
  const [M, B, K] = [pick(mass), pick(damping), pick(stiffness)];
  // Coordinates scaled so that every mass is one, time so that the stiffness is of order one: the eigenvalues keep
  // their digits.
  const unit = M.map((row, i) => 1 / Math.sqrt(row[i]!));
  const scaled = (a: number[][]) => a.map((row, i) => row.map((value, j) => value * unit[i]! * unit[j]!));
  const k = scaled(K);
  const rate = Math.sqrt(Math.max(...k.flat().map(Math.abs), 1e-300));
  const m = scaled(M);
  const solve = (a: number[][], by: number) => inverseTimes(m, a, by);
  const minusK = solve(k, -1 / (rate * rate));
  const minusB = solve(scaled(B), -1 / rate);
  const companion = Matrix.zeros(2 * n, 2 * n);
  for (let i = 0; i < n; i++) {
    companion.set(i, n + i, 1);
    for (let j = 0; j < n; j++) {
      companion.set(n + i, j, minusK[i]![j]!);
      companion.set(n + i, n + j, minusB[i]![j]!);
    }
  }
  if (!companion.to1DArray().every((value) => Math.abs(value) < LOST)) return null;
  const { realEigenvalues, imaginaryEigenvalues } = new EigenvalueDecomposition(companion, { assumeSymmetric: false });
  let least = 0;
  for (let i = 1; i < realEigenvalues.length; i++) if (realEigenvalues[i]! > realEigenvalues[least]!) least = i;
  return {
    stable: realEigenvalues[least]! < 0,
    frequency: Math.abs(imaginaryEigenvalues[least]!) * rate,
    decay: -realEigenvalues[least]! * rate,
  };
}

/**
 * The least damped motion of a rotor on its films; `held`: something keeps it from moving along the axis. Where
 * straight seats leave it free to drift along the axis, that is no whirl.
 */
export function rotorWhirl(
  rotor: Rotor,
  omega: number,
  { stiffness, damping }: Coefficients,
  held: boolean,
): Whirl | null {
  const { mass, gyro } = rotorMatrices(rotor, omega);
  const turning = damping.map((row, i) => row.map((value, j) => value + gyro[i]![j]!));
  const drifts = stiffness[2][2] === 0 && damping[2][2] === 0;
  return whirl(mass, turning, stiffness, held || drifts ? [0, 1, 3, 4] : [0, 1, 2, 3, 4]);
}

/**
 * Speed (rad/s) at which whirl sets in, between low and high: the least at which `at` finds the rotor unstable; null
 * when stable all the way, or not to be found. `at` solves the equilibrium at a speed (null: none there).
 */
export function whirlThreshold(low: number, high: number, at: (omega: number) => Whirl | null): number | null {
  const STEPS = 10;
  let stable = low;
  let unstable: number | null = null;
  for (let i = 0; i <= STEPS && unstable === null; i++) {
    const omega = low * (high / low) ** (i / STEPS);
    const found = at(omega);
    if (found === null) continue;
    if (found.stable) stable = omega;
    else unstable = omega;
  }
  if (unstable === null) return null;
  if (unstable === low) return low;
  for (let i = 0; i < 9; i++) {
    const middle = Math.sqrt(stable * unstable);
    const found = at(middle);
    if (found?.stable !== false) stable = middle;
    else unstable = middle;
  }
  return unstable;
}
