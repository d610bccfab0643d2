/** A lesson on paper, by a seed: the work sheet with blanks, and the answer sheet on a leaf of its own. */
import { useMemo, useState } from 'react';
import { useStore } from 'zustand';
import { rightsOf } from '../../../lessons/apart.ts';
import type { DealtQuestion } from '../../../lessons/deal.ts';
import type { Lesson } from '../../../lessons/definition.ts';
import { seedOf } from '../../../lessons/runner.ts';
import { type SheetRound, sheetRound, shownOnPaper } from '../../../lessons/sheets.ts';
import type { Speech } from '../../../lessons/template.ts';
import { Fault } from '../../frame/Fault.tsx';
import { useAngles } from '../../state/angles.ts';
import type { Work } from '../../state/store.ts';
import { PrintButton } from '../sheet/PrintButton.tsx';
import { PAPERS, type Paper, pageRule } from '../sheet/papers.ts';
import { usePageRule } from '../sheet/usePageRule.ts';
import { drawnShort } from './drawn.ts';
import { PaperPicture } from './PaperPicture.tsx';
import { useDealt } from './useDealt.ts';

/** As many digits as the address takes. */
const MOST_SEEDS = 999_999_999;

interface Props {
  lesson: Lesson;
  seed: number;
  /** other numbers */
  put(seed: number): void;
  work: Work;
  leave(): void;
}

export function WorkSheet({ lesson, seed, put, work, leave }: Props) {
  const system = useStore(work.store, (state) => state.system);
  const way = useAngles();
  const [chosen, setPaper] = useState<Paper | null>(null);
  const paper = chosen ?? (system === 'inch' ? 'Letter' : 'A4');
  usePageRule(pageRule(paper, `${lesson.title} · sheet ${seed}`));
  const one = useDealt(lesson, seedOf(seed, 0));
  const two = useDealt(lesson, seedOf(seed, 1), one.dealt && rightsOf(lesson, one.dealt));
  const speech = useMemo<Speech>(() => ({ system, way }), [system, way]);
  const rounds = [one, two].flatMap(({ dealt }) =>
    dealt ? [{ ...sheetRound(lesson, dealt, speech), dealt: dealt.questions }] : [],
  );
  const fault = one.fault ?? two.fault;
  const ready = rounds.length === 2;
  return (
    <article className="lesson work-sheet">
      <header className="lesson-head screen-only">
        <h2>On paper: {lesson.title}</h2>
        <p>
          <button type="button" onClick={leave}>
            All lessons
          </button>
        </p>
      </header>
      <p className="buttons screen-only">
        <PrintButton ready={ready} needed />
        <button type="button" onClick={() => put(drawnShort())}>
          Other numbers
        </button>
        <label>
          Sheet{' '}
          <input
            className="seed"
            inputMode="numeric"
            value={seed}
            onChange={({ target }) => put(Math.min(MOST_SEEDS, Math.max(1, Math.round(Number(target.value)) || 1)))}
          />
        </label>
        <label>
          Paper{' '}
          <select value={paper} onChange={({ target }) => setPaper(target.value as Paper)}>
            {Object.keys(PAPERS).map((name) => (
              <option key={name}>{name}</option>
            ))}
          </select>
        </label>
      </p>
      {fault !== null && <Fault what="The sheet" fault={fault} again={one.fault === null ? two.again : one.again} />}
      {fault === null && !ready && <p className="loading">The numbers are being worked out.</p>}
      {ready && (
        <>
          <Questions {...{ lesson, rounds, seed, speech }} />
          <Answers {...{ lesson, rounds, seed, speech }} />
        </>
      )}
    </article>
  );
}

interface LeafProps {
  lesson: Lesson;
  rounds: readonly (SheetRound & { dealt: readonly DealtQuestion[] })[];
  seed: number;
  speech: Speech;
}

const pictureOf = (lesson: Lesson, dealt: readonly DealtQuestion[], at: number) => ({
  question: lesson.questions[at]!,
  dealt: dealt[at]!,
  shown: shownOnPaper(lesson, dealt, at),
});

const SURE_BOXES = ['a guess', 'I think so', 'I am sure'];

function Questions({ lesson, rounds, seed, speech }: LeafProps) {
  return (
    <section className="paper-leaf" aria-label="Work sheet">
      <div className="leaf-title">
        <h3>{lesson.title}</h3>
        <span>Name</span>
        <span>Date</span>
        <span>Sheet {seed}</span>
      </div>
      {rounds.map(({ seed: of, story, asked, dealt }, i) => (
        <div key={of} className="leaf-round">
          <h4>{i === 0 ? 'First' : 'The same again, with other numbers'}</h4>
          <p>{story.join(' ')}</p>
          {asked.map(({ ask, label, choices }, k) => (
            <div key={ask} className="leaf-question">
              <p>
                <strong>{asked.length > 1 && `${k + 1}. `}</strong>
                {ask}
              </p>
              <PaperPicture {...pictureOf(lesson, dealt, k)} answered={false} speech={speech} />
              {choices ? (
                <ul>
                  {choices.map((text) => (
                    <li key={text}>
                      <span className="tick-box" /> {text}
                    </li>
                  ))}
                </ul>
              ) : (
                <p>
                  {label} <span className="blank" /> unit <span className="blank short" />
                </p>
              )}
              <p className="leaf-sure">
                How sure?{' '}
                {SURE_BOXES.map((text) => (
                  <span key={text}>
                    <span className="tick-box" /> {text}
                  </span>
                ))}
              </p>
              <p>
                How I got it: <span className="blank wide" />
              </p>
            </div>
          ))}
        </div>
      ))}
      {lesson.caution && <p className="caution">{lesson.caution}</p>}
    </section>
  );
}

function Answers({ lesson, rounds, seed, speech }: LeafProps) {
  return (
    <section className="paper-leaf answers" aria-label="Answer sheet">
      <div className="leaf-title">
        <h3>Answers: {lesson.title}</h3>
        <span>Sheet {seed}</span>
      </div>
      {rounds.map(({ seed: of, asked, answered, dealt }, i) => (
        <div key={of} className="leaf-round">
          <h4>{i === 0 ? 'First' : 'The same again, with other numbers'}</h4>
          {answered.map(({ right, near, because, slips }, k) => (
            <div key={asked[k]!.ask} className="leaf-question">
              <p>
                <strong>
                  {answered.length > 1 && `${k + 1}. `}
                  {right}
                </strong>{' '}
                {near} {because}
              </p>
              <div className="leaf-sides">
                <PaperPicture {...pictureOf(lesson, dealt, k)} answered speech={speech} />
                <table>
                  <thead>
                    <tr>
                      <th scope="col">Who has</th>
                      <th scope="col">made this slip</th>
                    </tr>
                  </thead>
                  <tbody>
                    {slips.map(({ name, gives }) => (
                      <tr key={name}>
                        <th scope="row">{gives}</th>
                        <td>{name}</td>
                      </tr>
                    ))}
                  </tbody>
                </table>
              </div>
            </div>
          ))}
        </div>
      ))}
    </section>
  );
}
