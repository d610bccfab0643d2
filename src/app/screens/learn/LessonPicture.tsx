/**
 * The picture of a lesson: the pair of its design in a piece of work of its own, kept nowhere. It stands still until an
 * answer is committed. Then that answer is carried out in it, where it is an act, and after it what is so, both through
 * the live engine; after the explanation the hand may move it.
 */
import { useCallback, useLayoutEffect, useMemo, useState } from 'react';
import { useStore } from 'zustand';
import type { Design } from '../../../design/definition.ts';
import { valueAt, withValue } from '../../../design/place.ts';
import type { DealtQuestion } from '../../../lessons/deal.ts';
import type { Question } from '../../../lessons/definition.ts';
import { answerSaid, said, speechIn } from '../../../lessons/sheets.ts';
import { type Speech, told } from '../../../lessons/template.ts';
import type { Tried } from '../../../lessons/tried.ts';
import { metres } from '../../../report/convert.ts';
import { fitOf } from '../../../report/fit/fitOf.ts';
import { linesOf } from '../../../report/inFrame.ts';
import { type Drawn, type DrawnSeat, drawnAt } from '../../pictures/drawn.ts';
import { factorFor } from '../../pictures/factor.ts';
import { landmarks, reachOf } from '../../pictures/journalMove.ts';
import { createWork, type Work } from '../../state/store.ts';
import Lenses from '../fit/Lenses.tsx';
import { usePair } from '../fit/usePair.ts';
import { BluePrint } from './BluePrint.tsx';
import { deepFor, seatsOf, timesCloser } from './closer.ts';
import { boxOf } from './closeUp.ts';
import { HeapPicture } from './HeapPicture.tsx';
import { Layer } from './Layer.tsx';
import { LessonSection } from './LessonSection.tsx';
import { SetUps } from './SetUps.tsx';
import { type Phase, useShown } from './useShare.ts';
import { Whose } from './Whose.tsx';

interface Props {
  question: Question;
  dealt: DealtQuestion;
  phase: Phase;
  /** how often it was let go again, to be looked at once more */
  again: number;
  speech: Speech;
  /** what was answered, in the unit of the design file; null: nothing yet, or a choice */
  given?: number | null;
  /** what that answer makes of the design; null: nothing that is carried out */
  tried?: Tried | null;
  /** how many times as large the section is drawn, before a class */
  times?: number;
}

export function LessonPicture({ question, dealt, phase, again, speech, given = null, tried = null, times = 1 }: Props) {
  const { system } = speech;
  const [work] = useState(() => createWork(dealt.from));
  const shown = useShown(phase, again, tried !== null);
  /** looked at once more, after the explanation: what was answered, standing */
  const [yours, setYours] = useState(false);
  const ofYours = tried !== null && (shown.leg === 'yours' || (yours && shown.over));
  const share = ofYours && shown.over ? 1 : shown.share;
  const { view } = question;
  const asks = phase === 'frozen';
  const held = useMemo(() => heldFactor(dealt), [dealt]);
  const ofTried = useMemo(() => tried && Math.min(held, factorOf(tried.design)), [tried, held]);
  // One factor shows what is so before and after: it is held, so that what is let go alone changes the picture.
  const factor = asks && view.trueFirst ? 1 : ofYours ? ofTried! : held;
  useLayoutEffect(() => work.store.setState({ system, factor, scaleLocked: true }), [work, system, factor]);
  useLayoutEffect(() => {
    // Another window has it, as far as a hand goes: the lesson moves it.
    work.store.setState({ elsewhere: phase !== 'free', pull: null });
  }, [work, phase]);
  useLayoutEffect(() => {
    const to = ofYours ? tried.design : dealt.to;
    const design = share === 0 ? dealt.from : share === 1 ? to : between(dealt.from, to, pathsOf(question), share);
    work.store.setState({ design, refused: null });
  }, [work, question, dealt, ofYours, tried, share]);
  // What was seen is read off the picture, not off its figures.
  const hidden = asks && view.figures !== undefined;
  const silent = phase === 'released' || hidden || view.figures === 'never';
  return (
    <div className={`lesson-picture ${phase === 'free' ? '' : 'holds-still'} ${silent ? 'silent' : ''}`}>
      {view.setUps && <Read work={work} which={view.setUps} speech={speech} />}
      {(view.section || view.lenses) && <Pair {...{ work, question, dealt, speech, times, asks }} figures={!silent} />}
      {phase === 'free' && view.figures === 'never' && (
        <p className="fine">No figures yet: the next question asks for one.</p>
      )}
      {tried && given !== null && (
        <Whose
          said={answerSaid(question.answer, given, dealt, speech)}
          yours={ofYours}
          choose={phase === 'free' && shown.over ? setYours : null}
        />
      )}
      {view.spread && dealt.spread && (
        <HeapPicture
          view={view.spread}
          spread={dealt.spread}
          answer={asks ? null : given}
          open={!asks}
          figures={!silent}
          speech={speechIn(dealt, speech)}
        />
      )}
      {view.layer && dealt.layer && !hidden && (
        <Layer
          view={view.layer}
          ends={dealt.layer}
          now={dealt.layer.from + ((ofYours ? (tried.layer ?? 0) : dealt.layer.to) - dealt.layer.from) * share}
          answer={asks ? null : given}
          figures={!silent}
          open={!asks && !ofYours}
          speech={speechIn(dealt, speech)}
        />
      )}
      {view.print && shown.over && !ofYours && <BluePrint design={dealt.to} system={system} />}
    </div>
  );
}

