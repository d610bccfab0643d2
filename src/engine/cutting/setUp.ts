/**
 * How every angle should be set, so that all errors of the set-up together leave the film its tolerance.
 *
 *   room² = max(left² - Σ others², (left/3)²)/k              left = tolerance - |film - target|
 *                                            what the angle of one surface may cost the film, if it is to be likely
 *                                            (root of the sum of squares) that the tolerance holds; and where others
 *                                            use it up, a third of the tolerance, which adds a twentieth to what there
 *                                            is: then it is not the angle that breaks it
 *   reading that does   δ ≤ T·√(room² - miss²)/p        over the travel T, along a sine bar
 *   travel that does    T ≥ δ·p/√(room² - miss²)         with the least reading δ
 *
 * others: contributions of the seat that have nothing to do with setting an angle (errorBudget.ts) · k surfaces of the
 * seat that are cut · p film per error of the angle (m/rad) · miss: film that the blocks' own miss costs (m). A way is
 * enough where its film is within the room. Recommended: the person's own way where it is enough, else the one that
 * costs the film least. The budget counts with the person's own way, or without one with that which costs least.
 * @source derived; practice (the third)
 */
import type { Metres } from '../../design/dimension.ts';
import { leastFilm } from '../contact/film.ts';
import { type SeatInput, seatLines } from '../contact/fit.ts';
import { type AngleSetting, type AngleTools, angleSetting, type Way, type WayToSet } from './angleSetting.ts';
import {
  type Budget,
  budgetOf,
  type Contribution,
  contributionsOf,
  type SetUpErrors,
  type SurfaceCut,
} from './errorBudget.ts';

export interface SurfaceSetUp extends Omit<AngleSetting, 'ways'> {
  gauged: number;
  /** film (m) that the angle may cost; null without a tolerance, or where the plan itself is out of it */
  room: number | null;
  ways: (WayToSet & { enough: boolean | null })[];
  /** the way to set it; null where none is enough */
  recommended: Way | null;
  /** the way the budget counts with */
  used: Way;
  /**
   * what would be enough along a sine bar: least reading (m) over the travel there is, travel (m) with the reading
   * there is; null where nothing is
   */
  needed: { indicator: Metres; travel: number } | null;
  /** film (m) that the blocks' miss costs; null without a stack */
  blocksFilm: number | null;
}

interface SetUps {
  surfaces: SurfaceSetUp[];
  budget: Budget;
}

/**
 * @param cuts the surfaces that are cut
 * @param errorsOf the errors of the set-up by surface, the angle's left out
 * @param own the way the person sets angles by; null: none chosen
 */
export function setUpsOf(
  seats: readonly SeatInput[],
  position: Metres,
  cuts: readonly SurfaceCut[],
  tools: AngleTools,
  errorsOf: (cut: SurfaceCut) => Omit<SetUpErrors, 'angle' | 'way'>,
  own: Way | null,
): SetUps {
  const settings = cuts.map((cut) => angleSetting(seats, position, cut.seat, cut.part, cut.gauged, tools));
  // An angle of no error, by a way that is not told by a reading, leaves what else there is.
  const others = cuts.flatMap((cut) =>
    contributionsOf(seats, position, cut, { ...errorsOf(cut), angle: 0, way: 'alongBar' }),
  );
  const surfaces = settings.map((setting, i): SurfaceSetUp => {
    const { gauged } = cuts[i]!;
    const room = setting.stands === null ? null : roomFor(seats[setting.seat]!, position, setting.seat, others, cuts);
    const ways = setting.ways.map((way) => ({ ...way, enough: room === null ? null : way.film <= room }));
    const finest = ways.reduce((a, b) => (b.film < a.film ? b : a));
    const chosen = ways.find(({ way }) => way === own);
    const recommended = chosen && chosen.enough !== false ? chosen : finest.enough !== false ? finest : null;
    const { blocks, perAngle, halfAngle } = setting;
    const blocksFilm =
      blocks.kind === 'stack' ? (Math.abs(blocks.error) / (tools.bar * Math.cos(halfAngle))) * perAngle : null;
    return {
      ...setting,
      gauged,
      room,
      ways,
      recommended: recommended?.way ?? null,
      used: (chosen ?? finest).way,
      needed: neededFor(room, blocksFilm ?? 0, perAngle, tools),
      blocksFilm,
    };
  });
  const contributions = cuts.flatMap((cut, i) => {
    const { ways, used } = surfaces[i]!;
    return contributionsOf(seats, position, cut, {
      ...errorsOf(cut),
      angle: ways.find(({ way }) => way === used)!.error,
      way: used,
    });
  });
  return { surfaces, budget: budgetOf(contributions) };
}

/** A contribution this many times less than the tolerance hardly shows among the others. */
const NEGLIGIBLE = 3;

function roomFor(
  pair: SeatInput,
  position: Metres,
  seat: number,
  others: readonly Contribution[],
  cuts: readonly SurfaceCut[],
): number {
  const spent = Math.hypot(...others.filter((c) => c.seat === seat).map(({ film }) => film));
  const shared = cuts.filter((cut) => cut.seat === seat).length;
  const { target = 0, tolerance = 0 } = pair;
  const most = Math.max(0, tolerance - Math.abs((leastFilm(seatLines(pair).gap, position) ?? target) - target));
  return Math.sqrt(Math.max(most ** 2 - spent ** 2, (most / NEGLIGIBLE) ** 2) / shared);
}

function neededFor(
  room: number | null,
  miss: number,
  perAngle: number,
  { travel, bar, indicator }: AngleTools,
): SurfaceSetUp['needed'] {
  if (room === null || room <= miss || perAngle === 0) return null;
  const rest = Math.sqrt(room * room - miss * miss) / perAngle;
  return { indicator: rest * Math.min(travel, bar), travel: indicator / rest };
}
