/** Marking blue: what each part would show after the journal has been pressed home, and what that means. */
import { useMemo, useState } from 'react';
import type { Design } from '../../design/definition.ts';
import type { System } from '../../design/units.ts';
import { printVerdict } from '../../report/print/verdict.ts';
import { useMedia } from '../useMedia.ts';
import { useSolved } from '../useSolved.ts';
import { PrintMap } from './PrintMap.tsx';

/** Blue that shows (mm) where the design does not say: a thin rub; common practice, no source. */
const THIN = 0.002;

export function BluePanel({ design, system }: { design: Design; system: System }) {
  const [turned, setTurned] = useState(false);
  const dark = useMedia('(prefers-color-scheme: dark)');
  const blued = useMemo(() => ({ ...design, print: design.print ?? { thickness: THIN } }), [design]);
  const { value: print, of } = useSolved('print', blued);
  const maps = useSolved('printMaps', blued).value;
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
      {maps && (
        <>
          <fieldset className="buttons">
            <legend>The journal was</legend>
            {[false, true].map((choice) => (
              <button key={`${choice}`} type="button" aria-pressed={turned === choice} onClick={() => setTurned(choice)}>
                {choice ? 'turned while pressed' : 'pressed once'}
              </button>
            ))}
          </fieldset>
          <div className="prints">
            {(turned ? maps.turned : maps.press).map((map) => (
              <PrintMap key={`${map.seat} ${map.part}`} map={map} thickness={maps.thickness} system={system} dark={dark} />
            ))}
          </div>
        </>
      )}
    </section>
  );
}
