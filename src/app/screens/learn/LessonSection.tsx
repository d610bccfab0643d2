/**
 * The section of a lesson: the upper half of the pair from near, so that its films are seen on a phone too. Below it,
 * on a strip of its own that no metal reaches: how large a gap is drawn, and the whole pair small.
 */
import { useId, useMemo, useRef } from 'react';
import type { System } from '../../../design/units.ts';
import type { FitReport } from '../../../report/fit/definition.ts';
import { axialValues } from '../../pictures/axialValues.ts';
import type { Drawn, DrawnSeat, Point } from '../../pictures/drawn.ts';
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
import { type Box, closeUp, heightFor, leansText, STRIP } from './closeUp.ts';
import { WholePair } from './WholePair.tsx';

interface Props {
  drawn: Drawn;
  fit: FitReport;
  system: System;
  work: Work;
  /** what must be in sight, the same before and after */
  box: Box;
  /** whether its films are told in figures, and how */
  figures: boolean;
  say(film: number): string;
  /** whether it is asked still: leaders point at the middle of a seat, and not at its widest gap */
  asks: boolean;
  /** what is known of each seat, under its name */
  known?: readonly string[];
  /** how many times as large all is drawn, before a class */
  times?: number;
}

export function LessonSection({ drawn, fit, system, work, box, figures, say, asks, known = [], times = 1 }: Props) {
  const svg = useRef<SVGSVGElement>(null);
  const id = useId();
  const seen = useSize(svg, { width: 900, height: 300 });
  const size = useMemo(() => ({ width: seen.width / times, height: seen.height / times }), [seen, times]);
  const frame = useMemo(() => sectionFrame(drawn), [drawn]);
  const told = known.some((text) => text !== '');
  const whole = closeUp(box, frame, size, told);
  const perPixel = () => 1 / (at.scale * drawn.factor * times);
  const move = useAxialMove(work, fit, perPixel);
  const look = useView(svg, seen, move.cancel);
  const { view } = look;
  const at = seenThrough(whole, { ...view, x: view.x / times, y: view.y / times }, size);
  return (
    <figure className="picture">
      <SectionDrawing
        {...{ svg, id, fit, drawn, frame, at, move }}
        label="Upper half of the pair, cut along its axis"
        seen={look}
        values={axialValues(fit, system)}
        own={{
          viewBox: `0 0 ${size.width} ${size.height}`,
          style: { height: times * heightFor(box, seen.width / times, told) },
        }}
      >
        <Notes {...{ drawn, fit, frame, at, size, say, figures, asks, known }} />
        <rect className="note-ground" y={size.height - STRIP} width={size.width} height={2 * STRIP} />
        <WholePair frame={frame} at={at} size={size} />
        <SectionBar perMm={at.scale * drawn.factor} size={size} system={system} />
      </SectionDrawing>
      <figcaption>
        <span>
          Gaps drawn {timesText(drawn.factor)}
          {leansText(drawn)}
        </span>
      </figcaption>
    </figure>
  );
}

type NotesProps = Required<Pick<Props, 'drawn' | 'fit' | 'say' | 'figures' | 'asks' | 'known'>> & {
  frame: ReturnType<typeof sectionFrame>;
  at: Placing;
  size: Size;
};

/** Every seat by its name, with its film where that is told, and with what is known of it. */
function Notes({ drawn, fit, frame, at, size, say, figures, asks, known }: NotesProps) {
  const notes = fit.seats.map(({ name, leastFilm }, i) => ({
    name,
    film: figures ? filmText(leastFilm, say) : '',
    taper: known[i] ?? '',
    at: onScreen(
      at,
      asks
        ? middleOf(drawn.seats[i]!)
        : toldAt(drawn.seats[i]!, figures && leastFilm !== null && Math.abs(leastFilm) <= TOUCHES),
      1,
    ),
  }));
  return (
    <>
      <rect className="note-ground" width={size.width} height={at.notesEnd} />
      <SeatNotes notes={notes} frame={frame} at={at} size={size} />
    </>
  );
}

const filmText = (film: number | null, say: Props['say']) =>
  film === null
    ? 'apart'
    : Math.abs(film) <= TOUCHES
      ? 'touches'
      : `${say(Math.abs(film))}${film < 0 ? ' of overlap' : ''}`;
/** mm */
const TOUCHES = 1e-9;

/** Where it touches, where that is what is told; else where the gap is widest. Of an even gap, the middle. */
function toldAt(seat: DrawnSeat, touches: boolean): Point {
  const films = seat.oil.map(({ film }) => film);
  const [least, most] = [Math.min(...films), Math.max(...films)];
  const at = films.indexOf(touches ? least : most);
  const place = seat.oil[at];
  if (!place || most - least < UNEVEN * Math.abs(most)) return middleOf(seat);
  // A hair inside the seat: at its very end the leader would stand beside it.
  const inner = seat.oil[at === 0 ? 1 : seat.oil.length - 2] ?? place;
  const mid = ({ bush, journal }: typeof place): Point => [(bush[0] + journal[0]) / 2, (bush[1] + journal[1]) / 2];
  const [[z, r], [inZ, inR]] = [mid(place), mid(inner)];
  return [z + IN * (inZ - z), r + IN * (inR - r)];
}
/** Of the widest: a gap that differs by less is even. */
const UNEVEN = 0.2;
const IN = 0.12;
