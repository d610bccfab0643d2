/**
 * Run: the oil films of the turning spindle, what they carry, how it warms, and what the clearance becomes when it is
 * hot.
 */
import { type ReactNode, useState } from 'react';
import { useStore } from 'zustand';
import type { System } from '../../../design/units.ts';
import { aimVerdict } from '../../../report/film/aimVerdict.ts';
import type { RunFields } from '../../../report/film/fields.ts';
import { filmDoubtSentence } from '../../../report/odds/runningWords.ts';
import Believed from '../../frame/Believed.tsx';
import { Fault } from '../../frame/Fault.tsx';
import { onDemand } from '../../frame/onDemand.tsx';
import { type PartEntry, Parts } from '../../frame/Parts.tsx';
import { WhichPair } from '../../frame/WhichPair.tsx';
import { useMedia } from '../../pictures/useMedia.ts';
import { useBelief } from '../../state/belief.ts';
import { type PairTold, usePairTold } from '../../state/usePairTold.ts';
import { AimFor } from './AimFor.tsx';
import { ClearanceWindow, ColdSettings } from './ClearanceWindow.tsx';
import { HandControls } from './HandControls.tsx';
import { Idealisations } from './Idealisations.tsx';
import { NothingRuns } from './NothingRuns.tsx';
import { SpeedCharts, WarmUpCharts } from './RunCharts.tsx';
import { RunNumbers } from './RunNumbers.tsx';
import { MapChoice, RunPictures } from './RunPictures.tsx';
import { RunProgress } from './RunProgress.tsx';
import { RunSolid } from './RunSolid.tsx';
import { RunVerdict } from './RunVerdict.tsx';
import { flows } from './runningFilm.ts';
import { aimTold, clearancesTold, figuresTold, settingsTold, speedTold, warmingTold } from './runTold.ts';
import './run.css';
import type { Work } from '../../state/store.ts';
import { useRunScale } from './runningPair.ts';
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
  return design.run ? <Asked own={work} asked={design as Running} /> : <NothingRuns work={work} />;
}

/** `asked`: the design itself; what runs is the pair as it is believed, or as it is drawn, as on Fit. */
function Asked({ own, asked }: { own: Work; asked: Running }) {
  const pair = usePairTold(own, useBelief(asked), Boolean(asked.cut?.trials));
  const design = useStore(pair.work.store, (state) => state.design);
  return <Runs pair={pair} own={own} asked={asked} design={design as Running} />;
}

/** As wide as this there is room for two columns: what is looked at, and what it is changed by. */
const WIDE = '(min-width: 1100px)';

function Runs({ pair, own, asked, design }: { pair: PairTold; own: Work; asked: Running; design: Running }) {
  const { work, belief, stands, withheld, slip } = pair;
  const system = useStore(work.store, (state) => state.system);
  const wide = useMedia(WIDE);
  const fields = useFields(design);
  const run = useRunWork(design);
  const [layer, setLayer] = useState<Layer>('pressure');
  const { film, of } = run;
  const [warm, setWarm] = useState(false);
  const steady = of === design ? (film?.steady ?? null) : null;
  const warming = useWarmFields(warm, design, steady);
  const warmed = warming.value;
  // What was worked out for other parts says nothing of these.
  const believed = belief.of?.seats === asked.seats && belief.of.cut === asked.cut ? belief.value : null;
  const doubt = useFilmDoubt(asked, !withheld && run.stage === 'done' && of === design);
  const sure = !withheld && doubt.value && doubt.fresh ? doubt.value : null;
  const drawn = warmed ? { fields: warmed, of: design } : { fields: fields.value, of: fields.of };
  const live =
    fields.of?.run && fields.value && fields.of !== run.of ? { fields: fields.value, of: fields.of as Running } : null;
  const pictured =
    drawn.fields?.seats.length && drawn.of?.run
      ? { fields: drawn.fields, design: drawn.of, layer, system, work, warm: warmed ? steady : null }
      : null;
  const scale = useRunScale(work, pictured);
  return (
    <div className="run-screen">
      <div className={withheld === 'working' ? 'in-sight of-before' : 'in-sight'}>
        <RunVerdict
          run={run}
          design={design}
          belief={believed}
          stands={stands}
          withheld={withheld}
          slip={slip}
          sure={sure}
          live={live}
          system={system}
          work={work}
        />
        {pictured ? (
          <RunPictures {...pictured} scale={scale} wide={wide}>
            {(layers) => (
              <>
                <WhichPair {...pair} work={own} />
                <MapChoice
                  layer={layers && flows(drawn.fields) ? layer : 'film'}
                  setLayer={setLayer}
                  layers={layers}
                  warm={warmed !== null}
                  setWarm={setWarm}
                  canWarm={steady !== null}
                />
              </>
            )}
          </RunPictures>
        ) : (
          fields.fault === null && fields.value === null && <p className="loading">The films are being worked out.</p>
        )}
      </div>
      <div className="beside">
        <HandControls work={work} design={design} fields={drawn.fields} system={system} />
        {wide && pictured && <RunSolid {...pictured} scale={scale} />}
        <RunProgress work={run} />
        <Believed design={design} system={system} solved={belief} />
        {sure && <p className="believed">{filmDoubtSentence(design, sure, system)}</p>}
        <Fault what="How sure the running films are" fault={doubt.fault} again={doubt.again} />
        <Fault what="The films" several fault={fields.fault} again={fields.again} />
        <Fault what="The warm films" several fault={warming.fault} again={warming.again} />
        <RunParts
          work={work}
          design={design}
          run={run}
          fields={fields.value}
          withheld={withheld !== null}
          system={system}
        />
      </div>
    </div>
  );
}

