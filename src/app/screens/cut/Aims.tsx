/**
 * The two plans there are to choose from, how each would run, which to choose, and the trade between them: metal
 * against the share of the tolerances used.
 */
import { useMemo } from 'react';
import type { Design } from '../../../design/definition.ts';
import { without, withValue } from '../../../design/place.ts';
import { fineText, fineUnit, type System } from '../../../design/units.ts';
import { aimAdvice, type Runs } from '../../../report/cut/aimAdvice.ts';
import type { CutReport } from '../../../report/cut/definition.ts';
import { listed, NOTHING } from '../../../report/cut/listed.ts';
import { runsAsPlanned } from '../../../report/cut/runsAsPlanned.ts';
import { offFaceText } from '../../../report/cut/trialText.ts';
import { designWithCut } from '../../../report/cut/withCut.ts';
import type { FilmReport } from '../../../report/film/definition.ts';
import { job } from '../../../worker/pool.ts';
import { LineChart } from '../../charts/LineChart.tsx';
import type { Work } from '../../state/store.ts';
import { useNewest } from '../../state/useNewest.ts';
import type { Running } from './RunsAsPlanned.tsx';

interface Props {
  work: Work;
  /** the design the plan was made for */
  design: Design;
  cut: CutReport;
  /** of the plan that is chosen */
  running: Running;
  system: System;
}

type Aim = CutReport['aims'][number];

const NAMES: Record<Aim['aim'], string> = {
  target: 'Films just as wanted',
  tolerance: 'Least metal, every film within four fifths of its tolerance',
};

const withAim = (design: Design, aim: Aim['aim']): Design =>
  aim === 'target' ? without(design, 'cut.prefer.aim') : withValue(design, 'cut.prefer.aim', aim);

interface Other {
  made: Design;
  film: FilmReport | null;
}

/** The parts as the plan not chosen would leave them, and how these run. */
async function askOther(design: Design, signal: AbortSignal): Promise<Other | null> {
  const cut = await job('cut', design, { signal });
  if (!cut) return null;
  const made = designWithCut(design, cut);
  return { made, film: (await job('film', made, { signal })) ?? null };
}

/** How either plan runs, as far as it is known; asked for the other one once the chosen one is known. */
function useRuns(
  design: Design,
  { aims, remaining }: CutReport,
  { made, film, verdict }: Running,
  system: System,
): { runs: Runs; films: Partial<Record<Aim['aim'], FilmReport>> } {
  const chosen = aims.find((plan) => plan.chosen)?.aim ?? 'target';
  const other = chosen === 'target' ? 'tolerance' : 'target';
  const wanted = film !== null && !remaining && aims.length > 1;
  const question = useMemo(() => (wanted ? withAim(design, other) : null), [wanted, design, other]);
  const { value, of } = useNewest(askOther, question);
  const found =
    wanted && of === question && value?.film
      ? { film: value.film, verdict: runsAsPlanned(value.made, value.film, true, system) }
      : null;
  return {
    runs: { ...(made && film && { [chosen]: verdict }), ...(found && { [other]: found.verdict }) },
    films: { ...(film && { [chosen]: film }), ...(found && { [other]: found.film }) },
  };
}

export function Aims({ work, design, cut, running, system }: Props) {
  const { runs, films } = useRuns(design, cut, running, system);
  if (cut.aims.length < 2) return null;
  const advice = cut.remaining ? null : aimAdvice(design, cut, runs, system);
  return (
    <section className="aims" aria-label="What to aim at">
      <fieldset>
        <legend>What to aim at</legend>
        {cut.aims.map((plan) => (
          <label key={plan.aim}>
            <input
              type="radio"
              name="aim"
              checked={plan.chosen}
              onChange={() => work.change((d) => withAim(d, plan.aim))}
            />
            <span>
              <strong>{NAMES[plan.aim]}</strong>
              <small>{cut.remaining ? lessText(cut.aims, plan, system) : planText(plan, runs, films, system)}</small>
              {advice?.aim === plan.aim && <small className="advised">Rather this: {advice.why}.</small>}
            </span>
          </label>
        ))}
      </fieldset>
    </section>
  );
}

function stockText({ stock, faces }: Aim, system: System): string {
  const off = [
    ...stock.map(({ seat, part, normal }) => `${fineText(normal, system)} off the ${seat} ${part}`),
    ...faces.map((face) => offFaceText(face, system)),
  ];
  return off.length === 0 ? 'nothing off' : listed(off);
}

/**
 * Once trials tell what is left, stock, films and how they run are of the parts before them: only what the one plan
 * saves against the other still holds.
 */
function lessText(aims: readonly Aim[], { total }: Aim, system: System): string {
  const less = Math.max(...aims.map((plan) => plan.total)) - total;
  return less < NOTHING ? '' : `${fineText(less, system)} less metal in all.`;
}

/** What comes off, the films then, and how these run. */
function planText(plan: Aim, runs: Runs, films: Partial<Record<Aim['aim'], FilmReport>>, system: System): string {
  const short = plan.feasible || plan.inTolerance ? '' : ', which is not what is wanted';
  return `${stockText(plan, system)}; then ${filmsText(plan, system)}${short}.${runText(runs[plan.aim], films[plan.aim], system)}`;
}

/** How it runs in a few words; nothing while that is not known. */
function runText(verdict: Runs[Aim['aim']], film: FilmReport | undefined, system: System): string {
  if (verdict === undefined || !film) return '';
  if (verdict?.tone === 'stop') return ' It must not run so.';
  return film.leastFilm == null
    ? ''
    : ` Running, the thinnest film is ${fineText(film.steady?.leastFilm ?? film.leastFilm, system)}${film.steady ? ' warm' : ''}.`;
}

const filmsText = ({ films }: Aim, system: System) =>
  listed(Object.entries(films).map(([name, film]) => `${name} ${film === null ? 'apart' : fineText(film, system)}`));

/** Whether using the tolerances saves metal that anybody would see. */
export function isTraded(trade: CutReport['trade'], system: System): boolean {
  const [first, last] = [trade[0], trade[trade.length - 1]];
  return first !== undefined && last !== undefined && first.total - last.total >= fineUnit(system).size / 10;
}

/** All the metal against how much of the tolerances is used; nothing where that changes nothing. */
export function Trade({ cut: { trade, aims }, system }: Pick<Props, 'cut' | 'system'>) {
  const unit = fineUnit(system);
  if (!isTraded(trade, system)) return null;
  const [first, last] = [trade[0]!, trade[trade.length - 1]!];
  const now = aims.find(({ chosen }) => chosen)?.aim === 'tolerance' ? last.share : first.share;
  return (
    <LineChart
      title="All the metal that comes off, against how much of the tolerances may be used"
      across="share of every film’s tolerance used, %"
      up={`metal off in all, ${unit.name}`}
      domain={[0, 100 * last.share]}
      now={100 * now}
      height={190}
      lines={[
        {
          name: 'metal off in all',
          style: 0,
          points: trade.map(({ share, total }) => [100 * share, total / unit.size] as const),
        },
      ]}
    />
  );
}
