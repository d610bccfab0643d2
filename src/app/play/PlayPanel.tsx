/** Seat and play: how the rigid spindle sits in all its seats at once, what an indicator feels, and what the blue shows. */
import { useMemo } from 'react';
import { useStore } from 'zustand';
import { placeText, type System } from '../../design/units.ts';
import type { ContactReport } from '../../report/play/definition.ts';
import { playVerdict } from '../../report/play/verdict.ts';
import ControlGroup from '../controls/ControlGroup.tsx';
import { WorkContext } from '../controls/context.ts';
import type { Control } from '../controls/controls.tsx';
import type { Work } from '../store.ts';
import { useSolved } from '../useSolved.ts';
import { useThrottled } from '../useThrottled.ts';
import { BluePanel } from './BluePanel.tsx';
import { NoseMap } from './NoseMap.tsx';
import { ShakeChart } from './ShakeChart.tsx';
import './play.css';
import type { Pulled } from './usePull.ts';

const PLAY: Control[] = [{ kind: 'quantity', path: 'play.indicator' }, { kind: 'motions' }];
const BLUE: Control[] = [
  { kind: 'quantity', path: 'print.thickness' },
  { kind: 'quantity', path: 'friction' },
];

/** Between two looks at a design that is being dragged, ms. */
const UNHURRIED = 120;

export default function PlayPanel({ work, pulled }: { work: Work; pulled: Pulled | null }) {
  // A drag need not wait for what is read below it.
  const design = useThrottled(
    useStore(work.store, (state) => state.design),
    UNHURRIED,
  );
  const system = useStore(work.store, (state) => state.system);
  const free = useMemo(() => ({ ...design, play: design.play ?? {} }), [design]);
  const { value: play, of, fault } = useSolved('play', free);
  if (fault !== null) return <p role="alert">Seat and play could not be worked out: {fault}</p>;
  if (!play || !of) return <p className="loading">Seat and play are being worked out.</p>;
  const verdict = playVerdict(of, play, system);
  return (
    <>
      <section className={`verdict second ${verdict.tone}`} aria-live="polite">
        <h2>{verdict.headline}</h2>
        <p>{verdict.sentences.join(' ')}</p>
      </section>
      <div className="play">
        <NoseMap work={work} play={play} pulled={pulled} system={system} />
        <ShakeChart work={work} design={free} play={play} system={system} />
      </div>
      <WorkContext value={work}>
        <div className="groups">
          <ControlGroup title="Play" rows={PLAY} />
          <ControlGroup title="Blue and friction" rows={BLUE} />
        </div>
      </WorkContext>
      <details>
        <summary>Where it bears, and each contact’s share of a push of 1 N</summary>
        <Contacts title="Pushed home" contacts={play.seated.contacts} system={system} />
        <Contacts title="Pulled to the right at the indicator" contacts={play.shake.contacts} system={system} />
      </details>
      <BluePanel work={work} design={free} system={system} />
    </>
  );
}

function Contacts({ title, contacts, system }: { title: string; contacts: readonly ContactReport[]; system: System }) {
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
            <th scope="col">Share</th>
          </tr>
        </thead>
        <tbody>
          {contacts.map(({ seat, station, angle, share, ring }) => (
            <tr key={`${seat} ${station} ${angle}`}>
              <th scope="row">{seat}</th>
              <td>{placeText(station, system)}</td>
              <td>{ring ? 'all round' : `${angle.toFixed(0)}°`}</td>
              <td>{share.toFixed(2)} N</td>
            </tr>
          ))}
          {contacts.length === 0 && (
            <tr>
              <td colSpan={4}>Nothing holds it.</td>
            </tr>
          )}
        </tbody>
      </table>
    </section>
  );
}
