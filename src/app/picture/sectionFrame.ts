/** The outlines of both parts in mm, and the room they take. Taken from the bush, so that the ground holds still while the journal moves. */
import { type Drawn, type Point, relieved } from './drawn.ts';
import { fromChord, thinned } from './thinned.ts';

export interface SectionFrame {
  /** mm: the room along the axis, which does not change while the journal moves */
  left: number;
  right: number;
  /** mm: where the journal is broken off, rear and nose */
  journalLeft: number;
  journalRight: number;
  /** mm: ends of the bush */
  rear: number;
  nose: number;
  /** mm: outside radius of the bush */
  outer: number;
  /** half section of the journal and of the bush, mm, radius upward */
  journal: Point[];
  bush: Point[];
}

const MM = 1000;
/** How far the journal reaches past the bush, and the bush past its bore, as shares. */
const REACH = 0.14;
const WALL = 1.28;
/** Of one seat's line; a measured profile may have more than a screen shows. */
export const MOST_POINTS = 1200;
/** The journal past its seats is drawn a little smaller. */
const STEP = 0.94;

export function sectionFrame(drawn: Drawn): SectionFrame {
  const byStation = [...drawn.seats].sort((a, b) => a.bush[0]![0] - b.bush[0]![0]);
  const bores = byStation.map((s) => thinned(s.bush, MOST_POINTS, fromChord(s.bush)));
  const bore = relieved(bores, bores, 'outside');
  const body = relieved(
    byStation.map((s) => thinned(s.journal, MOST_POINTS, fromChord(s.journal))),
    bores,
    'inside',
  );
  const rear = Math.min(...bore.map(([z]) => z));
  const nose = Math.max(...bore.map(([z]) => z));
  const reach = (nose - rear) * REACH;
  const outer = Math.max(...bore.map(([, r]) => r)) * WALL;
  const first = body[0]!;
  const last = body[body.length - 1]!;
  const left = Math.min(rear - reach, first[0] - reach / 4);
  const right = Math.max(nose + reach, last[0] + reach / 4);
  const clear = Math.min(STEP * first[1], ...(first[0] > rear ? bore.filter(([z]) => z < first[0]).map(([, r]) => STEP * r) : []));
  return {
    left: (rear - reach) * MM,
    right: (nose + reach) * MM,
    journalLeft: left * MM,
    journalRight: right * MM,
    rear: rear * MM,
    nose: nose * MM,
    outer: Math.max(outer, ...body.map(([, r]) => 1.02 * r)) * MM,
    journal: inMm([[left, clear], [first[0], clear], ...body, [right, last[1]]]),
    bush: inMm([...bore, [nose, outer], [rear, outer]]),
  };
}

const inMm = (points: readonly Point[]): Point[] => points.map(([z, r]) => [z * MM, r * MM]);
