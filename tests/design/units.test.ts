/** What is typed and what is shown: units, tapers, tenths, signs. */
import { expect, test } from 'vitest';
import {
  ANGLE_WAYS,
  type AngleWay,
  angleIn,
  angleOffSaid,
  angleSaid,
  angleText,
  doubtedText,
  fineExact,
  fineText,
  halfAngleOfTaper,
  lengthText,
  TENTH,
  taperOfHalfAngle,
  turnText,
  typedAngleIn,
  typedHalfAngle,
  typedLength,
} from '../../src/design/units.ts';

const typed = (text: string, bare = 1) => {
  const result = typedLength(text, bare);
  return result.ok ? result.value : result.message;
};
const angle = (text: string) => {
  const result = typedHalfAngle(text);
  return result.ok ? result.value : result.message;
};

test('lengths carry their own unit; a number alone is in the unit of the field', () => {
  expect(typed('22')).toBe(22);
  expect(typed('0,5')).toBe(0.5);
  expect(typed('7', 0.001)).toBeCloseTo(0.007, 15);
  expect(typed('1 in')).toBe(25.4);
  expect(typed('2 tenths')).toBeCloseTo(2 * TENTH, 15);
  expect(typed('1 thou')).toBeCloseTo(0.0254, 15);
  expect(typed('-3 µm')).toBeCloseTo(-0.003, 15);
  expect(typed('40 tpi')).toBeCloseTo(0.635, 12);
  expect(typed('3 furlongs')).toMatch(/furlongs/);
  expect(typed('0 tpi')).toMatch(/above 0/);
});

test('half angles as degrees, minutes, included, ratio, taper per foot', () => {
  expect(angle('3')).toBe(3);
  expect(angle('2° 51\' 51.0925" incl')).toBeCloseTo(1.43209618, 7); // 1:20. @source ISO1119
  expect(angle('1:20')).toBeCloseTo(1.43209618, 7);
  expect(angle('1 in 20')).toBe(angle('1:20'));
  expect(angle('1/20')).toBe(angle('1:20'));
  expect(angle('2 51 45')).toBeCloseTo(2 + 51 / 60 + 45 / 3600, 12);
  expect(angle('3 30')).toBe(3.5);
  expect(angle('0.6 in/ft')).toBeCloseTo(1.4321, 4); // Jarno taper
  expect(angle('-6 incl')).toBe(-3);
  for (const half of ['3 half', '3° half', '3half', '3° half angle', '3 HALF', "3° 0' half"])
    expect(angle(half), half).toBe(3);
  for (const whole of ['6 included', '6 incl.', '6° incl', '6 included angle']) expect(angle(whole), whole).toBe(3);
  expect(angle('7:24')).toBeCloseTo(8.29714497, 7); // @source ISO1119
  expect(angle('steep')).toMatch(/steep/);
});

test('taper and half angle undo each other', () => {
  for (const degrees of [0.5, 3, 45, -3]) expect(halfAngleOfTaper(taperOfHalfAngle(degrees))).toBeCloseTo(degrees, 12);
});

test('what is shown: tenths in inch, a real minus, no minus before nought, large moves as lengths', () => {
  expect(fineText(TENTH, 'inch')).toBe('1.00 tenths');
  expect(fineText(-0.0025, 'metric')).toBe('−2.50 µm');
  expect(fineText(-1e-9, 'metric')).toBe('0.00 µm');
  expect(fineText(1.5, 'metric')).toBe('1.500 mm');
  expect(lengthText(22.0164, 'metric')).toBe('22.0164 mm');
  expect(lengthText(25.4, 'inch')).toBe('1.0000 in');
  expect(angleText(3)).toBe('3.0°');
  expect(turnText(-0.25)).toBe('90°');
});

test('what an edited field shows can be typed back without loss', () => {
  for (const mm of [-0.0004644660940686558, 0.02, 1 / 3000]) {
    for (const system of ['metric', 'inch'] as const)
      expect(typed(fineExact(mm, system).replace('−', '-'))).toBeCloseTo(mm, 6);
  }
});

