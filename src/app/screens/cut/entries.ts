/** Changes of the design's `cut` section: what may be cut, ticks and order, trials, limits let go. */
import type { Design, Part } from '../../../design/definition.ts';
import type { System } from '../../../design/units.ts';
import { USUAL_LIMIT } from '../../../design/usualMachine.ts';
import type { LimitReport } from '../../../report/cut/definition.ts';
import type { Particulars } from '../../../report/record/story.ts';

export type Cut = NonNullable<Design['cut']>;
export type Trial = NonNullable<Cut['trials']>[number];
export type Face = NonNullable<Cut['faces']>[number];

/** N, a hand's push while lapping; common practice, no source. */
const PUSH = 20;

const withCut = (design: Design, change: (cut: Cut) => Cut): Design => ({
  ...design,
  cut: change(design.cut ?? { allow: [] }),
});

/**
 * A plausible allow list: every journal surface whose film is wanted. The bush stays, being the harder to hold and to
 * gauge (common practice, no source).
 */
export function plausibleCut({ seats }: Design, tools: System): Cut['allow'] {
  const wanted = seats.filter(({ film }) => film !== undefined);
  return (wanted.length > 0 ? wanted : seats).map(({ name }) => ({
    seat: name,
    part: 'journal' as const,
    limit: USUAL_LIMIT[tools],
  }));
}

export const allowedAt = (cut: Cut, seat: string, part: Part) =>
  cut.allow.findIndex((entry) => entry.seat === seat && entry.part === part);

/**
 * Ticks of single steps are known by the place of the step; where what may be cut changes, they might come to stand at
 * another.
 */
const withoutStepTicks = (cut: Cut): Cut =>
  cut.work?.done
    ? {
        ...cut,
        work: { ...cut.work, done: cut.work.done.filter((id) => !/^(angle|cut|sparkOut|gauge|face) /.test(id)) },
      }
    : cut;

/** Lets a surface be cut, or forbids it. */
export const withAllowed = (design: Design, seat: string, part: Part, allowed: boolean, tools: System): Design =>
  withCut(design, (cut) => {
    const others = cut.allow.filter((entry) => entry.seat !== seat || entry.part !== part);
    return {
      ...withoutStepTicks(cut),
      allow: allowed ? [...others, { seat, part, limit: USUAL_LIMIT[tools] }] : others,
    };
  });

/** A face or spacer of its own name, that moves the last seat's bush noseward. */
export const withFace = (design: Design, tools: System): Design =>
  withCut(design, (cut) => {
    const faces = cut.faces ?? [];
    const taken = new Set(faces.map(({ name }) => name));
    let number = 1;
    while (taken.has(`spacer ${number}`)) number++;
    const face: Face = {
      name: `spacer ${number}`,
      part: 'bush',
      seats: [design.seats[design.seats.length - 1]!.name],
      moves: 'noseward',
      limit: USUAL_LIMIT[tools],
    };
    return { ...withoutStepTicks(cut), faces: [...faces, face] };
  });

export const withoutFace = (design: Design, index: number): Design =>
  withCut(design, (cut) => ({ ...withoutStepTicks(cut), faces: (cut.faces ?? []).filter((_, i) => i !== index) }));

/** Whether a face moves a seat; one seat at least stays. */
export const withFaceSeat = (design: Design, index: number, seat: string, moved: boolean): Design =>
  withCut(design, (cut) => ({
    ...cut,
    faces: (cut.faces ?? []).map((face, i) => {
      if (i !== index) return face;
      const seats = design.seats
        .map(({ name }) => name)
        .filter((name) => (name === seat ? moved : face.seats.includes(name)));
      return seats.length === 0 ? face : { ...face, seats };
    }),
  }));

export const withTick = (design: Design, id: string, done: boolean): Design =>
  withCut(design, (cut) => {
    const others = (cut.work?.done ?? []).filter((other) => other !== id);
    return { ...cut, work: { ...cut.work, done: done ? [...others, id] : others } };
  });

