/**
 * The line of a surface against published tapers. Every value stands with its source, a key of src/references.ts.
 */
import { describe, expect, it } from 'vitest';
import { lineOf } from '../../src/engine/parts/line.ts';
import { fitSection } from '../../src/report/fit/section.ts';

const INCH = 25.4;
const degrees = (rad: number) => (rad * 180) / Math.PI;

/** Diameters (mm) at both ends of a taper known by its large diameter, length and half angle. */
function ends(largeDiameter: number, length: number, halfAngle: number): [number, number] {
  const line = lineOf(
    { halfAngle, radius: largeDiameter / 2000, station: 0, from: -length / 1000, to: 0, profile: [] },
    'inside',
  );
  return [2000 * line.r[0]!, 2000 * line.r[1]!];
}

describe('Morse tapers', () => {
  // @source LittleMachineShop (diameters, lengths, half angles); ISO296; DIN228 (metric diameter); ASME-B5.10 (taper
  // per
  // foot)
  it.each([
    { no: 0, mm: 9.045, large: 0.3561, small: 0.252, length: 2, perFoot: 0.6246, half: 1.49079 },
    { no: 2, mm: 17.78, large: 0.7, small: 0.572, length: 2.5625, perFoot: 0.59941, half: 1.43069 },
    { no: 3, mm: 23.825, large: 0.938, small: 0.778, length: 3.1875, perFoot: 0.60235, half: 1.4377 },
    { no: 5, mm: 44.399, large: 1.748, small: 1.475, length: 5.1875, perFoot: 0.63151, half: 1.50727 },
    { no: 7, mm: 83.058, large: 3.27, small: 2.75, length: 10, perFoot: 0.624, half: 1.48935 },
  ])('number $no', ({ mm, large, small, length, perFoot, half }) => {
    const angle = Math.atan(perFoot / 24);
    expect(Math.abs(degrees(angle) - half)).toBeLessThan(0.0002);
    expect(Math.abs(large * INCH - mm)).toBeLessThan(0.002);
    const [rear, nose] = ends(large * INCH, length * INCH, angle);
    expect(nose).toBeCloseTo(large * INCH, 10);
    // printed to 0.001 in, the taper to 0.0005 in per foot
    expect(Math.abs(rear / INCH - small)).toBeLessThan(0.0005 + (0.0005 * length) / 12);
  });
});

describe('Jarno tapers', () => {
  // Large n/8 in, small n/10 in, length n/2 in, 0.6 in per foot. @source HobbyMachinist; Lobben
  it.each([
    { no: 6, large: 0.75, small: 0.6, length: 3 },
    { no: 8, large: 1, small: 0.8, length: 4 },
    { no: 10, large: 1.25, small: 1, length: 5 },
    { no: 12, large: 1.5, small: 1.2, length: 6 },
  ])('number $no', ({ large, small, length }) => {
    const angle = Math.atan(0.6 / 24);
    expect(degrees(angle)).toBeCloseTo(1.4321, 4);
    expect(ends(large * INCH, length * INCH, angle)[0]).toBeCloseTo(small * INCH, 10);
  });
});

describe('the ISO 1119 series of cones', () => {
  // @source ISO1119 (the series); derived (angles)
  it.each([
    [1, 5, 5.71059314],
    [1, 7, 4.08561678],
    [1, 8, 3.57633437],
    [1, 10, 2.86240523],
    [1, 12, 2.38594403],
    [1, 15, 1.90915243],
    [1, 20, 1.43209618],
    [1, 30, 0.95484125],
    [1, 100, 0.28647651],
    [1, 500, 0.05729576],
    [7, 24, 8.29714497],
  ])('%i:%i', (rise, run, half) => {
    expect(Math.abs(degrees(Math.atan(rise / run / 2)) - half)).toBeLessThan(1e-7);
    // a cone of that half angle loses `rise` of diameter in `run` of length
    const [rear, nose] = ends(40, run / 50, (half * Math.PI) / 180);
    expect((nose - rear) * 50).toBeCloseTo(rise, 6);
  });

  // 1:x of an included angle. @source ISO1119 table 1
  it.each([
    [120, 0.2886751],
    [75, 0.6516127],
    [45, 1.2071068],
  ])('%i° included is 1:%d', (included, x) => {
    const [rear, nose] = ends(40, 1, (included / 2) * (Math.PI / 180));
    expect(Math.abs(1 / (nose - rear) - x)).toBeLessThan(5e-8 + 1e-12);
  });
});

describe('what a micrometre of diameter does to the position', () => {
  // Axial shift to contact = error of diameter / (2 tan a). @source derived
  it.each([
    [3, 9.540568343864104],
    [45, 0.5],
  ])('%i°: %d µm', (halfAngle, shift) => {
    const seatPosition = (diameter: number) =>
      fitSection({
        conepair: 1,
        seats: [
          {
            name: 'a',
            journal: { halfAngle, diameter, station: 0, from: -5, to: 1 },
            bush: { halfAngle, diameter: 22, station: 0, from: -4, to: 0 },
          },
        ],
      }).seats[0]!.seatPosition!;
    expect(1000 * (seatPosition(22.001) - seatPosition(22))).toBeCloseTo(shift, 8);
  });

  // "A tenth" is a ten-thousandth of an inch, 2.54 µm. @source practice
  it('a tenth of film is 2.54 µm: 48.5 µm of travel at 3°, 3.6 µm at 45°', () => {
    const travel = (halfAngle: number) => {
      const surface = { halfAngle, diameter: 22, station: 0, from: -4, to: 0 };
      return (
        1000 *
        fitSection({
          conepair: 1,
          seats: [{ name: 'a', journal: surface, bush: surface, film: { target: 0.0001 * INCH } }],
        }).seats[0]!.positionForTarget!
      );
    };
    expect(0.0001 * INCH * 1000).toBeCloseTo(2.54, 10);
    expect(travel(3)).toBeCloseTo(48.53, 2);
    expect(travel(45)).toBeCloseTo(3.59, 2);
  });
});
