/**
 * A part warmed or cooled evenly and free to grow: every length from the axis and from where it is held becomes `times`
 * as long.
 *
 * times 1 + expansion·(T - T₀) · anchor (m) the station at which the part is held axially. A half angle does not
 * change. What this does
 * to a film, in closed form and to first order: heat/filmGrowth.ts.   @source derived (linear expansion)
 */
import type { Surface } from './line.ts';

export function grown(surface: Surface, times: number, anchor: number): Surface {
  const at = (z: number) => anchor + (z - anchor) * times;
  return {
    ...surface,
    radius: surface.radius * times,
    station: at(surface.station),
    from: at(surface.from),
    to: at(surface.to),
    profile: surface.profile.map(([z, d]) => [at(z), d * times] as const),
  };
}
