/** What the report has to say of every kind of reading: another kind is one more entry here. */
import type { Design } from '../../design/definition.ts';
import type { Millimetres } from '../../design/dimension.ts';
import { madeIn, toolText } from '../../design/tools.ts';
import { fineText, placeText, type System } from '../../design/units.ts';
import { isSize } from '../../engine/gauging/reading.ts';
import { tellsOf } from '../../engine/gauging/readings/index.ts';
import { radians } from '../convert.ts';

export type Reading = NonNullable<Design['readings']>[number];
type Kind = Reading['kind'];
type Of<K extends Kind> = Extract<Reading, { kind: K }>;

interface KindSaid<K extends Kind> {
  name: string;
  /** its set-up as it is proposed; `on`: the surface */
  proposed(reading: Of<K>, on: string, system: System): string;
  /** how far it may lie from what the drawing would read before it is asked after */
  plausible(reading: Of<K>, drawn: Millimetres, design: Design): Millimetres;
}

/**
 * What no part is off by: 1 mm on a diameter or 2 % of it, whichever is less; a line that leans 2 in 100 (1.1°) or
 * stands 0.1 mm proud; a position or a shake of 1 mm.
 * @source practice
 */
const OFF = { most: 1, share: 0.02, proud: 0.1 };
const ofDiameter = (_: unknown, drawn: Millimetres) => Math.min(OFF.most, OFF.share * Math.abs(drawn));

export const KINDS: { readonly [K in Kind]: KindSaid<K> } = {
  diameter: {
    name: 'diameter',
    proposed: ({ station }, on, system) => `A diameter of ${on} at station ${placeText(station, system)}`,
    plausible: ofDiameter,
  },
  overRolls: {
    name: 'rolls',
    proposed: ({ roll, station }, on, system) =>
      `Rolls of ${toolText(roll, system)} over ${on}, centres at station ${placeText(station, system)}`,
    plausible: ofDiameter,
  },
  ballDepth: {
    name: 'ball',
    proposed: ({ ball }, on, system) => `A ball of ${toolText(ball, system)} resting in ${on}`,
    plausible({ seat, ball }, _, { seats }) {
      // A ball sinks 1/(2·tan a) for every unit that the bore is larger.
      const { halfAngle } = seats.find(({ name }) => name === seat)!.bush;
      return Math.min(OFF.most, OFF.share * ball) / (2 * Math.tan(Math.abs(radians(halfAngle))));
    },
  },
  sineRise: {
    name: 'sine bar',
    proposed: ({ stack, bar, travel }, on, system) =>
      `A sine bar under ${on}, stack ${placeText(stack, madeIn(bar, system))} on a bar of ${toolText(bar, system)}, travel ${placeText(travel, system)}`,
    plausible: ({ travel }) => OFF.share * travel,
  },
  straightness: {
    name: 'straightness',
    proposed: ({ station }, on, system) => `The straightness of ${on} at station ${placeText(station, system)}`,
    plausible: () => OFF.proud,
  },
  standOff: {
    name: 'stand-off',
    proposed: () => 'The position of first touch on a trial assembly',
    plausible: () => OFF.most,
  },
  shake: {
    name: 'shake',
    proposed: ({ indicator, position }, _, system) =>
      `The shake at station ${placeText(indicator, system)} with the journal at ${fineText(position, system)}`,
    plausible: () => OFF.most,
  },
};

export const kindOf = (reading: Reading) => KINDS[reading.kind] as KindSaid<Kind>;

/** Whether the value is a size of the part, not a small deviation or travel. */
export const tellsSize = ({ kind }: Reading): boolean => isSize(tellsOf(kind));
