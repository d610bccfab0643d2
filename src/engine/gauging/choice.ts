/**
 * Which balls and rolls touch a surface where they should.
 *
 * A ball of diameter d touches a straight bore of half angle a at the radius (d/2)·cos a; a roll whose centre stands at
 * Z touches at Z + (d/2)·sin a (touching.ts). Two touches tell the angle the better the further apart they are, as long
 * as each stays clear of the ends, where edges are broken and lines fall away. So of what there is, the two that touch
 * nearest to a tenth from either end are chosen.
 * @source derived (the touch); practice (clear of the ends)
 */
import type { Metres } from '../../design/dimension.ts';
import type { SeatInput } from '../contact/fit.ts';
import { lineOf } from '../parts/line.ts';
import type { Fault } from './reading.ts';
import { predict } from './readings/index.ts';
import { ballIn, rollOn } from './touching.ts';

/** One ball or roll tried. */
export interface Tried {
  /** m */
  diameter: number;
  /** station of the touch (m); null where it touches nothing */
  station: Metres | null;
  /** the place of the touch along the line: 0 the rear end, 1 the nose end */
  share: number | null;
  /** station of the centre (m) */
  centre: number | null;
  /** why it will not do */
  fault: Fault | null;
}

/** How far from either end a touch should be, as a share of the line. */
const CLEAR = 0.1;

/** Every ball of a list in the bush of a seat. */
export function triedBalls(seats: readonly SeatInput[], seat: number, balls: readonly number[]): Tried[] {
  const bush = seats[seat]!.bush;
  const line = lineOf(bush, 'outside');
  return balls.map((diameter): Tried => {
    const { fault } = predict(
      { kind: 'ballDepth', seat, part: 'bush', ball: diameter, face: bush.to, value: 0, sigma: 1 },
      seats,
    );
    const touch =
      bush.halfAngle === 0 ? null : ballIn(line, diameter / 2, bush.halfAngle > 0 ? 'rearward' : 'noseward');
    return {
      diameter,
      fault,
      ...(touch
        ? { station: touch.station, centre: touch.centre, share: (touch.station - bush.from) / (bush.to - bush.from) }
        : NOWHERE),
    };
  });
}

/** Every roll of a list on the journal of a seat, its centre at each of the stations. */
export function triedRolls(
  seats: readonly SeatInput[],
  seat: number,
  rolls: readonly number[],
  stations: readonly number[],
): Tried[] {
  const journal = seats[seat]!.journal;
  const line = lineOf(journal, 'inside');
  return rolls.flatMap((diameter) =>
    stations.map((station): Tried => {
      const { fault } = predict(
        { kind: 'overRolls', seat, part: 'journal', roll: diameter, station, value: 0, sigma: 1 },
        seats,
      );
      const touch = rollOn(line, diameter / 2, station);
      return {
        diameter,
        fault,
        centre: station,
        ...(touch
          ? { station: touch.station, share: (touch.station - journal.from) / (journal.to - journal.from) }
          : { station: null, share: null }),
      };
    }),
  );
}

const NOWHERE = { station: null, centre: null, share: null };

/**
 * Of those without fault, the two that touch nearest to a tenth from either end; null where there are no two places.
 */
export function bestPair(tried: readonly Tried[]): [rear: Tried, nose: Tried] | null {
  const good = tried.filter((t): t is Tried & { share: number } => t.fault === null && t.share !== null);
  const nearest = (share: number) =>
    good.reduce<(Tried & { share: number }) | null>(
      (best, t) => (best === null || Math.abs(t.share - share) < Math.abs(best.share - share) ? t : best),
      null,
    );
  const [rear, nose] = [nearest(CLEAR), nearest(1 - CLEAR)];
  return rear && nose && nose.share > rear.share ? [rear, nose] : null;
}

/** Station (m) of the point of a resting ball that goes deepest into the bush: what must stay clear of a bottom. */
export const deepestOf = ({ centre, diameter }: Tried, closes: 'rearward' | 'noseward'): number | null =>
  centre === null ? null : centre - ((closes === 'rearward' ? 1 : -1) * diameter) / 2;
