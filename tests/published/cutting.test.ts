/**
 * Cutting against handbooks. Every value stands with its source, a key of src/references.ts, which tells too what was
 * at hand when it was written down.
 */
import { describe, expect, it } from 'vitest';
import { minimised } from '../../src/engine/algebra/simplex.ts';
import { alongSlide, DEFAULT_BLOCKS, tailstockSetOver } from '../../src/engine/cutting/angleSetting.ts';
import { axialFeed, feedAlong } from '../../src/engine/cutting/feeds.ts';
import { lapped } from '../../src/engine/cutting/lapping.ts';
import { stackFor } from '../../src/engine/gauging/blockStack.ts';
import { trueTravel } from '../../src/engine/gauging/cosineError.ts';
import { stackOfAngle } from '../../src/engine/gauging/sineBar.ts';
import { grown } from '../../src/engine/parts/growth.ts';
import { diameterChange } from '../../src/engine/parts/stock.ts';

const INCH = 25.4e-3;
const rad = (degrees: number) => (degrees * Math.PI) / 180;
const degrees = (angle: number) => (angle * 180) / Math.PI;
/** Half angle of a taper on diameter. */
const halfAngle = (taper: number) => Math.atan(taper / 2);

/** By the rule of the handbooks: half the taper, over the length of the work. */
const byRule = (taper: number, length: number) =>
  tailstockSetOver(halfAngle(taper), length) / Math.cos(halfAngle(taper));

describe('set-over of the tailstock', () => {
  // 1 in per foot, the work 3 ft long, is 1½ in of set-over. @source Rose
  it('one inch per foot, three feet of work: an inch and a half', () => {
    expect(byRule(1 / 12, 36 * INCH) / INCH).toBeCloseTo(1.5, 12);
  });

  // Set-over = length·(D - d)/(2·length of the taper).
  // @source MachinerysHandbook Taper turning (the rule); derived (values by it)
  it.each([
    { length: 10, large: 2, small: 1.5, taper: 4, setOver: 0.625 },
    { length: 15, large: 1.9375, small: 1, taper: 15, setOver: 0.46875 },
    { length: 8, large: 1.25, small: 1, taper: 5, setOver: 0.2 },
  ])(
    '$length in of work, $large to $small in over $taper in: $setOver in',
    ({ length, large, small, taper, setOver }) => {
      expect(byRule((large - small) / taper, length * INCH) / INCH).toBeCloseTo(setOver, 12);
    },
  );

  // Machine tapers whose half angle is in every table: the rule is too much by 1/cos a, for the centres stand on the
  // work, not on the bed.
  // @source ASME-B5.10 (tapers per foot); derived (set-over for 10 in of work)
  it.each([
    ['Morse 2', 0.59941, 0.24975, 0.24967],
    ['Morse 5', 0.63151, 0.26313, 0.26304],
    ['Brown & Sharpe 7', 0.5015, 0.20896, 0.20891],
    ['Jarno', 0.6, 0.25, 0.24992],
    ['1:20', 0.6, 0.25, 0.24992],
    ['7:24', 3.5, 1.45833, 1.44307],
  ])('%s', (_, perFoot, rule, exact) => {
    const taper = perFoot / 12;
    expect(Math.abs(byRule(taper, 10 * INCH) / INCH - rule)).toBeLessThan(1e-5);
    expect(Math.abs(tailstockSetOver(halfAngle(taper), 10 * INCH) / INCH - exact)).toBeLessThan(1e-5);
  });
});

describe('slides set over', () => {
  // The angle of a slide is half the included angle. @source LittleMachineShop (half angles)
  it.each([
    ['Morse 0', 0.6246, 1.49079],
    ['Morse 3', 0.60235, 1.4377],
    ['Brown & Sharpe 5', 0.5016, 1.1973],
    ['Brown & Sharpe 10', 0.5161, 1.232],
  ])('%s: %d in per foot is %d°', (_, perFoot, half) => {
    expect(Math.abs(degrees(halfAngle(perFoot / 12)) - half)).toBeLessThan(0.0002);
  });

  // Fine feed of a slide set to 5° 44': a tenth of its dial in radius; 30° gives a half, 84° 16' of the other scale
  // the same. @source practice
  it('a slide at 5° 44′ takes a tenth, at 30° a half', () => {
    expect(1 / feedAlong(1, 0, rad(5 + 44 / 60))!).toBeCloseTo(0.1, 3);
    expect(1 / feedAlong(1, 0, rad(30))!).toBeCloseTo(0.5, 12);
  });

  // Indicator over 1 in of slide at 45°: 0.7071 in. The constants are rounded to 0.00001.
  // @source derived; MachinerysHandbook (constants of a 5 in bar)
  it.each([
    [3, 0.26168],
    [5, 0.43578],
    [20, 1.7101],
    [45, 3.53553],
  ])('%d° on a bar of 5 in: %d in, and the same for an indicator over 5 in of slide', (angle, constant) => {
    expect(Math.abs(stackOfAngle(rad(angle), 5 * INCH) / INCH - constant)).toBeLessThan(6e-6);
    expect(Math.abs(alongSlide(rad(angle), 5 * INCH) / INCH - constant)).toBeLessThan(6e-6);
  });

  it('the blocks for 3° on a bar of 100 mm add up to within half a micrometre', () => {
    const stack = stackFor(DEFAULT_BLOCKS, stackOfAngle(rad(3), 0.1));
    if (stack.kind !== 'stack') throw new Error(stack.kind);
    expect(Math.abs(stack.error)).toBeLessThan(0.5e-6);
  });
});

