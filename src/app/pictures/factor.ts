/** With which factor a pair is drawn: the greatest that the picture holds, and what is left of it under the hand. */
import type { Metres } from '../../design/dimension.ts';
import type { SeatLines } from '../../report/inFrame.ts';
import { type Ground, groundOf, heightOf, type SeatMap } from './drawnMap.ts';
import type { Leaning } from './leaning.ts';

/** The largest gap drawn, as a share of the smallest radius: on one axis, and pulled aside. */
export const LARGEST_GAP = 0.4;
const PULLED_GAP = 0.85;
/** How far the journal is drawn along the axis from where its first seat touches, as a share of the bush's length. */
export const LARGEST_MOVE = 0.4;
/** The share it never passes: held on while a hand presses it in, it goes ever slower past LARGEST_MOVE. */
const FARTHEST = 0.6;

/**
 * The greatest factor up to the one asked for at which the picture still holds the gaps. `reach`: positions (m) a hand
 * may take the journal to with the same factor; no line may come through the axis there.
 */
export function factorFor(
  seats: readonly SeatLines[],
  position: Metres,
  asked: number,
  leaning: Leaning | null = null,
  reach: readonly number[] = [],
  ground: Ground = groundOf(seats),
): number {
  const { maps, home } = ground;
  const smallest = Math.min(...seats.flatMap((seat) => [...seat.bush.r, ...seat.journal.r]));
  // A journal that is pulled aside opens one side as it closes the other: room for that is left beforehand.
  const room = leaning?.pulled ? PULLED_GAP : LARGEST_GAP;
  const gaps = seats.map((seat, i) => deepest(seat, i, maps[i]!, position, leaning));
  // Of a steep seat the gap is drawn along the axis. Between two positions no gap is deeper than at both.
  const across = seats.flatMap((seat, i) => {
    const map = maps[i]!;
    return map.d[1] === 0 ? [] : reach.map((to) => -map.d[1] * deepest(seat, i, map, to, leaning));
  });
  const most = Math.min(
    (room * smallest) / Math.max(...gaps, 1e-12),
    smallest / Math.max(...across, 1e-12) / 1.1,
    (LARGEST_MOVE * lengthOf(seats)) / Math.max(Math.abs(position - home), 1e-12),
  );
  return Math.max(1, Math.min(asked, most));
}

/** m: the bush from its first seat's rear to its last one's nose */
function lengthOf(seats: readonly SeatLines[]): Metres {
  const stations = seats.flatMap(({ bush }) => [bush.z[0]!, bush.z[bush.z.length - 1]!]);
  return Math.max(...stations) - Math.min(...stations);
}

/**
 * A factor held while a hand presses the journal in until it would be drawn clean through its bush: the farther, the
 * less is left of it, by the place alone. With d how far the journal has gone in beyond its first touch, n the factor
 * held, l and m the moves full and farthest; drawn n·d up to l, then m − (m − l)·exp(−(n·d − l)/(m − l)).
 * That rises and is hollow downward, so the factor (drawn over d) falls; a seat that touches d′ farther in has of it
 * sin α·(d′ − d), of which (d′ − d)/d falls too: whatever closes or sinks deeper is drawn so.
 * @source derived
 */
export function sunkFactor(
  seats: readonly SeatLines[],
  position: Metres,
  held: number,
  ground: Ground = groundOf(seats),
): number {
  const gone = ground.home - position;
  // A seat that opens as the others close would be drawn closing.
  if (gone <= 0 || ground.maps.some(({ sin }) => sin < 0)) return held;
  const [full, most] = [LARGEST_MOVE, FARTHEST].map((share) => share * lengthOf(seats)) as [number, number];
  const past = held * gone - full;
  return past <= 0 ? held : (most - (most - full) * Math.exp(-past / (most - full))) / gone;
}

/** The largest gap, or depth pressed in (m), of a seat anywhere round it. */
function deepest({ gap }: SeatLines, index: number, map: SeatMap, position: Metres, leaning: Leaning | null): number {
  let most = 0;
  for (let i = 0; i < gap.bush.u.length; i++)
    most = Math.max(
      most,
      Math.abs(map.v0 - heightOf(map, gap.bush.u[i]!, gap.bush.v[i]!)) + (leaning?.most(index, gap.bush.u[i]!) ?? 0),
    );
  for (let i = 0; i < gap.journal.u.length; i++)
    most = Math.max(
      most,
      Math.abs(map.v0 - heightOf(map, gap.journal.u[i]!, gap.journal.v[i]!) + position * map.sin) +
        (leaning?.most(index, gap.journal.u[i]! + position * map.bush.cos) ?? 0),
    );
  return most;
}
