/**
 * The screens in the order of the job. Another screen is one file and one line here; all but the opening one load when
 * asked for.
 */
import type { ComponentType } from 'react';
import { onDemand } from '../frame/onDemand.tsx';
import type { Work } from '../state/store.ts';
import { FitScreen } from './fit/FitScreen.tsx';

export interface ScreenEntry {
  name: string;
  /** What it is for, in a few words. */
  about: string;
  component: ComponentType<{ work: Work }>;
}

const SCREEN = { what: 'This screen' };

export const SCREENS = [
  {
    name: 'Measure',
    about: 'From the readings of the bench to the shape of both parts',
    component: onDemand(() => import('./measure/MeasureScreen.tsx'), SCREEN),
  },
  { name: 'Fit', about: 'Which seat touches first, and how far to move', component: FitScreen },
  {
    name: 'Run',
    about: 'The oil films of the turning spindle, what they carry and how it warms',
    component: onDemand(() => import('./run/RunScreen.tsx'), SCREEN),
  },
  {
    name: 'Cut',
    about: 'What to take off which surface, and when to stop',
    component: onDemand(() => import('./cut/CutScreen.tsx'), SCREEN),
  },
  {
    name: 'Odds',
    about: 'How likely the pair works before metal is cut',
    component: onDemand(() => import('./odds/OddsScreen.tsx'), SCREEN),
  },
  {
    name: 'Learn',
    about: 'Predict, try and see why two tapers must stand in one exact relation',
    component: onDemand(() => import('./learn/LearnScreen.tsx'), SCREEN),
  },
  {
    name: 'Sheet',
    about: 'What goes to the machine, on paper',
    component: onDemand(() => import('./sheet/SheetScreen.tsx'), SCREEN),
  },
] as const satisfies readonly ScreenEntry[];
export type ScreenName = (typeof SCREENS)[number]['name'];

/** Stands before the screens: reached by the title of the job, and no line of theirs. */
export const JOBS: ScreenEntry = {
  name: 'Jobs',
  about: 'All jobs on this device, and the examples',
  component: onDemand(() => import('./jobs/JobsScreen.tsx'), SCREEN),
};

export const NEW_JOB: ScreenEntry = {
  name: 'New',
  about: 'A job of your own, from nothing',
  component: onDemand(() => import('./new/NewJobScreen.tsx'), SCREEN),
};

export const WORDS: ScreenEntry = {
  name: 'Words',
  about: 'Every word of the trade, and what it means',
  component: onDemand(() => import('./words/WordsScreen.tsx'), SCREEN),
};

const SHOW: ScreenEntry = {
  name: 'Show',
  about: 'Large, for a projector, with one control',
  component: onDemand(() => import('./show/ShowScreen.tsx'), SCREEN),
};

export const PAGES: readonly ScreenEntry[] = [JOBS, NEW_JOB, WORDS, SHOW];
