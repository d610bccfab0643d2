/** What to hold to, in a machinist's words. */
import { toldText } from '../../design/quantity.ts';
import { COVER, fineText, type System } from '../../design/units.ts';
import { listed } from '../listed.ts';
import type { HoldReport } from './definition.ts';
import { timesText } from './times.ts';

type Input = HoldReport['inputs'][number];

/** Of what it is: within this of 1 a size stays as it is. */
const SAME = 0.03;

const nameOf = ({ seat, part, by, face }: Input) =>
  by === 'cutting' ? `${face ?? `the ${seat} ${part}`} as cut` : `the ${seat} ${part}`;

export function holdSentence(hold: HoldReport | null, wanted: number): string {
  if (hold === null)
    return `No spread is small enough for it to work ${timesText(wanted)}: in the middle of all doubt the pair does not, or a measured line is itself in doubt.`;
  const tighter = hold.inputs.filter(({ multiplier }) => multiplier < 1 - SAME);
  if (tighter.length === 0) return `To be right ${timesText(wanted)} nothing need be held closer than now.`;
  const each = [...tighter]
    .sort((a, b) => a.multiplier - b.multiplier)
    .map((input) => `${nameOf(input)} ${times(input)}`);
  return `To be right ${timesText(wanted)} hold ${listed(each)}.`;
}

/** How many times as close: 1.8 times as close. */
const times = ({ multiplier }: Input) =>
  `${1 / multiplier >= 10 ? 'more than ten' : (1 / multiplier).toFixed(1)} times as close`;

const NUMBER = {
  halfAngle: 'half angle',
  diameter: 'diameter',
  station: 'station',
  from: 'rear end',
  to: 'nose end',
  stock: '',
  face: '',
};

/** Sizes to hold, each within ± 19 times in 20; one that is even within its ends, within those. */
export function holdSizes(input: Input, system: System): { name: string; to: string; now: string } {
  const text = (size: 'now' | 'hold') =>
    listed(
      input.numbers.map(({ of, shape, ...sigma }) => {
        const within = sigma[size] * (shape === 'rectangular' ? Math.sqrt(3) : COVER);
        const told = of === 'halfAngle' ? toldText('phase', within, system) : fineText(within, system);
        return `${NUMBER[of]} ± ${told}`.trim();
      }),
    );
  return { name: nameOf(input).replace(/^the /, ''), to: text('hold'), now: text('now') };
}
