/** The history of the job and the design's own surfaces: which entries are in those already. */
import type { Cut } from './toCut.ts';

export type TrialEntry = NonNullable<Cut['trials']>[number];

/**
 * Trials whose stock is not in the design's surfaces yet; those before are history, and nothing of them counts again.
 */
export const openTrials = ({ trials = [] }: Pick<Cut, 'trials'>): TrialEntry[] =>
  trials.filter(({ inShapes }) => !inShapes);

/** How many entries of the history are in the design's surfaces; they come before all others. */
export const closedCount = ({ trials = [] }: Pick<Cut, 'trials'>): number =>
  trials.length - openTrials({ trials }).length;

/** Whether anything was read of the pair, assembled, that is not in the surfaces yet. */
export const isTried = ({ cut }: { cut?: Cut | undefined }): boolean =>
  cut !== undefined && openTrials(cut).some(({ standOff, shake, blue }) => standOff || shake || blue?.length);

/** Whether a trial is more than a note of the history. */
export const tellsAnything = ({ taken = [], faces = [], standOff, shake, blue = [] }: TrialEntry): boolean =>
  standOff !== undefined || shake !== undefined || blue.length + taken.length + faces.length > 0;