/** The check list with one item moved by one place; `ids` are all of it as it stands. */
export function withMoved(design: Design, ids: readonly string[], id: string, by: 1 | -1): Design {
  const at = ids.indexOf(id);
  const to = at + by;
  if (at < 0 || to < 0 || to >= ids.length) return design;
  const order = [...ids];
  [order[at], order[to]] = [order[to]!, order[at]!];
  return withCut(design, (cut) => ({ ...cut, work: { ...cut.work, order } }));
}

export const withUsualOrder = (design: Design): Design =>
  withCut(design, (cut) => {
    const { order: _, ...work } = cut.work ?? {};
    return { ...cut, work };
  });

/** A trial more, or one written anew in the place of an old one. */
export const withTrial = (design: Design, trial: Trial, index?: number): Design =>
  withCut(design, (cut) => {
    const trials = cut.trials ?? [];
    return {
      ...cut,
      trials: index === undefined ? [...trials, trial] : trials.map((old, i) => (i === index ? trial : old)),
    };
  });

/** One trial less; readings taken after it are then one trial nearer to the beginning. */
export function withoutTrial(design: Design, index: number): Design {
  const { readings, record } = design;
  const after = (n: number | undefined) => (n !== undefined && n > index ? n - 1 : n);
  const left = withCut(design, ({ trials = [], ...cut }) => {
    const kept = trials.filter((_, i) => i !== index);
    return kept.length > 0 ? { ...cut, trials: kept } : cut;
  });
  const isLater = (entry: { after?: number | undefined }) => after(entry.after) !== entry.after;
  const nearer = <E extends { after?: number | undefined }>(entries: E[]): E[] =>
    entries.map((entry) => (isLater(entry) ? { ...entry, after: after(entry.after) } : entry));
  return {
    ...left,
    ...(readings?.some(isLater) && { readings: nearer(readings) }),
    ...(record?.some(isLater) && { record: nearer(record) }),
  };
}

/** The last entry of the history with its day and hand, as the clock and the person tell. */
export const lastTrialTold = (design: Design, told: Particulars): Design =>
  withCut(design, (cut) => ({
    ...cut,
    trials: (cut.trials ?? []).map((trial, i, all) => (i === all.length - 1 ? { ...told, ...trial } : trial)),
  }));

export const withLap = (design: Design): Design => withCut(design, (cut) => ({ ...cut, lap: { force: PUSH } }));
export const withoutLap = (design: Design): Design => withCut(design, ({ lap: _, ...cut }) => cut);

/** A limit that stands in the way let go as far as it needs to be. */
export function withLimitLetGo(design: Design, { what, seat, part, face, needed }: LimitReport): Design {
  if (needed === null) return design;
  // A hair of room, so that rounding does not stand in the way again.
  const more = needed + 1e-7;
  return withCut(design, (ticked) => {
    const cut = withoutStepTicks(ticked);
    if (what === 'reachFrom' || what === 'reachTo')
      return {
        ...cut,
        reach: { ...cut.reach, [what === 'reachFrom' ? 'from' : 'to']: what === 'reachFrom' ? needed - 1e-7 : more },
      };
    if (face !== undefined)
      return {
        ...cut,
        faces: (cut.faces ?? []).map((f) =>
          f.name === face
            ? { ...f, [what === 'forbidden' ? 'limit' : what]: what === 'cleanup' ? Math.max(0, needed - 1e-7) : more }
            : f,
        ),
      };
    if (seat === undefined || part === undefined) return cut;
    if (allowedAt(cut, seat, part) < 0) return { ...cut, allow: [...cut.allow, { seat, part, limit: more }] };
    return {
      ...cut,
      allow: cut.allow.map((a) =>
        a.seat === seat && a.part === part
          ? { ...a, [what === 'cleanup' ? 'cleanup' : 'limit']: what === 'cleanup' ? Math.max(0, needed - 1e-7) : more }
          : a,
      ),
    };
  });
}
