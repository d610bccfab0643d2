/**
 * What is so now, which seat touches first, then what that means for the pair; the rest opens. The lines keep the room
 * of the longest that may stand there, so that nothing below them moves under the hand.
 */
import { useMemo, useState } from 'react';
import { Explained } from '../../glossary/Explained.tsx';
import '../../frame/shortVerdict.css';
import { useAngles } from '../../state/angles.ts';
import type { Work } from '../../state/store.ts';
import { useHeld } from '../../state/useHeld.ts';
import { useThrottled } from '../../state/useThrottled.ts';
import { fitLines, roomOf, type Told } from './fitLines.ts';

/** ms between two things a screen reader is told. */
const PACE = 1200;

export function FitVerdict({ work, ...asked }: Omit<Told, 'way'> & { work: Work }) {
  const told = { ...asked, way: useAngles() };
  const { tone, now, next, why, rest, heard } = fitLines(told);
  const announced = useThrottled(heard, PACE);
  const { system, belief, way, retold } = told;
  // biome-ignore lint/correctness/useExhaustiveDependencies: wherever the journal stands, it has the same room
  const room = useMemo(() => (retold?.room ?? roomOf)(told), [asked.design.seats, system, belief, way, retold]);
  return (
    <section className={`verdict short fit ${tone}`}>
      <div className="line now-line" data-room={room.now}>
        <p className="now">
          <Explained>{now}</Explained>
        </p>
      </div>
      <p className="visually-hidden" role="status">
        {announced}
      </p>
      <div className="line" data-room={room.next}>
        <p>
          <Explained>{next}</Explained>
        </p>
      </div>
      <div className="line" data-room={room.why}>
        <h2>
          <Explained>{why}</Explained>
        </h2>
      </div>
      <More work={work}>{rest}</More>
    </section>
  );
}

/** Shut, it stands still while a hand moves the journal. */
function More({ work, children }: { work: Work; children: string }) {
  const [open, setOpen] = useState(false);
  const rested = useHeld(children, work);
  const told = open ? children : rested;
  if (told === '') return null;
  return (
    <details onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Why, and how far to move</summary>
      <p>
        <Explained>{told}</Explained>
      </p>
    </details>
  );
}
