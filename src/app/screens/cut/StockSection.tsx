/**
 * Before and after in one section: above the axis the pair as it stands, the stock that is to come off coloured on its
 * surfaces; below the axis the pair as it will stand, over it in dashes the journal as it stands now, and how far it
 * goes. One exaggeration for all of it.
 */
import { useId, useMemo, useRef } from 'react';
import { useStore } from 'zustand';
import type { Design } from '../../../design/definition.ts';
import { fineText, type System } from '../../../design/units.ts';
import { metres } from '../../../report/convert.ts';
import type { CutReport } from '../../../report/cut/definition.ts';
import { designWithCut, withFlanks } from '../../../report/cut/withCut.ts';
import { fitSection } from '../../../report/fit/section.ts';
import { linesOf } from '../../../report/inFrame.ts';
import type { Drawn } from '../../pictures/drawn.ts';
import { type CutPair, cutFactor, cutFrames, drawnCut } from '../../pictures/drawnCut.ts';
import { FilmPatterns } from '../../pictures/FilmPaint.tsx';
import { middleOf, SeatNotes } from '../../pictures/SeatNotes.tsx';
import { scaleBar } from '../../pictures/scaleBar.ts';
import type { SectionFrame } from '../../pictures/sectionFrame.ts';
import { NOTE, onScreen, type Placing, seenThrough } from '../../pictures/sectionLayout.ts';
import { timesText } from '../../pictures/timesText.ts';
import { useMedia } from '../../pictures/useMedia.ts';
import { useScale } from '../../pictures/useScale.ts';
import { type Size, useSize } from '../../pictures/useSize.ts';
import { useView } from '../../pictures/useView.ts';
import { ZoomButtons } from '../../pictures/ZoomButtons.tsx';
import type { Work } from '../../state/store.ts';
import { Half, Hatching, journalHalf, Metal, path, type Side, Stock } from './StockHalf.tsx';
import { moveText, StockMove } from './StockMove.tsx';

interface Props {
  work: Work;
  design: Design;
  cut: CutReport;
  system: System;
}

/** Room above and below the parts for two lines of a note and their leaders, px. */
const NOTES = 66;
const EDGE = 10;

/** The pair of both states, drawn with a factor that holds while a hand has hold of anything (useScale.ts). */
function useDrawnCut(work: Work, design: Design, after: Design, cut: CutReport) {
  const { factor: asked, piece, scaleLocked: locked } = useStore(work.store);
  const still = useMedia('(prefers-reduced-motion: reduce)');
  const pair = useMemo(
    (): CutPair => ({
      before: linesOf(design),
      after: linesOf(after),
      from: metres(design.position ?? 0),
      to: metres(cut.position),
    }),
    [design, after, cut.position],
  );
  const suits = useMemo(() => cutFactor(pair, asked), [pair, asked]);
  const { factor, before } = useScale({
    suits,
    standing: pair,
    of: `${piece} ${asked}`,
    locked,
    still,
    held: () => work.dragging(),
  });
  return { drawn: useMemo(() => drawnCut(pair, factor), [pair, factor]), before };
}

