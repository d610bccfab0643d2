/**
 * What takes seconds: the whole section, then the sweeps over speed and clearance and the positions to set cold. Begins
 * once the design rests, shows every point as it comes, gives way to another design, and can be stopped by hand.
 */
import { useCallback, useEffect, useRef, useState } from 'react';
import type { Design } from '../../../design/definition.ts';
import type { FilmReport } from '../../../report/film/definition.ts';
import type { AimReport, ColdSetting, LimitPoint, Stretch } from '../../../report/film/limits.ts';
import { job } from '../../../worker/pool.ts';
import { faultText } from '../../state/useNewest.ts';
import { clearancesOf, filmsOf, type Running, speedsOf } from './sweeps.ts';
import { useRested } from './useFields.ts';

export interface Sweep {
  points: LimitPoint[];
  /** of how many */
  of: number;
  /** what is safe; undefined while not known */
  safe: Stretch | null | undefined;
}

export interface RunWork {
  film: FilmReport | null;
  /** the design all of it belongs to */
  of: Design | null;
  speeds: Sweep;
  clearances: Sweep;
  /** against the film every seat could be cut to, and which to aim for; undefined while not known */
  films: Sweep;
  aim: AimReport | undefined;
  settings: ColdSetting[];
  stage: 'film' | 'films' | 'speeds' | 'clearances' | 'settings' | 'done' | 'stopped';
  fault: string | null;
}

const NO_SWEEP: Sweep = { points: [], of: 0, safe: undefined };
const NOTHING: RunWork = {
  film: null,
  of: null,
  speeds: NO_SWEEP,
  clearances: NO_SWEEP,
  films: NO_SWEEP,
  aim: undefined,
  settings: [],
  stage: 'film',
  fault: null,
};
/** ms without a change */
const REST = 350;

export function useRunWork(design: Running): RunWork & { stop(): void; start(): void } {
  const rested = useRested(design, REST);
  const [work, setWork] = useState<RunWork>(NOTHING);
  const [held, setHeld] = useState(false);
  /** how often it was begun by hand */
  const [turn, setTurn] = useState(0);
  const control = useRef<AbortController | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: begun by hand, the same is worked out once more
  useEffect(() => {
    if (held) return;
    const mine = new AbortController();
    control.current = mine;
    const tell = (change: (work: RunWork) => RunWork) => {
      if (!mine.signal.aborted) setWork(change);
    };
    workOut(rested, tell, mine.signal).catch((error: unknown) =>
      tell((work) => ({ ...work, fault: faultText(error), stage: 'stopped' })),
    );
    return () => mine.abort();
  }, [rested, held, turn]);
  const stop = useCallback(() => {
    control.current?.abort();
    setHeld(true);
    setWork((work) => ({ ...work, stage: 'stopped' }));
  }, []);
  const start = useCallback(() => {
    setHeld(false);
    setTurn((times) => times + 1);
  }, []);
  return { ...work, stop, start };
}

type Tell = (change: (work: RunWork) => RunWork) => void;

async function workOut(design: Running, tell: Tell, signal: AbortSignal): Promise<void> {
  tell((work) => ({ ...work, stage: 'film', fault: null }));
  const film = (await job('film', design, { signal })) ?? null;
  const [speeds, extras, films] = [speedsOf(design), clearancesOf(design), filmsOf(design)];
  if (signal.aborted || film === null) return;
  // Standing still nothing warms; there is nothing to sweep.
  if (film.status === 'standing') return tell(() => ({ ...NOTHING, film, of: design, stage: 'done' }));
  tell(() => ({
    ...NOTHING,
    film,
    of: design,
    stage: 'clearances',
    speeds: { ...NO_SWEEP, of: speeds.length },
    clearances: { ...NO_SWEEP, of: extras.length },
    films: { ...NO_SWEEP, of: films.length },
  }));
  const window = await job(
    'clearances',
    { design, extras },
    { signal, tell: (point) => tell((work) => ({ ...work, clearances: withPoint(work.clearances, point) })) },
  );
  tell((work) => ({ ...work, stage: 'films', clearances: { ...work.clearances, safe: window } }));
  const aim = await job(
    'films',
    { design, films },
    { signal, tell: (point) => tell((work) => ({ ...work, films: withPoint(work.films, point) })) },
  );
  tell((work) => ({ ...work, stage: 'speeds', aim, films: { ...work.films, safe: aim.stretch } }));
  const safe = await job(
    'speeds',
    { design, speeds },
    { signal, tell: (point) => tell((work) => ({ ...work, speeds: withPoint(work.speeds, point) })) },
  );
  tell((work) => ({ ...work, stage: 'settings', speeds: { ...work.speeds, safe } }));
  await job('coldSettings', design, {
    signal,
    tell: (setting) => tell((work) => ({ ...work, settings: [...work.settings, setting] })),
  });
  tell((work) => ({ ...work, stage: 'done' }));
}

const withPoint = (sweep: Sweep, point: LimitPoint): Sweep => ({ ...sweep, points: [...sweep.points, point] });
