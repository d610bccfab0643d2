/** A part that stands elsewhere along the axis. */

/** What of a surface stands at a place along the axis, all in one unit of length. */
interface AlongAxis {
  station: number;
  from: number;
  to: number;
  profile?: readonly (readonly [z: number, deviation: number])[] | undefined;
}

/** The surface moved along the axis by a distance: its part stands there after a face or spacer was cut. */
export function movedAxially<S extends AlongAxis>(surface: S, distance: number): S {
  if (distance === 0) return surface;
  const { station, from, to, profile } = surface;
  return {
    ...surface,
    station: station + distance,
    from: from + distance,
    to: to + distance,
    ...(profile && { profile: profile.map(([z, d]) => [z + distance, d]) }),
  };
}
