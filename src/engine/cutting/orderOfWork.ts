/**
 * The usual order of work as a check list made for one plan. The machine's own manual and the shop's rules come first.
 * The words are the report's. Items are known by the surface they are about, so that a tick stays with it when the plan
 * changes.
 * @source practice (all of it)
 */
import type { Part } from '../parts/line.ts';
import type { CutStep } from './steps.ts';

export type Caution = 'guards' | 'eyes' | 'wheelSpeed' | 'ringTest' | 'manual';

type Plain =
  | 'manual'
  | 'guards'
  | 'wheelTest'
  | 'dress'
  | 'centres'
  | 'height'
  | 'bushHold'
  | 'oneSetting'
  | 'stone'
  | 'clean'
  | 'cleanFirst'
  | 'trialFirst'
  | 'trial'
  | 'noseTaper';

export type WorkItem = { id: string; cautions: Caution[] } & (
  | { what: Plain }
  | { what: 'angle'; seat: number; part: Part }
  | { what: 'cut'; step: number }
  | { what: 'sparkOut'; step: number }
  | { what: 'gauge'; step: number }
  | { what: 'face'; step: number }
);

const plain = (what: Plain, ...cautions: Caution[]): WorkItem => ({ id: what, what, cautions });

/** @param tryFirst whether nothing may come off before a trial assembly: then that is what there is to do first */
export function orderOfWork(steps: readonly CutStep[], tryFirst = false): WorkItem[] {
  if (steps.length === 0) return [];
  return [
    ...(tryFirst ? [plain('cleanFirst'), plain('trialFirst')] : []),
    plain('manual', 'manual'),
    plain('guards', 'guards', 'eyes'),
    plain('wheelTest', 'ringTest', 'wheelSpeed'),
    ...partItems(steps, 'bush'),
    ...partItems(steps, 'journal'),
    ...steps.flatMap((step, i): WorkItem[] =>
      step.kind === 'face' ? [{ id: `face ${step.face}`, what: 'face', step: i, cautions: [] }] : [],
    ),
    plain('stone'),
    plain('clean'),
    plain('trial'),
    plain('noseTaper', 'guards', 'eyes'),
  ];
}

/** One setting of one part: hold it true, then every surface in turn. */
function partItems(steps: readonly CutStep[], part: Part): WorkItem[] {
  const own = steps.flatMap((step, i) => (step.kind === 'surface' && step.part === part ? [{ step, i }] : []));
  if (own.length === 0) return [];
  const hold: WorkItem[] = [
    part === 'journal' ? plain('centres') : plain('bushHold'),
    ...(own.length > 1 ? [{ ...plain('oneSetting'), id: `oneSetting ${part}` }] : []),
  ];
  const ready: WorkItem[] = [
    { ...plain('dress', 'eyes'), id: `dress ${part}` },
    { ...plain('height'), id: `height ${part}` },
  ];
  return [
    ...hold,
    ...ready,
    ...own.flatMap(({ step, i }): WorkItem[] => [
      { id: `angle ${step.seat} ${part}`, what: 'angle', seat: step.seat, part, cautions: [] },
      { id: `cut ${step.seat} ${part}`, what: 'cut', step: i, cautions: ['eyes'] },
      { id: `sparkOut ${step.seat} ${part}`, what: 'sparkOut', step: i, cautions: [] },
      { id: `gauge ${step.seat} ${part}`, what: 'gauge', step: i, cautions: ['guards'] },
    ]),
  ];
}

/** The list in a person's own order: what is named first, what is not named where it would have stood after that. */
export function reordered(items: readonly WorkItem[], order: readonly string[]): WorkItem[] {
  const named = order.flatMap((id) => items.find((item) => item.id === id) ?? []);
  return [...named, ...items.filter((item) => !order.includes(item.id))];
}
