/** Stiffness, damping and whirl of journal bearings against published closed forms and tables. x along the load, y from there in the sense of turning. */
import { describe, expect, it } from 'vitest';
import { asPose } from '../../src/engine/film/pose.ts';
import { type FilmRun, newFilmSpace } from '../../src/engine/film/reynolds.ts';
import { coefficients, newAdjoints } from '../../src/engine/film/stiffness.ts';
import { cylinderRotor, rotorMatrices, whirl, whirlThreshold } from '../../src/engine/film/whirl.ts';
import { coneShape, RAD, solved, straight } from '../engine/film/bearings.ts';

const R = 0.01;
const C = 1e-5;
const MU = 0.02;
const OMEGA = 200;

/** Kxx, Kxy, Kyx, Kyy of K·C/W, and of B·C·ω/W; the journal at `attitude` from the load, which acts toward 0°. Grooves of `arc` at ±90°. */
function dynamic(ratio: number, e: number, attitude: number, rows: number, columns: number, arc = 0) {
  const L = 2 * R * ratio;
  const space = newFilmSpace(rows, columns);
  const grooves = arc === 0 ? [] : [90, -90].map((angle) => ({ angle: angle * RAD, from: -1, to: 1, width: arc * RAD * R, pressure: 0 }));
  const run: FilmRun = { viscosity: MU, omega: OMEGA, grooves, tolerance: 1e-10 };
  const angle = attitude * RAD;
  const { force } = solved(space, coneShape(straight(R, L, C)), asPose([e * C * Math.cos(angle), e * C * Math.sin(angle), 0, 0, 0]), run);
  const load = Math.hypot(force[0], force[1]);
  // the frame of the load as it came out
  const [cx, sx] = [-force[0] / load, -force[1] / load];
  const { stiffness, damping } = coefficients(space, run, newAdjoints(space), 1e-9);
  const turned = (m: readonly (readonly number[])[], scale: number) => {
    const axes = [
      [cx, sx],
      [-sx, cx],
    ];
    return axes.map((row) => axes.map((column) => scale * row.reduce((sum, a, i) => sum + column.reduce((part, b, j) => part + a * m[i]![j]! * b, 0), 0)));
  };
  return { load, lean: Math.atan2(sx, cx) / RAD, S: ((MU * (OMEGA / (2 * Math.PI)) * L * 2 * R) / load) * (R / C) ** 2, K: turned(stiffness, C / load), B: turned(damping, (C * OMEGA) / load) };
}

describe('short bearing with half a film', () => {
  // Closed forms of R. Holmes 1960; D. Childs, Turbomachinery Rotordynamics; E. Krämer, Dynamics of Rotors and Foundations (from memory; checked by differences of the integrated force). Threshold: ω√(M C/W) of a rigid rotor.
  const rows = [
    { e: 0.1, K: [1.3284, 10.381, -9.7577, 2.5308], B: [20.487, 2.5325, 2.5325, 19.79], ratio: 0.50294, threshold: 2.7413 },
    { e: 0.3, K: [1.7949, 4.4825, -2.6246, 2.4126], B: [8.153, 2.427, 2.427, 6.0612], ratio: 0.51942, threshold: 2.6058 },
    { e: 0.4, K: [2.2493, 4.0478, -1.5715, 2.3189], B: [7.0221, 2.343, 2.343, 4.2164], ratio: 0.52381, threshold: 2.5446 },
    { e: 0.6, K: [3.9512, 4.1377, -0.30707, 2.0917], B: [6.6507, 2.138, 2.138, 2.2389], ratio: 0.47396, threshold: 2.701 },
    { e: 0.75, K: [7.0168, 4.8603, 0.41349, 1.9084], B: [7.5285, 1.9708, 1.9708, 1.3651], ratio: 0.12668, threshold: 9.7441 },
    { e: 0.8, K: [9.0423, 5.3264, 0.67391, 1.8477], B: [8.1768, 1.9151, 1.9151, 1.1281], ratio: null, threshold: null },
  ];

  it.each(rows)('eccentricity $e: all eight coefficients of the solved film', ({ e, K, B }) => {
    const found = dynamic(1 / 64, e, 45, 24, 2048);
    const [sizeK, sizeB] = [Math.max(...K), Math.max(...B)];
    found.K.flat().forEach((value, i) => {
      expect(Math.abs(value - K[i]!)).toBeLessThan(0.01 * sizeK);
    });
    found.B.flat().forEach((value, i) => {
      expect(Math.abs(value - B[i]!)).toBeLessThan(0.01 * sizeB);
    });
  });

  // In units of W/C and 1/ω the mass at the threshold is (ω√(MC/W))².
  it.each(rows)('eccentricity $e: whirl sets in where it should', ({ K, B, ratio, threshold }) => {
    const square = ([a, b, c, d]: number[]) => [
      [a!, b!],
      [c!, d!],
    ];
    const at = (mass: number) =>
      whirl(
        [
          [mass, 0],
          [0, mass],
        ],
        square(B),
        square(K),
      );
    if (threshold === null) {
      for (const mass of [1, 10, 100, 1000]) expect(at(mass).stable).toBe(true);
      return;
    }
    // the printed coefficients carry five digits; near the limit of stability that is worth less
    const slack = threshold > 5 ? 0.01 : 2e-4;
    expect(at(threshold ** 2 * (1 - slack)).stable).toBe(true);
    expect(at(threshold ** 2 * (1 + slack)).stable).toBe(false);
    expect(Math.abs(at(threshold ** 2).frequency / ratio! - 1)).toBeLessThan(threshold > 5 ? 0.02 : 5e-4);
  });

  it('the search for the speed of onset finds it: W, C and the coefficients held, 2.5446 at eccentricity 0.4', () => {
    const { K, B } = rows[2]!;
    // Coefficients in units of W/C and W/(C ω): at speed ω the damping is B/ω.
    const at = (omega: number) =>
      whirl(
        [
          [1, 0],
          [0, 1],
        ],
        [
          [B[0]! / omega, B[1]! / omega],
          [B[2]! / omega, B[3]! / omega],
        ],
        [
          [K[0]!, K[1]!],
          [K[2]!, K[3]!],
        ],
      );
    expect(whirlThreshold(0.1, 20, at)).toBeCloseTo(2.5446, 2);
    expect(whirlThreshold(0.1, 2, at)).toBeNull();
    expect(whirlThreshold(5, 20, at)).toBe(5);
  });
});

