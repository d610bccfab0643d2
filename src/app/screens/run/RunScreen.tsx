/**
 * Run: the oil films of the turning spindle, what they carry, how it warms, and what the clearance becomes when it is
 * hot.
 */
import { useState } from 'react';
import { useStore } from 'zustand';
import type { Design } from '../../../design/definition.ts';
import { fineText, type System } from '../../../design/units.ts';
import { asAssumed, knownFirst } from '../../../report/assumed.ts';
import type { BeliefReport } from '../../../report/belief/definition.ts';
import { behindReadings } from '../../../report/belief/notAsRead.ts';
import type { RunFields } from '../../../report/film/fields.ts';
import { liveVerdict } from '../../../report/film/liveVerdict.ts';
import { filmVerdict } from '../../../report/film/verdict.ts';
import type { Verdict } from '../../../report/fit/verdict.ts';
import { filmDoubtSentence } from '../../../report/odds/runningWords.ts';
import { Believed, useBelief } from '../../frame/Believed.tsx';
import { Fault } from '../../frame/Fault.tsx';
import { onDemand } from '../../frame/onDemand.tsx';
import { AimFor } from './AimFor.tsx';
import { ClearanceWindow, ColdSettings } from './ClearanceWindow.tsx';
import { HandControls } from './HandControls.tsx';
import { Idealisations } from './Idealisations.tsx';
import { NothingRuns } from './NothingRuns.tsx';
import { SpeedCharts, WarmUpCharts } from './RunCharts.tsx';
import { RunNumbers } from './RunNumbers.tsx';
import { flows, MapChoice, RunPictures } from './RunPictures.tsx';
import { RunProgress } from './RunProgress.tsx';
import './run.css';
import type { Work } from '../../state/store.ts';
import type { Layer } from './SeatMap.tsx';
import type { Running } from './sweeps.ts';
import { useFields } from './useFields.ts';
import { useFilmDoubt } from './useFilmDoubt.ts';
import { type RunWork, useRunWork } from './useRunWork.ts';
import { useWarmFields } from './useWarmFields.ts';

const RunControls = onDemand(() => import('./RunControls.tsx'), {
  what: 'The controls',
  loading: 'The controls are loading.',
});

export default function RunScreen({ work }: { work: Work }) {
  const design = useStore(work.store, (state) => state.design);
  return design.run ? <Runs work={work} design={design as Running} /> : <NothingRuns work={work} />;
}

function Runs({ work, design }: { work: Work; design: Running }) {
  const system = useStore(work.store, (state) => state.system);
  const fields = useFields(design);
  const run = useRunWork(design);
  const [layer, setLayer] = useState<Layer>('pressure');
  const { film, of } = run;
  const [warm, setWarm] = useState(false);
  const steady = of === design ? (film?.steady ?? null) : null;
  const warming = useWarmFields(warm, design, steady);
  const warmed = warming.value;
  const belief = useBelief(design);
  const doubt = useFilmDoubt(design, run.stage === 'done' && of === design);
  const drawn = warmed ? { fields: warmed, of: design } : { fields: fields.value, of: fields.of };
  return (
    <>
      <RunVerdict
        run={run}
        design={design}
        belief={belief.value}
        live={
          fields.of?.run && fields.value && fields.of !== run.of
            ? { fields: fields.value, of: fields.of as Running }
            : null
        }
        system={system}
        work={work}
      />
      <RunProgress work={run} />
      <Believed design={design} system={system} solved={belief} />
      {doubt.value && doubt.fresh && <p className="believed">{filmDoubtSentence(design, doubt.value, system)}</p>}
      <Fault what="How sure the running films are" fault={doubt.fault} again={doubt.again} />
      <Fault what="The films" several fault={fields.fault} again={fields.again} />
      <Fault what="The warm films" several fault={warming.fault} again={warming.again} />
      <HandControls work={work} design={design} fields={drawn.fields} system={system}>
        <MapChoice
          layer={flows(drawn.fields) ? layer : 'film'}
          setLayer={setLayer}
          warm={warmed !== null}
          setWarm={setWarm}
          canWarm={steady !== null}
        />
      </HandControls>
      {drawn.fields?.seats.length && drawn.of?.run ? (
        <RunPictures
          fields={drawn.fields}
          design={drawn.of}
          layer={layer}
          system={system}
          work={work}
          warm={warmed ? steady : null}
        />
      ) : (
        fields.fault === null && fields.value === null && <p className="loading">The films are being worked out.</p>
      )}
      <RunControls work={work} fields={fields.value} />
      {film && of && (
        <div className={of === design ? 'run' : 'run stale'}>
          <AimFor work={work} design={of} sweep={run.films} aim={run.aim} guidance={film.guidance} system={system} />
          <ClearanceWindow sweep={run.clearances} design={of} system={system} />
          <ColdSettings work={work} design={of} settings={run.settings} system={system} />
          <WarmUpCharts film={film} design={of} system={system} />
          <SpeedCharts sweep={run.speeds} design={of} system={system} />
          <h2>In figures</h2>
          <RunNumbers film={film} system={system} />
        </div>
      )}
      <Idealisations film={film} />
    </>
  );
}

/** The same verdict, behind what nobody has measured or typed of what it goes by. */
const asKnown = (verdict: Verdict, of: Design) => knownFirst(asAssumed(verdict, of, ['seats', 'run']), of);

/**
 * The verdict of the design; while it is worked out, what the films that follow the hand tell already (`live`, a frame
 * or two behind it).
 */
function RunVerdict({
  run: { film, of, stage, fault },
  design,
  live,
  belief,
  system,
  work,
}: {
  run: RunWork;
  design: Running;
  live: { fields: RunFields; of: Running } | null;
  belief: BeliefReport | null;
  system: System;
  work: Work;
}) {
  const stale = of !== design;
  if (stale && live !== null) {
    const { tone, headline, sentences } = asKnown(liveVerdict(live.of, live.fields, system), live.of);
    return (
      <section className={`verdict ${tone}`} aria-live="polite" aria-busy="true">
        <h2>{headline}</h2>
        <p>
          {fault !== null
            ? 'Warm-up, whirl and limits are not known for this.'
            : stage === 'stopped'
              ? 'Stopped: warm-up, whirl and limits are not worked out for this.'
              : sentences.join(' ')}
        </p>
      </section>
    );
  }
  if (!film || !of) {
    return (
      <section className="verdict mend" aria-live="polite">
        <h2>
          {fault !== null
            ? 'How it runs is not known.'
            : stage === 'stopped'
              ? 'Stopped before the run was worked out.'
              : 'The run is being worked out.'}
        </h2>
      </section>
    );
  }
  const verdict = behindReadings(asKnown(filmVerdict(of, film, system), of), belief?.notAsRead);
  return (
    <section className={`verdict ${verdict.tone}${stale ? ' stale' : ''}`} aria-live="polite" aria-busy={stale}>
      <h2>{verdict.headline}</h2>
      <p>{verdict.sentences.join(' ')}</p>
      {film.backOff && !stale && (
        <p className="buttons">
          <button type="button" onClick={() => work.moveTo(Number(film.backOff!.position.toPrecision(9)))}>
            Set it at {fineText(film.backOff.position, system)}
          </button>
        </p>
      )}
    </section>
  );
}
