/** The screens in the order of the job. Another screen is one file and one line here. */
import type { ComponentType } from 'react';
import type { Work } from '../store.ts';
import { FitScreen } from './FitScreen.tsx';

export interface ScreenEntry {
  name: string;
  component: ComponentType<{ work: Work }>;
}

export const SCREENS: readonly ScreenEntry[] = [{ name: 'Fit', component: FitScreen }];
