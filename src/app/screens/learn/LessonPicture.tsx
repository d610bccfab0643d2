/**
 * The picture of a lesson: the pair of its design in a piece of work of its own, kept nowhere. It stands still until an
 * answer is committed; then what the question lets go moves in it, through the live engine, and after the explanation
 * the hand may move it.
 */
import { useEffect, useLayoutEffect, useMemo, useState } from 'react';
import { useStore } from 'zustand';
import type { Design } from '../../../design/definition.ts';
import { valueAt, withValue } from '../../../design/place.ts';
import type { DealtQuestion } from '../../../lessons/deal.ts';
import type { Question } from '../../../lessons/definition.ts';
import type { Speech } from '../../../lessons/template.ts';
import { metres } from '../../../report/convert.ts';
import { fitOf } from '../../../report/fit/fitOf.ts';
import { linesOf } from '../../../report/inFrame.ts';
import { type Drawn, type DrawnSeat, drawnAt, factorFor } from '../../pictures/drawn.ts';
import { landmarks, reachOf } from '../../pictures/journalMove.ts';
import { createWork, type Work } from '../../state/store.ts';
import Lenses from '../fit/Lenses.tsx';
import { lensDepth } from '../fit/lens.ts';
import { usePair } from '../fit/usePair.ts';
import { BluePrint } from './BluePrint.tsx';
import { boxOf } from './closeUp.ts';
import { HeapPicture } from './HeapPicture.tsx';
import { Layer } from './Layer.tsx';
import { LessonSection } from './LessonSection.tsx';
import { SetUps } from './SetUps.tsx';
import { type Phase, useShare } from './useShare.ts';

interface Props {
  question: Question;
  dealt: DealtQuestion;
  phase: Phase;
  /** how often it was let go again, to be looked at once more */
  again: number;
  speech: Speech;
  /** told where the hand brought the journal, mm */
  moved?: (position: number) => void;
  /** what was answered, in the unit of the design file; null: nothing yet, or a choice */
  given?: number | null;
  /** how many times as large the section is drawn, before a class */
  times?: number;
}

export function LessonPicture({ question, dealt, phase, again, speech, moved, given = null, times = 1 }: Props) {
  const { system } = speech;
  const [work] = useState(() => createWork(dealt.from));
  const factor = useMemo(() => heldFactor(dealt), [dealt]);
  // One factor shows what is so before and after: it is held, so that what is let go alone changes the picture.
  useLayoutEffect(() => work.store.setState({ system, factor, scaleLocked: true }), [work, system, factor]);
  useLayoutEffect(() => {
    // Another window has it, as far as a hand goes: the lesson moves it.
    work.store.setState({ elsewhere: phase === 'frozen' || phase === 'released', pull: null });
  }, [work, phase]);
  const share = useShare(phase, again);
  useLayoutEffect(() => {
    // It is let go from where the hand moved it.
    const left = question.answer.kind === 'move' && phase !== 'byHand' ? given : null;
    const from = left === null ? dealt.from : { ...dealt.from, position: left };
    const design = share === 0 ? from : share === 1 ? dealt.to : between(from, dealt.to, question, share);
    work.store.setState({ design, refused: null });
  }, [work, question, dealt, phase, share, given]);
  useEffect(() => {
    if (phase !== 'byHand' || !moved) return;
    return work.store.subscribe(({ design }) => moved(design.position ?? 0));
  }, [work, phase, moved]);
  const still = phase === 'frozen' || phase === 'released';
  const asks = phase === 'frozen' || phase === 'byHand';
  const { view } = question;
  // What was seen is read off the picture, not off its figures.
  const hidden = asks && view.figures !== undefined;
  const silent = phase === 'released' || hidden || view.figures === 'never';
  return (
    <div className={`lesson-picture ${still ? 'holds-still' : ''} ${asks ? 'asks' : ''} ${silent ? 'silent' : ''}`}>
      {(view.section || view.lenses) && (
        <Pair {...{ work, question, dealt, speech, times }} figures={!silent} asks={phase === 'byHand'} />
      )}
      {view.setUps && <Read work={work} which={view.setUps} speech={speech} />}
      {view.spread && dealt.spread && (
        <HeapPicture
          view={view.spread}
          spread={dealt.spread}
          answer={asks ? null : given}
          open={!asks}
          speech={speech}
        />
      )}
      {view.layer && dealt.layer && !hidden && (
        <Layer
          view={view.layer}
          ends={dealt.layer}
          now={dealt.layer.from + (dealt.layer.to - dealt.layer.from) * share}
          answer={asks ? null : given}
          figures={!silent}
          open={!asks}
          speech={speech}
        />
      )}
      {view.print && !asks && share === 1 && <BluePrint design={dealt.to} system={system} />}
    </div>
  );
}