interface PartsProps {
  work: Work;
  design: Running;
  run: RunWork;
  fields: RunFields | null;
  /** then nothing is advised, and no figure of the drawn pair stands in a closed line */
  withheld: boolean;
  system: System;
}

const AS_DRAWN = 'of the parts as drawn';

/** All that is not the answer, its picture and the hand's controls. */
function RunParts({ work, design, run, fields, withheld, system }: PartsProps) {
  const { film, of, films, aim, clearances, settings, speeds } = run;
  const worked = film && of;
  const advised = worked && !withheld;
  const stale = (children: ReactNode) => <div className={of === design ? 'run' : 'run stale'}>{children}</div>;
  const verdict = of && aim && films.points.length > 1 ? aimVerdict(of, films.points, aim, system) : undefined;
  const part = (shown: unknown, entry: () => PartEntry) => (shown ? entry() : null);
  return (
    <Parts
      screen="run"
      parts={[
        {
          id: 'settings',
          title: 'Oil, load, heat',
          told: 'every quantity of the run, with grooves and roughness',
          children: <RunControls work={work} fields={fields} />,
        },
        part(advised && films.points.length > 1, () => ({
          id: 'aim',
          title: 'Film to aim for',
          told: aimTold(verdict, system),
          children: stale(<AimFor work={work} design={of!} sweep={films} aim={aim} system={system} />),
        })),
        part(advised && clearances.points.length > 1, () => ({
          id: 'clearances',
          title: 'Clearances',
          told: clearancesTold(clearances, system),
          children: stale(<ClearanceWindow sweep={clearances} design={of!} system={system} />),
        })),
        part(advised && settings.length > 0, () => ({
          id: 'cold',
          title: 'Where to set it cold',
          told: settingsTold(settings, system),
          children: stale(<ColdSettings work={work} design={of!} settings={settings} system={system} />),
        })),
        part(worked && film.warmUp.length > 1, () => ({
          id: 'warming',
          title: 'Warming up',
          told: withheld ? AS_DRAWN : warmingTold(film!, system),
          children: stale(<WarmUpCharts film={film!} design={of!} system={system} />),
        })),
        part(advised && speeds.points.length > 1, () => ({
          id: 'speeds',
          title: 'Speeds',
          told: speedTold(speeds),
          children: stale(<SpeedCharts sweep={speeds} design={of!} system={system} />),
        })),
        part(worked, () => ({
          id: 'figures',
          title: 'In figures',
          told: withheld ? AS_DRAWN : figuresTold(film!, system),
          children: stale(<RunNumbers film={film!} system={system} />),
        })),
        {
          id: 'granted',
          title: 'Before it runs',
          told: 'what comes first at the machine, and what is taken for granted',
          children: <Idealisations film={film} />,
        },
      ]}
    />
  );
}
