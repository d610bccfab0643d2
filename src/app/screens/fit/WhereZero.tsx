/** Where position 0 is on a real headstock, told by a drawing in three steps: home, read, open. */
import { useStore } from 'zustand';
import { fineText, type System, sidedText, turnText } from '../../../design/units.ts';
import { fitOf } from '../../../report/fit/fitOf.ts';
import type { Work } from '../../state/store.ts';

export function WhereZero({ work }: { work: Work }) {
  const system = useStore(work.store, (state) => state.system);
  const pitch = useStore(work.store, (state) => state.design.adjuster?.pitch);
  // A number: a journal that moves leaves it as it is.
  const touch = useStore(work.store, (state) => fitOf(state.design).firstPosition);
  return (
    <details className="where-zero">
      <summary>Where position 0 is on your headstock</summary>
      {touch === null ? (
        <p>
          No seat closes as this journal goes rearward, so nothing of the bearing tells where 0 is: it is where the two
          drawings put their datums on one place. Mark it from the shoulders.
        </p>
      ) : (
        <>
          <Steps touch={touch} pitch={pitch} system={system} />
          <p className="fine">
            {pitch === undefined && 'With the pitch of the adjuster, under Spindle, the turns are told too. '}
            The first touch is worked out from the sizes above; it is as sure as they are. A stand-off in Measure says
            how far the real one is off.
          </p>
        </>
      )}
    </details>
  );
}

/** mm: nearer than this is the same place */
const SAME = 1e-7;

function Steps({ touch, pitch, system }: { touch: number; pitch: number | undefined; system: System }) {
  const away = -touch;
  const way = away > 0 ? 'noseward' : 'rearward';
  const turns = pitch === undefined ? '' : `, ${turnText(away / pitch)} of the adjuster`;
  const last =
    Math.abs(away) < SAME
      ? 'It stands at 0 there.'
      : `From there 0 is ${fineText(Math.abs(away), system)} ${way}${turns}.`;
  const steps: [title: string, text: string, shift: number, dial: string][] = [
    ['1. Home', 'Clean and dry, run the adjuster gently in until the first seat touches. No oil, no force.', 0, ''],
    [
      '2. Read',
      `Indicator on the nose, along the axis: call this ${sidedText(touch, system)}.`,
      0,
      fineText(touch, system),
    ],
    ['3. Open', `${last} Every position here is read from that 0.`, 1, '0'],
  ];
  return (
    <ol className="zero-steps">
      {steps.map(([title, text, shift, dial]) => (
        <li key={title}>
          <Headstock shift={shift * Math.sign(away)} dial={dial} />
          <strong>{title}</strong> {text}
        </li>
      ))}
    </ol>
  );
}

/** px the journal is drawn off its touch: that it stands off is what counts, not how far. */
const OPEN = 7;

function Headstock({ shift, dial }: { shift: number; dial: string }) {
  const by = OPEN * shift;
  return (
    <svg viewBox="0 0 330 130" aria-hidden="true">
      <path className="bush-fill outline" d="M84 14H176L150 40L84 48Z" />
      <path className="bush-fill outline" d="M84 116H176L150 90L84 82Z" />
      <g transform={`translate(${by} 0)`}>
        <path className="journal-fill outline" d="M14 55H84V48L150 40L178 12V118L150 90L84 82V75H14Z" />
        <path className="outline adjuster" d="M28 46H58V84H28ZM28 53H58M28 61H58M28 69H58M28 77H58" />
      </g>
      <path className="axis" d="M4 65H204" />
      <path className="outline adjuster" d={`M${178 + by} 65H268`} />
      <circle className="outline dial" cx="290" cy="65" r="22" />
      <path className="outline" d="M290 65V49" />
      <text x="324" y="112" textAnchor="end">
        {dial}
      </text>
    </svg>
  );
}