/** Gaps of a few micrometres are seen; what is drawn falls short of it where it must. */
const FACTOR = 400;

/** The greatest factor, up to that, which both pictures hold, and wherever a hand may bring the journal in them. */
const heldFactor = ({ from, to }: DealtQuestion): number => Math.min(factorOf(from), factorOf(to));

function factorOf(design: Design): number {
  const fit = fitOf(design);
  const reach = reachOf(fit.position, landmarks(fit)).map(metres);
  return factorFor(linesOf(design), metres(fit.position), FACTOR, null, reach);
}

interface PairProps extends Pick<Props, 'question' | 'dealt' | 'speech'> {
  work: Work;
  times: number;
  figures: boolean;
  /** nothing is let go yet */
  asks: boolean;
}

function Pair({ work, question, dealt, speech, times, figures, asks }: PairProps) {
  const { system } = speech;
  const { fit, drawn } = usePair(work);
  const deep = useMemo(() => deepFor(dealt.from, dealt.to), [dealt]);
  // From the moment it is let go: before, how close it looks would tell how far the other stands off.
  const closer = useMemo(() => (asks ? null : timesCloser(seatsOf(dealt.to), deep)), [dealt, deep, asks]);
  const factor = drawn.factor;
  const box = useMemo(() => boxOf([dealt.from, dealt.to].map((design) => drawnOf(design, factor))), [dealt, factor]);
  // Films in the colours of what is wanted would tell before an answer which of them is right.
  const shown = useMemo(
    () => (asks ? { ...drawn, seats: unwanted(drawn.seats), below: unwanted(drawn.below) } : drawn),
    [drawn, asks],
  );
  const say = useCallback((film: number) => told(film, 'fine', speechIn(dealt, speech)), [dealt, speech]);
  const known = useMemo(() => knownOf(question, dealt, speech, asks), [question, dealt, speech, asks]);
  return (
    <>
      {question.view.section && (
        <LessonSection drawn={shown} {...{ fit, system, work, box, figures, say, asks, known, times }} />
      )}
      {question.view.lenses && <Lenses drawn={shown} ghost={null} {...{ fit, system, deep, figures, say }} />}
      {question.view.lenses && closer !== null && (
        <div className="closer">
          <p className="fine">The same, {closer} times closer</p>
          <Lenses
            drawn={shown}
            ghost={null}
            {...{ fit, system, figures, say }}
            deep={deep / closer}
            label={`Each seat magnified, ${closer} times closer`}
          />
        </div>
      )}
    </>
  );
}

/** What is written at every seat: as it is asked, and once it is let go, where that is something else. */
const knownOf = ({ view: { notes = [] } }: Question, dealt: DealtQuestion, speech: Speech, asks: boolean): string[] =>
  dealt.from.seats.map((_, i) =>
    notes
      .flatMap(({ seat, text, after = text }) => (seat === i ? said(asks ? text : after, dealt, speech) : []))
      .join(' '),
  );

const drawnOf = (design: Design, factor: number): Drawn =>
  drawnAt(linesOf(design), metres(design.position ?? 0), factor);
const unwanted = (seats: readonly DrawnSeat[]) => seats.map((seat) => ({ ...seat, wanted: null }));

/** How readings of the design are taken, as it stands now. */
function Read({ work, which, speech }: { work: Work; which: readonly number[]; speech: Speech }) {
  const design = useStore(work.store, (state) => state.design);
  return <SetUps design={design} which={which} system={speech.system} />;
}

/** Everything that moves, on either way. */
const pathsOf = ({ release, try: tries = [] }: Question): string[] => [
  ...new Set(['position', ...release.map(({ path }) => path), ...tries.map(({ path }) => path)]),
];

/** The design on the way from one to the other: everything that is let go at the same pace. */
export function between(from: Design, to: Design, paths: readonly string[], share: number): Design {
  return paths.reduce((design, path) => {
    const [a, b] = [valueAt(from, path) ?? 0, valueAt(to, path)];
    return typeof a === 'number' && typeof b === 'number' ? withValue(design, path, a + (b - a) * share) : design;
  }, from);
}
