/** A trial as it is being written down: every field empty until something is typed. */
import type { Design } from '../../../design/definition.ts';
import type { System } from '../../../design/units.ts';
import type { CutReport } from '../../../report/cut/definition.ts';
import { INDICATOR_SIGMA } from '../../../report/cut/metalDoubt.ts';
import type { Particulars } from '../../../report/record/story.ts';
import { bare } from '../../record/entered.ts';
import type { Trial } from './entries.ts';

type Surface = Pick<NonNullable<Trial['taken']>[number], 'seat' | 'part'>;

/** How metal off a surface is told: square to it, or by the diameter, as rolls and micrometer read it. */
export type Measure = 'square' | 'diameter';

export interface Draft {
  /** when, by whom, at what stage */
  told: Particulars;
  note: string;
  measure: Measure;
  taken: (Surface & { normal: number | null; sigma?: number | undefined; safe?: number | undefined })[];
  faces: { name: string; off: number | null; sigma?: number | undefined; safe?: number | undefined }[];
  standOff: number | null;
  standOffSigma: number | null;
  shake: number | null;
  shakeSigma: number | null;
  indicator: number | null;
  position: number | null;
  direction: number | null;
  /** by seat; not there: not looked at */
  blue: Record<string, boolean>;
}

/**
 * Uncertainty of what is read on a trial where none is typed, mm: an indicator of a micrometre, or of half a tenth;
 * common practice, no source.
 */
export const INDICATOR: Record<System, number> = { metric: INDICATOR_SIGMA, inch: 0.00127 };

/** Where a shake is read where nothing else is typed. */
export const usualShake = (design: Design) => ({
  indicator: design.play?.indicator ?? Math.max(...design.seats.map(({ journal }) => journal.to)),
  position: design.position ?? 0,
  direction: 0,
});

/**
 * Empty, or what an earlier trial holds; surfaces and faces are those of the plan and of that trial. What the trial has
 * as it is where nothing is typed stays empty.
 */
export function draftOf(
  { steps, faces, remaining }: Pick<CutReport, 'steps' | 'faces' | 'remaining'>,
  design: Design,
  system: System,
  old: Trial = {},
): Draft {
  const surfaces = new Map<string, Surface>(
    [...steps, ...(remaining?.steps ?? []), ...(old.taken ?? [])].map(({ seat, part }) => [
      `${seat} ${part}`,
      { seat, part },
    ]),
  );
  const names = [...new Set([...faces, ...(remaining?.faces ?? []), ...(old.faces ?? [])].map(({ name }) => name))];
  const { standOff, shake } = old;
  const usual = usualShake(design);
  // Where a shake was read last is where the next is likely to be: it stands in the fields, to be seen.
  const setUp = shake ?? design.cut?.trials?.findLast((trial) => trial.shake)?.shake;
  const typed = (value: number | undefined, usually: number) =>
    value === undefined || value === usually ? null : value;
  return {
    told: bare({ ...old, note: undefined }),
    note: old.note ?? '',
    measure: 'square',
    taken: [...surfaces.values()].map((surface) => {
      const known = old.taken?.find(({ seat, part }) => seat === surface.seat && part === surface.part);
      return { ...surface, normal: known?.normal ?? null, sigma: known?.sigma, safe: known?.safe };
    }),
    faces: names.map((name) => {
      const known = old.faces?.find((face) => face.name === name);
      return { name, off: known?.off ?? null, sigma: known?.sigma, safe: known?.safe };
    }),
    standOff: standOff?.value ?? null,
    standOffSigma: typed(standOff?.sigma, INDICATOR[system]),
    shake: shake?.value ?? null,
    shakeSigma: typed(shake?.sigma, INDICATOR[system]),
    indicator: typed(setUp?.indicator, usual.indicator),
    position: typed(setUp?.position, usual.position),
    direction: typed(setUp?.direction, usual.direction),
    blue: Object.fromEntries((old.blue ?? []).map(({ seat, prints }) => [seat, prints])),
  };
}

/** The same with the set-up of a shake that is asked for; what is so anyway stays empty. */
export function shakenAt(
  draft: Draft,
  design: Design,
  shake: { indicator: number; position: number; direction: number },
): Draft {
  const usual = usualShake(design);
  const typed = (key: 'indicator' | 'position' | 'direction') => (shake[key] === usual[key] ? null : shake[key]);
  return { ...draft, indicator: typed('indicator'), position: typed('position'), direction: typed('direction') };
}

/** What of it these parts still have: seats may have been renamed or taken away since it was begun. */
export const draftFor = (draft: Draft, { seats, cut }: Design): Draft => {
  const has = (name: string) => seats.some((seat) => seat.name === name);
  return {
    ...draft,
    told: draft.told ?? {},
    taken: draft.taken.filter(({ seat }) => has(seat)),
    faces: draft.faces.filter(({ name }) => cut?.faces?.some((face) => face.name === name)),
    blue: Object.fromEntries(Object.entries(draft.blue).filter(([seat]) => has(seat))),
  };
};

/** Whether it tells of metal that is off already. */
export const tellsMetal = ({ taken, faces }: Draft) =>
  taken.some(({ normal }) => normal !== null && normal > 0) || faces.some(({ off }) => off !== null && off !== 0);

/** The same with nothing but the metal. */
export const metalAlone = (draft: Draft): Draft => ({ ...draft, standOff: null, shake: null, blue: {} });

const given = ({ sigma, safe }: { sigma?: number | undefined; safe?: number | undefined }) => ({
  ...(sigma !== undefined && { sigma }),
  ...(safe !== undefined && { safe }),
});

/** What was typed as a trial; what was left empty is left out. */
export function trialOf(draft: Draft, design: Design, system: System): Trial {
  const taken = draft.taken.flatMap(({ seat, part, normal, ...stated }) =>
    normal ? [{ seat, part, normal, ...given(stated) }] : [],
  );
  const faces = draft.faces.flatMap(({ name, off, ...stated }) => (off ? [{ name, off, ...given(stated) }] : []));
  const blue = Object.entries(draft.blue).map(([seat, prints]) => ({ seat, prints }));
  const usual = usualShake(design);
  return {
    ...draft.told,
    ...(draft.note.trim() !== '' && { note: draft.note.trim() }),
    ...(taken.length > 0 && { taken }),
    ...(faces.length > 0 && { faces }),
    ...(draft.standOff !== null && {
      standOff: { value: draft.standOff, sigma: draft.standOffSigma ?? INDICATOR[system] },
    }),
    ...(draft.shake !== null && {
      shake: {
        value: draft.shake,
        sigma: draft.shakeSigma ?? INDICATOR[system],
        indicator: draft.indicator ?? usual.indicator,
        position: draft.position ?? usual.position,
        direction: draft.direction ?? usual.direction,
      },
    }),
    ...(blue.length > 0 && { blue }),
  };
}
