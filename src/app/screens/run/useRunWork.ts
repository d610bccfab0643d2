/**
 * What takes seconds of a run: the whole section, then the sweeps over speed and clearance and the positions to set
 * cold.
 */
import type { Design } from '../../../design/definition.ts';
import type { FilmReport } from '../../../report/film/definition.ts';
import type { AimReport, ColdSetting, CutPoint, LimitPoint, Stretch } from '../../../report/film/limits.ts';
import { job } from '../../../worker/pool.ts';
import { type ByHand, type Tell, useLongWork } from '../../state/useLongWork.ts';
import { clearancesOf, filmsOf, type Running, speedsOf } from './sweeps.ts';

export interface Sweep<P extends LimitPoint = LimitPoint> {
  points: P[];
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
  clearances: Sweep<CutPoint>;
  /** against the film every seat could be cut to, and which to aim for; undefined while not known */
  films: Sweep<CutPoint>;
  aim: AimReport | undefined;
  settings: ColdSetting[];
  stage: 'film' | 'films' | 'speeds' | 'clearances' | 'settings' | 'done' | 'stopped';
  fault: string | null;
}

const NO_SWEEP: Sweep<never> = { points: [], of: 0, safe: undefined };
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
export const useRunWork = (design: Running): RunWork & ByHand => useLongWork(design, NOTHING, workOut);

async function workOut(design: Running, tell: Tell<RunWork>, signal: AbortSignal): Promise<void> {
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

const withPoint = <P extends LimitPoint>(sweep: Sweep<P>, point: P): Sweep<P> => ({
  ...sweep,
  points: [...sweep.points, point],
});
