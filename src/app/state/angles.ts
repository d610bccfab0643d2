/**
 * How the person says angles: asked once, beside the units, and kept on the device for every job. It is a liking of the
 * person, and no part of a design.
 */
import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import { ANGLE_WAYS, type AngleWay } from '../../design/units.ts';

const KEY = 'conepair angles';

function kept(): AngleWay {
  try {
    const found = localStorage.getItem(KEY);
    return ANGLE_WAYS.find((way) => way === found) ?? 'half';
  } catch {
    // Nothing may be kept here; it is asked again next time.
    return 'half';
  }
}

export const angleChoice = createStore<{ way: AngleWay }>(() => ({ way: kept() }));

export function sayAngles(way: AngleWay): void {
  angleChoice.setState({ way });
  try {
    localStorage.setItem(KEY, way);
  } catch {
    // As above.
  }
}

export const useAngles = (): AngleWay => useStore(angleChoice, (state) => state.way);

export const ANGLE_NAMES: Record<AngleWay, string> = {
  half: 'half angle',
  included: 'included angle',
  foot: 'taper per foot',
  ratio: '1 : n',
};

/** What stands before a field. */
export const ANGLE_TITLES: Record<AngleWay, string> = {
  half: 'Half angle',
  included: 'Included angle',
  foot: 'Taper per foot',
  ratio: 'Taper 1 : n',
};
