/** Masses and gyroscopic couples of a rigid rotor against the points it is made of and the top that precesses. */
import { expect, test } from 'vitest';
import type { Coefficients } from '../../../src/engine/film/stiffness.ts';
import { cylinderRotor, rotorMatrices, rotorWhirl, whirl } from '../../../src/engine/film/whirl.ts';

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

// With θ = θx + iθy, springs k, a push p across and drag c: θ' = -(k - ip)/(c - iIₚω)·θ in slow precession, so that
// Re θ'/θ = -(kc + pIₚω)/(c² + Iₚ²ω²): the push makes it grow only against the sense of the spin.
test.each([1, -1])('a spin of sense %i is led astray by a push across of the other sense only', (sense) => {
  const spin = sense * rotor.polar * OMEGA;
  const [spring, drag] = [1e-5 * rotor.polar * OMEGA ** 2, 1e-3 * rotor.polar * OMEGA];
  const films = (across: number): Coefficients =>
    ({
      stiffness: [1, 1, 1, spring, spring].map((own, i) =>
        [0, 1, 2, 3, 4].map((j) => (i === j ? own : i + j === 7 ? Math.sign(j - i) * across : 0)),
      ),
      damping: [1, 1, 1, drag, drag].map((own, i) => [0, 1, 2, 3, 4].map((j) => (i === j ? own : 0))),
    }) as unknown as Coefficients;
  const stable = (times: number) =>
    rotorWhirl({ ...rotor, centre: 0 }, sense * OMEGA, films((-times * spring * drag) / spin), true)!.stable;
  expect([0.95, 1.05, -1.05].map(stable)).toEqual([true, false, true]);
});

test('what nothing resists along the axis only drifts; what something resists is one of the motions', () => {
  const films = (along: number): Coefficients =>
    ({
      stiffness: [9, 9, along, 9, 9].map((own, i) => [0, 1, 2, 3, 4].map((j) => (i === j ? own : 0))),
      damping: [5, 5, along && 5, 5, 5].map((own, i) => [0, 1, 2, 3, 4].map((j) => (i === j ? own : 0))),
    }) as unknown as Coefficients;
  const one = { mass: 1, centre: 0, transverse: 1, polar: 0 };
  const round = rotorWhirl(one, 100, films(9), true)!;
  expect(rotorWhirl(one, 100, films(0), false)).toEqual(round);
  expect(rotorWhirl(one, 100, films(0), true)).toEqual(round);
  expect(rotorWhirl(one, 100, films(-9), false)!.stable).toBe(false);
  expect(rotorWhirl(one, 100, films(-9), true)!.stable).toBe(true);
});
