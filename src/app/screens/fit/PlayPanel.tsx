/**
 * Seat and play: how the rigid spindle sits in all its seats at once, what an indicator feels, and what the blue shows.
 */

import { memo, useMemo } from 'react';
import { useStore } from 'zustand';
import type { Design } from '../../../design/definition.ts';
import { unitOf } from '../../../design/measures.ts';
import { placeText, type System } from '../../../design/units.ts';
import { unreadSurfaces } from '../../../report/assumed.ts';
import { fitOf } from '../../../report/fit/fitOf.ts';
import type { ContactReport, SeatedReport } from '../../../report/play/definition.ts';
import { playVerdict, sharedNote } from '../../../report/play/verdict.ts';
import ControlGroup from '../../controls/ControlGroup.tsx';
import { WorkContext } from '../../controls/context.ts';
import type { Control } from '../../controls/controls.tsx';
import { Fault } from '../../frame/Fault.tsx';
import { useAngles } from '../../state/angles.ts';
import type { Work } from '../../state/store.ts';
import { useSolved } from '../../state/useSolved.ts';
import { useThrottled } from '../../state/useThrottled.ts';
import { BluePanel } from './BluePanel.tsx';
import { NoseMap } from './NoseMap.tsx';
import { ShakeChart } from './ShakeChart.tsx';
import './play.css';
import { usePull } from './usePull.ts';

const PLAY: Control[] = [{ kind: 'quantity', path: 'play.indicator' }, { kind: 'motions' }];
const BLUE: Control[] = [
  { kind: 'quantity', path: 'print.thickness' },
  { kind: 'quantity', path: 'friction' },
];

/** Between two looks at a design that is being dragged, ms. */
const UNHURRIED = 120;

/** A drag need not wait for what is read below it. */
export default function PlayPanel({ work }: { work: Work }) {
  const { design } = useStore(work.store);
  const pulled = usePull(work);
  return <Panel work={work} pulled={pulled} design={useThrottled(design, UNHURRIED)} />;
}

interface PanelProps {
  work: Work;
  pulled: ReturnType<typeof usePull>;
  design: Design;
}

const Panel = memo(function Panel({ work, pulled, design }: PanelProps) {
  const system = useStore(work.store, (state) => state.system);
  const piece = useStore(work.store, (state) => state.piece);
  const way = useAngles();
  const free = useMemo(() => ({ ...design, play: design.play ?? {} }), [design]);
  const { value: play, of, fault, again } = useSolved('play', free);
  if (fault !== null) return <Fault what="Seat and play" several fault={fault} again={again} />;
  if (!play || !of) return <p className="loading">Seat and play are being worked out.</p>;
  const verdict = playVerdict(of, play, fitOf(of), system, way);
  // Nothing is praised that nobody has measured.
  const tone = verdict.tone === 'good' && unreadSurfaces(of).length > 0 ? 'plain' : verdict.tone;
  const pull = unitOf('force', system).name;
  return (
    <>
      <section className={`verdict second ${tone}`} aria-live="polite">
        <h2>{verdict.headline}</h2>
        <p>{verdict.sentences.join(' ')}</p>
      </section>
      <div className="play">
        <NoseMap work={work} play={play} pulled={pulled} system={system} />
        <ShakeChart key={piece} work={work} design={free} play={play} system={system} />
      </div>
      <WorkContext value={work}>
        <div className="groups">
          <ControlGroup title="Play" rows={PLAY} />
          <ControlGroup title="Blue and friction" rows={BLUE} />
        </div>
      </WorkContext>
      <details>
        <summary>Where it bears, and what each place presses with for 1 {pull}</summary>
        <Contacts title={`Pushed home by 1 ${pull} along the axis`} answer={play.seated} system={system} />
        <Contacts
          title={`Pulled to the right by 1 ${pull} at the indicator, station ${placeText(play.indicator, system)}`}
          answer={play.shake}
          system={system}
        />
        <p className="fine">
          The arrows of the section and of the map are for 1 {pull} where the nose is being pulled then: at its face
          when it is pulled in the section, at the indicator when on the map. The farther out the pull, the harder the
          seats must press.
        </p>
      </details>
      <BluePanel work={work} design={free} system={system} />
    </>
  );
});

function Contacts({
  title,
  answer,
  system,
}: {
  title: string;
  answer: Pick<SeatedReport, 'status' | 'contacts' | 'shared'>;
  system: System;
}) {
  const rows = rowsOf(answer.contacts);
  const note = sharedNote(answer);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a box that scrolls sideways must be reachable by the keyboard
    <section className="table" aria-label={title} tabIndex={0}>
      <table>
        <caption>{title}</caption>
        <thead>
          <tr>
            <th scope="col">Seat</th>
            <th scope="col">Bush station</th>
            <th scope="col">Angle</th>
            <th scope="col">Presses with</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ seat, station, angle, share, ring }) => (
            <tr key={`${seat} ${station} ${angle}`}>
              <th scope="row">{seat}</th>
              <td>{placeText(station, system)}</td>
              <td>{ring ? 'all round' : `${angle.toFixed(0)}°`}</td>
              <td>
                {share.toFixed(2)} {unitOf('force', system).name}
              </td>
            </tr>
          ))}
          {rows.length === 0 && (
            <tr>
              <td colSpan={4}>Nothing holds it.</td>
            </tr>
          )}
        </tbody>
      </table>
      {note !== '' && <p className="fine">{note}</p>}
    </section>
  );
}

/** A ring, which the solver gives as a tripod of places, is one row with the sum of its shares. */
function rowsOf(contacts: readonly ContactReport[]): ContactReport[] {
  const rows: ContactReport[] = [];
  for (const contact of contacts) {
    const known =
      contact.ring &&
      rows.findIndex(({ ring, seat, station }) => ring && seat === contact.seat && station === contact.station);
    if (known === false || known === -1) rows.push(contact);
    else rows[known] = { ...rows[known]!, share: rows[known]!.share + contact.share };
  }
  return rows;
}
