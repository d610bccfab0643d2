/** Cut: what to take off which surface, with which settings, and when to stop. */
import { type ReactNode, useMemo } from 'react';
import { useStore } from 'zustand';
import type { Design } from '../../../design/definition.ts';
import type { System } from '../../../design/units.ts';
import { asAssumed, measuredFirst } from '../../../report/assumed.ts';
import { behindReadings } from '../../../report/belief/notAsRead.ts';
import { lookBefore } from '../../../report/cut/advice.ts';
import { beforeTrial } from '../../../report/cut/beforeTrial.ts';
import { withCase } from '../../../report/cut/caseWords.ts';
import type { CutReport } from '../../../report/cut/definition.ts';
import { behindLeave, isLeft } from '../../../report/cut/leave.ts';
import { leftShown } from '../../../report/cut/leftShown.ts';
import { belowNow, leftVerdict } from '../../../report/cut/leftVerdict.ts';
import { cutNow } from '../../../report/cut/now.ts';
import { toAngleTools } from '../../../report/cut/toCut.ts';
import { cutVerdict, isReached, nothingToCut } from '../../../report/cut/verdict.ts';
import { behindTrial, isUnsettled, WITHHELD_NOW } from '../../../report/cut/withheld.ts';
import { WorkContext } from '../../controls/context.ts';
import { Aims, isTraded, Trade } from './Aims.tsx';
import { Angles } from './Angles.tsx';
import { BudgetChart } from './BudgetChart.tsx';
import { CloseUps } from './CloseUps.tsx';
import CutControls from './CutControls.tsx';
import {
  anglesTold,
  budgetTold,
  lapTold,
  mayCutTold,
  orderTold,
  runsTold,
  stepsTold,
  tradeTold,
  trialsTold,
} from './cutTold.ts';
import { LapPanel } from './LapPanel.tsx';
import { Limits } from './Limits.tsx';
import { NothingCut } from './NothingCut.tsx';
import { OrderOfWork } from './OrderOfWork.tsx';
import { type Running, RunsAsPlanned, useRunsAsPlanned } from './RunsAsPlanned.tsx';
import { Steps } from './Steps.tsx';

import { StockSection } from './StockSection.tsx';
import { TakeDone } from './TakeDone.tsx';
import { TakeSafe } from './TakeSafe.tsx';
import { ToKnown } from './ToKnown.tsx';
import { ToTheTrial } from './ToTheTrial.tsx';
import { Trials } from './Trials.tsx';
import { useMend } from './useMend.ts';
import { useWithheld, useWriting } from './writing.ts';
import './cut.css';
import { Fault } from '../../frame/Fault.tsx';
import { placeOf } from '../../frame/openParts.ts';
import { type PartEntry, Parts, reveal } from '../../frame/Parts.tsx';
import { ShortVerdict } from '../../frame/ShortVerdict.tsx';
import { useMedia } from '../../pictures/useMedia.ts';
import { recordPart } from '../../record/RecordOfJob.tsx';
import { useAngles } from '../../state/angles.ts';
import { isBefore } from '../../state/isBefore.ts';
import { sameSeats } from '../../state/sameSeats.ts';
import type { Work } from '../../state/store.ts';
import { useShopDesign } from '../../state/useShopDesign.ts';
import { useSolved } from '../../state/useSolved.ts';

export default function CutScreen({ work }: { work: Work }) {
  const design = useStore(work.store, (state) => state.design);
  return (
    <WorkContext value={work}>
      {design.cut !== undefined ? (
        <Plan work={work} />
      ) : (
        <>
          <NothingCut work={work} />
          <Parts screen="cut" parts={[recordPart(work)]} />
        </>
      )}
    </WorkContext>
  );
}

/** A plan on the screen, and what is known of it. */
interface Planned {
  work: Work;
  /** the design the plan was made for, and whether another is on its way */
  design: Design;
  stale: boolean;
  /** whether what was read and tried is other by now */
  before: boolean;
  cut: CutReport;
  running: Running;
  system: System;
}

function Plan({ work }: { work: Work }) {
  const system = useStore(work.store, (state) => state.system);
  const design = useShopDesign(
    useStore(work.store, (state) => state.design),
    system,
  );
  const { value: cut, of, fault, again } = useSolved('cut', design);
  // What no plan gives need not be run.
  const running = useRunsAsPlanned(
    of,
    cut,
    cut !== null && !isUnsettled(cut) && (isReached(cut) || cut.inTolerance),
    system,
  );
  if (fault !== null) return <Fault what="The plan" fault={fault} again={again} />;
  if (!cut || !of?.cut || !sameSeats(of, design)) return <p className="loading">The plan is being worked out.</p>;
  const [stale, before] = [of !== design, isBefore(of, design)];
  return <Told planned={{ work, design: of, stale, before, cut, running, system }} />;
}

const MORE = 'Why, and how sure';

