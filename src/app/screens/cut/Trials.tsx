/**
 * Trial and correct: what every trial assembly told, what the films are believed to be since, and what is left to cut.
 */

import { useStore } from 'zustand';
import type { Design } from '../../../design/definition.ts';
import type { Millimetres } from '../../../design/dimension.ts';
import { doubtedText, fineText, plusMinusText, type System } from '../../../design/units.ts';
import { beyondSafeText } from '../../../report/cut/beyondSafe.ts';
import type { CutReport } from '../../../report/cut/definition.ts';
import { isLeft } from '../../../report/cut/leave.ts';
import { safeSentences } from '../../../report/cut/leftVerdict.ts';
import { NOTHING } from '../../../report/cut/listed.ts';
import { closedCount, tellsAnything } from '../../../report/cut/openTrials.ts';
import { riskOf, surelyText } from '../../../report/cut/risk.ts';
import { learntText, surerSentences } from '../../../report/cut/surerText.ts';
import { offFaceText, trialText } from '../../../report/cut/trialText.ts';
import { WITHHELD_NOW } from '../../../report/cut/withheld.ts';
import { offeredForCut } from '../../record/entered.ts';
import type { Work } from '../../state/store.ts';
import { type Trial, withoutTrial } from './entries.ts';
import { divisionsText } from './Steps.tsx';
import { ToKnown } from './ToKnown.tsx';
import { TrialForm } from './TrialForm.tsx';
import { type Draft, draftFor, draftOf } from './trialDraft.ts';
import { useMend } from './useMend.ts';
import { useWithheld, useWriting, type Writing } from './writing.ts';

interface Props {
  work: Work;
  /** of the design it was made for; the trials shown are those of now */
  cut: CutReport;
  /** whether the trials shown are other than those it was made for: nothing is told of them yet */
  before?: boolean;
  system: System;
}

export function Trials({ work, cut, before = false, system }: Props) {
  const design = useStore(work.store, (state) => state.design);
  const [unfinished, setWriting] = useWriting(work);
  const mend = useMend(work, cut);
  const withheld = useWithheld(work, { cut, before });
  const trials = design.cut?.trials ?? [];
  // An old one that is gone meanwhile is written as a new one.
  const writing = unfinished && {
    draft: draftFor(unfinished.draft, design),
    at: unfinished.at !== 'new' && unfinished.at < trials.length ? unfinished.at : ('new' as const),
    refused: unfinished.refused,
  };
  const form = (at: Writing['at'], draft: Draft, refused: string | undefined) => (
    <TrialForm
      work={work}
      design={design}
      cut={cut}
      draft={draft}
      change={(edit) =>
        setWriting((now) => ({ ...andThen(now), at, draft: edit(draftFor((now ?? { draft }).draft, design)) }))
      }
      refused={refused}
      refuse={(why) => setWriting((now) => ({ ...(now ?? { at, draft }), refused: why }))}
      toCut={(cause) => mend(cause, at)}
      index={at === 'new' ? undefined : at}
      system={system}
      close={close}
    />
  );
  // What is in the shapes already is history, of which nothing is told any more.
  const closed = design.cut ? closedCount(design.cut) : 0;
  const resultOf = (i: number) => (before ? undefined : cut.trials?.[i - closed]);
  const close = () => setWriting((now) => now?.afterwards ?? null);
  return (
    <section aria-label="Trial and correct">
      <p className="fine">
        Assemble dry and clean, with a little blue. What the trial tells is weighed against the doubt of the parts: a
        trial that agrees leaves the plan where it is and makes it surer. The design itself stays as it is.
      </p>
      {cut.remaining && !cut.guess && withheld === null && trials.length > 0 && (
        <Remaining design={design} cut={cut} remaining={cut.remaining} system={system} />
      )}
      <ol className="trials">
        {trials.map((trial, i) => (
          // Known by its place in the history.
          // biome-ignore lint/suspicious/noArrayIndexKey: trials have no other name
          <li key={i} className={isWrong(resultOf(i)) ? 'trial wrong' : 'trial'}>
            {trial.inShapes ? (
              <p>
                <strong>Trial {i + 1}.</strong> {trialText(trial, system)}{' '}
                <small>History: off the shapes of the design already.</small>
              </p>
            ) : writing?.at === i ? (
              form(i, writing.draft, writing.refused)
            ) : (
              <Entry
                index={i}
                trial={trial}
                result={resultOf(i)}
                system={system}
                correct={() => setWriting({ at: i, draft: draftOf(cut, design, system, trial) })}
                strike={() => work.change((d) => withoutTrial(d, i))}
              />
            )}
          </li>
        ))}
      </ol>
      {before && <p className="fine">{WITHHELD_NOW.working}</p>}
      {writing === null && !before && (cut.causes ?? []).length > 0 && (
        <p className="buttons">
          <ToKnown causes={cut.causes} go={(cause) => mend(cause, 'new')} />
        </p>
      )}
      {writing?.at === 'new' ? (
        form('new', writing.draft, writing.refused)
      ) : (
        <p className="buttons">
          <button
            type="button"
            onClick={() => setWriting({ at: 'new', draft: draftOf(cut, design, system, offeredForCut(design)) })}
          >
            Write down a trial
          </button>
        </p>
      )}
    </section>
  );
}

const andThen = (now: Writing | null) => (now?.afterwards ? { afterwards: now.afterwards } : {});

type Result = NonNullable<CutReport['trials']>[number];

const isWrong = (result: Result | undefined) => result !== undefined && result.status !== 'updated';

