/**
 * How wide things of a heap vary, one above the other at one scale: 19 in 20 lie between the two ends. What comes of
 * them together is asked for; it is drawn once an answer is committed, with the answer beside it.
 */

import { useId, useRef } from 'react';
import type { Question } from '../../../lessons/definition.ts';
import type { Pictured } from '../../../lessons/pictured.ts';
import { type Speech, told } from '../../../lessons/template.ts';
import { useSize } from '../../pictures/useSize.ts';

/** px: of one row, its bell, and the head and foot of all */
const ROW = 66;
const BELL = 30;
const HEAD = 26;
const FOOT = 8;
const EDGE = 10;
/** Standard deviations: 19 in 20 lie within, and no more is drawn. */
const WITHIN = 2;
const DRAWN = 3.2;
const POINTS = 48;
/** Of the widest part: room for what comes of them, that does not tell how wide it is. */
const ROOM = 1.3;

interface Props {
  view: NonNullable<Question['view']['spread']>;
  spread: NonNullable<Pictured['spread']>;
  /** mm: what was answered, as ±; null: nothing yet, or something else */
  answer: number | null;
  /** whether what comes of them is drawn */
  open: boolean;
  /** whether it is told in figures too */
  figures: boolean;
  speech: Speech;
}

export function HeapPicture({ view, spread, answer, open, figures, speech }: Props) {
  const id = useId();
  const box = useRef<HTMLElement>(null);
  const { width } = useSize(box, { width: 420, height: 200 });
  const rows = [
    // All rows are of one state: as it is asked, and once it is let go as it is then.
    ...view.parts.map(({ of }, i) => {
      const sd = (open ? spread.after : spread.parts)[i]!;
      return { of, sd, was: open ? spread.parts[i]! : null, told: true, own: null };
    }),
    {
      of: view.together,
      sd: open ? spread.together : spread.was,
      was: open ? spread.was : null,
      told: !open || figures,
      own: answer,
    },
  ];
  const widest = ROOM * WITHIN * Math.max(...spread.parts, open ? spread.together : 0, spread.was ?? 0);
  const perMm = (width / 2 - EDGE) / widest;
  const height = HEAD + rows.length * ROW + FOOT;
  const middle = width / 2;
  return (
    <figure className="heap" ref={box}>
      <figcaption>{view.title}</figcaption>
      <svg
        width={width}
        height={height}
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        aria-label={rows.map((row) => `${row.of}: ${rangeText(row, speech)}`).join('; ')}
      >
        <clipPath id={id}>
          <rect width={width} height={height} />
        </clipPath>
        {/* From curve to curve: what is written between stands clear of it. */}
        <path
          className="drawn-size"
          d={rows.map((_, i) => `M${middle} ${footOf(i) - BELL - 6}V${footOf(i)}`).join('')}
        />
        <text x={middle} y={HEAD - 11} textAnchor="middle">
          as drawn
        </text>
        <g clipPath={`url(#${id})`}>
          {rows.map((row, i) => (
            <Row key={row.of} {...row} foot={footOf(i)} {...{ middle, perMm, speech, width }} />
          ))}
        </g>
      </svg>
    </figure>
  );
}

/** px: where the row stands */
const footOf = (row: number) => HEAD + (row + 1) * ROW - 8;

const rangeText = ({ sd, told: inFigures }: Pick<RowProps, 'sd' | 'told'>, speech: Speech) =>
  sd === null ? 'not drawn yet' : inFigures ? `± ${told(WITHIN * sd, 'fine', speech)}` : 'drawn';

interface RowProps {
  of: string;
  /** mm; null: not drawn yet */
  sd: number | null;
  /** mm: what it was before, marked where it changed */
  was: number | null;
  /** whether it is told in figures */
  told: boolean;
  own: number | null;
  /** px */
  foot: number;
  middle: number;
  perMm: number;
  width: number;
  speech: Speech;
}

function Row({ of, sd, was, told: inFigures, own, foot, middle, perMm, width, speech }: RowProps) {
  const at = own === null ? null : Math.min(width / 2 - 2, Math.abs(own) * perMm);
  const ends = (off: number) => `M${middle - off} ${foot - BELL}V${foot}M${middle + off} ${foot - BELL}V${foot}`;
  return (
    <g>
      <path className="base" d={`M0 ${foot}H${width}`} />
      {sd !== null && (
        <>
          <path className="bell" d={bellOf(sd * perMm, middle, foot)} />
          <path className="ends" d={ends(WITHIN * sd * perMm)} />
        </>
      )}
      {was !== null && was !== sd && <path className="was" d={ends(WITHIN * was * perMm)} />}
      {at !== null && <path className="own" d={ends(at)} />}
      <text x={EDGE - 6} y={foot - BELL - 10}>
        {of} <tspan className="range">{sd !== null && inFigures && rangeText({ sd, told: true }, speech)}</tspan>
        {own !== null && <tspan className="own"> · yours ± {told(Math.abs(own), 'fine', speech)}</tspan>}
      </text>
    </g>
  );
}

/** px: the curve of a spread of one standard deviation so wide. */
function bellOf(sd: number, middle: number, foot: number): string {
  const points = Array.from({ length: POINTS + 1 }, (_, k) => {
    const t = -DRAWN + (2 * DRAWN * k) / POINTS;
    return `${(middle + t * sd).toFixed(1)} ${(foot - BELL * Math.exp((-t * t) / 2)).toFixed(1)}`;
  });
  return `M${points.join('L')}Z`;
}