/** `waits`: that it is not known yet how it runs, said where the next step will stand, so that nothing jumps. */
function CutVerdict({ work, design, stale, before, cut, running, system, waits }: Planned & { waits: ReactNode }) {
  const way = useAngles();
  const told = leftVerdict(design, cut, system);
  const plain = asAssumed(told ? belowNow(told, design, cut, system) : cutVerdict(design, cut, system, way), design, [
    'seats',
    'cut',
  ]);
  const mustNotRun = running.verdict?.tone === 'stop';
  const look = lookBefore(cut, system);
  // Once there are trials what they leave says so itself.
  const left = mustNotRun || cut.remaining ? plain : behindLeave(plain, cut, look?.doing ?? null, system);
  const known = behindReadings(withCase(measuredFirst(left, design, 'stop'), cut, system), cut.notAsRead);
  const withheld = useWithheld(work, { before });
  const verdict = behindTrial(known, withheld, true);
  const now = withheld ? WITHHELD_NOW[withheld] : cutNow(cut, { mustNotRun }, system);
  const tries =
    !withheld &&
    !isUnsettled(cut) &&
    cut.notAsRead === undefined &&
    (cut.guess || (!isForbidden(running) && !cut.asTheyAre && (!isLeft(cut) || look !== null)));
  const mend = useMend(work, cut);
  const [writing] = useWriting(work);
  return (
    <ShortVerdict tone={verdict.tone} now={now} why={verdict.headline} rest={verdict.sentences} more={MORE}>
      {withheld !== 'working' && (withheld || isUnsettled(cut)) && (
        <p className="buttons">
          {writing ? (
            <button type="button" onClick={() => reveal(placeOf('cut', 'trials'))}>
              To the trial
            </button>
          ) : (
            <ToKnown causes={cut.causes} go={(cause) => mend(cause, 'new')} />
          )}
        </p>
      )}
      {tries ? (
        <>
          <ToTheTrial work={work} cut={cut} />
          {look?.when !== 'first' && <TakeSafe work={work} cut={cut} stale={stale} system={system} />}
        </>
      ) : (
        waits
      )}
    </ShortVerdict>
  );
}

/** Whether it is not known yet, or not at all. */
const isUnknown = ({ made, film }: Running) => made !== null && film === null;
/** Whether it speaks against the plan, or it is not known yet whether it does. */
const isForbidden = (running: Running) => running.verdict?.tone === 'stop' || isUnknown(running);

/** As wide as this there is room for two columns: what is looked at, and what it is changed by. */
const WIDE = '(min-width: 1100px)';

function Told({ planned }: { planned: Planned }) {
  const wide = useMedia(WIDE);
  const { work, design, before, cut, running, system } = planned;
  // Nothing is told to be taken off what nobody has measured, or what was read otherwise.
  const loose = cut.guess || cut.notAsRead !== undefined;
  const runs = <RunsAsPlanned work={work} running={running} tried={Boolean(cut.remaining)} system={system} />;
  // It stands first then.
  const forbidden = isForbidden(running);
  const waiting = isUnknown(running) && running.fault === null;
  // What trials leave is drawn of the parts as they are believed; the plan before them stands in a part of its own.
  const left = useMemo(() => leftShown(design, cut), [design, cut]);
  const shown = { ...planned, ...(left ?? {}) };
  // By what does not go together nothing is drawn to be taken off either. (Under a hand that types metal it stays.)
  const withheld = useWithheld(work, { cut, before });
  const held = withheld === 'clash' || withheld === 'refused';
  const [writing] = useWriting(work);
  const pictured =
    !loose && !held && (!cut.remaining || (left !== null && left.cut.steps.length + left.cut.faces.length > 0));
  return (
    <div className={['cut-screen', !pictured && 'alone', writing && 'writing'].filter(Boolean).join(' ')}>
      <div className={before ? 'in-sight of-before' : 'in-sight'}>
        {forbidden && !waiting && !loose && runs}
        <CutVerdict {...planned} waits={waiting && !loose && runs} />
        {pictured && <Pictures {...shown} close={wide} />}
      </div>
      <div className="beside">
        {!loose && !held && <Limits work={work} cut={cut} system={system} />}
        {!loose && !held && <Aims work={work} design={design} cut={cut} running={running} system={system} />}
        <p className="advice">
          A wheel or a turning spindle hurts: guards, eye protection, the machine’s own manual and local rules first.
          What stands here is advice, to be proved by measurement before metal is cut.
        </p>
        <CutParts {...planned} loose={loose} runs={forbidden && !loose ? null : runs} close={pictured && !wide} />
      </div>
    </div>
  );
}

/** `close`: with every seat large below. */
function Pictures({ work, design, cut, system, close }: Planned & { close: boolean }) {
  return (
    <>
      <StockSection work={work} design={design} cut={cut} system={system} />
      {close && !nothingToCut(cut) && <CloseUps design={design} cut={cut} system={system} />}
    </>
  );
}

interface PartsProps extends Planned {
  loose: boolean;
  /** null where it stands elsewhere */
  runs: ReactNode | null;
  /** whether the seats are to be seen large here */
  close: boolean;
}

