/**
 * Before and after: every surface as it was first measured, after each cut, and now.
 *
 * A state after so many cuts is what the readings up to then tell of the lines as they were then: a reading from before
 * a cut is moved by what came off (measure/metalBetween.ts), so that it makes a later state surer and never puts it
 * back. What no reading tells is as drawn, less what came off.
 */
import type { Design, Part } from '../../design/definition.ts';
import { caseLeft } from '../cut/caseLeft.ts';
import { surfaceSigma } from '../cut/metalDoubt.ts';
import type { TrialEntry } from '../cut/openTrials.ts';
import { measureSection } from '../measure/section.ts';
import { partsLess } from '../sheet/partsAfterTrials.ts';

/** One surface in one state; mm and degrees, sigma null where no reading tells it. */
export interface StateOfSurface {
  halfAngle: number;
  diameter: number;
  sigma: { halfAngle: number | null; diameter: number | null };
  /** whether the line of then is gone, cut to a new one since, and no reading tells what it was */
  unknown: boolean;
  /** stock (mm) that came off between the state before and this one, with its standard uncertainty */
  taken: number;
  takenSigma: number;
  /** readings of this surface made in this very state, and how many from before are counted with them */
  readings: number;
  older: number;
  /** readings from before that say nothing of this line: it was cut to a new one since */
  overtaken: number;
  /** depth (mm) of the hard case that is left; null where none is told */
  caseLeft: number | null;
}

export interface SurfaceHistory {
  seat: string;
  part: Part;
  states: StateOfSurface[];
}

export interface States {
  /** after how many cuts each state is; the last is now */
  after: number[];
  surfaces: SurfaceHistory[];
}

/** States that are worked out one by one; of more than these the first and the last ones are. */
const MOST_STATES = 8;

export function statesOf(design: Design): States {
  const after = statesToTell(design);
  const found = after.map((done, i) => surfacesAfter(design, done, i === 0 ? null : after[i - 1]!));
  return {
    after,
    surfaces: design.seats.flatMap(({ name }, s) =>
      (['journal', 'bush'] as const).map((part, p) => ({
        seat: name,
        part,
        states: found.map((surfaces) => surfaces[2 * s + p]!),
      })),
    ),
  };
}

/** Before any cut, after every one that took metal off or was measured after, and now. */
function statesToTell(design: Design): number[] {
  const trials = design.cut?.trials ?? [];
  const isState = (k: number) =>
    k === 0 || k === trials.length || takesMetal(trials[k - 1]!) || (design.readings ?? []).some((r) => r.after === k);
  const all = Array.from({ length: trials.length + 1 }, (_, k) => k).filter(isState);
  // The last of those between which nothing came off stands for all of them.
  const distinct = all.filter((k, i) => i === all.length - 1 || trials.slice(k, all[i + 1]).some(takesMetal));
  return distinct.length <= MOST_STATES ? distinct : [distinct[0]!, ...distinct.slice(1 - MOST_STATES)];
}

const takesMetal = ({ taken = [], faces = [] }: TrialEntry) =>
  taken.some(({ normal }) => normal > 0) || faces.some(({ off }) => off !== 0);

/** The design as it stood after so many trials: its lines as they were, and no later entry. */
export function designAfter(design: Design, done: number): Design {
  const { cut, readings } = design;
  if (!cut) return design;
  const trials = cut.trials ?? [];
  const closed = trials.filter(({ inShapes }) => inShapes).length;
  const on = (list: readonly TrialEntry[], sign: 1 | -1) => ({
    surfaces: list.flatMap(({ taken = [] }) => taken).map((t) => ({ ...t, normal: sign * t.normal })),
    faces: list.flatMap(({ faces = [] }) => faces).map((f) => ({ ...f, off: sign * f.off })),
  });
  // What is in the shapes now and came off later is put back; what came off till then and is not in them is taken off.
  const back = partsLess(design, on(trials.slice(Math.min(done, closed), closed), -1));
  const there = partsLess(back, on(trials.slice(closed, Math.max(done, closed)), 1));
  return {
    ...there,
    cut: { ...cut, trials: trials.slice(0, done).map((trial, k) => inShapes(cut, trial, trials.slice(0, k))) },
    readings: (readings ?? []).filter(({ after = 0 }) => after <= done),
  };
}

/** All of it is off the lines of that state; what cut one to its new line says so. */
function inShapes(cut: NonNullable<Design['cut']>, trial: TrialEntry, earlier: readonly TrialEntry[]): TrialEntry {
  const open = earlier.filter(({ inShapes }) => !inShapes).flatMap(({ taken = [] }) => taken);
  return {
    ...trial,
    inShapes: true,
    ...(trial.taken && {
      taken: trial.taken.map((t) => {
        const renews =
          !trial.inShapes &&
          t.normal > 0 &&
          cut.allow.some((a) => a.renew && a.seat === t.seat && a.part === t.part) &&
          !open.some((o) => o.seat === t.seat && o.part === t.part && o.normal > 0);
        return renews ? { ...t, renewed: true } : t;
      }),
    }),
  };
}

/** Every surface of the design after so many cuts, in its order, journal before bush. */
function surfacesAfter(design: Design, done: number, before: number | null): StateOfSurface[] {
  const then = designAfter(design, done);
  const measure = measureSection(then);
  const cases = caseLeft(design, done);
  const off = before === null ? [] : (design.cut?.trials ?? []).slice(before, done).flatMap(({ taken = [] }) => taken);
  return design.seats.flatMap((seat, s) =>
    (['journal', 'bush'] as const).map((part): StateOfSurface => {
      const isOn = (one: { seat: string; part: Part }) => one.seat === seat.name && one.part === part;
      const told = measure?.surfaces.find(isOn);
      const drawn = then.seats[s]![part];
      const taken = off.filter(isOn).filter(({ normal }) => normal > 0);
      const read = (then.readings ?? []).map((reading, i) => ({
        here: 'seat' in reading && isOn(reading),
        now: (reading.after ?? 0) > (before ?? -1),
        overtaken: measure?.overtaken.some(({ index, surfaces }) => index === i && surfaces.some(isOn)) ?? false,
      }));
      const count = (test: (r: (typeof read)[number]) => boolean) => read.filter((r) => r.here && test(r)).length;
      return {
        halfAngle: told?.halfAngle ?? drawn.halfAngle,
        diameter: told?.diameter ?? drawn.diameter,
        sigma: told?.sigma ?? { halfAngle: null, diameter: null },
        unknown:
          told === undefined &&
          (design.cut?.trials ?? []).slice(done).some((t) => (t.taken ?? []).some((one) => one.renewed && isOn(one))),
        taken: taken.reduce((sum, { normal }) => sum + normal, 0),
        takenSigma: Math.hypot(
          ...taken.map(({ normal, sigma }) => sigma ?? surfaceSigma(design, seat.name, part, normal)),
        ),
        readings: count((r) => r.now && !r.overtaken),
        older: count((r) => !r.now && !r.overtaken),
        overtaken: count((r) => r.overtaken),
        caseLeft: cases.find(isOn)?.left ?? null,
      };
    }),
  );
}
