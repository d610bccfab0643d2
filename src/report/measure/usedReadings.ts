/**
 * The readings of a notebook that tell something of the parts as they are now. Those of a line that was cut to a new
 * one since do not; nor does a stand-off, as long as it may be that of another seat than it would be taken for.
 */
import type { Design } from '../../design/definition.ts';
import { metres } from '../../design/dimension.ts';
import { defaultAt } from '../../design/place.ts';
import type { On } from '../../engine/belief/unknowns.ts';
import type { SeatInput } from '../../engine/contact/fit.ts';
import { believe, type WholeBelief } from '../../engine/gauging/believe.ts';
import type { Reading, ReadingOf } from '../../engine/gauging/reading.ts';
import { surfacesOf } from '../../engine/gauging/readings/index.ts';
import { isOpen, type Toucher, touchersOf } from '../../engine/gauging/whichTouched.ts';
import { historyOf, overtakenOn } from './metalBetween.ts';
import { toPriors, toReadingThen } from './toReading.ts';

/** A stand-off that may be that of several seats, and what was never read of these. */
export interface LeftAside {
  /** place in the notebook */
  index: number;
  touchers: Toucher[];
  unread: On[];
}

interface UsedReadings {
  readings: Reading[];
  /** their places in the notebook */
  places: number[];
  /** of every reading of the notebook: the surfaces whose line it told of that is no more */
  overtaken: On[][];
  aside: LeftAside[];
}

const known = new WeakMap<Design, UsedReadings>();

/** Worked out once for a design: the belief and Measure both ask for it. */
export function usedReadings(design: Design, seats: readonly SeatInput[]): UsedReadings {
  const found = known.get(design) ?? used(design, seats);
  known.set(design, found);
  return found;
}

function used(design: Design, seats: readonly SeatInput[]): UsedReadings {
  const history = historyOf(design);
  const all = (design.readings ?? []).map((reading) => toReadingThen(design, reading));
  const overtaken = all.map((reading, i) => overtakenOn(history, design.readings![i]!, surfacesOf(reading, seats)));
  const telling = all.flatMap((_, i) => (overtaken[i]!.length > 0 ? [] : [i]));
  const aside = leftAside(design, seats, all, telling);
  const places = telling.filter((i) => !aside.some(({ index }) => index === i));
  return { readings: places.map((i) => all[i]!), places, overtaken, aside };
}

function leftAside(
  design: Design,
  seats: readonly SeatInput[],
  all: readonly Reading[],
  telling: readonly number[],
): LeftAside[] {
  const isStandOff = (reading: Reading): reading is ReadingOf<'standOff'> => reading.kind === 'standOff';
  if (!telling.some((i) => isStandOff(all[i]!))) return [];
  const others = telling.map((i) => all[i]!).filter((reading) => !isStandOff(reading));
  const doubt = metres(design.cut?.doubt ?? defaultAt('cut.doubt'));
  const belief = believe(seats, others, toPriors(design), doubt, metres(design.position ?? 0));
  return telling.flatMap((index) => {
    const reading = all[index]!;
    if (!isStandOff(reading)) return [];
    const touchers = touchersOf(belief, reading);
    return isOpen(belief, touchers) ? [{ index, touchers, unread: unreadOf(belief, touchers) }] : [];
  });
}

const PARTS = ['journal', 'bush'] as const;
const unreadOf = ({ unread }: WholeBelief, touchers: readonly Toucher[]): On[] =>
  touchers.flatMap(({ seat }) =>
    PARTS.filter((part) => unread.some((prior) => prior.seat === seat && prior.part === part)).map((part) => ({
      seat,
      part,
    })),
  );