describe('two axial grooves, L/D 1/2', () => {
  // T. Someya, Journal-Bearing Databook (1989) p. 14, as transcribed in a public coursework file. Grooves at ±90° from the load; their arc, not in the transcription, is 10°
  // (S and attitude then agree to a fifth of a percent and a degree). Of the stiffness only Kxy is demanded: the second row of the table does not agree with the
  // table's own S and attitude, along which the sideways force stays nothing (at 0.2: -4.41·0.1144 + 2.56·0.1713 = -0.066, where both terms are near a half),
  // nor is it said how the edge of the broken film was taken when the journal was moved. Ours does agree; see below.
  const rows = [
    { e: 0.2, S: 2.07, attitude: 71.6, Kxy: 5.63, B: [11.2, 2.22, 2.22, 6.43] },
    { e: 0.3, S: 1.24, attitude: 64.1, Kxy: 4.27, B: [8.5, 2.32, 2.32, 4.73] },
    { e: 0.4, S: 0.798, attitude: 57.5, Kxy: 3.75, B: [7.32, 2.24, 2.24, 3.5] },
    { e: 0.8, S: 0.0926, attitude: 31.2, Kxy: 4.46, B: [8.17, 2.05, 2.05, 1.24] },
  ];
  const ARC = 10;

  /** The bearing at the attitude at which the force points along the load. */
  function standing(e: number) {
    let low = 10;
    let high = 89;
    for (let i = 0; i < 22; i++) {
      const middle = (low + high) / 2;
      if (dynamic(0.5, e, middle, 16, 288, ARC).lean > 0) high = middle;
      else low = middle;
    }
    return { attitude: low, ...dynamic(0.5, e, low, 16, 288, ARC) };
  }

  it.each(rows)('eccentricity $e', ({ e, S, attitude, Kxy, B }) => {
    const found = standing(e);
    expect(Math.abs(found.S / S - 1)).toBeLessThan(0.01);
    expect(Math.abs(found.attitude - attitude)).toBeLessThan(1);
    expect(Math.abs(found.K[0]![1]! - Kxy)).toBeLessThan(0.05 * Kxy);
    found.B.flat().forEach((value, i) => {
      expect(Math.abs(value - B[i]!)).toBeLessThan(0.05 * Math.max(...B));
    });
  });

  it.each([0.2, 0.4])('eccentricity %d: along the line of poses for a growing load the stiffness gives the load, and nothing sideways', (e) => {
    const [before, here, after] = [standing(e - 0.02), standing(e), standing(e + 0.02)];
    const place = (eccentricity: number, { attitude }: { attitude: number }) => [eccentricity * Math.cos(attitude * RAD), eccentricity * Math.sin(attitude * RAD)];
    const [from, to] = [place(e - 0.02, before), place(e + 0.02, after)];
    const [dx, dy] = [to[0]! - from[0]!, to[1]! - from[1]!];
    const gained = (after.load - before.load) / here.load;
    expect(Math.abs((here.K[0]![0]! * dx + here.K[0]![1]! * dy) / gained - 1)).toBeLessThan(0.01);
    expect(Math.abs((here.K[1]![0]! * dx + here.K[1]![1]! * dy) / gained)).toBeLessThan(0.01);
  });
});

describe('a rotor', () => {
  it('of a plain cylinder: mass and inertia', () => {
    const rotor = cylinderRotor(2, -0.1, 0.2, 0.01);
    expect(rotor.centre).toBeCloseTo(0.05, 15);
    expect(rotor.transverse).toBeCloseTo((2 * (3 * 1e-4 + 0.09)) / 12, 15);
    const { mass, gyro } = rotorMatrices(rotor, 100);
    // kinetic energy of a pure tilt rate about x about the datum
    expect(mass[3]![3]).toBeCloseTo(rotor.transverse + 2 * 0.05 ** 2, 15);
    expect(mass[1]![3]).toBeCloseTo(-0.1, 15);
    expect(gyro[3]![4]).toBeCloseTo(-gyro[4]![3]!, 15);
  });
});