/** All that is not the answer, its picture and what it is to aim at. */
function CutParts({ loose, runs, close, ...planned }: PartsProps) {
  const { work, design, before, cut, running, system } = planned;
  const piece = useStore(work.store, (state) => state.piece);
  const now = useStore(work.store, (state) => state.design);
  const isCut = !nothingToCut(cut);
  // Once trials tell of it, and where they do not go together, the plan is of before them.
  const tried = Boolean(cut.remaining) || isUnsettled(cut);
  const trials: PartEntry = {
    id: 'trials',
    title: 'Trial and correct',
    short: 'Trial',
    told: trialsTold(now),
    open: (tried && !loose) || cut.guess === true,
    children: <Trials key={piece} work={work} cut={cut} before={before} system={system} />,
  };
  const ran: PartEntry | null =
    runs !== null && running.made !== null
      ? { id: 'runs', title: 'How it would run', told: runsTold(running, system), children: runs }
      : null;
  const plan = loose || tried ? <WholePlan {...planned} loose={loose} runs={loose ? runs : null} /> : null;
  const may: PartEntry = {
    id: 'may',
    title: 'What may be cut',
    told: mayCutTold(now),
    children: <CutControls work={work} />,
  };
  const steps: PartEntry | null = isCut
    ? { id: 'steps', title: 'Steps', told: stepsTold(cut, system), children: <StepsDone {...planned} /> }
    : null;
  const large: PartEntry | null =
    close && isCut
      ? {
          id: 'close',
          title: 'The stock, close up',
          short: 'Close up',
          told: 'every film, now and after, large',
          children: <CloseUps design={design} cut={cut} system={system} />,
        }
      : null;
  const traded: PartEntry | null = isTraded(cut.trade, system)
    ? {
        id: 'trade',
        title: 'Metal against tolerance',
        short: 'Metal',
        told: tradeTold(cut, system),
        children: <Trade cut={cut} system={system} />,
      }
    : null;
  const whole: PartEntry = {
    id: 'plan',
    title: loose ? `The plan, parts as ${cut.guess ? 'assumed' : 'drawn'}` : 'The whole plan, before the trials',
    short: 'Plan',
    told: loose ? 'not to cut by' : 'as the parts were then',
    children: plan,
  };
  // What the advice says is first stands first.
  const safe = beforeTrial(cut);
  const first = loose
    ? cut.guess
      ? [trials, may, whole]
      : [may, trials, whole]
    : tried
      ? [trials, whole, may, ran]
      : safe === 'nothing'
        ? [trials, steps, large, may, ran, traded]
        : safe === 'part'
          ? [steps, trials, large, may, ran, traded]
          : [steps, large, may, ran, traded];
  return (
    <Parts
      screen="cut"
      parts={[
        ...first,
        ...(loose || isUnsettled(cut) ? [] : settingParts(planned)),
        ...(first.includes(trials) ? [] : [trials]),
        {
          id: 'lapping',
          title: 'Lapping',
          told: lapTold(cut, system),
          children: <LapPanel work={work} cut={cut} system={system} />,
        },
        recordPart(work),
      ]}
    />
  );
}

/** How the machine is set, what that costs, and in which order all is done. */
function settingParts({ work, design, cut, system }: Planned): (PartEntry | null)[] {
  if (nothingToCut(cut)) return [];
  const { done } = work.store.getState().design.cut?.work ?? {};
  return [
    cut.settings.length > 0
      ? {
          id: 'angle',
          title: 'Setting the angle',
          short: 'Angle',
          told: anglesTold(cut),
          children: <Angles cut={cut} blocks={toAngleTools(design.cut!).blocks.system} system={system} />,
        }
      : null,
    cut.budget.contributions.length > 0
      ? {
          id: 'errors',
          title: 'Errors of the set-up',
          short: 'Errors',
          told: budgetTold(design, cut, system),
          children: <BudgetChart design={design} cut={cut} system={system} />,
        }
      : null,
    {
      id: 'order',
      title: 'Order of work',
      told: orderTold(cut, done),
      children: <OrderOfWork work={work} cut={cut} />,
    },
  ];
}

function StepsDone({ work, design, stale, before, cut, running, system }: Planned) {
  const withheld = useWithheld(work, { cut, before }) !== null;
  return (
    <>
      <Steps work={work} design={design} cut={cut} system={system} />
      <TakeDone
        work={work}
        design={design}
        stale={stale}
        cut={cut}
        against={withheld || isForbidden(running)}
        system={system}
      />
    </>
  );
}

/** The plan where it is not the one to cut by: of parts before their trials, or as nobody has measured them. */
function WholePlan({ loose, runs, ...planned }: Planned & { loose: boolean; runs: ReactNode | null }) {
  const { cut, system } = planned;
  const isCut = !nothingToCut(cut);
  return (
    <>
      {runs}
      <div className={isCut ? 'pictures' : ''}>
        <Pictures {...planned} close />
      </div>
      {isCut && !loose && <StepsDone {...planned} />}
      {isCut && loose && (
        <p>{`It would take ${stepsTold(cut, system)}. Settings, stop readings and the order of work come with measured parts.`}</p>
      )}
    </>
  );
}
