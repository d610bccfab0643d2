/** Odds: how likely the pair works before metal is cut, what that hangs on, and what would help. */
import { useState } from 'react';
import { useStore } from 'zustand';
import { oddsVerdict } from '../../../report/odds/words.ts';
import { WorkContext } from '../../controls/context.ts';
import { sameSeats } from '../../state/sameSeats.ts';
import type { Work } from '../../state/store.ts';
import { useShopDesign } from '../../state/useShopDesign.ts';
import { ChanceTable } from './ChanceTable.tsx';
import { Cloud } from './Cloud.tsx';
import { FilmOdds } from './FilmOdds.tsx';
import { Hold } from './Hold.tsx';
import { Matters } from './Matters.tsx';
import { OddsProgress } from './OddsProgress.tsx';
import { Processes, ProcessTable } from './Processes.tsx';
import { RunningOdds } from './RunningOdds.tsx';
import { Spreads } from './Spreads.tsx';
import './odds.css';
import { useOdds } from './useOdds.ts';

export default function OddsScreen({ work }: { work: Work }) {
  return (
    <WorkContext value={work}>
      <Told work={work} />
      <Runs work={work} />
      <Spreads work={work} />
      <Processes work={work} />
    </WorkContext>
  );
}

function Runs({ work }: { work: Work }) {
  const system = useStore(work.store, (state) => state.system);
  const design = useShopDesign(
    useStore(work.store, (state) => state.design),
    system,
  );
  return <RunningOdds design={design} system={system} />;
}

/** Which pair is looked at: as it is, or as the plan leaves it. */
type Which = 'now' | 'planned';

function Told({ work }: { work: Work }) {
  const system = useStore(work.store, (state) => state.system);
  const design = useShopDesign(
    useStore(work.store, (state) => state.design),
    system,
  );
  const odds = useOdds(design);
  const [chosen, setChosen] = useState<Which>('planned');
  const { of, report, stage, pictures } = odds;
  const progress = <OddsProgress odds={odds} />;
  // As the parts are now comes first of all; what is planned may say something else.
  if (!of || !sameSeats(of, design) || (stage === 'now' && !report?.planned))
    return (
      <section className="verdict plain" aria-live="polite">
        <h2>{stage === 'stopped' ? 'Nothing is worked out yet.' : 'Pairs are being drawn.'}</h2>
        {progress}
      </section>
    );
  const verdict = oddsVerdict(of, report, system);
  const which: Which = report?.planned && pictures.planned ? chosen : 'now';
  const state = which === 'planned' ? report?.planned : report;
  const drawn = pictures[which];
  const stale = of !== design;
  return (
    <>
      <section className={`verdict ${verdict.tone}`} aria-live="polite">
        <h2>{verdict.headline}</h2>
        {verdict.sentences.map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </section>
      {progress}
      {report && state && (
        <div className={stale ? 'stale' : ''}>
          {report.planned && pictures.planned && (
            <label className="which">
              <span>Shown</span>
              <select value={which} onChange={(event) => setChosen(event.target.value as Which)}>
                <option value="planned">as planned on Cut</option>
                <option value="now">as the parts are now</option>
              </select>
            </label>
          )}
          {drawn && (
            <div className="pictures">
              <Cloud design={of} state={state} pairs={drawn.pairs} system={system} />
              <FilmOdds design={of} state={state} films={drawn.films} system={system} />
            </div>
          )}
          <Matters matters={state} working={stage === 'now' || stage === 'planned' || stage === 'matters'} />
          <Hold work={work} report={report} system={system} />
          <ProcessTable report={report} design={of} system={system} />
          <ChanceTable report={report} />
        </div>
      )}
    </>
  );
}
