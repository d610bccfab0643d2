/**
 * Gauging against published formulas, constants and worked examples. Every value stands with its source, a key of
 * src/references.ts; `derived` means here a closed form evaluated apart from the program, not a print.
 */
import { describe, expect, it } from 'vitest';
import { covarianceOf, uncertaintyOf, unit } from '../../src/engine/belief/decomposition.ts';
import { BLOCK_SETS } from '../../src/engine/gauging/blockSets.ts';
import { stackFor } from '../../src/engine/gauging/blockStack.ts';
import { trueTravel } from '../../src/engine/gauging/cosineError.ts';
import { type Estimate, estimate } from '../../src/engine/gauging/estimate.ts';
import type { Reading } from '../../src/engine/gauging/reading.ts';
import { predict } from '../../src/engine/gauging/readings/index.ts';
import { angleOfStack, stackOfAngle } from '../../src/engine/gauging/sineBar.ts';
import { atReference } from '../../src/engine/gauging/temperature.ts';
import { ballIn } from '../../src/engine/gauging/touching.ts';
import { lineOf, type Surface } from '../../src/engine/parts/line.ts';

const MM = 1e-3;
const INCH = 0.0254;
const DEG = Math.PI / 180;
const ARCSEC = DEG / 3600;

/** Radius of the small end in m, half angle in degrees; reaches 1 m to the nose. */
const cone = (halfAngle: number, smallRadius: number, from = 0): Surface => ({
  halfAngle: halfAngle * DEG,
  radius: smallRadius,
  station: from,
  from,
  to: from + 1,
  profile: [],
});
const pairOf = (surface: Surface) => [{ name: 'a', journal: surface, bush: surface }];
function estimated(seats: ReturnType<typeof pairOf>, readings: Reading[]): Estimate {
  const found = estimate(seats, readings);
  if (found.kind !== 'estimate') throw new Error(JSON.stringify(found.impossible));
  return found;
}
const JOURNAL = { seat: 0, part: 'journal', sigma: 1e-6 } as const;
const BUSH = { seat: 0, part: 'bush', sigma: 1e-6 } as const;

describe('an outside taper over two rolls', () => {
  // M1 = ds + d·[1 + tan(45° + a/2)] on the plate, M2 on blocks H: tan a = (M2 - M1)/(2H).
  // @source MachinerysHandbook (the form); derived (numbers by it)
  it.each([
    { small: 20, half: 3, roll: 6, H: 25, M1: 32.322681, M2: 34.94307 },
    { small: 15, half: 22.5, roll: 5, H: 20, M1: 27.483029, M2: 44.051571 },
    { small: 30, half: 45, roll: 10, H: 15, M1: 64.142136, M2: 94.142136 },
    { small: 12.5, half: 3, roll: 4, H: 30, M1: 20.715121, M2: 23.859587 },
  ])('small end $small mm, half angle $half°', ({ small, half, roll, H, M1, M2 }) => {
    const truth = pairOf(cone(half, (small / 2) * MM));
    const at = (station: number, value: number): Reading => ({
      ...JOURNAL,
      kind: 'overRolls',
      roll: roll * MM,
      station: station * MM,
      value: value * MM,
    });
    expect(Math.abs(predict(at(roll / 2, 0), truth).value! / MM - M1)).toBeLessThan(1e-6);
    expect(Math.abs(predict(at(roll / 2 + H, 0), truth).value! / MM - M2)).toBeLessThan(1e-6);
    const found = estimated(pairOf(cone(half + 0.4, (small / 2 + 0.05) * MM)), [at(roll / 2, M1), at(roll / 2 + H, M2)])
      .seats[0]!.journal;
    expect(Math.tan(found.halfAngle)).toBeCloseTo((M2 - M1) / (2 * H), 12);
    // the widths are printed to 1e-6 mm
    expect(Math.abs(found.halfAngle / DEG - half)).toBeLessThan(3e-6);
    expect(Math.abs((2 * found.radius) / MM - small)).toBeLessThan(3e-6);
  });
});

