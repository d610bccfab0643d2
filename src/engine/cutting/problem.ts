/**
 * What may be cut off the parts: amounts x, the normal stock of every surface, both of each seat, and the metal off
 * each face (below 0: put on, by a thicker spacer). Surfaces that may not be cut have room from 0 to 0.
 */
import type { Metres } from '../../design/dimension.ts';
import type { SeatInput, Stretch } from '../contact/fit.ts';
import { withMetalOff } from '../parts/asTheyStand.ts';
import type { Part } from '../parts/line.ts';
import { renewed } from '../parts/stock.ts';
import { cleanUp } from './feeds.ts';

/** Stock less than this (m) is no step: no machine takes it off, and no gauge sees it (format of the file). */
export const NO_STEP = 5e-8;

/** A surface that may be cut. */
export interface Allowed {
  seat: number;
  part: Part;
  /** least and greatest normal stock (m) */
  cleanup: number;
  limit: number;
  /** cut to a straight new line at this half angle (rad) instead of following the old one */
  renew?: number;
}

/** A face or spacer: metal off it moves the part of these seats along the axis. */
export interface Face {
  name: string;
  part: Part;
  seats: readonly number[];
  /** 1 toward the nose, -1 toward the rear, as metal comes off */
  moves: 1 | -1;
  /** m */
  cleanup: number;
  limit: number;
  /** greatest that may be put on (m), by a thicker spacer or a shim */
  add: number;
}

export interface Preferences {
  /** stock off this part counts twice (programme.ts) */
  spare?: Part;
  /** only one part is cut */
  oneSetUp?: boolean;
  /** the journal stays where it is, as nearly as may be: its move counts too (programme.ts) */
  keepPosition?: boolean;
}

export interface PlanInput {
  seats: readonly SeatInput[];
  /** m, of the journal now */
  position: Metres;
  allow: readonly Allowed[];
  faces?: readonly Face[];
  /** positions (m) that adjuster and shoulders let the journal have */
  reach?: Stretch;
  /** share of every film's tolerance that may be used: a film misses only beyond it; 0 when left out */
  share?: number;
  prefer?: Preferences;
}

type Cuttable = { kind: 'surface'; seat: number; part: Part } | { kind: 'face'; face: number };

/** Room of one amount (m). */
export interface Room {
  of: Cuttable;
  least: number;
  most: number;
}

/** A plan's question made ready: renewed surfaces straight, room for every amount. */
export interface Problem {
  input: PlanInput;
  /** the parts with nothing off yet, renewed surfaces already on their new line */
  base: SeatInput[];
  rooms: Room[];
}

export const PARTS: readonly Part[] = ['journal', 'bush'];

export function problemOf(input: PlanInput): Problem {
  const base = input.seats.map((seat) => ({ ...seat }));
  const rooms: Room[] = [];
  for (const [seat, old] of input.seats.entries()) {
    for (const part of PARTS) {
      const allowed = input.allow.find((a) => a.seat === seat && a.part === part);
      let least = allowed?.cleanup ?? 0;
      if (allowed?.renew !== undefined) {
        base[seat]![part] = renewed(old[part], allowed.renew);
        least = Math.max(least, cleanUp(old[part], base[seat]![part], part));
      }
      rooms.push({ of: { kind: 'surface', seat, part }, least, most: allowed?.limit ?? 0 });
    }
  }
  for (const [face, { cleanup, limit, add }] of (input.faces ?? []).entries()) {
    rooms.push({ of: { kind: 'face', face }, least: add > 0 ? -add : cleanup, most: limit });
  }
  return { input, base, rooms };
}

/** The parts with the amounts taken off. */
export function cutParts({ base, rooms, input }: Problem, amounts: readonly number[]): SeatInput[] {
  return withMetalOff(
    base,
    rooms.map(({ of }, k) =>
      of.kind === 'surface'
        ? { of: 'surface', seat: of.seat, part: of.part, normal: amounts[k]! }
        : { of: 'face', ...input.faces![of.face]!, normal: amounts[k]! },
    ),
  );
}