export function StockSection({ work, design, cut, system }: Props) {
  const svg = useRef<SVGSVGElement>(null);
  const id = useId();
  const size = useSize(svg, { width: 900, height: 480 });
  const { design: after, shown: hollow } = useMemo(() => withFlanks(designWithCut(design, cut), cut), [design, cut]);
  const { drawn, before } = useDrawnCut(work, design, after, cut);
  const frames = useMemo(() => cutFrames(drawn), [drawn]);
  const { view, zoom, handlers } = useView(svg, size, () => {});
  const at = seenThrough(placed(frames, size), view, size);
  const bar = scaleBar(at.scale * drawn.before.factor, 0.2 * size.width, system);
  const moved = moveText(cut.position - (design.position ?? 0), system);
  const states = [
    { side: 1 as Side, drawn: drawn.before, frame: frames[0], name: 'now', of: design },
    { side: -1 as Side, drawn: drawn.after, frame: frames[1], name: 'after', of: after },
  ];
  const [left, right] = endsOf(frames).map((z) => onScreen(at, [metres(z), 0], 1).x) as [number, number];
  return (
    <figure className="picture">
      <svg
        ref={svg}
        {...handlers}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the drawing takes the keys that zoom and pan it
        tabIndex={0}
        className={view.zoom > 1 ? 'section zoomed' : 'section'}
        role="group"
        aria-label={`Section of the pair: above the axis as it stands with the stock to come off, below the axis after the cut${moved === null ? '' : `, the journal ${moved}`}; plus, minus and 0 zoom`}
      >
        <Hatching id={id} />
        <FilmPatterns id={`${id}film`} />
        {states.map((state) => (
          <g key={state.name} data-state={state.name}>
            <Half {...state} at={at} id={id} />
            {state.side === 1 && <Metal frame={frames[0]} at={at} id={id} />}
            {state.side === 1 &&
              drawn.before.seats.map((seat, i) => (
                <Stock key={seat.name} seat={seat} to={drawn.cutTo[i]!} at={at} id={id} />
              ))}
          </g>
        ))}
        {moved !== null && <path d={path(journalHalf(frames[0]), at, -1)} className="ghost" />}
        <path d={`M${left - EDGE} ${at.middle.y}H${right + EDGE}`} className="axis" />
        {states.map(({ side, name, frame }) => (
          <g key={name} className="note">
            <text
              x={onScreen(at, [metres(frame.journalLeft), 0], 1).x + 6}
              y={at.middle.y + (side === 1 ? -8 : 8 + NOTE)}
              fontSize={NOTE}
              fontWeight={700}
            >
              {name}
            </text>
          </g>
        ))}
        {moved !== null && <StockMove frames={frames} at={at} text={moved} />}
        {states.map(({ name, ...state }) => (
          <Notes key={name} {...state} cut={cut} at={at} size={size} system={system} />
        ))}
      </svg>
      <figcaption>
        <Key className="stock">stock to come off</Key>
        {moved !== null && <Key className="ghost">the journal now</Key>}
        <span className="bar">
          <svg width={Math.max(bar.width, 1) + 4} height="14" aria-hidden="true">
            <path d={`M2 4V11H${2 + bar.width}V4`} />
          </svg>{' '}
          {bar.text} of gap or move, drawn {timesText(drawn.before.factor, before)}
        </span>
        {hollow && <span>After: with the flank the tool off the centre leaves.</span>}
        <ZoomButtons {...zoom} />
      </figcaption>
    </figure>
  );
}

function Key({ className, children }: { className: string; children: string }) {
  return (
    <span className="stock-key">
      <svg width="22" height="14" aria-hidden="true">
        <rect x="1" y="1" width="20" height="12" className={className} />
      </svg>
      {children}
    </span>
  );
}

/** mm: the room both states take along the axis. */
const endsOf = (frames: readonly SectionFrame[]): [number, number] => [
  Math.min(...frames.flatMap(({ left, journalLeft }) => [left, journalLeft])),
  Math.max(...frames.flatMap(({ right, journalRight }) => [right, journalRight])),
];

/** The scale that leaves room for the notes above and below. */
function placed(frames: readonly [SectionFrame, SectionFrame], { width, height }: Size): Placing {
  const [left, right] = endsOf(frames);
  const scale = Math.max(
    0.05,
    Math.min((width - 4 * EDGE) / (right - left), (height - 2 * NOTES) / (2 * frames[0].outer)),
  );
  return {
    level: 'full',
    scale,
    middle: { x: width / 2, y: height / 2 },
    station: (left + right) / 2,
    notesEnd: NOTES - 20,
  };
}

/** Films of one state, and above the axis the stock, each with a leader to its seat. */
function Notes({
  of,
  cut,
  drawn,
  side,
  at,
  size,
  frame,
  system,
}: {
  of: Design;
  cut: CutReport;
  drawn: Drawn;
  side: Side;
  at: Placing;
  size: Size;
  frame: SectionFrame;
  system: System;
}) {
  const fit = useMemo(() => fitSection(of), [of]);
  const notes = fit.seats.map(({ name, leastFilm }, i) => ({
    name,
    film: leastFilm === null ? 'apart' : fineText(leastFilm, system),
    taper: side === 1 ? stockText(cut, name, system) : '',
    at: onScreen(at, middleOf(drawn.seats[i]!), side),
  }));
  return <SeatNotes notes={notes} frame={frame} at={at} size={size} below={side === -1} />;
}

const stockText = ({ steps }: CutReport, seat: string, system: System) =>
  steps
    .filter((step) => step.seat === seat)
    .map(({ part, normal }) => `${fineText(normal, system)} off ${part}`)
    .join(', ');
