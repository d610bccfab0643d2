/** What was learnt, kept on the device; where nothing may be kept it lasts as long as the page, and that is said. */
import { useState } from 'react';
import { checksum } from '../../../jobs/checksum.ts';
import {
  dayOf,
  NONE,
  type ProgressRead,
  readBegun,
  readProgress,
  visited,
  writeBegun,
  writeProgress,
} from '../../../lessons/progress.ts';

export interface Keeping extends ProgressRead {
  /** whether this browser keeps it */
  lasts: boolean;
  today: number;
  visit(id: string, last: { right: number; of: number }): void;
  /** something of it was answered */
  answer(id: string): void;
  /** lessons that were begun and not gone through, as this device keeps it */
  begun: ReadonlySet<string>;
}

export function useProgress(): Keeping {
  const [state, setState] = useState(() => found());
  const today = dayOf(new Date());
  const visit = (id: string, last: { right: number; of: number }) => {
    // Another window may have written since: what it wrote of other lessons stays.
    const now = found();
    const before = now.lasts ? now.progress : state.progress;
    const progress = visited(before, id, last, today);
    setBegun(marked(id, false));
    setState({ ...now, progress, damaged: state.damaged || now.damaged, lasts: written(progress) });
  };
  const [begun, setBegun] = useState<ReadonlySet<string>>(() => marked());
  const answer = (id: string) => {
    if (!state.progress.lessons[id]) setBegun(marked(id, true));
  };
  return { ...state, today, visit, answer, begun };
}

/** Those begun, after one is or is no more; where nothing may be kept there are none. */
function marked(id?: string, is = false): ReadonlySet<string> {
  try {
    return new Set(id === undefined ? readBegun(window.localStorage) : writeBegun(window.localStorage, id, is));
  } catch {
    return new Set();
  }
}

function found(): ProgressRead & { lasts: boolean } {
  try {
    return { ...readProgress(window.localStorage, checksum), lasts: true };
  } catch {
    return { progress: NONE, damaged: false, lasts: false };
  }
}

function written(progress: ProgressRead['progress']): boolean {
  try {
    writeProgress(window.localStorage, progress, checksum);
    return true;
  } catch {
    return false;
  }
}
