import { readFileSync } from 'node:fs';
import { bench, describe } from 'vitest';
import { parseDesign } from '../src/design/parse.ts';
import { type SeatInput, fit as solveFit } from '../src/engine/contact/fit.ts';
import { metres, toSeats } from '../src/report/convert.ts';

const parsed = parseDesign(
  readFileSync(new URL('../assets/designs/steep-first.conepair.json', import.meta.url), 'utf8'),
);
if (!parsed.ok) throw new Error('the demo is not a valid design');
const demo = toSeats(parsed.design);
const position = metres(parsed.design.position ?? 0);

/** The demo with a measured line on all four surfaces: waves of half a micrometre and a fixed, uneven roughness. */
function measured(points: number): SeatInput[] {
  const line = (surface: SeatInput['bush'], wave: number): SeatInput['bush'] => {
    const profile = Array.from({ length: points }, (_, i) => {
      const t = i / (points - 1);
      return [
        surface.from + t * (surface.to - surface.from),
        5e-7 * Math.sin(wave * t) + 1e-8 * Math.sin(i * i),
      ] as const;
    });
    return { ...surface, profile };
  };
  return demo.map((seat) => ({ ...seat, journal: line(seat.journal, 17), bush: line(seat.bush, 23) }));
}

describe('fit', () => {
  bench('the first demo', () => {
    solveFit(demo, position);
  });
  for (const points of [2_000, 4_000]) {
    const seats = measured(points);
    bench(`two seats, ${points} points on each line`, () => {
      solveFit(seats, position);
    });
  }
});