describe('a taper bore with two balls', () => {
  it('20 and 15 mm, tops at -5 and 35 mm below the face', () => {
    // sin a = (R - r)/C, C = 37.5 mm. @source GATE2015 (the problem); derived (the answer)
    const ball = (d: number, depth: number): Reading => ({
      ...BUSH,
      kind: 'ballDepth',
      ball: d * MM,
      face: 0.2,
      value: depth * MM,
    });
    const found = estimated(pairOf(cone(4, 5 * MM, 0.13)), [ball(20, -5), ball(15, 35)]);
    expect(found.impossible).toEqual([]);
    expect(found.seats[0]!.bush.halfAngle / DEG).toBeCloseTo(3.82255, 4);
    expect((2 * found.seats[0]!.bush.halfAngle) / DEG).toBeCloseTo(7.64511, 4);
  });

  it('its uncertainty from that of the depths', () => {
    // u(a) = tan a·u(C)/C for the balls taken as exact, sin a = (R - r)/C with R = 10, r = 7.5, C = 37.5 mm.
    // @source derived
    const u = 1e-6;
    const ball = (d: number, depth: number): Reading => ({
      ...BUSH,
      kind: 'ballDepth',
      ball: d * MM,
      face: 0.2,
      value: depth * MM,
      sigma: u / Math.SQRT2,
    });
    const { decomposition, unknowns } = estimated(pairOf(cone(4, 5 * MM, 0.13)), [ball(20, -5), ball(15, 35)]);
    const a = Math.asin(2.5 / 37.5);
    const place = unknowns.list.findIndex((k) => k.of === 'halfAngle');
    expect(uncertaintyOf(decomposition, unit(2, place))! / ARCSEC).toBeCloseTo(
      (Math.tan(a) * u) / (37.5 * MM) / ARCSEC,
      8,
    );
    // with 0.2 µm in each radius and 1 µm in C: 1.60194″. @source derived
    const radii = (Math.SQRT2 * 0.2e-6) / (37.5 * MM) / Math.cos(a);
    expect(Math.hypot((Math.tan(a) * 1e-6) / (37.5 * MM), radii) / ARCSEC).toBeCloseTo(1.60194, 4);
  });

  it('disks of 1 and 1.5 in, centres 5 in apart: 1.2015 in per foot', () => {
    // @source MachinerysHandbook31 page 701
    const disk = (d: number, centre: number): Reading => ({
      ...BUSH,
      kind: 'ballDepth',
      ball: d * INCH,
      face: 0,
      value: -(centre + d / 2) * INCH,
    });
    const found = estimated(pairOf(cone(2.5, 0.2 * INCH)), [disk(1, 6), disk(1.5, 11)]).seats[0]!.bush;
    expect(24 * Math.tan(found.halfAngle)).toBeCloseTo(1.2015, 4);
    expect(found.halfAngle / DEG).toBeCloseTo(2.8659839825988622, 9);
  });

  it('a ball of radius 5 mm in a 3° mouth of 12 mm', () => {
    // from the apex to the centre R/sin a. @source derived
    const bush = { ...cone(3, 6 * MM), from: -0.1, to: 0 };
    const touch = ballIn(lineOf(bush, 'outside'), 5 * MM, 'rearward')!;
    expect(touch.centre / MM).toBeCloseTo(-18.950207, 6);
    expect((2 * touch.radius) / MM).toBeCloseTo(9.986295, 6);
    expect((touch.centre - touch.station) / MM).toBeCloseTo(0.26168, 5);
  });
});

