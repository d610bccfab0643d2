/** Which tapers hold by themselves, against published ones; and the forces by the balance of a small piece of cone. */
import { describe, expect, it } from 'vitest';
import { forceToFree, isSelfHolding } from '../../../src/engine/play/selfHolding.ts';

const rad = (degrees: number) => (degrees * Math.PI) / 180;

describe('the limit', () => {
  // atan µ; by the rule of thumb about 7° for steel on steel. @source derived; EngTips (the rule)
  it.each([
    [0.05, 2.86241],
    [0.12, 6.84277],
    [0.2, 11.30993],
  ])('friction %f: %f°', (friction, degrees) => {
    expect(isSelfHolding(rad(degrees - 1e-4), friction)).toBe(true);
    expect(isSelfHolding(rad(degrees + 1e-4), friction)).toBe(false);
  });
});

describe('common tapers at usual friction', () => {
  // @source LittleMachineShop (Morse, from the taper per foot); ISO1119; practice (dry steel 0.12)
  it.each([
    ['Morse 0', 1.49079],
    ['Morse 2', 1.43069],
    ['Morse 3', 1.4377],
    ['Morse 5', 1.50727],
    ['Morse 7', 1.48935],
    ['a shallow bearing cone', 3],
  ])('%s holds', (_, half) => {
    expect(isSelfHolding(rad(half), 0.12)).toBe(true);
    expect(isSelfHolding(-rad(half), 0.12)).toBe(true);
    expect(forceToFree(rad(half), 0.12, 100)).toBeGreaterThan(0);
  });

  it.each([
    ['7:24', 8.29714497],
    ['a steep bearing cone', 45],
  ])('%s releases', (_, half) => {
    expect(isSelfHolding(rad(half), 0.12)).toBe(false);
    expect(forceToFree(rad(half), 0.12, 100)).toBe(0);
  });

  it('3° holds from a friction of 0.0524 on; a straight seat never does', () => {
    expect(isSelfHolding(rad(3), 0.0525)).toBe(true);
    expect(isSelfHolding(rad(3), 0.0523)).toBe(false);
    expect(isSelfHolding(0, 0.2)).toBe(false);
  });
});

it('the forces balance: normal and friction along the axis, pressed and freed', () => {
  for (const half of [1, 3, 6]) {
    const [a, friction, press] = [rad(half), 0.15, 200];
    const normal = press / (Math.sin(a) + friction * Math.cos(a));
    expect(friction * normal * Math.cos(a) - normal * Math.sin(a)).toBeCloseTo(forceToFree(a, friction, press), 9);
  }
});
