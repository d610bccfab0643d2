/**
 * The axis as a track under the picture: where each seat touches, from where to where its film is within its tolerance,
 * and the journal's mark, to be moved by hand or by keys.
 */
import { ticks } from 'd3-array';
import { scaleLinear } from 'd3-scale';
import { memo, useRef } from 'react';
import type { Design } from '../../../design/definition.ts';
import { fineText, fineUnit, type System } from '../../../design/units.ts';
import { micrometres } from '../../../report/convert.ts';
import type { FitReport } from '../../../report/fit/definition.ts';
import { type Apart, toldApart } from '../../../report/fit/toldApart.ts';
import { useHeldRange } from '../../charts/useHeldRange.ts';
import { axialValues } from '../../pictures/axialValues.ts';
import { keepsTouch } from '../../pictures/useDrag.ts';
import { useAxialMove } from '../../pictures/useMove.ts';
import { useSize } from '../../pictures/useSize.ts';
import type { Work } from '../../state/store.ts';
import { useSame } from '../../state/useSame.ts';
import { Goals, standing } from './Goals.tsx';
import { GoesOn, TrackDimension } from './TrackMarks.tsx';

interface Props {
  work: Work;
  design: Design;
  fit: FitReport;
  system: System;
}

const EDGE = 12;
/** px: one seat's line, with a dimension between two of them, and the most of them drawn each on its own. */
const LINE = 12;
const DIMENSIONED = 18;
/** px of it: where it touches above, where its film is as wanted below, so that neither hides the other. */
const TOUCH = { up: 2, radius: 3.5, first: 5 };
const WANTED = { down: 3, high: 4 };
const MOST_LINES = 8;
const AXIS = 40;
/** px: clear of the frame */
const TOP = 6;

export default function PositionTrack({ work, design, fit, system }: Props) {
  const box = useRef<HTMLElement>(null);
  const { width } = useSize(box, { width: 800, height: 80 });
  const [low, high] = useHeldRange(design, fit, work);
  const x = trackScale(low, high, width);
  const move = useAxialMove(work, fit, () => (high - low) / (x.range()[1]! - x.range()[0]!));
  // Where they touch and where their films are right hangs on the seats alone.
  const marks = useSame(fit.seats, design.seats);
  const first = useSame(fit.together, design.seats);
  const apart = useSame(toldApart(fit), design.seats);
  const line = apart.length > 0 ? DIMENSIONED : LINE;
  const height = heightOf(marks.length, line);
  const now = x(Math.min(high, Math.max(low, fit.position)));
  const base = baseOf(marks.length, line);
  return (
    <figure className="track" ref={box}>
      <svg
        width={width}
        height={height}
        role="group"
        aria-label="The journal along its axis: where each seat touches, and where its film is as wanted"
        {...move.handlers}
      >
        <Ground {...{ seats: marks, first, apart, line, low, high, width, system }} />
        <g
          ref={keepsTouch}
          role="slider"
          tabIndex={0}
          className="mark"
          aria-label="Axial position of the journal, on the track"
          aria-valuenow={micrometres(fit.position)}
          {...axialValues(fit, system)}
          onKeyDown={move.onKeyDown}
        >
          <g transform={`translate(${now} 0)`}>
            <Mark height={height} base={base} />
          </g>
        </g>
      </svg>
      <figcaption>
        <Goals work={work} seats={marks} touch={fit.firstPosition} {...standing(fit)} />
        <Legend seats={marks} unit={fineUnit(system).name} />
      </figcaption>
    </figure>
  );
}

const Mark = memo(function Mark({ height, base }: { height: number; base: number }) {
  return (
    <>
      <rect className="grip" x={-22} y={0} width={44} height={height} />
      <path className="now" d={`M0 2V${base}`} />
      <path className="head" d={`M0 ${base - 1}l-7 12h14z`} />
    </>
  );
});

type Seats = FitReport['seats'];

const trackScale = (low: number, high: number, width: number) =>
  scaleLinear([low, high], [EDGE, Math.max(EDGE + 40, width - EDGE)]);
