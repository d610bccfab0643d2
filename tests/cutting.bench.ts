import { readFileSync } from 'node:fs';
import { bench, describe } from 'vitest';
import type { Design } from '../src/design/definition.ts';
import { parseDesign } from '../src/design/parse.ts';
import type { SeatInput } from '../src/engine/contact/fit.ts';
import { lapped } from '../src/engine/cutting/lapping.ts';
import { planCut } from '../src/engine/cutting/plan.ts';
import { offCentreSurface } from '../src/engine/parts/offCentre.ts';
import { toSeats } from '../src/report/convert.ts';
import { cutSection } from '../src/report/cut/section.ts';

function demo(name: string): Design {
  const parsed = parseDesign(readFileSync(new URL(`../assets/designs/${name}.conepair.json`, import.meta.url), 'utf8'));
  if (!parsed.ok) throw new Error('the demo is not a valid design');
  return parsed.design;
}

const design = demo('steep-first');
const seats = toSeats(design);
const everything = (of: readonly SeatInput[], limit: number) =>
  of.flatMap((_, seat) => (['journal', 'bush'] as const).map((part) => ({ seat, part, cleanup: 0, limit })));
/** Eight cones of alternate half angles, the most a design holds. */
const eight = Array.from({ length: 8 }, (_, i) => ({ ...seats[i % 2]!, name: `${i}`, target: 2.5e-6 + i * 1e-7 }));
/** The demo with a measured line of 2000 points on every surface. */
const measured = seats.map((seat) => {
  const line = (s: SeatInput['bush']) => ({
    ...s,
    profile: Array.from(
      { length: 2000 },
      (_, i) => [s.from + ((s.to - s.from) * i) / 1999, 5e-7 * Math.sin(i / 90) + 1e-8 * Math.sin(i * i)] as const,
    ),
  });
  return { ...seat, journal: line(seat.journal), bush: line(seat.bush) };
});

describe('plan', () => {
  bench('the first demo, every surface', () => {
    planCut({ seats, position: 0, allow: everything(seats, 1e-4) });
  });
  bench('eight seats, every surface', () => {
    planCut({ seats: eight, position: 0, allow: everything(eight, 1e-3) });
  });
  bench('eight seats, no room: why not', () => {
    planCut({ seats: eight, position: 0, allow: everything(eight, 1e-6) });
  });
  bench('two seats, 2000 points on each line', () => {
    planCut({ seats: measured, position: 0, allow: everything(measured, 1e-3) });
  });
});

describe('the rest', () => {
  bench('the whole section of the first demo', () => {
    cutSection(design);
  });
  bench('a hollow flank of 0.2 mm off the centre', () => {
    offCentreSurface(seats[1]!.journal, 'journal', 2e-3, 2e-4);
  });
  bench('lapping over 30 µm of travel in 150 steps', () => {
    lapped(seats, {
      force: 20,
      coefficient: { journal: 1e-12, bush: 4e-12 },
      step: 2e-7,
      advance: 3e-5,
      bearing: 0.8,
      limit: 1e-4,
    });
  });
});
