/** Odds: how likely the pair works before metal is cut, what that hangs on, and what would help. */
import { type ReactNode, useState } from 'react';
import { useStore } from 'zustand';
import type { Design } from '../../../design/definition.ts';
import { defaultAt } from '../../../design/place.ts';
import type { System } from '../../../design/units.ts';
import { lookSentence } from '../../../report/cut/advice.ts';
import { isLeft } from '../../../report/cut/leave.ts';
import { behindTrial, WITHHELD_NOW } from '../../../report/cut/withheld.ts';
import type { OddsReport } from '../../../report/odds/definition.ts';
import { holdSentence } from '../../../report/odds/holdWords.ts';
import { oddsNow } from '../../../report/odds/now.ts';
import { timesText } from '../../../report/odds/times.ts';
import { chanceOf, oddsVerdict, readSentence } from '../../../report/odds/words.ts';
import { WorkContext } from '../../controls/context.ts';
import { type PartEntry, Parts } from '../../frame/Parts.tsx';
import { SettleOnCut } from '../../frame/SettleOnCut.tsx';
import { ShortVerdict } from '../../frame/ShortVerdict.tsx';
import { useBelief } from '../../state/belief.ts';
import { isBefore } from '../../state/isBefore.ts';
import { sameSeats } from '../../state/sameSeats.ts';
import type { Work } from '../../state/store.ts';
import { useShopDesign } from '../../state/useShopDesign.ts';
import { useSolved } from '../../state/useSolved.ts';
import { useSlip } from '../cut/useSlip.ts';
import { useWithheld } from '../cut/writing.ts';
import { ChanceTable } from './ChanceTable.tsx';
import { Cloud } from './Cloud.tsx';
import { FilmOdds } from './FilmOdds.tsx';
import { filmsThere } from './filmsThere.ts';
import { Hold } from './Hold.tsx';
import { Matters } from './Matters.tsx';
import { type MatterRow, matterRows } from './matterRows.ts';
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
    </WorkContext>
  );
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
  // The plan that Cut shows, for its advice: the two never advise differently.
  const plan = useSolved('cut', design.cut ? design : null);
  const belief = useBelief(design);
  const [chosen, setChosen] = useState<Which>('planned');
  const { of, report, stage, pictures } = odds;
  const withheld = useWithheld(work, { notAsRead: report?.notAsRead, before: isBefore(of, design) });
  const slip = useSlip(work, withheld);
  // By readings that contradict each other no pair is drawn on the screen, and no chance told.
  const clash = report?.notAsRead === 'contradict';
  const hidden = withheld !== null || clash;
  const progress = hidden ? null : <OddsProgress odds={odds} />;
  // As the parts are now comes first of all; what is planned may say something else.
  if (!of || !sameSeats(of, design) || (stage === 'now' && !report?.planned))
    return (
      <>
        <section className="verdict plain" aria-live="polite">
          <h2>{stage === 'stopped' ? 'Nothing is worked out yet.' : 'Pairs are being drawn.'}</h2>
          {progress}
        </section>
        <Parts key="parts" screen="odds" parts={ownParts(work, design, system)} />
      </>
    );
  // What Cut asks for: of the cut that is planned, or where trials leave none.
  const asked = plan.of === of && (report?.planned || plan.value?.remaining || plan.value?.guess);
  const told = plan.value && asked;
  const look = told ? lookSentence(plan.value!, system) : '';
  const left = Boolean(told) && !plan.value!.guess && isLeft(plan.value!);
  const verdict = behindTrial(oddsVerdict(of, report, system, look, left), withheld, false, slip);
  const which: Which = report?.planned && pictures.planned ? chosen : 'now';
  const state = which === 'planned' ? report?.planned : report;
  const drawn = pictures[which];
  const stale = of !== design;
  const there = filmsThere(
    of,
    {
      report,
      which,
      cut: plan.of === of ? plan.value : null,
      belief: belief.of === of ? belief.value : null,
    },
    system,
  );
  const working = stage === 'now' || stage === 'planned' || stage === 'matters';
  return (
    <>
      <ShortVerdict
        tone={verdict.tone}
        now={withheld ? WITHHELD_NOW[withheld] : oddsNow(of, report, look, left)}
        {...whyOf(verdict, hidden ? null : report, hidden ? '' : look)}
        more="What that means, and on what it rests"
        busy={withheld === 'working'}
      >
        {withheld && <SettleOnCut why={withheld} />}
        {clash && !withheld && (
          <p className="advice">
            <a href="#measure">To the readings on Measure</a>
          </p>
        )}
      </ShortVerdict>
      {progress}
      {report && state && !hidden && (
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
              <FilmOdds
                design={of}
                state={state}
                films={drawn.films}
                cut={which === 'planned'}
                byPlan={which === 'planned' || report.setBy === 'plan'}
                told={there}
                system={system}
              />
            </div>
          )}
        </div>
      )}
      <Parts
        key="parts"
        screen="odds"
        parts={[
          ...(report && state && !hidden ? toldParts({ work, of, report, state, system, stale, working }) : []),
          ...ownParts(work, design, system, of && report && !hidden ? { of, report, stale } : null),
        ].filter((part) => !hidden || part?.id !== 'running')}
      />
    </>
  );
}

