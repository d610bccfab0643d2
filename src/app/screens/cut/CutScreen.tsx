/** Cut: what to take off which surface, with which settings, and when to stop. */
import { useMemo } from 'react';
import { useStore } from 'zustand';
import type { Design } from '../../../design/definition.ts';
import type { System } from '../../../design/units.ts';
import { asAssumed, measuredFirst, unreadSurfaces } from '../../../report/assumed.ts';
import { behindReadings } from '../../../report/belief/notAsRead.ts';
import { withCase } from '../../../report/cut/caseWords.ts';
import type { CutReport } from '../../../report/cut/definition.ts';
import { leftVerdict } from '../../../report/cut/leftVerdict.ts';
import { toAngleTools } from '../../../report/cut/toCut.ts';
import { cutVerdict, isReached, nothingToCut } from '../../../report/cut/verdict.ts';
import { designWithCut } from '../../../report/cut/withCut.ts';
import { WorkContext } from '../../controls/context.ts';
import { Aims } from './Aims.tsx';
import { Angles } from './Angles.tsx';
import { BudgetChart } from './BudgetChart.tsx';
import CutControls from './CutControls.tsx';
import { LapPanel } from './LapPanel.tsx';
import { Limits } from './Limits.tsx';
import { NothingCut } from './NothingCut.tsx';
import { OrderOfWork } from './OrderOfWork.tsx';
import { RunsAsPlanned, useRunsAsPlanned } from './RunsAsPlanned.tsx';
import { Steps } from './Steps.tsx';
import { StockCloseUp } from './StockCloseUp.tsx';
import { StockSection } from './StockSection.tsx';
import { TakeDone } from './TakeDone.tsx';
import { isClashing, Trials } from './Trials.tsx';
import { UnwrittenMetal } from './UnwrittenMetal.tsx';
import './cut.css';
import '../run/run.css';
import { Fault } from '../../frame/Fault.tsx';
import { RecordOfJob } from '../../record/RecordOfJob.tsx';
import { useAngles } from '../../state/angles.ts';
import { sameSeats } from '../../state/sameSeats.ts';
import type { Work } from '../../state/store.ts';
import { useShopDesign } from '../../state/useShopDesign.ts';
import { useSolved } from '../../state/useSolved.ts';

export default function CutScreen({ work }: { work: Work }) {
  const design = useStore(work.store, (state) => state.design);
  const allowed = design.cut !== undefined;
  return (
    <WorkContext value={work}>
      {allowed ? <Plan work={work} /> : <NothingCut work={work} />}
      <RecordOfJob work={work} />
    </WorkContext>
  );
}

/** Every seat that is cut, large enough to see a micrometre. */
function CloseUps({ design, cut, system }: { design: Design; cut: CutReport; system: System }) {
  const after = useMemo(() => designWithCut(design, cut), [design, cut]);
  const touched = (name: string) =>
    cut.steps.some(({ seat }) => seat === name) || cut.faces.some(({ seats }) => seats.includes(name));
  return (
    <div>
      <div className="close-ups">
        {design.seats.map(
          ({ name }, i) =>
            touched(name) && <StockCloseUp key={name} before={design} after={after} seat={i} system={system} />,
        )}
      </div>
      <p className="fine">
        Straightened, bush above and journal below as they stand now; the filled band what is to come off, dashed where
        it is to end, the fill between the parts the film of now.
      </p>
    </div>
  );
}

function Plan({ work }: { work: Work }) {
  const system = useStore(work.store, (state) => state.system);
  const design = useShopDesign(
    useStore(work.store, (state) => state.design),
    system,
  );
  const piece = useStore(work.store, (state) => state.piece);
  const way = useAngles();
  const factor = useStore(work.store, (state) => state.factor);
  const { value: cut, of, fault, again } = useSolved('cut', design);
  // What no plan gives need not be run.
  const running = useRunsAsPlanned(
    of,
    cut,
    cut !== null && !isClashing(cut) && (isReached(cut) || cut.inTolerance),
    system,
  );
  if (fault !== null) return <Fault what="The plan" fault={fault} again={again} />;
  if (!cut || !of?.cut || !sameSeats(of, design)) return <p className="loading">The plan is being worked out.</p>;
  const plain = asAssumed(leftVerdict(of, cut, system) ?? cutVerdict(of, cut, system, way), of, ['seats', 'cut']);
  const verdict = behindReadings(withCase(measuredFirst(plain, of, 'stop'), cut, system), cut.notAsRead);
  // Nothing is told to be taken off what nobody has measured, or what was read otherwise.
  const guessed = unreadSurfaces(of).length > 0;
  const loose = guessed || cut.notAsRead !== undefined;
  const isCut = !nothingToCut(cut);
  const runs = <RunsAsPlanned work={work} running={running} system={system} />;
  // It stands first where it speaks against the plan, and while it is not known whether it does.
  const forbidden = running.verdict?.tone === 'stop' || (running.made !== null && running.film === null);
  const plan = (
    <>
      <div className={isCut ? 'pictures' : ''}>
        <StockSection design={of} cut={cut} factor={factor} system={system} />
        {isCut && <CloseUps design={of} cut={cut} system={system} />}
      </div>
      {isCut && <Steps work={work} design={of} cut={cut} system={system} />}
      {isCut && !loose && <TakeDone work={work} design={of} stale={of !== design} cut={cut} system={system} />}
    </>
  );
  const settings = (
    <>
      {isCut && <Angles cut={cut} blocks={toAngleTools(of.cut).blocks.system} system={system} />}
      {isCut && <BudgetChart design={of} cut={cut} system={system} />}
      {isCut && <OrderOfWork work={work} cut={cut} />}
    </>
  );
  return (
    <>
      <UnwrittenMetal work={work} />
      {forbidden && !loose && runs}
      <section className={`verdict ${verdict.tone}`} aria-live="polite">
        <h2>{verdict.headline}</h2>
        {verdict.sentences.map((sentence) => (
          <p key={sentence}>{sentence} </p>
        ))}
      </section>
      {!forbidden && !loose && runs}
      <p className="advice">
        A wheel or a turning spindle hurts: guards, eye protection, the machine’s own manual and local rules first. What
        stands here is advice, to be proved by measurement before metal is cut.
      </p>
      {!loose && <Limits work={work} cut={cut} system={system} />}
      {!loose && <Aims work={work} design={of} cut={cut} running={running} system={system} />}
      {loose ? (
        <details className="before-trials">
          <summary>What the plan would be, were the parts as {guessed ? 'assumed' : 'drawn'}: not to cut by</summary>
          {runs}
          {plan}
          {settings}
        </details>
      ) : cut.remaining ? (
        <>
          <Trials key={piece} work={work} cut={cut} system={system} />
          <details className="before-trials">
            <summary>The whole plan, as the parts were before the trials</summary>
            {plan}
          </details>
        </>
      ) : (
        plan
      )}
      <CutControls work={work} />
      {!loose && settings}
      {(loose || !cut.remaining) && <Trials key={piece} work={work} cut={cut} guessed={guessed} system={system} />}
      <LapPanel work={work} cut={cut} system={system} />
    </>
  );
}
