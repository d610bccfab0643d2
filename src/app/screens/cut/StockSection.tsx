/**
 * Before and after in one section: above the axis the pair as it stands, the stock that is to come off coloured on its
 * surfaces; below the axis the pair as it will stand. One exaggeration for both.
 */
import { useId, useMemo, useRef } from 'react';
import type { Design } from '../../../design/definition.ts';
import { fineText, type System } from '../../../design/units.ts';
import { metres } from '../../../report/convert.ts';
import type { CutReport } from '../../../report/cut/definition.ts';
import { designWithCut, withFlanks } from '../../../report/cut/withCut.ts';
import { fitSection } from '../../../report/fit/section.ts';
import { linesOf } from '../../../report/inFrame.ts';
import { betweenPlaces, type Drawn, type DrawnSeat, type Point } from '../../pictures/drawn.ts';
import { drawnCut } from '../../pictures/drawnCut.ts';
import { FilmPatterns, FilmShape, pointsOf } from '../../pictures/FilmPaint.tsx';
import { filmRuns } from '../../pictures/filmClass.ts';
import { middleOf, SeatNotes } from '../../pictures/SeatNotes.tsx';
import { scaleBar } from '../../pictures/scaleBar.ts';
import { type PointInMm, type SectionFrame, sectionFrame } from '../../pictures/sectionFrame.ts';
import { NOTE, onScreen, type Placing, seenThrough } from '../../pictures/sectionLayout.ts';
import { type Size, useSize } from '../../pictures/useSize.ts';
import { useView } from '../../pictures/useView.ts';
import { ZoomButtons } from '../../pictures/ZoomButtons.tsx';

interface Props {
  design: Design;
  cut: CutReport;
  factor: number;
  system: System;
}

type Side = 1 | -1;

/** Room above and below the parts for two lines of a note and their leaders, px. */
const NOTES = 66;
const EDGE = 10;
const HATCH = 9;
const SAID =
  'Section of the pair: above the axis as it stands with the stock to come off, below the axis after the cut; plus, minus and 0 zoom';

export function StockSection({ design, cut, factor, system }: Props) {
  const svg = useRef<SVGSVGElement>(null);
  const id = useId();
  const size = useSize(svg, { width: 900, height: 480 });
  const { design: after, shown: hollow } = useMemo(() => withFlanks(designWithCut(design, cut), cut), [design, cut]);
  const drawn = useMemo(() => {
    const lines = (d: Design) => linesOf(d);
    return drawnCut(lines(design), lines(after), metres(design.position ?? 0), metres(cut.position), factor);
  }, [design, after, cut.position, factor]);
  const frames = useMemo(() => [sectionFrame(drawn.before), sectionFrame(drawn.after)] as const, [drawn]);
  const { view, zoom, handlers } = useView(svg, size, () => {});
  const at = seenThrough(placed(frames, size), view, size);
  const bar = scaleBar(at.scale * drawn.before.factor, 0.2 * size.width, system);
  const states = [
    { side: 1 as Side, drawn: drawn.before, frame: frames[0], name: 'now' },
    { side: -1 as Side, drawn: drawn.after, frame: frames[1], name: 'after' },
  ];
  return (
    <figure className="picture">
      <svg
        ref={svg}
        {...handlers}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the drawing takes the keys that zoom and pan it
        tabIndex={0}
        className={view.zoom > 1 ? 'section zoomed' : 'section'}
        role="group"
        aria-label={SAID}
      >
        <Hatching id={id} />
        <FilmPatterns id={`${id}film`} />
        {states.map((state) => (
          <g key={state.name}>
            <Half {...state} at={at} id={id} />
            {state.side === 1 && <Metal frame={frames[0]} at={at} id={id} />}
            {state.side === 1 &&
              drawn.before.seats.map((seat, i) => (
                <Stock key={seat.name} seat={seat} to={drawn.cutTo[i]!} at={at} id={id} />
              ))}
          </g>
        ))}
        <path
          d={`M${at.middle.x - (frames[0].right - frames[0].left) * at.scale} ${at.middle.y}H${at.middle.x + (frames[0].right - frames[0].left) * at.scale}`}
          className="axis"
        />
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
        <Notes
          design={design}
          cut={cut}
          drawn={drawn.before}
          side={1}
          at={at}
          size={size}
          frame={frames[0]}
          system={system}
        />
        <Notes
          design={after}
          cut={cut}
          drawn={drawn.after}
          side={-1}
          at={at}
          size={size}
          frame={frames[1]}
          system={system}
        />
      </svg>
      <figcaption>
        <span className="stock-key">
          <svg width="22" height="14" aria-hidden="true">
            <rect width="22" height="14" className="stock" />
          </svg>
          stock to come off
        </span>
        <span className="bar">
          <svg width={Math.max(bar.width, 1) + 4} height="14" aria-hidden="true">
            <path d={`M2 4V11H${2 + bar.width}V4`} />
          </svg>{' '}
          {bar.text} of gap or stock, drawn ×{Math.round(drawn.before.factor).toLocaleString('en')}
        </span>
        {hollow && <span>After: with the flank the tool off the centre leaves.</span>}
        <ZoomButtons {...zoom} />
      </figcaption>
    </figure>
  );
}

