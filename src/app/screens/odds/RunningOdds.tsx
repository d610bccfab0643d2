/** How the pairs run: each from cold to warm, how often it runs well, and how thin its films become. */
import type { Design } from '../../../design/definition.ts';
import { without, withValue } from '../../../design/place.ts';
import { fineText, type System } from '../../../design/units.ts';
import { drawsOf } from '../../../report/odds/pieces.ts';
import { runningBasis, runningSentences } from '../../../report/odds/runningWords.ts';
import { timesText } from '../../../report/odds/times.ts';
import ControlGroup from '../../controls/ControlGroup.tsx';
import type { Control } from '../../controls/controls.tsx';
import { Fault } from '../../frame/Fault.tsx';
import { Distribution } from './FilmOdds.tsx';
import { leftText } from './leftText.ts';
import { type RunningWork, useRunning } from './useRunning.ts';

interface Props {
  design: Design;
  system: System;
}

export function RunningOdds({ design, system }: Props) {
  const running = useRunning(design);
  const { shown, of, stage, start, stop, done, count, since, fault } = running;
  if (!design.run)
    return (
      <section className="running-odds" aria-label="How it runs">
        <p className="fine">Say on Run how fast it turns and on what oil: then these pairs can be run, cold to warm.</p>
      </section>
    );
  const draws = drawsOf(design);
  return (
    <section className="running-odds" aria-label="How it runs">
      <Fault what="How it runs" fault={fault} again={start} />
      {stage === 'working' ? (
        <div className="progress">
          <span role="status">Spindles are being run, from cold to warm.</span>{' '}
          <span>{leftText(done, count, performance.now() - since)}</span>
          <progress aria-label="Progress of the run" {...(count > 0 ? { value: done, max: count } : {})} />
          <button type="button" onClick={stop}>
            Stop running
          </button>
        </div>
      ) : (
        <p className="buttons">
          <button type="button" onClick={start}>
            Run {draws} of these pairs
          </button>{' '}
          <span className="fine" role="status">
            {told(running, design)}
          </span>
        </p>
      )}
      {shown && of && (
        <div className={of === design ? '' : 'stale'}>
          {runningSentences(of, shown.report, system).map((sentence, i) => (
            <p key={sentence} className={i === 0 ? 'answer' : ''}>
              {sentence}
            </p>
          ))}
          <RunningFilms of={of} shown={shown} system={system} />
          <p className="fine">{runningBasis(shown.report, system)}</p>
          {shown.report.notCarried && <NotCarried of={of} places={shown.report.notCarried} />}
        </div>
      )}
      <details>
        <summary>How many, and where each is set</summary>
        <ControlGroup title="run" rows={SETTINGS} />
      </details>
    </section>
  );
}

function told({ stage, of, shown }: RunningWork, design: Design): string {
  if (stage === 'none') return 'Each from cold to warm, on every core; some minutes.';
  if (of !== design) return 'What stands below is of the design before.';
  if (stage === 'stopped') return 'Stopped. What was run stays.';
  return shown ? 'Run in full.' : 'No pair that was drawn can be run.';
}

interface FilmsProps {
  of: Design;
  shown: NonNullable<RunningWork['shown']>;
  system: System;
}

function RunningFilms({ of, shown: { report, films }, system }: FilmsProps) {
  const { parted, needed } = report;
  return (
    <div className="running-films">
      {of.seats.map(({ name }, seat) => {
        const spread = report.films[name];
        const counted = films[seat];
        const heading = `${name}: parts the surfaces ${timesText(parted[name]!.share)}`;
        return (
          <div key={name} className={`film-odd seat-${seat % 4}`}>
            <h3>{heading}</h3>
            {counted && (
              <Distribution
                label={`Least ${name} film from cold to warm, over what parts the surfaces: ${heading}`}
                name={name}
                counted={counted}
                band={[needed, Number.POSITIVE_INFINITY]}
                system={system}
              />
            )}
            <p className="fine">
              {spread
                ? `Least film, cold to warm, 9 times in 10 ${fineText(spread.p05, system)} to ${fineText(spread.p95, system)}; ${fineText(needed, system)} is needed.`
                : 'None of them runs.'}
            </p>
          </div>
        );
      })}
    </div>
  );
}

const OF = { lobeAmplitude: 'lobes', temperature: 'a room', speed: 'a speed', position: 'a position' } as const;

function NotCarried({ of, places }: { of: Design; places: readonly number[] }) {
  const names = places.flatMap((place) => {
    const spread = of.odds?.spread?.[place];
    if (!spread) return [];
    const what = spread.of in OF ? OF[spread.of as keyof typeof OF] : spread.of;
    return ['seat' in spread ? `${what} of the ${spread.seat} ${spread.part}` : what];
  });
  return <p className="fine">The design has no {names.join(', no ')}: that spread counts for nothing.</p>;
}

const SETTINGS: Control[] = [
  { kind: 'quantity', path: 'odds.running.draws' },
  {
    kind: 'choice',
    path: 'odds.running.at',
    title: 'Each is set',
    about: 'Where the journal of each stands as it runs',
    options: [
      { value: 'best', text: 'where its films suit it best' },
      { value: 'set', text: 'where the design, or its plan, has it' },
    ],
    read: (design) => design.odds?.running?.at ?? 'best',
    change: (design, value) => (value === 'best' ? withoutAt(design) : withValue(design, 'odds.running.at', value)),
  },
];

/** What is meant where nothing is said is not written down. */
function withoutAt(design: Design): Design {
  let left = without(design, 'odds.running.at');
  if (Object.keys(left.odds?.running ?? {}).length === 0) left = without(left, 'odds.running');
  return Object.keys(left.odds ?? {}).length === 0 ? without(left, 'odds') : left;
}