test('angles as a person says them: there and back, a number alone meant so, a unit meaning what it says', () => {
  for (const way of ANGLE_WAYS)
    for (const degrees of [3, 45, -22.5, 0, 2.8624, 0.5, 88]) {
      const typed = typedAngleIn(angleIn(degrees, way).replace('−', '-'), way);
      if (!typed.ok) expect.fail(`${way} ${degrees}: ${typed.message}`);
      expect(typed.value, `${way} ${degrees}`).toBeCloseTo(degrees, 5);
    }
  const value = (text: string, way: AngleWay) => {
    const typed = typedAngleIn(text, way);
    return typed.ok ? typed.value : typed.message;
  };
  expect(value('6', 'half')).toBe(6);
  expect(value('6', 'included')).toBe(3);
  expect(value('0.6', 'foot')).toBeCloseTo(halfAngleOfTaper(0.05), 12);
  expect(value('20', 'ratio')).toBeCloseTo(halfAngleOfTaper(0.05), 12);
  expect(value('-20', 'ratio')).toBeCloseTo(-halfAngleOfTaper(0.05), 12);
  expect(value('0', 'ratio')).toBe(0);
  // A fraction is one of an inch where tapers are said per foot, as lengths beside it are, and 1 in so many elsewhere.
  for (const text of [
    '3/4',
    ' 3/4 ',
    '.75',
    '3/4 in/ft',
    '3/4 tpf',
    '3/4"/ft',
    '3/4 per foot',
    '3/4 in per foot',
    '0.75 in. per ft',
  ])
    expect(value(text, 'foot'), text).toBeCloseTo(halfAngleOfTaper(0.0625), 12);
  expect(value('1 1/2', 'foot')).toBeCloseTo(halfAngleOfTaper(0.125), 12);
  expect(value('-3/4', 'foot')).toBeCloseTo(-halfAngleOfTaper(0.0625), 12);
  expect(value('3/4 in/ft', 'half')).toBe(value('3/4', 'foot'));
  expect(value('1/20', 'ratio')).toBeCloseTo(halfAngleOfTaper(0.05), 12);
  for (const text of ['3/0', '1/2/3', '3/', '3/4 in/m', '1.5/4 in/ft'])
    expect(value(text, 'foot'), text).toMatch(/^found/);
  // Degrees are half angles where tapers are said; what has a unit of its own means that.
  expect(value('3°', 'ratio')).toBe(3);
  expect(value('3°', 'foot')).toBe(3);
  expect(value('6°', 'included')).toBe(3);
  expect(value('1:20', 'included')).toBe(value('20', 'ratio'));
  expect(value('6 incl', 'ratio')).toBe(3);
  // What is said beside the number counts before how angles are said.
  for (const way of ['half', 'included', 'foot', 'ratio'] as const) {
    expect(value('3 half', way), way).toBe(3);
    expect(value('6 included', way), way).toBe(3);
  }
  expect([angleSaid(3, 'half'), angleSaid(3, 'included'), angleSaid(0, 'ratio')]).toEqual([
    '3.0°',
    '6.0° incl',
    '0.0°',
  ]);
  expect([angleSaid(-3, 'ratio'), angleSaid(3, 'foot')]).toEqual(['1:9.5406', '1.25779 in/ft']);
  // What is too steep for a taper is a half angle and says so; a number alone that would be so steep is asked again.
  expect((['foot', 'ratio'] as const).map((way) => angleSaid(-45, way))).toEqual(['45.0° half', '45.0° half']);
  expect(angleIn(-45, 'foot')).toBe('−45.0° half');
  expect(angleSaid(45, 'included')).toBe('90.0° incl');
  expect(value('45', 'foot')).toBe('found 45, steep for a taper: write 45° for a half angle, or 45 in/ft');
  expect(value('1', 'ratio')).toBe('found 1, steep for a taper: write 1° for a half angle, or 1:1');
  expect(value('45°', 'foot')).toBe(45);
  expect(value('24 in/ft', 'foot')).toBeCloseTo(45, 12);
  expect(value('1:.5', 'ratio')).toBeCloseTo(45, 12);
  expect(angleOffSaid(45, 1 / 60, 'foot')).toBe(angleOffSaid(45, 1 / 60, 'half'));
  expect(value('cone', 'foot')).toMatch(/^found "cone"/);
  expect(angleIn(3, 'included')).toBe('6.0° incl');
  expect(angleIn(halfAngleOfTaper(0.05), 'ratio')).toBe('1:20');
  expect(angleIn(halfAngleOfTaper(0.05), 'foot')).toBe('0.60 in/ft');
});

test('limits are told where one side is longer by far, or where a ± would lie on both sides of nought and they do not', () => {
  const told = (mm: number, sigma: number, limits?: [number, number]) => doubtedText(mm, sigma, 'metric', limits);
  expect(told(0.0765, 0.0021)).toBe('76.5 ± 4.1 µm');
  expect(told(0.0765, 0.0021, [0.0724, 0.0806])).toBe('76.5 ± 4.1 µm');
  // 78 − 2 = 76 against 209 − 78 = 131
  expect(told(0.078, 0.058, [0.002, 0.209])).toBe('78 (2 to 209) µm');
  // 42 of 0.1 to 106: hardly to one side, but nothing of it is below nought.
  expect(told(0.042, 0.0316, [0.0001, 0.106])).toBe('42 (0 to 106) µm');
  expect(told(0.042, 0.0316, [-0.01, 0.106])).toBe('42 ± 62 µm');
  expect(told(0.042, 0.02, [0.003, 0.081])).toBe('42 ± 39 µm');
});
