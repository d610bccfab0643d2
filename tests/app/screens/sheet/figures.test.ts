/** Figures on paper: the person's unit, as many decimals as count, and enough of them to make the part. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { angleToleranceText, angleZoneText, coneText, hasSymbol } from '../../../../src/app/screens/sheet/coneTexts.ts';
import { diameterText, endText, exactText, stopText, zoneText } from '../../../../src/app/screens/sheet/figures.ts';
import { parseDesign } from '../../../../src/design/parse.ts';
import { divisionText } from '../../../../src/design/tools.ts';
import { ANGLE_WAYS, atLeastText, typedHalfAngle } from '../../../../src/design/units.ts';
import { tolerancedSurfaces } from '../../../../src/report/sheet/tolerancedSurfaces.ts';

test('metric dimensions keep the nought before the point, inch dimensions have none, and as many decimals as their tolerance', () => {
  expect(diameterText(22, 0.0005, 'metric')).toBe('⌀22.0000 ±0.0005');
  expect(diameterText(23.78353, 0.000707, 'metric')).toBe('⌀23.7835 ±0.0007');
  expect(diameterText(22, 0.0005, 'inch')).toBe('⌀.866142 ±.000019');
  expect(diameterText(38.1, 0.00254, 'inch')).toBe('⌀1.50000 ±.00010');
  expect(diameterText(22, null, 'metric')).toBe('⌀22.0000');
  expect([exactText(1.2, 'metric'), exactText(-0.508, 'inch'), exactText(0, 'inch')]).toEqual(['1.2', '−.02', '0']);
  expect([endText(-26, 'metric'), endText(-26, 'inch'), endText(-0.001, 'metric')]).toEqual(['−26', '−1.024', '0']);
});

test('a tolerance is never rounded up, and loses no more than a tenth', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 2.6e-4, max: 0.1, noNaN: true }),
      fc.constantFrom('metric' as const, 'inch' as const),
      (tolerance, system) => {
        const told = Number(zoneText(tolerance, system)) * (system === 'inch' ? 25.4 : 1);
        expect(told).toBeLessThanOrEqual(tolerance * (1 + 1e-3));
        expect(told).toBeGreaterThanOrEqual(0.895 * tolerance);
      },
    ),
    { seed: 6 },
  );
  expect(angleZoneText(2.19 / 3600)).toBe('2.1″');
  expect(angleZoneText(0.12)).toBe('432″');
  expect(angleZoneText(0.11999)).toBe('431″');
  expect(angleZoneText(1.00009)).toBe('1.0°');
});

test('a stop reading has as many decimals as its tolerance', () => {
  expect(stopText(32.66263, 0.0005, 'metric')).toBe('32.6626 mm');
  expect(stopText(32.66263, 0.0005, 'inch')).toBe('1.285930 in');
  expect(stopText(32.66263, null, 'inch')).toBe('1.28593 in');
});

test('a dial keeps the divisions of the system it is made in; lengths that may be more are rounded up', () => {
  expect([
    divisionText(0.005, 'metric'),
    divisionText(0.005, 'inch'),
    divisionText(0.0254, 'inch'),
    divisionText(0.00127, 'metric'),
  ]).toEqual(['5.00 µm', '5.00 µm', '10.00 tenths', '0.50 tenths']);
  expect([atLeastText(60.2, 'metric'), atLeastText(60.2, 'inch')]).toEqual(['61 mm', '2.4 in']);
});

/** A figure without its sign of a diameter, in mm. */
const mmOf = (text: string, system: 'metric' | 'inch') =>
  Number(text.replace('⌀', '').replace('−', '-')) * (system === 'inch' ? 25.4 : 1);

/** The half angle (radians) a drawing tells, however it is said. */
function toldAngle(text: string, sign: number): number {
  const [, word, figure = '0'] = /^(half angle|included angle|taper) ([\d.:]+(?:°| in\/ft)?)/.exec(text) ?? [];
  const typed = typedHalfAngle(word === 'included angle' ? `${figure} incl` : figure);
  if (!typed.ok) throw new Error(text);
  return (sign * typed.value * Math.PI) / 180;
}

const folder = join(import.meta.dirname, '../../../../assets/designs');

