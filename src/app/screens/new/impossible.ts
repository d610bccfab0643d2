/** Sizes on the drawing that no spindle can have together, with the fields they stand in (practice, no source). */
import type { Millimetres } from '../../../design/dimension.ts';
import { fine } from '../../../design/rounded.ts';
import { lengthText, type System, THOU } from '../../../design/units.ts';
import { radians } from '../../../report/convert.ts';
import type { Arrangement, SeatPlan } from './arrangements.ts';
import { type Ask, idOf, insetOf } from './newDesign.ts';

export interface Impossible {
  /** fields that do not go together */
  ids: readonly string[];
  text: string;
  /** no job can be started so; else it is odd, and only told */
  stops: boolean;
}

/** A bore so much larger than its journal, as a share of it, is that of another seat. */
const WIDEST = 0.05;
/** mm: less is rounding of what was typed, no step in the metal. */
const SAME = 1e-6;

/** A seat in figures, mm; what it needs of the others is beside it. */
interface Seat {
  plan: SeatPlan;
  large: number;
  small: number;
  bore: number;
  boreSmall: number;
  /** the bush itself ends a little within its journal: its bore at its small end, and at its large one */
  bushSmall: number;
  bushLarge: number;
  length: number;
  tangent: number;
  ids(...asks: Ask[]): string[];
}

export function impossibleIn(
  { seats }: Arrangement,
  sizes: Readonly<Record<string, number>>,
  system: System,
): Impossible[] {
  const told = (mm: Millimetres) => lengthText(fine(mm, system), system);
  const all = seats.map((plan) => seatOf(plan, sizes, system));
  return all.flatMap((seat, i) => {
    const own = ownFault(seat, told);
    const behind = all[i - 1];
    if (own) return [own];
    return behind && pointed(behind) === false ? (betweenFault(behind, seat, told, system) ?? []) : [];
  });
}

function seatOf(plan: SeatPlan, sizes: Readonly<Record<string, number>>, system: System): Seat {
  const of = (ask: Ask) => sizes[idOf(plan, ask)] ?? 0;
  const tangent = plan.halfAngle === 0 ? 0 : Math.tan(radians(of('angle')));
  const [large, bore, length] = [of('diameter'), of('bore'), of('length')];
  const taper = 2 * length * tangent;
  const within = 2 * insetOf(length, system) * tangent;
  const [small, boreSmall] = [large - taper, bore - taper];
  const ids = (...asks: Ask[]) => asks.map((ask) => idOf(plan, ask)).filter((id) => id in sizes);
  const [bushSmall, bushLarge] = [boreSmall + within, bore - within];
  return { plan, large, small, bore, boreSmall, bushSmall, bushLarge, length, tangent, ids };
}

const pointed = ({ small, boreSmall }: Seat) => small <= 0 || boreSmall <= 0;
const capital = (text: string) => `${text[0]!.toUpperCase()}${text.slice(1)}`;
type Told = (mm: Millimetres) => string;

/** Of the seat by itself. */
function ownFault(seat: Seat, told: Told): Impossible | null {
  const { plan, large, bore, length, tangent, ids } = seat;
  const name = capital(plan.title);
  if (pointed(seat))
    return {
      ids: ids('diameter', 'bore', 'angle', 'length'),
      text: `${name}: ${told(Math.min(large, bore))} at its large end, it comes to a point within its length of ${told(length)}. Make it larger, shorter or less steep.`,
      stops: true,
    };
  const ends = ids('diameter', 'bore');
  if (tangent === 0) {
    if (bore <= large + SAME)
      return {
        ids: ends,
        text: `${name}: a journal of ${told(large)} does not go into a bore of ${told(bore)}.`,
        stops: true,
      };
    if (bore - large > WIDEST * large)
      return {
        ids: ends,
        text: `${name}: a bore of ${told(bore)} is none that a journal of ${told(large)} runs in.`,
        stops: true,
      };
    return null;
  }
  const off = (bore - large) / 2 / tangent;
  if (Math.abs(off) < length) return null;
  return {
    ids: [...ends, ...ids('angle', 'length')],
    text: `${name}: with a journal of ${told(large)} and a bore of ${told(bore)} the two would stand ${told(Math.abs(off))} apart along the axis, more than the seat is long (${told(length)}).`,
    stops: true,
  };
}

/**
 * Of a seat and the next one behind it. Cones that meet in one diameter are how such spindles are drawn; what cannot be
 * is a journal that is thinner in front than behind where the front bush bears, and a lip in the bore before a wider
 * one.
 */
function betweenFault(behind: Seat, front: Seat, told: Told, system: System): Impossible | null {
  if (front.plan.halfAngle <= 0 || behind.plan.halfAngle < 0) return null;
  const cones = behind.plan.halfAngle > 0;
  if (cones && behind.tangent >= front.tangent)
    return {
      ids: [...behind.ids('angle'), ...front.ids('angle')],
      text: `${capital(behind.plan.title)}: no shallower than the ${front.plan.title} in front of it. The two may be exchanged, or an angle meant otherwise than it is said here (half, included).`,
      stops: true,
    };
  const step = cones ? (thinnerInFront(behind, front, told, system) ?? lipped(behind, front, told, system)) : null;
  if (step) return step;
  if (behind.large < front.bushSmall) return null;
  return {
    ids: [...behind.ids('diameter'), ...front.ids('bore', 'angle', 'length')],
    text: `${capital(behind.plan.title)}: a journal of ${told(behind.large)} does not pass through the ${front.plan.title} in front of it, ${told(front.bushSmall)} at its small end, unless it is a sleeve put on from the rear.`,
    stops: false,
  };
}

/** A front cone so long that its small end is thinner than the cone it follows on: where it would just meet it. */
function thinnerInFront(behind: Seat, front: Seat, told: Told, system: System): Impossible | null {
  if (front.small >= behind.large - SAME) return null;
  const longest = down((front.large - behind.large) / (2 * front.tangent), COARSE[system]);
  const larger = `make its large end ${told(up(behind.large + front.large - front.small, COARSE[system]))}`;
  return {
    ids: [...front.ids('diameter', 'angle', 'length'), ...behind.ids('diameter')],
    text: `${capital(front.plan.title)}: ${told(front.small)} at its small end, thinner than the ${behind.plan.title} behind it, ${told(behind.large)} at its large end. ${longest > 0 ? `Shorten it to ${told(longest)}, or ${larger}` : capital(larger)}.`,
    // Where only the edge beyond its bush is thinner there is a groove, and the seat is what it was.
    stops: front.bushSmall < behind.large,
  };
}

/** A bore that opens again behind the front bush's small end. */
function lipped(behind: Seat, front: Seat, told: Told, system: System): Impossible | null {
  if (front.bushSmall >= behind.bushLarge - SAME) return null;
  const most = down(front.bushSmall + behind.bore - behind.bushLarge, COARSE[system] / 10);
  return {
    ids: [...behind.ids('bore'), ...front.ids('bore', 'angle', 'length')],
    text: `${capital(front.plan.title)}: its bush is ${told(front.bushSmall)} at its small end, narrower than the bore of ${told(behind.bore)} of the ${behind.plan.title} behind it. Make that bore ${told(most)} at most, or the ${front.plan.title} shorter.`,
    stops: true,
  };
}

/** What a person is told to type is a round figure, mm, on the safe side. */
const COARSE: Record<System, number> = { metric: 0.01, inch: THOU };
const down = (mm: number, step: number) => step * Math.floor(mm / step + 1e-6);
const up = (mm: number, step: number) => step * Math.ceil(mm / step - 1e-6);
