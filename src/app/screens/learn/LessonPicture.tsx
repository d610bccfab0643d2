/**
 * The picture of a lesson: the pair of its design in a piece of work of its own, kept nowhere. It stands still until an
 * answer is committed; then what the question lets go moves in it, through the live engine, and after the explanation
 * the hand may move it.
 */
import { type ReactNode, useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react';
import type { Design } from '../../../design/definition.ts';
import { valueAt, withValue } from '../../../design/place.ts';
import type { System } from '../../../design/units.ts';
import type { DealtQuestion } from '../../../lessons/deal.ts';
import type { Question } from '../../../lessons/definition.ts';
import { metres } from '../../../report/convert.ts';
import { linesOf } from '../../../report/inFrame.ts';
import { drawnAt } from '../../pictures/drawn.ts';
import { Section } from '../../pictures/Section.tsx';
import { useMedia } from '../../pictures/useMedia.ts';
import { createWork, type Work } from '../../state/store.ts';
import Lenses from '../fit/Lenses.tsx';
import { lensDepth } from '../fit/lens.ts';
import { usePair } from '../fit/usePair.ts';

/** ms that what is let go takes. */
const RELEASE = 2400;

export type Phase = 'frozen' | 'byHand' | 'released' | 'free';

interface Props {
  question: Question;
  dealt: DealtQuestion;
  /** frozen: still · byHand: the hand commits by it · released: it moves and then stands · free: the hand's */
  phase: Phase;
  /** how often it was let go again, to be looked at once more */
  again: number;
  system: System;
  /** told where the hand brought the journal, mm */
  moved?: (position: number) => void;
  /** where it is let go from, where the hand moved it before, mm */
  leftAt?: number | null;
  children?: ReactNode;
}

export function LessonPicture({ question, dealt, phase, again, system, moved, leftAt = null, children }: Props) {
  const [work] = useState(() => createWork(dealt.from));
  useLayoutEffect(() => work.store.setState({ system, factor: FACTOR }), [work, system]);
  useLayoutEffect(() => {
    // Another window has it, as far as a hand goes: the lesson moves it.
    work.store.setState({ elsewhere: phase === 'frozen' || phase === 'released', pull: null });
  }, [work, phase]);
  useRelease(work, question, dealt, phase, again, leftAt);
  useEffect(() => {
    if (phase !== 'byHand' || !moved) return;
    return work.store.subscribe(({ design }) => moved(design.position ?? 0));
  }, [work, phase, moved]);
  const box = useRef<HTMLDivElement>(null);
  // On a small page the hand was below it.
  useEffect(() => {
    if (phase === 'released') box.current?.scrollIntoView({ block: 'nearest' });
  }, [phase]);
  const still = phase === 'frozen' || phase === 'released';
  const asks = phase === 'frozen' || phase === 'byHand';
  const silent = asks && question.view.figures === false;
  return (
    <div
      ref={box}
      className={`lesson-picture ${still ? 'holds-still' : ''} ${asks ? 'asks' : ''} ${silent ? 'silent' : ''}`}
    >
      <Pair work={work} question={question} dealt={dealt} system={system} />
      {children}
    </div>
  );
}

/** Gaps of a few micrometres are seen; what is drawn falls short of it where it must. */
const FACTOR = 400;

function Pair({ work, question, dealt, system }: Pick<Props, 'question' | 'dealt' | 'system'> & { work: Work }) {
  const { design, fit, drawn, scale } = usePair(work);
  const deep = useMemo(() => Math.max(depthOf(dealt.from), depthOf(dealt.to)), [dealt]);
  return (
    <>
      {question.view.section && (
        <Section design={design} drawn={drawn} fit={fit} system={system} work={work} first="none" scale={scale} />
      )}
      {question.view.lenses && <Lenses drawn={drawn} ghost={null} fit={fit} system={system} deep={deep} />}
    </>
  );
}

/** m: how deep the lenses look with a design as it stands. */
function depthOf(design: Design): number {
  const drawn = drawnAt(linesOf(design), metres(design.position ?? 0), 1);
  const films = drawn.seats.flatMap(({ film }) => film.map((place) => place.film));
  const open = films.length === 0 ? 0 : Math.max(...films);
  return Math.max(lensDepth(drawn.seats), ROOM * open);
}
const ROOM = 1.25;

function useRelease(
  work: Work,
  question: Question,
  dealt: DealtQuestion,
  phase: Phase,
  again: number,
  leftAt: number | null,
): void {
  const still = useMedia('(prefers-reduced-motion: reduce)');
  useLayoutEffect(() => {
    const show = (design: Design) => work.store.setState({ design, refused: null });
    if (phase === 'frozen' || phase === 'byHand') return show(dealt.from);
    if (phase === 'free' && again === 0) return show(dealt.to);
    const from = leftAt === null ? dealt.from : { ...dealt.from, position: leftAt };
    if (still) return show(dealt.to);
    let frame = 0;
    let begun: number | null = null;
    const tick = (now: number) => {
      begun ??= now;
      const share = Math.min(1, (now - begun) / RELEASE);
      show(share === 1 ? dealt.to : between(from, dealt.to, question, share));
      if (share < 1) frame = requestAnimationFrame(tick);
    };
    show(from);
    frame = requestAnimationFrame(tick);
    return () => cancelAnimationFrame(frame);
  }, [work, question, dealt, phase, again, still, leftAt]);
}

/** The design on the way from one to the other: everything that is let go at the same pace. */
export function between(from: Design, to: Design, { release }: Pick<Question, 'release'>, share: number): Design {
  return release.reduce((design, { path }) => {
    const [a, b] = [valueAt(from, path) ?? 0, valueAt(to, path)];
    return typeof a === 'number' && typeof b === 'number' ? withValue(design, path, a + (b - a) * share) : design;
  }, from);
}
