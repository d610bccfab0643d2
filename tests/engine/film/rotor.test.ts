/** Masses and gyroscopic couples of a rigid rotor against the points it is made of and the top that precesses. */
import { expect, test } from 'vitest';
import { cylinderRotor, rotorMatrices, whirl } from '../../../src/engine/film/whirl.ts';

const [MASS, FROM, TO, R, OMEGA] = [0.8, -0.02, 0.09, 0.012, 250] as const;
const rotor = cylinderRotor(MASS, FROM, TO, R);

/** How far a point at (X, Y, Z) moves with each of x, y, z, tiltX, tiltY: the small rigid motion itself. */
const moves = (X: number, Y: number, Z: number) => [
  [1, 0, 0, 0, Z],
  [0, 1, 0, -Z, 0],
  [0, 0, 1, Y, -X],
];

test('the masses are those of the points of a cylinder: twice the energy of every motion', () => {
  const points: [number, number, number][] = [];
  const [slices, rings, spokes] = [200, 200, 6];
  for (let i = 0; i < slices; i++) {
    for (let k = 0; k < rings; k++) {
      for (let s = 0; s < spokes; s++) {
        // rings of the same area
        const r = R * Math.sqrt((k + 0.5) / rings);
        const angle = (2 * Math.PI * s) / spokes;
        points.push([r * Math.cos(angle), r * Math.sin(angle), FROM + ((i + 0.5) / slices) * (TO - FROM)]);
      }
    }
  }
  const wanted = Array.from({ length: 5 }, () => [0, 0, 0, 0, 0]);
  for (const point of points)
    for (const row of moves(...point))
      for (let i = 0; i < 5; i++)
        for (let j = 0; j < 5; j++) wanted[i]![j]! += (MASS / points.length) * row[i]! * row[j]!;
  const { mass } = rotorMatrices(rotor, OMEGA);
  for (let i = 0; i < 5; i++)
    for (let j = 0; j < 5; j++)
      expect(Math.abs(mass[i]![j]! - wanted[i]![j]!)).toBeLessThan(1e-4 * Math.sqrt(wanted[i]![i]! * wanted[j]![j]!));
});

test('turning the axis takes the couple that turns its spin with it', () => {
  const { gyro } = rotorMatrices(rotor, OMEGA);
  const [rateX, rateY] = [0.3, -0.7];
  // the axis (tiltY, -tiltX, 1) carries the spin mass·r²/2·ω along it
  const spin = ((MASS * R * R) / 2) * OMEGA;
  const rates = [0, 0, 0, rateX, rateY];
  const couple = gyro.map((row) => row.reduce((sum, g, j) => sum + g * rates[j]!, 0));
  expect(couple.slice(0, 3)).toEqual([0, 0, 0]);
  expect(couple[3]).toBeCloseTo(spin * rateY, 12);
  expect(couple[4]).toBeCloseTo(-spin * rateX, 12);
});

test('a fast top on soft springs precesses with k/(Iₚ ω), and a push that follows it makes it grow', () => {
  const about = { ...rotor, centre: 0 };
  const { mass, gyro } = rotorMatrices(about, OMEGA);
  const spring = 1e-5 * about.polar * OMEGA ** 2;
  const drag = 1e-3 * about.polar * OMEGA;
  const matrix = (own: number, across: number) =>
    Array.from({ length: 5 }, (_, i) =>
      Array.from({ length: 5 }, (__, j) =>
        i === j ? own : i === 3 && j === 4 ? across : i === 4 && j === 3 ? -across : 0,
      ),
    );
  const damping = matrix(drag, 0).map((row, i) => row.map((value, j) => value + gyro[i]![j]!));
  const found = whirl(mass, damping, matrix(spring, 0), [3, 4])!;
  expect(found.stable).toBe(true);
  expect(found.frequency / (spring / (about.polar * OMEGA))).toBeCloseTo(1, 3);
  // e^(-t c k/(Iₚω)²)
  expect(found.decay / ((drag * spring) / (about.polar * OMEGA) ** 2)).toBeCloseTo(1, 2);
  // forces across the tilt, as an oil film has them, beyond the drag's share at that frequency
  const follows = (part: number) =>
    whirl(mass, damping, matrix(spring, part * drag * (spring / (about.polar * OMEGA))), [3, 4])!.stable;
  expect([follows(0.9) && follows(-0.9), follows(1.1) && follows(-1.1)]).toEqual([true, false]);
});