const lines = (seats: number, line: number) => line * Math.min(seats, MOST_LINES);
const heightOf = (seats: number, line: number) => AXIS + lines(seats, line) + 18 + TOP;
const baseOf = (seats: number, line: number) => 14 + lines(seats, line) + TOP;
/** px: the row of a seat */
const rowOf = (seat: number, line: number) => 8 + line * seat + TOP;

interface GroundProps {
  seats: Seats;
  /** which touch first as the journal goes home */
  first: readonly string[];
  /** mm */
  low: number;
  high: number;
  /** what is told of seats that no one position serves */
  apart: readonly Apart[];
  /** px: of a seat */
  line: number;
  /** px */
  width: number;
  system: System;
}

/** What stands still while the journal moves. */
const Ground = memo(function Ground({ seats, first, apart, line, low, high, width, system }: GroundProps) {
  const { size: unit } = fineUnit(system);
  const x = trackScale(low, high, width);
  const base = baseOf(seats.length, line);
  const within = (place: number) => Math.min(high, Math.max(low, place));
  return (
    <>
      <rect x={0} width={width} height={heightOf(seats.length, line)} className="grip" />
      <path className="line" d={`M${x(low)} ${base}H${x(high)}`} />
      {ticks(low / unit, high / unit, width < 500 ? 4 : 8).map((tick) => (
        <g key={tick} className="tick">
          <path d={`M${x(tick * unit)} ${base}v5`} />
          <text x={x(tick * unit)} y={base + 27} textAnchor="middle">
            {`${tick}`.replace('-', '−')}
          </text>
        </g>
      ))}
      {seats.slice(0, MOST_LINES).map(({ name, tolerated, seatPosition }, i) => {
        const y = rowOf(i, line);
        return (
          <g key={name} className={`seat seat-${i % 4}`}>
            {tolerated && tolerated.to >= low && tolerated.from <= high && (
              <rect
                className="tolerated"
                x={x(within(tolerated.from))}
                width={Math.max(5, x(within(tolerated.to)) - x(within(tolerated.from)))}
                y={y + WANTED.down}
                height={WANTED.high}
              />
            )}
            {seatPosition !== null && seatPosition >= low && seatPosition <= high && (
              <circle
                className={first.includes(name) ? 'touch-point first' : 'touch-point'}
                cx={x(seatPosition)}
                cy={y - TOUCH.up}
                r={first.includes(name) ? TOUCH.first : TOUCH.radius}
              />
            )}
            {tolerated && tolerated.from < low && tolerated.to >= low && (
              <GoesOn x={x(low)} y={y + WANTED.down + WANTED.high / 2} inward={1} />
            )}
            {tolerated && tolerated.to > high && tolerated.from <= high && (
              <GoesOn x={x(high)} y={y + WANTED.down + WANTED.high / 2} inward={-1} />
            )}
          </g>
        );
      })}
      {apart
        .filter((one) => one.seats.every((seat) => seat < MOST_LINES))
        .map(({ seats: [one, other], from, to }) => (
          <TrackDimension
            key={`${one} ${other}`}
            from={{ x: x(within(from)), y: rowOf(one, line) + WANTED.down + WANTED.high / 2 }}
            to={{ x: x(within(to)), y: rowOf(other, line) + WANTED.down + WANTED.high / 2 }}
            width={width}
            text={fineText(Math.abs(to - from), system)}
          />
        ))}
    </>
  );
});

const Legend = memo(function Legend({ seats, unit }: { seats: Seats; unit: string }) {
  return (
    <span className="fine">
      {seats.slice(0, MOST_LINES).map(({ name }, i) => (
        <span key={name} className={`name seat seat-${i % 4}`}>
          {name}
        </span>
      ))}
      <span className="is-touch">●</span>&nbsp;touches, large:&nbsp;first, <span className="is-wanted">▬</span>
      &nbsp;as&nbsp;wanted; {unit}, ←&nbsp;rearward
    </span>
  );
});