describe('an indicator that leans', () => {
  // Rounded there to two digits. @source JIS-B7533 (compensation of lever indicators)
  it.each([
    [10, 0.98],
    [20, 0.94],
    [30, 0.87],
    [40, 0.77],
    [50, 0.64],
  ])('%d°: true is %d of what is read', (lean, share) => {
    expect(Math.abs(trueTravel(1, rad(lean)) - share)).toBeLessThan(0.006);
  });
});

describe('what a micrometre of diameter does', () => {
  // The touch moves by the error of the diameter over 2·tan a. @source derived
  it.each([
    [3, 9.540568343864104],
    [45, 0.5],
  ])('%d°: %d µm along the axis', (angle, shift) => {
    const normal = Math.abs(1e-6 / diameterChange(1, rad(angle), 'journal'));
    expect(1e6 * axialFeed(normal, rad(angle))!).toBeCloseTo(shift, 9);
  });
});

describe('warm work', () => {
  // Ø50 of plain carbon steel, 10 K too warm as gauged: 5.65 µm too small when cold.
  // @source ISO1; Callister table B.6 (11.3e-6 /K); derived
  it('a diameter of 50 mm gauged 10 K too warm', () => {
    const cold = grown(
      { halfAngle: 0, radius: 0.025, station: 0, from: -0.01, to: 0, profile: [] },
      1 / (1 + 10 * 11.3e-6),
      0,
    );
    expect(2e6 * (0.025 - cold.radius)).toBeCloseTo(5.65, 2);
  });
});

describe('wear', () => {
  // V = K·W·s/H: K 1e-6, 50 N, 100 km, H 1.5 GPa: 3.3333 mm³. Here on one cone, its journal pressed by 25 N at 30°
  // (50 N normal), all wear on the bush. @source Archard1953; derived (the value)
  it('Archard’s volume for the work done', () => {
    const cone = { halfAngle: rad(30), radius: 0.012, station: 0, profile: [] };
    const seat = {
      name: 'a',
      journal: { ...cone, from: -0.0005, to: 0.0006 },
      bush: { ...cone, radius: 0.012002, from: -0.0006, to: 0.0005 },
      target: 2.5e-6,
    };
    const k = 1e-6 / 1.5e9;
    const result = lapped([seat], {
      force: 25,
      coefficient: { journal: k * 1e-9, bush: k },
      step: 1e-8,
      advance: 1e-6,
      bearing: 1,
      limit: 1,
    });
    if (result.status !== 'lapped') throw new Error(result.status);
    const { volume, work } = result.states.at(-1)!;
    const perWork = (volume.bush + volume.journal) / work;
    expect((perWork * 50 * 1e5) / 1e-9).toBeCloseTo(3.3333333, 4);
  });
});

describe('linear programmes', () => {
  // @source Beale1955 (as in many books)
  it('Beale’s example: -1/20', () => {
    const found = minimised({
      variables: Array.from({ length: 4 }, () => ({ least: 0, most: Number.POSITIVE_INFINITY })),
      rows: [
        { coefficients: [0.25, -60, -0.04, 9], max: 0 },
        { coefficients: [0.5, -90, -0.02, 3], max: 0 },
        { coefficients: [0, 0, 1, 0], max: 1 },
      ],
      objectives: [[-0.75, 150, -0.02, 6]],
    });
    if (found.status !== 'solved') throw new Error(found.status);
    expect(
      -0.75 * found.values[0]! + 150 * found.values[1]! - 0.02 * found.values[2]! + 6 * found.values[3]!,
    ).toBeCloseTo(-0.05, 9);
  });
});
