/** What each part of Cut comes to, in the few words of its closed line. */
import type { Design } from '../../../design/definition.ts';
import { fineText, type System } from '../../../design/units.ts';
import type { CutReport } from '../../../report/cut/definition.ts';
import { NOTHING } from '../../../report/cut/listed.ts';
import { WAYS } from '../../../report/cut/words.ts';
import type { Running } from './RunsAsPlanned.tsx';

const things = (count: number, one: string, more = `${one}s`) => `${count} ${count === 1 ? one : more}`;

export function stepsTold({ steps, faces }: CutReport, system: System): string {
  const off = [
    ...steps.map(({ seat, part, normal }) => `${fineText(normal, system)} off the ${seat} ${part}`),
    ...faces.map(({ name, off }) => `${fineText(Math.abs(off), system)} ${off > 0 ? 'off' : 'on'} ${name}`),
  ];
  return off.join(', ');
}

export function tradeTold({ trade }: CutReport, system: System): string {
  const [first, last] = [trade[0]!, trade[trade.length - 1]!];
  return `${fineText(first.total, system)} in all, or ${fineText(last.total, system)} with the tolerances used`;
}

export function mayCutTold({ cut }: Design): string {
  const [surfaces, faces] = [cut?.allow.length ?? 0, cut?.faces?.length ?? 0];
  return `${things(surfaces, 'surface')}${faces > 0 ? `, ${things(faces, 'face or spacer', 'faces or spacers')}` : ''}; limits, preferences, machine`;
}

export function anglesTold({ settings }: CutReport): string {
  return settings
    .map(
      ({ seat, part, recommended }) =>
        `${seat} ${part}: ${recommended === null ? 'no way is fine enough' : WAYS[recommended].by}`,
    )
    .join('; ');
}

export function budgetTold(design: Design, { budget }: CutReport, system: System): string {
  return budget.seats
    .map(({ seat, likely }) => {
      const tolerance = design.seats.find(({ name }) => name === seat)?.film?.tolerance;
      return `${seat} likely ${fineText(likely, system)}${tolerance ? ` of ${fineText(tolerance, system)}` : ''}`;
    })
    .join(', ');
}

export function orderTold({ work }: CutReport, done: readonly string[] = []): string {
  return `${work.filter(({ id }) => done.includes(id)).length} of ${work.length} done`;
}

export function trialsTold({ cut }: Design): string {
  const count = cut?.trials?.length ?? 0;
  return count === 0 ? 'none written down yet' : `${things(count, 'trial')} written down`;
}

export function lapTold({ lap }: CutReport, system: System): string {
  if (!lap) return 'not simulated';
  const travel = lap.states[0]!.position - lap.states[lap.stop.at]!.position;
  return travel < NOTHING ? 'nothing is lapped' : `stop after ${fineText(travel, system)} of travel`;
}

export function runsTold({ film, verdict }: Running, system: System): string {
  if (!film) return 'being worked out';
  if (verdict) return verdict.headline;
  const least = film.steady?.leastFilm ?? film.leastFilm;
  return least === null ? '' : `thinnest film ${fineText(least, system)}${film.steady ? ' warm' : ''}`;
}
