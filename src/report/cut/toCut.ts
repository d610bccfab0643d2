/** The edge between the file's `cut` section and the engine, with every default. */
import type { Design, Part } from '../../design/definition.ts';
import { defaultAt } from '../../design/place.ts';
import { type AngleTools, DEFAULT_BLOCKS, type Way } from '../../engine/cutting/angleSetting.ts';
import type { SetUpErrors } from '../../engine/cutting/errorBudget.ts';
import type { Lap } from '../../engine/cutting/lapping.ts';
import type { PlanInput } from '../../engine/cutting/problem.ts';
import type { Machine } from '../../engine/cutting/steps.ts';
import type { Trial } from '../../engine/cutting/trial.ts';
import { BLOCK_SETS } from '../../engine/gauging/blockSets.ts';
import type { Tooling } from '../../engine/gauging/tooling.ts';
import { metres, millimetres, radians, toSeats, wearInMetres } from '../convert.ts';
import { freeOf } from '../play/toPlay.ts';
import { shopTools } from '../shopTools.ts';
import { FACE_SIGMA, surfaceSigma } from './metalDoubt.ts';
import { openTrials } from './openTrials.ts';

export type Cut = NonNullable<Design['cut']>;

/** mm: what the blue of a trial is taken to be where the design speaks of none. @source practice */
export const BLUE = 0.002;
/** mm: nearer than this a seat prints. */
export const blueThickness = ({ print }: Design): number => print?.thickness ?? BLUE;
type Machines = NonNullable<Cut['machine']>;
type MachineNumber = { [K in keyof Machines]-?: NonNullable<Machines[K]> extends number ? K : never }[keyof Machines];

/** A number of the machine, in the unit of the file. */
const of = (machine: Machines, key: MachineNumber): number => machine[key] ?? defaultAt(`cut.machine.${key}`);

export const orNull = (m: number | null) => (m === null ? null : millimetres(m));

const indexOf = (design: Design, name: string) => design.seats.findIndex((seat) => seat.name === name);
export const limitOf = ({ cleanup = 0, limit }: { cleanup?: number | undefined; limit?: number | undefined }) =>
  limit ?? Math.max(defaultAt('cut.allow[0].limit'), cleanup);

/**
 * Share of a film's tolerance that a plan of least stock may use (format of the file): the rest is for the cutting
 * itself.
 */
export const TOLERANCE_SHARE = 0.8;

export function toPlanInput(design: Design, cut: Cut): PlanInput {
  const { allow, faces, reach, prefer } = cut;
  return {
    seats: toSeats(design),
    position: metres(design.position ?? 0),
    allow: allow.map((entry) => {
      const seat = indexOf(design, entry.seat);
      const room = { seat, part: entry.part, cleanup: metres(entry.cleanup ?? 0), limit: metres(limitOf(entry)) };
      return entry.renew
        ? { ...room, renew: radians(entry.halfAngle ?? design.seats[seat]![entry.part].halfAngle) }
        : room;
    }),
    faces: (faces ?? []).map((face) => ({
      name: face.name,
      part: face.part,
      seats: face.seats.map((name) => indexOf(design, name)),
      moves: face.moves === 'noseward' ? 1 : -1,
      cleanup: metres(face.cleanup ?? 0),
      limit: metres(limitOf(face)),
      add: metres(face.add ?? 0),
    })),
    ...(reach && {
      reach: {
        from: reach.from === undefined ? Number.NEGATIVE_INFINITY : metres(reach.from),
        to: reach.to === undefined ? Number.POSITIVE_INFINITY : metres(reach.to),
      },
    }),
    share: prefer?.aim === 'tolerance' ? TOLERANCE_SHARE : 0,
    prefer: {
      ...(prefer?.spare && { spare: prefer.spare }),
      oneSetUp: prefer?.oneSetUp ?? false,
      keepPosition: prefer?.keepPosition ?? false,
    },
  };
}

