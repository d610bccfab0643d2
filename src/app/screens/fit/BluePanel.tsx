/** Marking blue: what each part would show after the journal has been pressed home, and what that means. */
import { useState } from 'react';
import { useStore } from 'zustand';
import type { Design } from '../../../design/definition.ts';
import type { System } from '../../../design/units.ts';
import { printVerdict } from '../../../report/print/verdict.ts';
import { Fault } from '../../frame/Fault.tsx';
import { useMedia } from '../../pictures/useMedia.ts';
import type { Work } from '../../state/store.ts';
import { useSolved } from '../../state/useSolved.ts';
import { PrintMap } from './PrintMap.tsx';
import { useBlued } from './useBlued.ts';

export function BluePanel({ work, design, system }: { work: Work; design: Design; system: System }) {
  const turned = useStore(work.store, (state) => state.turned);
  const dark = useMedia('(prefers-color-scheme: dark)');
  const [tried, setTried] = useState<string | null>(null);
  // A seat that was renamed or removed is tried no more.
  const alone = design.seats.length > 1 && design.seats.some(({ name }) => name === tried) ? tried : null;
  const blued = useBlued(design, alone);
  const { value: print, of, ...told } = useSolved('print', blued);
  const { value: maps, ...drawn } = useSolved('printMaps', blued);
  const again = () => {
    told.again();
    drawn.again();
  };
  const verdict = print && of && printVerdict(of, print, system);
  return (
    <section className="blue" aria-label="Marking blue">
      <h2>{verdict?.headline ?? 'Marking blue'}</h2>
      {verdict && (
        <ul className="meanings">
          {verdict.sentences.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      )}
      <Fault what="The print" fault={told.fault ?? drawn.fault} again={again} />
      <div className="tried">
        {design.seats.length > 1 && (
          <fieldset className="buttons">
            <legend>Blued and tried</legend>
            {[null, ...design.seats.map(({ name }) => name)].map((seat) => (
              <button key={seat ?? 0} type="button" aria-pressed={alone === seat} onClick={() => setTried(seat)}>
                {seat === null ? 'all seats' : `${seat} alone`}
              </button>
            ))}
          </fieldset>
        )}
        {maps && (
          <fieldset className="buttons">
            <legend>The journal was</legend>
            {[false, true].map((choice) => (
              <button
                key={`${choice}`}
                type="button"
                aria-pressed={turned === choice}
                onClick={() => work.store.setState({ turned: choice })}
              >
                {choice ? 'turned while pressed' : 'pressed once'}
              </button>
            ))}
          </fieldset>
        )}
      </div>
      {alone !== null && (
        <p className="fine">
          As if the other seats were not there: one seat tried by itself, the others relieved or left out of the bush.
        </p>
      )}
      {maps && (
        <div className="prints">
          {(turned ? maps.turned : maps.press).map((map) => (
            <PrintMap
              key={`${map.seat} ${map.part}`}
              map={map}
              thickness={maps.thickness}
              system={system}
              dark={dark}
            />
          ))}
        </div>
      )}
    </section>
  );
}
