/** How the parts would run as planned: first of all where they must not, with the films that they could run on. */
import { useEffect, useMemo, useState } from 'react';
import type { Design } from '../../../design/definition.ts';
import { fineText, type System } from '../../../design/units.ts';
import type { CutReport } from '../../../report/cut/definition.ts';
import { filmToAdd, runsAsPlanned, runsWellText, withFilmsAdded } from '../../../report/cut/runsAsPlanned.ts';
import { nothingToCut } from '../../../report/cut/verdict.ts';
import { designWithCut } from '../../../report/cut/withCut.ts';
import type { FilmReport } from '../../../report/film/definition.ts';
import type { Verdict } from '../../../report/fit/verdict.ts';
import { partsAfterTrials } from '../../../report/sheet/partsAfterTrials.ts';
import { job } from '../../../worker/pool.ts';
import { Fault } from '../../frame/Fault.tsx';
import type { Work } from '../../state/store.ts';
import { useSolved } from '../../state/useSolved.ts';
import { clearancesOf, type Running as Sweepable } from '../run/sweeps.ts';

interface Props {
  work: Work;
  running: Running;
  /** there was a trial: what is safe to take is told by that */
  tried: boolean;
  system: System;
}

export interface Running {
  /** the parts as planned; null where the design does not say how it runs */
  made: Design | null;
  film: FilmReport | null;
  /** what speaks against it, once that is known */
  verdict: Verdict | null;
  fault: string | null;
  again(): void;
}

/** The parts as planned; once there are trials as these are believed to leave them. */
const partsToBe = (design: Design, cut: CutReport): Design =>
  partsAfterTrials(design, cut)?.believed ?? designWithCut(design, cut);

/** @param wanted whether there is a plan worth asking for */
export function useRunsAsPlanned(
  design: Design | null,
  cut: CutReport | null,
  wanted: boolean,
  system: System,
): Running {
  const made = useMemo(() => (wanted && design?.run && cut ? partsToBe(design, cut) : null), [wanted, design, cut]);
  const { value, of, fault, again } = useSolved('film', made);
  const film = of === made ? value : null;
  return {
    made,
    film,
    fault,
    again,
    verdict: made && film && cut ? runsAsPlanned(made, film, !nothingToCut(cut), system) : null,
  };
}

export function RunsAsPlanned({ work, running: { made, film, verdict, fault, again }, tried, system }: Props) {
  if (!made) return null;
  if (fault !== null) return <Fault what="How it would run" fault={fault} again={again} />;
  if (!film) {
    return (
      <p className="buttons runs-so" role="status" aria-label="How it runs as planned" aria-busy="true">
        Whether it runs so is being worked out: {tried ? 'wait for that.' : 'cut nothing yet.'}
      </p>
    );
  }
  if (!verdict) return <p className="fine">{runsWellText(made, film, system)}</p>;
  return (
    <section className={`verdict ${verdict.tone}`} aria-label="How it runs as planned" aria-live="polite">
      <h2>{verdict.headline}</h2>
      {verdict.sentences.map((sentence) => (
        <p key={sentence}>{sentence} </p>
      ))}
      {film.status !== 'standing' && (
        <FilmsThatRun key={JSON.stringify(made)} work={work} made={made as Sweepable} system={system} />
      )}
    </section>
  );
}

type Asked = 'no' | 'asked' | { add: number | null } | { fault: string };

/** Looks for the films it could run on, and takes them as those wanted. */
function FilmsThatRun({ work, made, system }: { work: Work; made: Sweepable; system: System }) {
  const [asked, setAsked] = useState<Asked>('no');
  const [done, setDone] = useState(0);
  const extras = useMemo(() => clearancesOf(made), [made]);
  useEffect(() => {
    if (asked !== 'asked') return;
    const control = new AbortController();
    const { signal } = control;
    job('clearances', { design: made, extras }, { signal, tell: () => setDone((n) => n + 1) })
      .then((works) => {
        if (!signal.aborted) setAsked({ add: filmToAdd(made, works) });
      })
      .catch((error: unknown) => {
        if (!signal.aborted) setAsked({ fault: error instanceof Error ? error.message : String(error) });
      });
    return () => control.abort();
  }, [asked, made, extras]);
  if (asked === 'no') {
    return (
      <p className="buttons">
        <button type="button" onClick={() => setAsked('asked')}>
          Look for films that it runs on
        </button>
      </p>
    );
  }
  if (asked === 'asked')
    return (
      <p role="status">
        Looking for films that it runs on: {Math.min(done, extras.length)} of {extras.length} tried.
      </p>
    );
  if ('fault' in asked) return <p role="alert">The films could not be looked for: {asked.fault}</p>;
  const { add } = asked;
  if (add === null)
    return (
      <p role="status">
        With none of the films that were looked at does it run: other oil, more steep area or a thrust stop must help.
      </p>
    );
  if (add === 0) return <p role="status">Warm it runs with the films as they are.</p>;
  const now = new Map(made.seats.map(({ name, film }) => [name, film?.target]));
  const targets = withFilmsAdded(made, add).seats.flatMap(({ name, film }) =>
    film && film.target !== now.get(name) ? [`${name} ${fineText(film.target, system)}`] : [],
  );
  return (
    <p className="buttons">
      <button type="button" className="main" onClick={() => work.change((d) => withFilmsAdded(d, add))}>
        Want films of {targets.join(', ')}
      </button>
      <span className="fine">
        {fineText(Math.abs(add), system)} {add > 0 ? 'more' : 'less'} in every seat that the plan can change; it is then
        made for those, and tried again.
      </span>
    </p>
  );
}