describe('the sine bar', () => {
  // 5·sin t, printed to 5 places. @source MachinerysHandbook (constants of a 5 in bar)
  it.each([
    [1, 0.08726],
    [2, 0.1745],
    [3, 0.26168],
    [5, 0.43578],
    [7.5, 0.65263],
    [10, 0.86824],
    [20, 1.7101],
    [22.5, 1.91342],
    [34 + 25 / 60, 2.82603],
    [40, 3.21394],
    [45, 3.53553],
    [50, 3.83022],
    [60, 4.33013],
    [2 + 51.8515 / 60, 0.24984],
  ])('5 in bar at %f°: %f in', (angle, stack) => {
    expect(Math.abs(stackOfAngle(angle * DEG, 5) - stack)).toBeLessThan(0.000005);
  });

  it('5 in bar at 18°: 1.545 in', () => {
    // with sin 18° = 0.309. @source ShopDawg
    expect(Math.abs(stackOfAngle(18 * DEG, 5) - 1.545)).toBeLessThan(0.0005);
  });

  // dt = dH/(L·cos t); L = 127 mm, dH = 1 µm. @source derived
  it.each([
    [3, 1.6263612041611144],
    [30, 1.875386478915072],
    [60, 3.2482646653086036],
  ])('1 µm of stack at %f°: %f″', (angle, arcsec) => {
    const stack = stackOfAngle(angle * DEG, 127 * MM);
    const turned = angleOfStack(stack + 0.5e-6, 127 * MM)! - angleOfStack(stack - 0.5e-6, 127 * MM)!;
    expect(turned / ARCSEC).toBeCloseTo(arcsec, 6);
  });

  it('a line at the angle of the bar does not rise', () => {
    const stack = stackOfAngle(3 * DEG, 0.127);
    expect(
      predict({ ...JOURNAL, kind: 'sineRise', bar: 0.127, stack, travel: 20 * MM, value: 0 }, pairOf(cone(3, 10 * MM)))
        .value,
    ).toBeCloseTo(0, 15);
  });
});

describe('gauge blocks', () => {
  const set = (name: string) => BLOCK_SETS.find((s) => s.name === name)!;

  it('58.345 mm from the 112-piece set', () => {
    // 1.005 + 1.04 + 1.30 + 5 + 50; with 1.34 from the same series it is one fewer. @source NPL-blocks
    const published = [1.005, 1.04, 1.3, 5, 50];
    for (const mm of published) expect(set('M112').blocks).toContain(Math.round(mm * 20_000));
    const found = stackFor(set('M112'), 58.345 * MM);
    expect(found).toMatchObject({ kind: 'stack', error: 0 });
    expect(found.kind === 'stack' && found.blocks.length).toBe(published.length - 1);
  });

  it('3.9762 in from the 81-piece set: as many blocks as published, the same sum', () => {
    // 0.1002 + 0.126 + 0.75 + 3.0. @source StarrettWebber
    const found = stackFor(set('81'), 3.9762 * INCH);
    expect(found).toMatchObject({ kind: 'stack', error: 0 });
    expect(found.kind === 'stack' && found.blocks.length).toBe(4);
    expect(found.kind === 'stack' && Math.round(found.blocks.reduce((a, b) => a + b, 0) / INCH / 0.0001)).toBe(39_762);
  });

  // The counts add up to the name. @source BS4311; ISO3650
  it.each([
    ['M112', [1.0005, 1.001, 1.009, 1.01, 1.49, 0.5, 24.5, 25, 100], [0.4, 1.5005, 125]],
    ['M47/1', [1.005, 1.01, 1.19, 1.2, 1.9, 1, 9, 10, 100], [1.205, 0.5, 25]],
    ['M47/2', [1.005, 1.01, 1.09, 1.1, 1.9, 1, 24, 25, 100], [1.19, 0.5, 26]],
  ])('the %s set', (name, has, hasNot) => {
    for (const mm of has) expect(set(name).blocks).toContain(Math.round(mm * 20_000));
    for (const mm of hasNot) expect(set(name).blocks).not.toContain(Math.round(mm * 20_000));
  });
});

describe('the lever indicator', () => {
  // The table is cut to two places. @source JIS-B7533
  it.each([
    [10, 0.98],
    [20, 0.94],
    [30, 0.87],
    [40, 0.77],
    [50, 0.64],
  ])('at %i° a reading is multiplied by %f', (angle, factor) => {
    expect(Math.abs(trueTravel(1, angle * DEG) - factor)).toBeLessThan(0.006);
  });
});