test.each(readdirSync(folder))(
  'what stands on the drawing of %s makes the part again, in both systems, to a tenth of its tolerance',
  (file) => {
    const read = parseDesign(readFileSync(join(folder, file), 'utf8'));
    if (!read.ok) throw new Error(file);
    for (const system of ['metric', 'inch'] as const) {
      for (const surface of tolerancedSurfaces(read.design, read.design.position ?? 0, [], system)) {
        const own = read.design.seats.find(({ name }) => name === surface.seat)![surface.part];
        const plane = mmOf(exactText(surface.gaugePlane, system), system);
        const [size] = diameterText(surface.diameter, surface.diameterTolerance, system).split(' ');
        const angles = ANGLE_WAYS.map((way) =>
          toldAngle(angleToleranceText(surface, system, way), Math.sign(own.halfAngle)),
        );
        expect(plane).toBeGreaterThanOrEqual(own.from - 1e-6);
        expect(plane).toBeLessThanOrEqual(own.to + 1e-6);
        for (const z of [own.from, own.to]) {
          const drawn = own.diameter / 2 + (z - own.station) * Math.tan((own.halfAngle * Math.PI) / 180);
          for (const angle of angles) {
            const made = mmOf(size!, system) / 2 + (z - plane) * Math.tan(angle);
            expect(Math.abs(made - drawn), `${surface.seat} ${surface.part} at ${z}`).toBeLessThan(
              (surface.diameterTolerance ?? 0.001) / 10,
            );
          }
        }
        // Ends carry no tolerance: what is told of them is enough to face a shoulder by.
        expect(Math.abs(mmOf(endText(own.from, system), system) - own.from)).toBeLessThan(0.013);
        expect(Math.abs(mmOf(endText(own.to, system), system) - own.to)).toBeLessThan(0.013);
      }
    }
  },
);

test('one angle carries the tolerance; what follows from it stands in brackets; a straight surface is told by its ends', () => {
  const surface = {
    seat: 'a',
    part: 'journal' as const,
    gaugePlane: 0,
    diameter: 22,
    diameterTolerance: null,
    from: -26,
    to: 0,
    halfAngle: 3,
    halfAngleTolerance: 2.19 / 3600,
    form: null,
    runOut: null,
    straight: false,
    taperOver: 0,
    taper: 9.54,
    cut: null,
    asMeasured: false,
    assumed: { diameter: false, halfAngle: false, from: false, to: false },
  };
  expect(angleToleranceText(surface, 'metric', 'half')).toBe('half angle 3.0° ±2.1″');
  expect(coneText(surface, 'metric', 'half')).toBe('(1:9.541)');
  expect(coneText(surface, 'inch', 'half')).toBe('(1.2578 in/ft)');
  expect(coneText({ ...surface, halfAngle: -45 }, 'metric', 'half')).toBe('');
  expect(coneText({ ...surface, halfAngle: -45 }, 'metric', 'included')).toBe('(45.0° half)');
  // However it is said, the same cone and the same zone: 2·2.19″; 24 in·2.19″/cos² 3°; 2.19″/(2·sin² 3°), rounded down.
  const said = (['included', 'foot', 'ratio'] as const).map((way) => angleToleranceText(surface, 'metric', way));
  expect(said).toEqual(['included angle 6.0° ±4.3″', 'taper 1.25779 in/ft ±0.00025 in/ft', 'taper 1:9.5406 ±0.0019']);
  expect(coneText(surface, 'metric', 'foot')).toBe('(3.0° half)');
  // Straight to any gauge, or to what it differs from end to end: no taper, no symbol of one.
  const straight = { ...surface, halfAngle: -0.0052, straight: true, taper: null };
  expect([
    coneText({ ...straight, taperOver: 2e-5 }, 'inch', 'half'),
    coneText({ ...straight, taperOver: 0.00346 }, 'inch', 'half'),
  ]).toEqual(['straight', 'straight to 1.36 tenths']);
  expect([hasSymbol(straight, 'half'), hasSymbol(surface, 'half'), hasSymbol(surface, 'foot')]).toEqual([
    false,
    true,
    false,
  ]);
  // 2·26 mm·tan(2.19″)
  expect(angleToleranceText({ ...surface, halfAngle: 0, straight: true, taper: null }, 'metric', 'half')).toBe(
    `⌀ even to ${zoneText(2 * 26 * Math.tan(((2.19 / 3600) * Math.PI) / 180), 'metric')}`,
  );
});