export function toMachine({ machine = {} }: Cut): Machine {
  return {
    diameterDial: machine.dial === 'diameter',
    division: metres(of(machine, 'division')),
    axialDivision: metres(of(machine, 'axialDivision')),
    pass: metres(of(machine, 'pass')),
    slide: machine.slide === undefined ? null : radians(machine.slide),
  };
}

const leanOf = (machine: Machines) => radians(of(machine, 'lean'));

export function toAngleTools({ machine = {} }: Cut): AngleTools {
  return {
    bar: metres(of(machine, 'bar')),
    blocks: BLOCK_SETS.find(({ name }) => name === machine.blocks) ?? DEFAULT_BLOCKS,
    travel: metres(of(machine, 'travel')),
    indicator: metres(of(machine, 'indicator')),
    scaleRadius: metres(of(machine, 'scaleRadius')),
    scaleReading: metres(of(machine, 'scaleReading')),
    centres: metres(of(machine, 'centres')),
    lean: leanOf(machine),
  };
}

/** Rolls and balls of the shop: inch where its blocks are. */
export const toTools = (design: Design, cut: Cut): Tooling => shopTools(design, toAngleTools(cut).blocks.system);

/** The way the person sets angles by; null: that which is finest. */
export const ownWay = ({ machine = {} }: Cut): Way | null => machine.setBy ?? null;

/** The errors of a set-up on one part, the angle's left out. */
export function toErrors({ machine = {} }: Cut, part: Part): Omit<SetUpErrors, 'angle' | 'way'> {
  return {
    toolHeight: metres(of(machine, 'toolHeight')),
    division: metres(of(machine, 'division')),
    diameterDial: machine.dial === 'diameter',
    lean: leanOf(machine),
    warm: of(machine, 'warm'),
    expansion: machine.expansion ?? defaultAt(`run.heat.${part}.expansion`),
    anchor: metres(of(machine, 'anchor')),
  };
}

/** Of the entries that are not in the design's surfaces yet; those that are count no more. */
export function toTrials(design: Design, cut: Cut): Trial[] {
  return openTrials(cut).map(({ taken = [], faces = [], standOff, shake, blue }) => ({
    taken: taken.map(({ seat, part, normal, sigma }) => {
      const place = indexOf(design, seat);
      const doubt = sigma ?? surfaceSigma(design, seat, part, normal);
      return { seat: place, part, normal: metres(normal), sigma: metres(doubt) };
    }),
    faces: faces.map(({ name, off, sigma }) => ({
      face: (design.cut?.faces ?? []).findIndex((face) => face.name === name),
      off: metres(off),
      sigma: metres(sigma ?? FACE_SIGMA),
    })),
    ...(standOff && { standOff: { value: metres(standOff.value), sigma: metres(standOff.sigma) } }),
    ...(shake && {
      shake: {
        value: metres(shake.value),
        sigma: metres(shake.sigma),
        indicator: metres(shake.indicator),
        position: metres(shake.position),
        direction: radians(shake.direction),
        free: freeOf(design),
      },
    }),
    ...(blue && { blue: blue.map(({ seat, prints }) => ({ seat: indexOf(design, seat), prints })) }),
    thickness: metres(blueThickness(design)),
  }));
}

export function toLap(lap: NonNullable<Cut['lap']>): Lap {
  const coefficient = (part: Part) => wearInMetres(lap[part] ?? defaultAt(`cut.lap.${part}`));
  return {
    force: lap.force,
    coefficient: { journal: coefficient('journal'), bush: coefficient('bush') },
    step: metres(lap.step ?? defaultAt('cut.lap.step')),
    advance: metres(lap.advance ?? defaultAt('cut.lap.advance')),
    bearing: lap.bearing ?? defaultAt('cut.lap.bearing'),
    limit: metres(lap.limit ?? defaultAt('cut.lap.limit')),
  };
}