describe('JCGM 100:2008', () => {
  /**
   * H.3, calibration of a thermometer: the correction b read at eleven temperatures t, the line b = y1 + y2·(t - 20
   * °C).
   * A diameter read at eleven stations is the same line: D + 2·tan a·(Z - Z₀).
   * @source JCGM100 H.3
   */
  const thermometer = [
    [21.521, -0.171],
    [22.012, -0.169],
    [22.512, -0.166],
    [23.003, -0.159],
    [23.507, -0.164],
    [23.999, -0.165],
    [24.513, -0.156],
    [25.002, -0.157],
    [25.503, -0.159],
    [26.01, -0.161],
    [26.511, -0.16],
  ] as const;
  /** standard deviation of the readings about the line, as published */
  const s = 0.0035;

  it('H.3: slope, intercept, their uncertainties and correlation, and the correction at 30 °C', () => {
    // Any angle but none: a surface drawn straight would be held so.
    const surface: Surface = { halfAngle: 1e-3, radius: 5, station: 20, from: 0, to: 40, profile: [] };
    const readings = thermometer.map(
      ([t, b]): Reading => ({ kind: 'diameter', seat: 0, part: 'journal', station: t, value: 10 + b, sigma: s }),
    );
    const { seats, decomposition: d, unknowns, chiSquare, freedom } = estimated(pairOf(surface), readings);
    const [radius, angle] = ['radius', 'halfAngle'].map((of) =>
      unit(
        2,
        unknowns.list.findIndex((u) => u.of === of),
      ),
    );
    const journal = seats[0]!.journal;
    expect(2 * journal.radius - 10).toBeCloseTo(-0.1712, 4);
    expect(2 * Math.tan(journal.halfAngle)).toBeCloseTo(0.00218, 5);
    expect(2 * uncertaintyOf(d, radius!)!).toBeCloseTo(0.0029, 4);
    expect(2 * uncertaintyOf(d, angle!)!).toBeCloseTo(0.00067, 5);
    expect(covarianceOf(d, radius!, angle!) / (uncertaintyOf(d, radius!)! * uncertaintyOf(d, angle!)!)).toBeCloseTo(
      -0.93,
      3,
    );
    // the published deviation is that of the residuals
    expect(freedom).toBe(9);
    expect(Math.sqrt(chiSquare / freedom) * s).toBeCloseTo(s, 4);
    const at30 = radius!.map((r, j) => 2 * r + 2 * 10 * angle![j]!);
    expect(2 * journal.radius - 10 + 20 * Math.tan(journal.halfAngle)).toBeCloseTo(-0.1494, 4);
    expect(uncertaintyOf(d, at30)!).toBeCloseTo(0.0041, 4);
  });

  it('H.1: an end gauge compared with a standard, 50.000838 mm at 20 °C', () => {
    // l = ls + d - ls·(δα·θ + αs·δθ), with δα and δθ of expectation 0: ls = 50.000623 mm, d = 215 nm, θ = -0.1 °C.
    // @source JCGM100 H.1
    const standard = { expansion: 11.5e-6, temperature: 19.9 };
    const length = atReference(50.000623 * MM + 215e-9, standard, standard);
    expect(length / MM).toBeCloseTo(50.000838, 6);
    // the derivative by δα is -ls·θ: 1e-6/√3 of it is 2.9 nm
    const [more, less] = [1, -1].map((sign) =>
      atReference(length, { ...standard, expansion: 11.5e-6 + (sign * 1e-6) / Math.sqrt(3) }, standard),
    );
    expect((more! - less!) / 2 / 1e-9).toBeCloseTo(2.9, 1);
    // and by δθ -ls·αs: 0.05/√3 K of it is 16.6 nm
    const [warm, cold] = [1, -1].map((sign) =>
      atReference(length, { ...standard, temperature: 19.9 + (sign * 0.05) / Math.sqrt(3) }, standard),
    );
    expect((cold! - warm!) / 2 / 1e-9).toBeCloseTo(16.6, 1);
  });
});