/** Gaps of a few micrometres are seen; what is drawn falls short of it where it must. */
const FACTOR = 400;

/** The greatest factor, up to that, which both pictures hold, and wherever a hand may bring the journal in them. */
function heldFactor({ from, to }: DealtQuestion): number {
  const most = [from, to].map((design) => {
    const fit = fitOf(design);
    const reach = reachOf(fit.position, landmarks(fit)).map(metres);
    return factorFor(linesOf(design), metres(fit.position), FACTOR, null, reach);
  });
  return Math.min(...most);
}

interface PairProps extends Pick<Props, 'question' | 'dealt' | 'speech'> {
  work: Work;
  times: number;
  figures: boolean;
  /** a place is asked for */
  asks: boolean;
}

function Pair({ work, question, dealt, speech, times, figures, asks }: PairProps) {
  const { system } = speech;
  const { fit, drawn } = usePair(work);
  const deep = useMemo(() => Math.max(depthOf(dealt.from), depthOf(dealt.to)), [dealt]);
  const factor = drawn.factor;
  const box = useMemo(() => boxOf([dealt.from, dealt.to].map((design) => drawnOf(design, factor))), [dealt, factor]);
  // Films of the colour that is wanted would tell where it is right.
  const shown = useMemo(
    () => (asks ? { ...drawn, seats: unwanted(drawn.seats), below: unwanted(drawn.below) } : drawn),
    [drawn, asks],
  );
  return (
    <>
      {question.view.section && <LessonSection drawn={shown} {...{ fit, system, work, box, figures, asks, times }} />}
      {question.view.lenses && (
        <Lenses drawn={shown} ghost={null} fit={fit} system={system} deep={deep} figures={figures} />
      )}
    </>
  );
}

const drawnOf = (design: Design, factor: number): Drawn =>
  drawnAt(linesOf(design), metres(design.position ?? 0), factor);
const unwanted = (seats: readonly DrawnSeat[]) => seats.map((seat) => ({ ...seat, wanted: null }));

/** How readings of the design are taken, as it stands now. */
function Read({ work, which, speech }: { work: Work; which: readonly number[]; speech: Speech }) {
  const design = useStore(work.store, (state) => state.design);
  return <SetUps design={design} which={which} system={speech.system} />;
}

/** m: how deep the lenses look with a design as it stands. */
function depthOf(design: Design): number {
  const drawn = drawnAt(linesOf(design), metres(design.position ?? 0), 1);
  const films = drawn.seats.flatMap(({ film }) => film.map((place) => place.film));
  const open = films.length === 0 ? 0 : Math.max(...films);
  return Math.max(lensDepth(drawn.seats), ROOM * open);
}
const ROOM = 1.25;

/** The design on the way from one to the other: everything that is let go at the same pace. */
export function between(from: Design, to: Design, { release }: Pick<Question, 'release'>, share: number): Design {
  return release.reduce((design, { path }) => {
    const [a, b] = [valueAt(from, path) ?? 0, valueAt(to, path)];
    return typeof a === 'number' && typeof b === 'number' ? withValue(design, path, a + (b - a) * share) : design;
  }, from);
}