/** The first line says how often it works; where the headline says no more than that, what would help comes next. */
function whyOf({ headline, sentences }: ReturnType<typeof oddsVerdict>, report: OddsReport | null, look: string) {
  if (look !== '' && !report?.notAsRead) return { why: look, rest: [headline, ...sentences] };
  const helps =
    report && !report.notAsRead && readsBeatTrial(report)
      ? readSentence(report.planned ?? report, report.planned !== undefined, chanceOf(report))
      : '';
  return helps === '' || !sentences.includes(helps)
    ? { why: headline, rest: sentences }
    : { why: helps, rest: [headline, ...sentences.filter((sentence) => sentence !== helps)] };
}

/** Whether to measure gains more than a trial before the cut, where that was worked out. */
function readsBeatTrial({ trialFirst, planned, ...now }: OddsReport): boolean {
  const reads = (planned ?? now).reads ?? [];
  return !trialFirst || reads.some(({ share }) => share > trialFirst.share);
}

interface ToldProps {
  work: Work;
  of: Design;
  report: OddsReport;
  /** as the parts are, or as the plan leaves them */
  state: OddsReport | NonNullable<OddsReport['planned']>;
  system: System;
  stale: boolean;
  /** more is on its way */
  working: boolean;
}

/** What the pairs drawn tell besides how often they work. */
function toldParts({ work, of, report, state, system, stale, working }: ToldProps): (PartEntry | null)[] {
  const shown = (children: ReactNode) => <div className={stale ? 'stale' : ''}>{children}</div>;
  const rows = matterRows(state);
  const wanted = of.odds?.wanted ?? defaultAt('odds.wanted');
  return [
    rows.length === 0 && working
      ? null
      : {
          id: 'matters',
          title: 'What matters, and what to buy',
          short: 'What matters',
          told: mattersTold(rows),
          children: shown(
            <Matters
              matters={state}
              chance={state.best.inBand.all ?? 0}
              planned={state !== report}
              working={working}
            />,
          ),
        },
    report.hold === undefined
      ? null
      : {
          id: 'hold',
          title: 'What to hold to',
          short: 'Hold to',
          told: holdSentence(report.hold, wanted),
          children: shown(<Hold work={work} report={report} system={system} />),
        },
    {
      id: 'chances',
      title: 'Every chance, with its limits',
      short: 'Chances',
      told: `${report.draws} pairs drawn`,
      children: shown(<ChanceTable report={report} />),
    },
  ];
}

/** What the person sets: pairs that are run, spreads, ways to make the parts. */
function ownParts(
  work: Work,
  design: Design,
  system: System,
  told: Pick<ToldProps, 'of' | 'report' | 'stale'> | null = null,
): PartEntry[] {
  const made = told?.report.processes ?? [];
  const [spreads, ways] = [design.odds?.spread?.length ?? 0, design.odds?.processes?.length ?? 0];
  return [
    {
      id: 'running',
      title: 'How the pairs run',
      short: 'Run them',
      told: design.run ? 'each from cold to warm' : 'needs speed and oil, from Run',
      children: <RunningOdds design={design} system={system} />,
    },
    {
      id: 'spreads',
      title: 'Spreads of your own',
      short: 'Spreads',
      told: spreads === 0 ? 'none' : `${spreads} in the list`,
      children: <Spreads work={work} effective={told?.report.effective} />,
    },
    {
      id: 'processes',
      title: 'Ways to make the parts',
      short: 'Ways',
      told: ways === 0 ? 'none to compare' : made.length > 0 ? bestWayTold(made) : `${ways} to compare`,
      children: (
        <>
          {told && made.length > 0 && (
            <div className={told.stale ? 'stale' : ''}>
              <ProcessTable report={told.report} design={told.of} system={system} />
            </div>
          )}
          <Processes work={work} />
        </>
      ),
    },
  ];
}

/** The surface most of the doubt comes from. */
function mattersTold(rows: readonly MatterRow[]): string {
  const [most] = rows.filter(({ share }) => share).sort((a, b) => b.share!.share - a.share!.share);
  return most ? `most of the doubt: ${most.name}, ${Math.round(100 * most.share!.share)} %` : '';
}

function bestWayTold(ways: NonNullable<OddsReport['processes']>): string {
  const best = ways.reduce((a, b) => (b.share > a.share ? b : a));
  return `${best.name} works ${timesText(best.share)}`;
}