/** The scale that leaves room for the notes above and below. */
function placed(
  [before, after]: readonly [SectionFrame, SectionFrame],
  { width, height }: { width: number; height: number },
): Placing {
  const [left, right] = [Math.min(before.left, after.left), Math.max(before.right, after.right)];
  const outer = Math.max(before.outer, after.outer);
  const scale = Math.max(0.05, Math.min((width - 2 * EDGE) / (right - left), (height - 2 * NOTES) / (2 * outer)));
  return {
    level: 'full',
    scale,
    middle: { x: width / 2, y: height / 2 },
    station: (left + right) / 2,
    notesEnd: NOTES - 20,
  };
}

const FILLS = ['bush', 'journal'] as const;

function Hatching({ id }: { id: string }) {
  return (
    <defs>
      {FILLS.map((part) => (
        <pattern
          key={part}
          id={`${id}${part}`}
          width={HATCH}
          height={HATCH}
          patternUnits="userSpaceOnUse"
          patternTransform={`rotate(${part === 'bush' ? 45 : -45})`}
        >
          <rect width="100%" height="100%" className={`${part}-fill`} />
          <path d={`M0 0V${HATCH}`} className="hatch" />
        </pattern>
      ))}
    </defs>
  );
}

const path = (points: readonly Point[], at: Placing, side: Side) =>
  `M${points
    .map((point) => {
      const { x, y } = onScreen(at, point, side);
      return `${x.toFixed(2)} ${y.toFixed(2)}`;
    })
    .join('L')}Z`;

const inMetres = (points: readonly PointInMm[]): Point[] => points.map(([z, r]) => [metres(z), metres(r)]);

/** The half section of the journal, down to the axis. */
const journalHalf = ({ journal: { above } }: SectionFrame): Point[] =>
  inMetres([...above, [above[above.length - 1]![0], 0], [above[0]![0], 0]]);
const bushHalf = ({ bush }: SectionFrame): Point[] => inMetres(bush.above);

/** Where there is metal, so that the stock is drawn on it alone. */
function Metal({ frame, at, id }: { frame: SectionFrame; at: Placing; id: string }) {
  return FILLS.map((part) => (
    <clipPath key={part} id={`${id}${part}metal`}>
      <path d={path(part === 'journal' ? journalHalf(frame) : bushHalf(frame), at, 1)} />
    </clipPath>
  ));
}

/** One side of the axis in one state. */
function Half({
  side,
  drawn,
  frame,
  at,
  id,
}: {
  side: Side;
  drawn: Drawn;
  frame: SectionFrame;
  at: Placing;
  id: string;
}) {
  return (
    <g>
      <path d={path(journalHalf(frame), at, side)} fill={`url(#${id}journal)`} className="outline" />
      <path d={path(bushHalf(frame), at, side)} fill={`url(#${id}bush)`} className="outline bush" />
      {drawn.seats.map(({ name, oil, wanted }) =>
        filmRuns(oil, wanted, betweenPlaces).map(({ name: run, kind, places }) => (
          <FilmShape
            key={`${name} ${run}`}
            points={pointsOf(path([...places.map((f) => f.bush), ...places.map((f) => f.journal).reverse()], at, side))}
            kind={kind}
            id={`${id}film`}
          />
        )),
      )}
    </g>
  );
}

/** What comes off a seat's two surfaces, on the state before. */
function Stock({
  seat,
  to,
  at,
  id,
}: {
  seat: DrawnSeat;
  to: { journal: Point[]; bush: Point[] };
  at: Placing;
  id: string;
}) {
  return (['journal', 'bush'] as const).map((part) => {
    const [old, fresh] = [seat[part], to[part]];
    const moved =
      old.length !== fresh.length || old.some(([z, r], i) => Math.hypot(z - fresh[i]![0], r - fresh[i]![1]) > 1e-12);
    return (
      moved && (
        <path
          key={part}
          d={path([...old, ...fresh.toReversed()], at, 1)}
          className="stock"
          clipPath={`url(#${id}${part}metal)`}
          data-stock={`${seat.name} ${part}`}
        />
      )
    );
  });
}

/** Films of one state, and above the axis the stock, each with a leader to its seat. */
function Notes({
  design,
  cut,
  drawn,
  side,
  at,
  size,
  frame,
  system,
}: {
  design: Design;
  cut: CutReport;
  drawn: Drawn;
  side: Side;
  at: Placing;
  size: Size;
  frame: SectionFrame;
  system: System;
}) {
  const fit = useMemo(() => fitSection(design), [design]);
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