function Entry({
  index,
  trial,
  result,
  system,
  correct,
  strike,
}: {
  index: number;
  trial: Trial;
  result: Result | undefined;
  system: System;
  correct(): void;
  strike(): void;
}) {
  const beyond = beyondSafeText(trial, system);
  return (
    <>
      <p>
        <strong>Trial {index + 1}.</strong> {trialText(trial, system)}
        {beyond !== null && <span className="beyond"> {beyond}</span>}
      </p>
      {result && tellsAnything(trial) && <p className="told-by">{resultText(result, system)}</p>}
      <p className="buttons">
        <button type="button" onClick={correct} aria-label={`Correct trial ${index + 1}`}>
          Correct
        </button>
        <button type="button" onClick={strike} aria-label={`Strike out trial ${index + 1}`}>
          Strike out
        </button>
      </p>
    </>
  );
}

function resultText({ status, films, touched, relation }: Result, system: System): string {
  if (status === 'contradiction')
    return 'Nothing the parts could be reads like this: look for grit, a burr, or a slip of the pen.';
  if (status === 'noModel') return 'The shake cannot be reckoned for these parts.';
  const seen = Object.entries(films ?? {}).map(
    ([name, { more, sigma, limits }]) => `${name} ${doubtedText(more, sigma, system, limits)}`,
  );
  const first = Object.entries(touched ?? {}).sort((a, b) => b[1] - a[1])[0];
  return `Films greater than the design gives by: ${seen.join(', ')}.${first ? ` It was the ${first[0]} seat that touched, ${oddsText(first[1])}.` : ''}${relation ? ` It ${learntText(relation, system)}.` : ''}`;
}

/** Of a hundred such cases; never told as certain. */
const oddsText = (likelihood: number) =>
  likelihood > 0.995 ? 'more than 99 in 100' : `${Math.round(100 * likelihood)} in 100`;

function Remaining({
  design,
  cut,
  remaining,
  system,
}: {
  design: Design;
  cut: CutReport;
  remaining: NonNullable<CutReport['remaining']>;
  system: System;
}) {
  const films = Object.entries(remaining.films).map(
    ([name, film]) => `${name} ${film === null ? 'apart' : fineText(film, system)}`,
  );
  const left = isLeft(cut);
  const rows = [
    ...remaining.steps.map(
      ({ seat, part, normal, sigma, limits, safe, diameter, safeDiameter, crossDivisions, safeDivisions }) => ({
        name: `off the ${seat} ${part}`,
        likely: doubtedText(normal, sigma, system, limits),
        across: `${fineText(Math.abs(diameter), system)} ${diameter < 0 ? 'less' : 'more'} in diameter, ${divisionsText(crossDivisions)} of the cross feed`,
        safe: fineText(safe, system),
        safeAcross:
          safe === 0 ? '' : `${fineText(Math.abs(safeDiameter), system)} in diameter, ${divisionsText(safeDivisions)}`,
      }),
    ),
    ...remaining.faces.map((face) => ({
      name: offFaceText(face, system),
      likely: plusMinusText(Math.abs(face.off), face.sigma, system),
      across: '',
      safe: fineText(Math.abs(face.safe), system),
      safeAcross: '',
    })),
  ];
  return (
    <section className="remaining" aria-label="Left to cut">
      <h3>Left to cut, by the last trial</h3>
      {rows.length === 0 ? (
        <p>Nothing.</p>
      ) : (
        <dl className="left">
          {rows.map(({ name, likely, across, safe, safeAcross }) => (
            <div key={name}>
              <dt>{name}</dt>
              <dd>
                most likely left <strong>{likely}</strong> <small>{across}</small>
              </dd>
              {!left && (
                <dd>
                  safe to take now <strong>{safe}</strong> <small>{safeAcross}</small>
                </dd>
              )}
            </div>
          ))}
        </dl>
      )}
      {left && <p>No cut makes it likelier to work than it is as it stands: take nothing.</p>}
      {[
        ...(left ? [] : safeSentences(design, remaining, system).slice(rows.length === 0 ? 0 : 1)),
        ...surerSentences(design, cut, system),
      ].map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      <p>
        {remaining.feasible || remaining.inTolerance
          ? 'All of it taken, the films are most likely'
          : 'The films wanted cannot be had any more within these limits; the nearest are'}
        : {films.join(', ')}, the journal at {fineText(remaining.position, system)}.
      </p>
      {rows.length > 0 && <p>{standOffText(remaining, system)}</p>}
      {rows.length > 0 && (
        <p className="fine">
          ± and limits are 19 times in 20.
          {!left &&
            ` Safe: ${surelyText(riskOf(design.cut ?? {}))} at least that much is left until the films are just as wanted. Metal cannot be put back: take no more, and try again.`}
        </p>
      )}
    </section>
  );
}

/** What the next trial should read. */
export function standOffText({ standOff, steps }: NonNullable<CutReport['remaining']>, system: System): string {
  const { now, safe, all, sigma } = standOff;
  const fine = (mm: Millimetres | null) => (mm === null ? 'nowhere' : `at ${fineText(mm, system)}`);
  const part = safe === now ? '' : ` ${fine(safe)} with the safe part off,`;
  const told = `The journal most likely touches first ${fine(now)} now,${part} ${fine(all)} with all of it off`;
  if (now === null || all === null || now <= all || sigma === undefined) return `${told}.`;
  const short = now - all;
  const [step, ...others] = steps.filter(({ normal }) => normal >= NOTHING);
  // Limits of the metal that are lopsided are so along the axis too: one doubt has one form.
  const limits = others.length === 0 && step?.limits ? step.limits.map((of) => (of * short) / step.normal) : undefined;
  if (limits === undefined && steps.some((one) => one.limits)) return `${told}: ${fineText(short, system)} short.`;
  return `${told}: ${doubtedText(short, sigma, system, limits)} short, which is the same doubt along the axis.`;
}
