/** The two plans there are to choose from, and the trade between them: metal against the share of the tolerances used. */
import type { Design } from '../../design/definition.ts';
import { without, withValue } from '../../design/place.ts';
import { fineText, fineUnit, type System } from '../../design/units.ts';
import type { CutReport } from '../../report/cut/definition.ts';
import { listed } from '../../report/cut/listed.ts';
import { offFaceText } from '../../report/cut/trialText.ts';
import { LineChart } from '../run/LineChart.tsx';
import type { Work } from '../store.ts';

interface Props {
  work: Work;
  cut: CutReport;
  system: System;
}

type Aim = CutReport['aims'][number];

const NAMES: Record<Aim['aim'], string> = { target: 'Films just as wanted', tolerance: 'Least metal, every film within four fifths of its tolerance' };

const withAim = (design: Design, aim: Aim['aim']): Design => (aim === 'target' ? without(design, 'cut.prefer.aim') : withValue(design, 'cut.prefer.aim', aim));

export function Aims({ work, cut, system }: Props) {
  if (cut.aims.length < 2) return null;
  return (
    <section className="aims" aria-label="What to aim at">
      <fieldset>
        <legend>What to aim at</legend>
        {cut.aims.map((plan) => (
          <label key={plan.aim}>
            <input type="radio" name="aim" checked={plan.chosen} onChange={() => work.change((d) => withAim(d, plan.aim))} />
            <span>
              <strong>{NAMES[plan.aim]}</strong>
              <small>
                {stockText(plan, system)}; then {filmsText(plan, system)}
                {plan.feasible || plan.inTolerance ? '' : ', which is not what is wanted'}.
              </small>
            </span>
          </label>
        ))}
      </fieldset>
      <Trade cut={cut} system={system} />
    </section>
  );
}

function stockText({ stock, faces }: Aim, system: System): string {
  const off = [...stock.map(({ seat, part, normal }) => `${fineText(normal, system)} off the ${seat} ${part}`), ...faces.map((face) => offFaceText(face, system))];
  return off.length === 0 ? 'nothing off' : listed(off);
}

const filmsText = ({ films }: Aim, system: System) => listed(Object.entries(films).map(([name, film]) => `${name} ${film === null ? 'apart' : fineText(film, system)}`));

function Trade({ cut: { trade, aims }, system }: Pick<Props, 'cut' | 'system'>) {
  const unit = fineUnit(system);
  const [first, last] = [trade[0], trade[trade.length - 1]];
  if (!first || !last || first.total - last.total < unit.size / 10) return null;
  const now = aims.find(({ chosen }) => chosen)?.aim === 'tolerance' ? last.share : first.share;
  return (
    <LineChart
      title="All the metal that comes off, against how much of the tolerances may be used"
      across="share of every film’s tolerance used, %"
      up={`metal off in all, ${unit.name}`}
      domain={[0, 100 * last.share]}
      now={100 * now}
      height={190}
      lines={[{ name: 'metal off in all', style: 0, points: trade.map(({ share, total }) => [100 * share, total / unit.size] as const) }]}
    />
  );
}
