/**
 * One film as a layer between bush and journal: no section shows it, since the spindle stands aside under its load. Or
 * right across a bore: the journal stands still, and the bush opens on both sides of it.
 */
import { ticks } from 'd3-array';
import { useId } from 'react';
import { fineUnit } from '../../../design/units.ts';
import type { Question } from '../../../lessons/definition.ts';
import { type Speech, told } from '../../../lessons/template.ts';

const WIDTH = 420;
const HEIGHT = 220;
const METAL = 40;
/** The journal where both sides of it are drawn. */
const CORE = 44;
const RULER = 46;
/** Room that does not tell which way it goes, nor how far. */
const TWICE = 2;
const ROOM = 1.5;

type View = NonNullable<Question['view']['layer']>;

interface Props {
  view: View;
  /** mm: before, once let go, and as it is on the way */
  ends: { from: number; to: number };
  now: number;
  /** what was answered, once it was; null where it is of something else */
  answer: number | null;
  /** whether its figures are told */
  figures: boolean;
  /** whether it stands as it was let go */
  open: boolean;
  speech: Speech;
}

export function Layer({ view, ends, now, answer, figures, open, speech }: Props) {
  const id = useId();
  const deepest = Math.max(TWICE * ends.from, ROOM * ends.to);
  const right = WIDTH - RULER;
  const both = view.both === true;
  const perMm = (both ? HEIGHT / 2 - METAL - CORE / 2 : HEIGHT - 2 * METAL) / deepest;
  // Of the upper film: from its journal up where both are drawn, from its bush down where one is.
  const begins = both ? (HEIGHT - CORE) / 2 : METAL;
  const y = (film: number) => begins + (both ? -film : film) * perMm;
  const own = ownFilm(view, ends.from, answer);
  return (
    <figure className="layer">
      <figcaption>
        {view.title}
        {figures && (
          <>
            : <strong>{told(now, 'fine', speech)}</strong>
          </>
        )}
        {figures && open && view.answer !== undefined && <span> {grownText(ends, speech)}</span>}
      </figcaption>
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={labelOf(view, both)}>
        <clipPath id={id}>
          <rect width={right} height={HEIGHT} />
        </clipPath>
        <g clipPath={`url(#${id})`}>
          {both ? (
            <Across now={Math.max(0, now) * perMm} right={right} />
          ) : (
            <One top={begins} now={Math.max(0, now) * perMm} right={right} />
          )}
          <Marks film={ends.from} name="before" left={100} {...{ both, y, right }} />
          {own !== null && <Marks film={own} name="your answer" left={212} {...{ both, y, right }} />}
        </g>
        <text x={10} y={26}>
          bush
        </text>
        <text x={10} y={both ? HEIGHT / 2 + 5 : HEIGHT - 12}>
          journal
        </text>
        <Ruler {...{ deepest, y, right, speech }} />
      </svg>
    </figure>
  );
}

const labelOf = (view: View, both: boolean) =>
  `${view.title}, drawn as a layer of oil${both ? ' on both sides of the journal' : ''}`;

/** mm: the film that was answered. */
function ownFilm({ answer: of }: View, from: number, answer: number | null): number | null {
  if (answer === null || of === undefined) return null;
  return of === 'film' ? answer : of === 'growth' ? from + answer : answer / 2;
}

function grownText({ from, to }: Props['ends'], speech: Speech): string {
  const by = told(Math.abs(to - from), 'fine', speech);
  return from > 0 ? `It was ${told(from, 'fine', speech)}: ${to >= from ? 'grown' : 'shrunk'} by ${by}.` : '';
}

const One = ({ top, now, right }: { top: number; now: number; right: number }) => (
  <>
    <rect className="bush" width={right} height={top} />
    <rect className="oil" y={top} width={right} height={now} />
    <rect className="journal" y={top + now} width={right} height={HEIGHT} />
  </>
);

/** From wall to wall, as a gauge reads it. */
function Across({ now, right }: { now: number; right: number }) {
  const [top, foot] = [(HEIGHT - CORE) / 2 - now, (HEIGHT + CORE) / 2 + now];
  const x = right - 24;
  return (
    <>
      <rect className="bush" width={right} height={HEIGHT} />
      <rect className="oil" y={top} width={right} height={foot - top} />
      <rect className="journal" y={(HEIGHT - CORE) / 2} width={right} height={CORE} />
      <path
        className="gauge"
        d={`M${x} ${top}V${foot}M${x - 5} ${top + 8}L${x} ${top}l5 8M${x - 5} ${foot - 8}l5 8l5-8`}
      />
      <text x={x - 8} y={HEIGHT / 2 + 5} textAnchor="end">
        across
      </text>
    </>
  );
}

interface MarksProps {
  film: number;
  name: string;
  /** where its name stands */
  left: number;
  both: boolean;
  y(film: number): number;
  right: number;
}

/** px: the strip of bush above all films, in which names stand, and what of a part's edge is still seen as the film */
const STRIP = 36;
const NAMES = 26;
const EDGE = 5;
const AT_EDGE = 6;

/** Where a film is drawn: one beyond the picture, or less than none, lies where no name does. */
function lineAt(at: number, both: boolean): number {
  if (at < STRIP) return EDGE;
  const journal = (HEIGHT - CORE) / 2 + AT_EDGE;
  if (both) return Math.min(journal, at);
  return at > HEIGHT - STRIP ? HEIGHT - EDGE : at;
}

/** A film as a line, on both sides where both are drawn. Its name stands clear of every line, in the metal above. */
function Marks({ film, name, left, both, y, right }: MarksProps) {
  const at = lineAt(y(film), both);
  const beyond = at !== y(film);
  const lines = both ? [at, HEIGHT - at] : [at];
  const [from, to] = at < NAMES ? [EDGE, EDGE] : [NAMES + 5, at];
  return (
    <g className={name === 'before' ? 'was' : 'own'}>
      {lines.map((line) => (
        <path key={line} d={`M0 ${line}H${right}`} />
      ))}
      <path d={`M${left - 8} ${from}V${to}`} />
      <text x={left - 12} y={NAMES}>
        {name}
        {beyond && ' (beyond)'}
      </text>
    </g>
  );
}

/** px: from one figure of the ruler to the next, at least */
const APART = 24;

function Ruler({ deepest, y, right, speech }: Pick<MarksProps, 'y' | 'right'> & { deepest: number; speech: Speech }) {
  const { size, name } = fineUnit(speech.system);
  // A hint: as many as it makes of it may still stand too near.
  const room = Math.abs(y(deepest) - y(0)) / APART;
  const count = [4, 3, 2, 1].find((most) => ticks(0, deepest / size, most).length - 1 <= room) ?? 1;
  return (
    <>
      {ticks(0, deepest / size, count).map((tick) => (
        <g key={tick}>
          <path className="tick" d={`M${right} ${y(tick * size)}h7`} />
          <text x={right + 10} y={y(tick * size) + 4}>
            {tick}
          </text>
        </g>
      ))}
      <text x={right + 6} y={22}>
        {name}
      </text>
    </>
  );
}
