/** The readings of a notebook that still tell something: those of a line that was cut to a new one since do not. */
import type { Design } from '../../design/definition.ts';
import type { On } from '../../engine/belief/unknowns.ts';
import type { SeatInput } from '../../engine/contact/fit.ts';
import type { Reading } from '../../engine/gauging/reading.ts';
import { surfacesOf } from '../../engine/gauging/readings/index.ts';
import { historyOf, overtakenOn } from './metalBetween.ts';
import { toReadingThen } from './toReading.ts';

interface UsedReadings {
  readings: Reading[];
  /** their places in the notebook */
  places: number[];
  /** of every reading of the notebook: the surfaces whose line it told of that is no more */
  overtaken: On[][];
}

export function usedReadings(design: Design, seats: readonly SeatInput[]): UsedReadings {
  const history = historyOf(design);
  const all = (design.readings ?? []).map((reading) => toReadingThen(design, reading));
  const overtaken = all.map((reading, i) => overtakenOn(history, design.readings![i]!, surfacesOf(reading, seats)));
  const places = all.flatMap((_, i) => (overtaken[i]!.length > 0 ? [] : [i]));
  return { readings: places.map((i) => all[i]!), places, overtaken };
}
