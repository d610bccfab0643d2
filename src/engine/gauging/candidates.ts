/**
 * Readings that could be taken next: for every surface the set-ups that a shop would think of, each as it would
 * read on the shape, with the uncertainty the notebook states for its kind.
 */

import type { On } from '../belief/unknowns.ts';
import type { SeatInput } from '../contact/fit.ts';
import { bestPair, triedBalls, triedRolls } from './choice.ts';
import type { Kind, Reading, ReadingOf } from './reading.ts';
import { predict, usualSigma } from './readings/index.ts';
import { stackOfAngle } from './sineBar.ts';
import { INCH_TOOLS, METRIC_TOOLS, type Tooling } from './tooling.ts';

/** A share of the line that is kept clear of either end. */
const CLEAR = 0.1;
/** No set-up of a bench reads more (m). @source practice */
const LONGEST = 1;

const isInchBar = (bar: number) => Math.abs(bar / 0.0127 - Math.round(bar / 0.0127)) < 1e-9;
const rounded = (length: number, step: number) => Math.round(length / step) * step;

/**
 * Candidates whose set-up is possible on the shape; `readings` the notebook so far, `tools` what the shop has besides
 * what is in that.
 */
export function candidatesOf(seats: readonly SeatInput[], readings: readonly Reading[], tools: Tooling): Reading[] {
  const usual = notebookOf(readings, tools);
  const onSurfaces = seats.flatMap((_, seat) => [
    ...journalCandidates(seats, seat, usual),
    ...bushCandidates(seats, seat, usual),
  ]);
  const standOff: Reading = { kind: 'standOff', value: 0, sigma: usual.sigma('standOff') };
  // Where the indicator can stand, only a shake that was read tells; it would be read again on the parts as they are
  // sought.
  const shakes = usual
    .of('shake')
    .slice(0, 1)
    .map(({ since: _, ...shake }): Reading => shake);
  return [...onSurfaces, standOff, ...shakes].flatMap((reading) => {
    const { value, fault } = predict(reading, seats);
    return value === null || fault || Math.abs(value) > LONGEST ? [] : [{ ...reading, value }];
  });
}

interface Notebook {
  tools: Tooling;
  /** The middle one of the stated uncertainties of a kind. */
  sigma: (kind: Kind) => number;
  of: <K extends Kind>(kind: K) => ReadingOf<K>[];
}

/** What the readings so far were taken with. */
function notebookOf(readings: readonly Reading[], tools: Tooling): Notebook {
  const of = <K extends Kind>(kind: K) => readings.filter((r): r is ReadingOf<K> => r.kind === kind);
  const sigma = (kind: Kind) => {
    const stated = of(kind)
      .map((r) => r.sigma)
      .sort((a, b) => a - b);
    return stated[stated.length >> 1] ?? usualSigma(kind);
  };
  return { tools, sigma, of };
}

function journalCandidates(seats: readonly SeatInput[], seat: number, usual: Notebook): Reading[] {
  const on = { seat, part: 'journal' as const };
  const { from, to, halfAngle } = seats[seat]!.journal;
  const used = usual.of('overRolls').map((r) => r.roll);
  const rolls = used.length > 0 ? [...new Set(used)] : usual.tools.rolls;
  // The centre stands where the roll touches a tenth from either end.
  const pairs = rolls.flatMap((roll) => {
    const stations = [CLEAR, 1 - CLEAR].map((share) =>
      rounded(from + share * (to - from) - (roll / 2) * Math.sin(halfAngle), usual.tools.place),
    );
    return bestPair(triedRolls(seats, seat, [roll], stations)) ?? [];
  });
  const overRolls = pairs.slice(0, 2).map(
    (t): Reading => ({
      kind: 'overRolls',
      ...on,
      roll: t.diameter,
      station: t.centre!,
      value: 0,
      sigma: usual.sigma('overRolls'),
    }),
  );
  return [...diameters(seats, on, usual), ...overRolls, ...rises(seats, on, usual)];
}

function bushCandidates(seats: readonly SeatInput[], seat: number, usual: Notebook): Reading[] {
  const on = { seat, part: 'bush' as const };
  const face = usual.of('ballDepth')[0]?.face ?? Math.max(...seats.map((s) => s.bush.to));
  const balls = bestPair(triedBalls(seats, seat, usual.tools.balls)) ?? [];
  const depths = balls.map(
    (t): Reading => ({ kind: 'ballDepth', ...on, ball: t.diameter, face, value: 0, sigma: usual.sigma('ballDepth') }),
  );
  return [...diameters(seats, on, usual), ...depths, ...rises(seats, on, usual)];
}

function diameters(seats: readonly SeatInput[], on: On, usual: Notebook): Reading[] {
  const { from, to } = seats[on.seat]![on.part];
  return [CLEAR, 1 - CLEAR].map((share) => ({
    kind: 'diameter',
    ...on,
    station: rounded(from + share * (to - from), usual.tools.place),
    value: 0,
    sigma: usual.sigma('diameter'),
  }));
}

function rises(seats: readonly SeatInput[], on: On, usual: Notebook): Reading[] {
  const { from, to, halfAngle } = seats[on.seat]![on.part];
  const bar = usual.of('sineRise')[0]?.bar ?? usual.tools.bar;
  // Blocks go with the bar: by micrometres, or by tenths under a bar of whole half inches.
  const blocks = isInchBar(bar) ? INCH_TOOLS : METRIC_TOOLS;
  const stack = rounded(stackOfAngle(halfAngle, bar), blocks.stack);
  return [
    {
      kind: 'sineRise',
      ...on,
      bar,
      stack,
      travel: rounded((1 - 2 * CLEAR) * (to - from), usual.tools.place),
      value: 0,
      sigma: usual.sigma('sineRise'),
    },
  ];
}
