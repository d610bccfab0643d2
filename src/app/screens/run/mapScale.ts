/**
 * One scale for the maps of all seats: its far end a round number in the person's unit, and where lines of equal value
 * are drawn.
 */
import { ticks } from 'd3-array';
import { unitOf } from '../../../design/measures.ts';
import { fineUnit, type System } from '../../../design/units.ts';
import type { RunFields } from '../../../report/film/fields.ts';
import { roundAbove } from '../../pictures/sceneGeometry.ts';
import { pressureColour } from './pressureColour.ts';
import type { Layer } from './SeatMap.tsx';

const LINES = 5;
const SHADES = 255;

export function mapScale(fields: RunFields, layer: Layer, system: System) {
  const unit = layer === 'pressure' ? unitOf('pressure', system).size : fineUnit(system).size;
  const greatest = fields.seats.reduce(
    (most, seat) => (layer === 'pressure' ? seat.pressure : seat.film).reduce((a, b) => Math.max(a, b), most),
    0,
  );
  // Never a scale of nothing: it would paint rounding.
  const max = roundAbove(Math.max(greatest / unit, 1e-3)) * unit;
  const least = fields.seats.reduce(
    (most, seat) => seat.film.reduce((a, b) => Math.min(a, b), most),
    Number.POSITIVE_INFINITY,
  );
  const levels =
    layer === 'pressure'
      ? Array.from({ length: LINES - 1 }, (_, i) => (max * (i + 1)) / LINES)
      : ticks(least / unit, greatest / unit, LINES).map((level) => level * unit);
  // Thousands of cells are coloured at every move of the hand; those of films are in filmMap.ts.
  const table = Array.from({ length: SHADES + 1 }, (_, i) => pressureColour((max * i) / SHADES, max));
  const colour = (pressure: number) => table[Math.min(SHADES, Math.max(0, Math.round((SHADES * pressure) / max)))]!;
  return { max, levels, colour };
}
