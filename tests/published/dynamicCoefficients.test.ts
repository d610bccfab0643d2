/**
 * Stiffness, damping and whirl of journal bearings against published closed forms and tables. x along the load, y from
 * there in the sense of turning.
 */
import { describe, expect, it } from 'vitest';
import { type FilmRun, newFilmSpace } from '../../src/engine/film/reynolds.ts';
import { coefficients, newAdjoints } from '../../src/engine/film/stiffness.ts';
import { cylinderRotor, rotorMatrices, whirl, whirlThreshold } from '../../src/engine/film/whirl.ts';
import { asPose } from '../../src/engine/spindle/pose.ts';
import { coneShape, RAD, solved, straight } from '../engine/film/bearings.ts';

const R = 0.01;
const C = 1e-5;
const MU = 0.02;
const OMEGA = 200;

/**
 * The film with the journal at `attitude` from the load, which acts toward 0°, and grooves of `arc` at ±90° and `shift`
 * (all °); and the force (N).
 */
function filmAt(ratio: number, e: number, attitude: number, rows: number, columns: number, arc = 0, shift = 0) {
  const space = newFilmSpace(rows, columns);
  const grooves =
    arc === 0
      ? []
      : [90, -90].map((angle) => ({
          angle: (angle + shift) * RAD,
          from: -1,
          to: 1,
          width: arc * RAD * R,
          pressure: 0,
        }));
  const run: FilmRun = { viscosity: MU, omega: OMEGA, grooves, tolerance: 1e-10 };
  const angle = attitude * RAD;
  const { force } = solved(
    space,
    coneShape(straight(R, 2 * R * ratio, C)),
    asPose([e * C * Math.cos(angle), e * C * Math.sin(angle), 0, 0, 0]),
    run,
  );
  return { space, run, force: [force[0], force[1]] as [number, number] };
}

/** Kxx, Kxy, Kyx, Kyy of K·C/W, and of B·C·ω/W, in the frame of the load as it comes out: `lean` ° on from 0°. */
function dynamic(ratio: number, e: number, attitude: number, rows: number, columns: number, arc = 0) {
  const { space, run, force } = filmAt(ratio, e, attitude, rows, columns, arc);
  const load = Math.hypot(...force);
  const [cx, sx] = [-force[0] / load, -force[1] / load];
  const { stiffness, damping } = coefficients(space, run, newAdjoints(space), 1e-9);
  const turned = (m: readonly (readonly number[])[], scale: number) => {
    const axes = [
      [cx, sx],
      [-sx, cx],
    ];
    return axes.map((row) =>
      axes.map(
        (column) =>
          scale * row.reduce((sum, a, i) => sum + column.reduce((part, b, j) => part + a * m[i]![j]! * b, 0), 0),
      ),
    );
  };
  return {
    load,
    lean: Math.atan2(sx, cx) / RAD,
    S: ((MU * (OMEGA / (2 * Math.PI)) * 2 * R * ratio * 2 * R) / load) * (R / C) ** 2,
    K: turned(stiffness, C / load),
    B: turned(damping, (C * OMEGA) / load),
  };
}

