/**
 * The section of a lesson: the upper half of the pair from near, so that its films are seen on a phone too, and the
 * whole of it small in the corner. While a place is asked for the hand moves the journal without landmarks: nothing
 * snaps, no key and no word tells which place is the right one.
 */
import { useId, useMemo, useRef } from 'react';
import { fineText, type System, sidedText } from '../../../design/units.ts';
import type { FitReport } from '../../../report/fit/definition.ts';
import { listed } from '../../../report/listed.ts';
import { axialValues } from '../../pictures/axialValues.ts';
import type { Drawn } from '../../pictures/drawn.ts';
import { middleOf, SeatNotes } from '../../pictures/SeatNotes.tsx';
import { SectionBar } from '../../pictures/SectionBar.tsx';
import { SectionDrawing } from '../../pictures/SectionDrawing.tsx';
import { sectionFrame } from '../../pictures/sectionFrame.ts';
import { onScreen, type Placing, seenThrough } from '../../pictures/sectionLayout.ts';
import { timesText } from '../../pictures/timesText.ts';
import { useAxialMove } from '../../pictures/useMove.ts';
import { type Size, useSize } from '../../pictures/useSize.ts';
import { useView } from '../../pictures/useView.ts';
import type { Work } from '../../state/store.ts';
import { type Box, closeUp, heightFor } from './closeUp.ts';
import { WholePair } from './WholePair.tsx';

interface Props {
  drawn: Drawn;
  fit: FitReport;
  system: System;
  work: Work;
  /** what must be in sight, the same before and after */
  box: Box;
  /** whether its films are told in figures */
  figures: boolean;
  /** whether a place is asked for: the hand moves the journal, and nothing tells where it is right */
  asks: boolean;
  /** how many times as large all is drawn, before a class */
  times?: number;
}

export function LessonSection({ drawn, fit, system, work, box, figures, asks, times = 1 }: Props) {
  const svg = useRef<SVGSVGElement>(null);
  const id = useId();
  const seen = useSize(svg, { width: 900, height: 300 });
  const size = useMemo(() => ({ width: seen.width / times, height: seen.height / times }), [seen, times]);
  const frame = useMemo(() => sectionFrame(drawn), [drawn]);
  const whole = closeUp(box, frame, size);
  const perPixel = () => 1 / (at.scale * drawn.factor * times);
  const blind = useMemo(() => (asks ? { ...fit, seats: [] } : fit), [fit, asks]);
  const move = useAxialMove(work, blind, perPixel);
  const look = useView(svg, seen, move.cancel);
  const { view } = look;
  const at = seenThrough(whole, { ...view, x: view.x / times, y: view.y / times }, size);
  const values = axialValues(blind, system);
  return (
    <figure className="picture">
      <SectionDrawing
        {...{ svg, id, fit, drawn, frame, at, move }}
        label="Upper half of the pair, cut along its axis"
        seen={look}
        values={asks ? { ...values, 'aria-valuetext': blindText(fit, system) } : values}
        own={{
          viewBox: `0 0 ${size.width} ${size.height}`,
          style: { height: times * heightFor(box, seen.width / times) },
        }}
      >
        {asks && <Moves at={at} size={size} box={box} />}
        <Notes {...{ drawn, fit, frame, at, size, system, figures }} />
        <WholePair frame={frame} at={at} size={size} />
        <SectionBar perMm={at.scale * drawn.factor} size={size} system={system} />
      </SectionDrawing>
      <figcaption>
        <span>Gaps drawn {timesText(drawn.factor)}</span>
      </figcaption>
    </figure>
  );
}

type NotesProps = Pick<Props, 'drawn' | 'fit' | 'system' | 'figures'> & {
  frame: ReturnType<typeof sectionFrame>;
  at: Placing;
  size: Size;
};

/** Every seat by its name, and with its film where that is told. */
function Notes({ drawn, fit, frame, at, size, system, figures }: NotesProps) {
  const notes = fit.seats.map(({ name, leastFilm }, i) => ({
    name,
    film: figures ? filmText(leastFilm, system) : '',
    taper: '',
    at: onScreen(at, middleOf(drawn.seats[i]!), 1),
  }));
  return (
    <>
      <rect className="note-ground" width={size.width} height={at.notesEnd} />
      <SeatNotes notes={notes} frame={frame} at={at} size={size} />
    </>
  );
}

const filmText = (film: number | null, system: System) =>
  film === null ? 'apart' : Math.abs(film) <= TOUCHES ? 'touches' : fineText(film, system);
/** mm */
const TOUCHES = 1e-9;

/** As much as the eye has of it: where it stands, and which gaps are open, shut or overlap. */
function blindText(fit: FitReport, system: System): string {
  const named = (is: (film: number) => boolean) =>
    fit.seats.filter(({ leastFilm }) => leastFilm !== null && is(leastFilm)).map(({ name }) => name);
  const said = (
    [
      ['open', named((film) => film > SEEN)],
      ['shut', named((film) => Math.abs(film) <= SEEN)],
      ['metal in metal', named((film) => film < -SEEN)],
    ] as const
  ).flatMap(([is, names]) => (names.length > 0 ? [`${listed(names)} ${is}`] : []));
  return [sidedText(fit.position, system), ...said].join('; ');
}
/** mm: less is not seen in the picture */
const SEEN = 0.0005;

/** That the journal moves along its axis. */
function Moves({ at, size, box }: { at: Placing; size: Size; box: Box }) {
  const x = size.width / 2;
  const face = at.middle.y - at.scale * box.low;
  const y = Math.min(size.height - FOOT, Math.max(face, size.height / 2));
  const arrows = `M${x - 18} ${y}h36M${x - 12} ${y - 6}l-7 6l7 6M${x + 12} ${y - 6}l7 6l-7 6`;
  return (
    <g className="hint moves">
      <path d={arrows} className="halo" />
      <path d={arrows} />
    </g>
  );
}
/** px: clear of the bar below */
const FOOT = 46;
