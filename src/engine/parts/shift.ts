/** A part that stands elsewhere along the axis. */
import type { Surface } from './line.ts';

/** The surface moved along the axis by a distance (m): its part stands there after a face or spacer was cut. */
export function movedAxially(surface: Surface, distance: number): Surface {
  if (distance === 0) return surface;
  return {
    ...surface,
    station: surface.station + distance,
    from: surface.from + distance,
    to: surface.to + distance,
    profile: surface.profile.map(([z, d]) => [z + distance, d] as const),
  };
}
