/** What film to aim for, in a machinist's words, with the figures a button takes over. */

import type { Design } from '../../design/definition.ts';
import type { Millimetres } from '../../design/dimension.ts';
import { fineText, fineUnit, type System } from '../../design/units.ts';
import { SMALL_MOTOR } from '../../engine/heat/guidance.ts';
import type { Condition } from '../../engine/run/limits.ts';
import { listed } from '../listed.ts';
import { watts } from './figures.ts';
import type { AimReport, CutPoint, Stretch } from './limits.ts';
import { neededFilm } from './neededFilm.ts';

export interface AimVerdict {
  headline: string;
  sentences: string[];
  /** mm, rounded to what one would set; null where no film works */
  wanted: { target: number; tolerance: number } | null;
}

/** What helps, by what is in the way. @source practice */
const REMEDIES: Record<Exclude<Condition, 'works'>, string> = {
  thin: 'The load is too much for this oil at this speed: a thicker oil, more speed or a longer seat carries more, and smoother surfaces need less.',
  seizes:
    'No film carries the load as it warms: a thicker oil, a pocket or more area in the steep cone, or a stop that takes the thrust.',
  hot: 'It runs hotter than its oil lasts: a thinner oil, less speed, or more to cool it.',
  loose: 'It whirls: a thicker oil or more load calms it.',
  drags: `Cold, its drag is more than a small lathe’s motor gives (${watts(SMALL_MOTOR)}): a thinner oil, less speed or a thicker film.`,
  notConverged: 'It finds no steady state: as a rule it warms until it seizes. A thinner oil or less speed warms less.',
};

export function aimVerdict(
  design: Design,
  points: readonly CutPoint[],
  { stretch, aim, seats }: AimReport,
  system: System,
): AimVerdict {
  const of = `the ${listed(seats)} ${seats.length === 1 ? 'seat' : 'seats'}`;
  if (stretch === null || aim === null)
    return {
      headline: `No film of ${of} works, whatever it is cut to.`,
      sentences: inTheWay(points).map((condition) => REMEDIES[condition]),
      wanted: null,
    };
  const wanted = {
    target: rounded(aim.film, system, Math.round),
    tolerance: rounded(aim.tolerance, system, Math.floor),
  };
  const told = `${fineText(wanted.target, system)} ± ${fineText(wanted.tolerance, system)}`;
  return {
    headline: `Aim for a film of ${told} in ${of}, set cold.`,
    sentences: [
      worksText(stretch, system),
      ...belowText(design, points, stretch, system),
      ...againstDesign(design, seats, stretch, system),
    ],
    wanted,
  };
}

/** Conditions that occur, the most frequent first: one or two say what is to be done. */
function inTheWay(points: readonly CutPoint[]): Exclude<Condition, 'works'>[] {
  const counts = new Map<Exclude<Condition, 'works'>, number>();
  for (const { condition } of points)
    if (condition !== 'works') counts.set(condition, (counts.get(condition) ?? 0) + 1);
  return [...counts]
    .sort(([, a], [, b]) => b - a)
    .slice(0, 2)
    .map(([condition]) => condition);
}

const FINEST = { metric: 0.05, inch: 0.02 } as const;

/** In steps that can be read: twentieths of a µm, fiftieths of a tenth. */
function rounded(mm: Millimetres, system: System, how: (x: number) => number): number {
  const step = FINEST[system] * fineUnit(system).size;
  return Number((how(mm / step) * step).toPrecision(12));
}

function worksText({ from, to, openBelow, openAbove }: Stretch, system: System): string {
  const [low, high] = [fineText(from, system), fineText(to, system)];
  const looked = 'as far as was looked';
  const runs = `it runs on a full film, cold and warm, calm, not too hot, with no more drag than a small motor turns`;
  if (openBelow && openAbove) return `Every film tried works, cold and warm, from ${low} to ${high}.`;
  if (openAbove) return `From ${low} up ${runs}, ${looked}.`;
  if (openBelow) return `Up to ${high} ${runs}; thinner was not tried.`;
  return `Between ${low} and ${high} ${runs}.`;
}

/** What is wrong where less is cut to: too much drag, or a film too thin, as it starts or as it warms. */
function belowText({ run }: Design, points: readonly CutPoint[], { from }: Stretch, system: System): string[] {
  const below = points.filter(({ at }) => at < from).at(-1);
  if (below?.condition === 'drags' && below.coldPower !== null)
    return [
      `Cut to less, it takes more than the ${watts(SMALL_MOTOR)} of a small lathe’s motor to turn it cold: ${watts(below.coldPower)} at ${fineText(below.at, system)}.`,
    ];
  if (!run || below?.condition !== 'thin' || below.leastFilm === null) return [];
  const needed = neededFilm(run);
  const [cold, warm] = [(below.coldFilm ?? 0) < needed, below.leastFilm < needed];
  const which = cold && warm ? 'cold and warm' : cold ? 'as it starts, cold,' : 'once warm';
  return [`Cut to less, the film is ${which} thinner than the ${fineText(needed, system)} that part the surfaces.`];
}

/** Where the design wants another film than works: which to believe, and why. */
function againstDesign(design: Design, seats: readonly string[], { from, to }: Stretch, system: System): string[] {
  const outside = design.seats.filter(
    ({ name, film }) => seats.includes(name) && film && (film.target < from || film.target > to),
  );
  if (outside.length === 0) return [];
  const told = outside.map(({ name, film }) => `${fineText(film!.target, system)} in the ${name} seat`);
  return [
    `The design wants ${listed(told)}. Believe this: Fit compares with the film that is written, here load, oil, speed and heat decide.`,
  ];
}