describe('short bearing with half a film', () => {
  // Closed forms, checked by differences of the integrated force. Threshold: ω√(M C/W) of a rigid rotor.
  // @source Holmes1960; Childs; Kraemer
  const rows = [
    {
      e: 0.1,
      K: [1.3284, 10.381, -9.7577, 2.5308],
      B: [20.487, 2.5325, 2.5325, 19.79],
      ratio: 0.50294,
      threshold: 2.7413,
    },
    {
      e: 0.3,
      K: [1.7949, 4.4825, -2.6246, 2.4126],
      B: [8.153, 2.427, 2.427, 6.0612],
      ratio: 0.51942,
      threshold: 2.6058,
    },
    {
      e: 0.4,
      K: [2.2493, 4.0478, -1.5715, 2.3189],
      B: [7.0221, 2.343, 2.343, 4.2164],
      ratio: 0.52381,
      threshold: 2.5446,
    },
    {
      e: 0.6,
      K: [3.9512, 4.1377, -0.30707, 2.0917],
      B: [6.6507, 2.138, 2.138, 2.2389],
      ratio: 0.47396,
      threshold: 2.701,
    },
    {
      e: 0.75,
      K: [7.0168, 4.8603, 0.41349, 1.9084],
      B: [7.5285, 1.9708, 1.9708, 1.3651],
      ratio: 0.12668,
      threshold: 9.7441,
    },
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
    const at = (mass: number) =>
      whirl(
        [
          [mass, 0],
          [0, mass],
        ],
        square(B),
        square(K),
      )!;
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

type Pair = [number, number];
type Row = readonly number[];
const square = ([a, b, c, d]: Row) => [
  [a!, b!],
  [c!, d!],
];
const dot = (a: Row, b: Row) => a[0]! * b[0]! + a[1]! * b[1]!;
/** Along the line of centres, and across it in the sense of turning; in the frame of the load. */
const lines = (attitude: number): [Pair, Pair] => [
  [Math.cos(attitude * RAD), Math.sin(attitude * RAD)],
  [-Math.sin(attitude * RAD), Math.cos(attitude * RAD)],
];
/** What a journal moved along and across the line of centres meets, along and across it: rr, rt, tr, tt. */
const onLines = (m: readonly Row[], [r, t]: [Pair, Pair]) =>
  [r, t].flatMap((to) => [r, t].map((way) => to[0] * dot(m[0]!, way) + to[1] * dot(m[1]!, way)));
/** The greatest difference between two sets of four, as a part of the largest of the second. */
const apart = (found: Row, told: Row) =>
  Math.max(...found.map((value, i) => Math.abs(value - told[i]!))) / Math.max(...told.map(Math.abs));

const COLUMNS = 288;
const grooved = (ratio: number, arc: number, e: number, attitude: number) =>
  dynamic(ratio, e, attitude, 32, COLUMNS, arc);

/** The attitude at which the force points along the load, by secants from `near`. */
function standing(ratio: number, arc: number, e: number, near: number) {
  const side = (attitude: number) => {
    const { force } = filmAt(ratio, e, attitude, 16, COLUMNS, arc);
    return force[1] / Math.hypot(...force);
  };
  let [before, here] = [near - 0.5, near];
  let [sideBefore, sideHere] = [side(before), side(here)];
  for (let i = 0; i < 8 && Math.abs(sideHere) > 1e-6; i++) {
    const next = here - (sideHere * (here - before)) / (sideHere - sideBefore);
    [before, sideBefore, here, sideHere] = [here, sideHere, next, side(next)];
  }
  expect(Math.abs(sideHere)).toBeLessThan(1e-5);
  return here;
}

describe('two axial grooves that stay in the bush, L/D 1/2', () => {
  // e, S, attitude, K, B, of a file that names none it is taken from, the same in others; by its columns and rows Lund
  // and Thomsen's, grooves of 20° at ±90° from the load (16° and 24° come less near).
  // @source LundThomsenTable; LundThomsen1978 (whose table it is, and the arc)
  const ARC = 20;
  const rows = [
    [0.071, 6.43, 81.89, 1.55, 14.41, -6.6, 1.88, 28.75, 1.89, 1.89, 13.31],
    [0.165, 2.634, 72.36, 1.61, 6.74, -3.01, 1.91, 13.36, 2, 2, 6.28],
    [0.244, 1.656, 65.85, 1.69, 5.06, -2.2, 1.95, 9.93, 2.15, 2.15, 4.8],
    [0.372, 0.917, 57.45, 2.12, 4.01, -1.3, 1.85, 7.7, 2.06, 2.06, 3.23],
    [0.477, 0.58, 51.01, 2.67, 3.7, -0.78, 1.75, 6.96, 1.94, 1.94, 2.4],
    [0.57, 0.378, 45.43, 3.33, 3.64, -0.43, 1.68, 6.76, 1.87, 1.87, 1.89],
    [0.655, 0.244, 40.25, 4.21, 3.74, -0.13, 1.64, 6.87, 1.82, 1.82, 1.54],
    [0.734, 0.151, 35.2, 5.48, 3.98, 0.15, 1.61, 7.26, 1.79, 1.79, 1.27],
    [0.809, 0.086, 30.04, 7.51, 4.42, 0.47, 1.59, 8.03, 1.79, 1.79, 1.03],
    [0.879, 0.042, 24.41, 11.45, 5.23, 0.92, 1.6, 9.48, 1.8, 1.8, 0.82],
  ] as const;

  it.each(rows)('eccentricity %d: load, attitude and all eight coefficients', (e, S, attitude, ...told) => {
    const { S: found, K, B } = grooved(0.5, ARC, e, attitude);
    expect(Math.abs(found / S - 1)).toBeLessThan(0.007);
    expect(Math.abs(standing(0.5, ARC, e, attitude) - attitude)).toBeLessThan(0.1);
    expect(apart(K.flat(), told.slice(0, 4))).toBeLessThan(0.01);
    expect(apart(B.flat(), told.slice(4))).toBeLessThan(0.012);
    // half speed whirl, as below
    const [around, out] = square(told.slice(4)).map((row) => (e / 2) * dot(row, lines(attitude)[1]));
    expect(Math.abs(around! + 1)).toBeLessThan(0.003);
    expect(Math.abs(out!)).toBeLessThan(0.003);
  });

  it.each([
    [0.2, 69.5],
    [0.4, 55.9],
    [0.8, 30.7],
  ])(
    'eccentricity %d: along the line of poses for a growing load the stiffness gives the load, and nothing sideways',
    (e, near) => {
      const step = 0.02 * (1 - e);
      const at = (eccentricity: number) => {
        const attitude = standing(0.5, ARC, eccentricity, near);
        return {
          place: lines(attitude)[0].map((one) => eccentricity * one),
          ...dynamic(0.5, eccentricity, attitude, 16, COLUMNS, ARC),
        };
      };
      const [before, here, after] = [at(e - step), at(e), at(e + step)];
      const way = after.place.map((one, i) => one - before.place[i]!);
      const gained = (after.load - before.load) / here.load;
      expect(Math.abs(dot(here.K[0]!, way) / gained - 1)).toBeLessThan(0.01);
      expect(Math.abs(dot(here.K[1]!, way) / gained)).toBeLessThan(0.01);
    },
  );
});

/*
 * Grooves at ±90° from the load; their arc, not in the transcription, is 10° (S, attitude and damping then agree best).
 * x along the load, y from there in the sense of turning.
 *
 * Its stiffness is not that of grooves that stay. Let t be across the line of centres. The journal moved by δ along t,
 * and the whole bush turned by δ/e about its axis to follow, the film is the same film turned: the force turns and does
 * nothing else, K t e/C = (0, 1) W/C. Every row of the table says just that. It is true of a bush without grooves, and
 * so of formulas in eccentricity and attitude made for one. With the grooves in their place it is not: K t e/C = (0.02,
 * 0.57) W/C at 0.075, and Lund and Thomsen's table agrees with us. Kyx comes out up to 2.8 times what it is (L/D 1,
 * 0.05). Turning our grooves with the journal gives the table's four.
 *
 * What is left grows with eccentricity; we take it for the table's own, as Lund and Thomsen's has none of it. Its
 * damping should have B t eω/(2C) = (-1, 0) W/C, as a journal that whirls at half speed drags no oil into the
 * wedge: ours has, to 2e-5, Lund and Thomsen's to 2e-3; this table is 1 % short near 0.8 and 3 % at 0.975. Nor is its
 * stiffness near 0.8 the slope of its own load (last test).
 * @source Someya pages 14 and 17
 */
describe('two axial grooves that turn with the line of centres', () => {
  const ARC = 10;
  // L/D, e, S, attitude, K, B
  const rows = [
    [0.5, 0.075, 5.96, 82.6, 1.77, 13.6, -13.1, 2.72, 27.2, 2.06, 2.06, 14.9],
    [0.5, 0.1, 4.43, 80.4, 1.75, 10.3, -9.66, 2.7, 20.6, 2.08, 2.08, 11.4],
    [0.5, 0.2, 2.07, 71.6, 1.88, 5.63, -4.41, 2.56, 11.2, 2.22, 2.22, 6.43],
    [0.5, 0.3, 1.24, 64.1, 2.07, 4.27, -2.56, 2.34, 8.5, 2.32, 2.32, 4.73],
    [0.5, 0.4, 0.798, 57.5, 2.39, 3.75, -1.57, 2.17, 7.32, 2.24, 2.24, 3.5],
    [0.5, 0.5, 0.517, 51.1, 2.89, 3.57, -0.924, 2.03, 6.81, 2.1, 2.1, 2.6],
    [0.5, 0.6, 0.323, 44.7, 3.65, 3.62, -0.427, 1.92, 6.81, 2.08, 2.08, 2.06],
    [1, 0.05, 2.95, 83, 2.38, 20.1, -19.8, 2.9, 40.7, 1.65, 1.65, 14.5],
    [1, 0.075, 1.96, 80.8, 2.18, 13.5, -13, 2.88, 27.4, 1.66, 1.66, 9.81],
    [1, 0.1, 1.45, 78.7, 2.04, 10.2, -9.62, 2.77, 20.8, 1.67, 1.67, 7.55],
    [1, 0.2, 0.689, 69.9, 1.99, 5.45, -4.38, 2.56, 11.3, 1.78, 1.78, 4.39],
    [1, 0.3, 0.424, 61, 2.2, 3.96, -2.52, 2.31, 8.67, 1.99, 1.99, 3.5],
    [1, 0.4, 0.284, 54.6, 2.37, 3.34, -1.6, 2.06, 7.57, 2.1, 2.09, 2.94],
    [1, 0.5, 0.194, 49.1, 2.67, 3.09, -1, 1.89, 6.99, 2, 2, 2.31],
    [1, 0.6, 0.131, 43.8, 3.19, 3.06, -0.553, 1.77, 6.69, 1.82, 1.82, 1.74],
  ] as const;
  const steep = [
    [0.5, 0.7, 0.187, 38.2, 4.92, 3.88, 0.0235, 1.83, 7.32, 2.16, 2.16, 1.7],
    [0.5, 0.75, 0.135, 34.9, 5.9, 4.11, 0.258, 1.8, 7.65, 2.1, 2.1, 1.46],
    [0.5, 0.8, 0.0926, 31.2, 7.35, 4.46, 0.527, 1.78, 8.17, 2.05, 2.05, 1.24],
    [0.5, 0.85, 0.0582, 27.2, 9.56, 4.92, 0.805, 1.73, 9.12, 2.06, 2.06, 1.06],
    [0.5, 0.9, 0.0315, 22.7, 13.8, 5.76, 1.24, 1.72, 10.6, 2.03, 2.03, 0.846],
    [1, 0.7, 0.0828, 38.4, 4.16, 3.29, -0.0851, 1.75, 7.07, 2, 2, 1.59],
    [1, 0.8, 0.0469, 32.1, 6.1, 3.82, 0.42, 1.74, 8.08, 2.15, 2.15, 1.34],
  ] as const;
  // Coefficients 4 to 15 % of the largest off ours, which a grid twice as fine moves by 1.6 % at most: not explained
  // beyond what is said above, and not demanded.
  // The attitude of the second is 25.0 in the transcription, but 24.0 by its own coefficients (Kxy/Kxx = tan 23.9°,
  // Byy/Bxy = tan 24.0°) and by us: taken for a slip.
  const last = [
    [0.5, 0.975, 0.00499, 12.5, 43.3, 9.61, 4.26, 1.99, 22.4, 2.93, 2.93, 0.637],
    [1, 0.9, 0.0195, 24, 11.9, 5.28, 1.32, 1.8, 10.1, 2.06, 2.06, 0.916],
    [1, 0.95, 0.00866, 18, 24, 7.81, 2.79, 2.01, 14.2, 2.44, 2.44, 0.791],
  ] as const;

  it.each([...rows, ...steep, ...last])(
    'L/D %d, eccentricity %d: the table moves the bush along with the journal; and its load and attitude are ours',
    (ratio, e, S, attitude, ...told) => {
      const [, across] = lines(attitude);
      const [along, sideways] = square(told.slice(0, 4)).map((row) => e * dot(row, across));
      // the rounding of three figures and a tenth of a degree
      expect(Math.abs(along!)).toBeLessThan(0.02);
      expect(Math.abs(sideways! - 1)).toBeLessThan(0.006);
      expect(Math.abs(grooved(ratio, ARC, e, attitude).S / S - 1)).toBeLessThan(ratio < 1 ? 0.008 : 0.012);
      // The table is not smooth at L/D 1 below 0.3: at its own attitude for 0.2 we are left with 2 % of the load
      // sideways.
      expect(Math.abs(standing(ratio, ARC, e, attitude) - attitude)).toBeLessThan(
        ratio < 1 ? 0.8 : e === 0.2 ? 2.6 : 1.3,
      );
    },
  );

  /** K of our film by differences of its force, on the lines: the bush turns with the journal's line of centres. */
  function turning(ratio: number, e: number, attitude: number) {
    const film = (place: number, angle: number, shift = 0) =>
      filmAt(ratio, place, angle, 32, COLUMNS, ARC, shift).force;
    const load = Math.hypot(...film(e, attitude));
    const out = 0.01 * (1 - e);
    // by whole columns: the grid then turns with it
    const turn = 360 / COLUMNS;
    const slope = (to: Pair, from: Pair, way: number) => [0, 1].map((i) => (from[i]! - to[i]!) / (way * load));
    const along = slope(film(e + out, attitude), film(e - out, attitude), 2 * out);
    const across = slope(film(e, attitude + turn, turn), film(e, attitude - turn, -turn), 2 * e * Math.sin(turn * RAD));
    return lines(attitude).flatMap((to) => [dot(along, to), dot(across, to)]);
  }

  it.each([...rows, ...steep])(
    'L/D %d, eccentricity %d: so moved, our film has the stiffness told; and the damping told',
    (ratio, e, _S, attitude, ...told) => {
      const { K, B, lean } = grooved(ratio, ARC, e, attitude);
      const stays = onLines(K, lines(attitude - lean));
      const turns = turning(ratio, e, attitude);
      const stiffness = onLines(square(told.slice(0, 4)), lines(attitude));
      const [mostK, mostB] =
        e <= 0.6 ? (ratio < 1 ? [0.018, 0.031] : [0.022, 0.02]) : ratio < 1 ? [0.033, 0.046] : [0.053, 0.063];
      expect(apart(turns, stiffness)).toBeLessThan(mostK!);
      // seen along and across the load, grooves that stay leave Kxy much as it was
      if (ratio < 1) expect(Math.abs(K[0]![1]! / told[1] - 1)).toBeLessThan(0.05);
      expect(apart(B.flat(), told.slice(4))).toBeLessThan(mostB!);
      // Whether the grooves follow is nothing along the line of centres; across it, with a light load, it is most of
      // the difference.
      for (const i of [0, 2]) expect(Math.abs(stays[i]! / turns[i]! - 1)).toBeLessThan(0.001);
      if (e <= 0.2) expect(apart(stays, stiffness)).toBeGreaterThan(0.2);
    },
  );

  it.each([...rows, ...steep, ...last])(
    'L/D %d, eccentricity %d: a journal that whirls at half speed drags no oil',
    (ratio, e, _S, attitude) => {
      const { B, lean } = grooved(ratio, ARC, e, attitude);
      const [, across] = lines(attitude - lean);
      expect(Math.abs((e / 2) * dot(B[0]!, across) + 1)).toBeLessThan(5e-5);
      expect(Math.abs((e / 2) * dot(B[1]!, across))).toBeLessThan(5e-5);
    },
  );

  it('near eccentricity 0.8 the load of the table grows as ours does, and its stiffness is steeper than that', () => {
    const [from, [ratio, e, , attitude, ...told], to] = [steep[1], steep[2], steep[3]];
    const load = (row: Row) => Math.hypot(...filmAt(row[0]!, row[1]!, row[3]!, 32, COLUMNS, ARC).force);
    expect(Math.abs(Math.log(from[2] / to[2]) / Math.log(load(to) / load(from)) - 1)).toBeLessThan(0.006);
    expect(onLines(square(told.slice(0, 4)), lines(attitude))[0]! / turning(ratio, e, attitude)[0]!).toBeGreaterThan(
      1.03,
    );
    // nor is its damping that of half speed whirl: 0.0085 short, where three figures and a tenth of a degree are good
    // for 0.006
    expect((e / 2) * dot(told.slice(4, 6), lines(attitude)[1]) + 1).toBeGreaterThan(0.008);
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
