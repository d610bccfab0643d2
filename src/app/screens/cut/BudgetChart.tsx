/** What the errors of the set-ups do to the films, largest first, against the tolerance. */
import { max } from 'd3-array';
import type { Design } from '../../../design/definition.ts';
import { fineText, fineUnit, type System } from '../../../design/units.ts';
import type { CutReport } from '../../../report/cut/definition.ts';

type Contribution = CutReport['budget']['contributions'][number];

const CAUSE_NAMES: Record<Contribution['cause'], string> = {
  toolHeight: 'Tool off the centre (hollow flank)',
  angle: 'Angle as set',
  dial: 'Half a division of the cross feed',
  stop: 'Lean of the indicator at the stop',
  sine: 'Lean of the indicator as the angle is set',
  growth: 'Warmth of the work as it is gauged',
};

/** Nobody tells less; of the unit of small lengths. */
const NOTHING = 0.01;

export function BudgetChart({ design, cut, system }: { design: Design; cut: CutReport; system: System }) {
  const { contributions, seats } = cut.budget;
  const nothing = NOTHING * fineUnit(system).size;
  const shown = contributions.filter(({ film }) => film >= nothing);
  if (contributions.length === 0) return null;
  const toleranceOf = (name: string) => design.seats.find((seat) => seat.name === name)?.film?.tolerance ?? 0;
  const most = max([...shown.map(({ film }) => film), ...shown.map(({ seat }) => toleranceOf(seat)), nothing])!;
  return (
    <section aria-label="Error budget">
      <table className="budget">
        <thead>
          <tr>
            <th scope="col">Cause</th>
            <th scope="col">Film</th>
          </tr>
        </thead>
        <tbody>
          {shown.map(({ seat, part, cause, film }) => (
            <tr key={`${seat} ${part} ${cause}`}>
              <th scope="row">
                {CAUSE_NAMES[cause]}{' '}
                <small>
                  {seat} {part}
                </small>
              </th>
              <td>
                <span className="bar-track">
                  <span className="bar-film" style={{ width: `${(100 * film) / most}%` }} />
                  {toleranceOf(seat) > 0 && (
                    <span className="bar-tolerance" style={{ left: `${(100 * toleranceOf(seat)) / most}%` }} />
                  )}
                </span>
                <span>{fineText(film, system)}</span>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <ul className="plain">
        {seats.map(({ seat, sum, likely }) => (
          <li key={seat}>
            {seat}: likely {fineText(likely, system)} together, {fineText(sum, system)} all at their worst
            {toleranceOf(seat) > 0 && `; the tolerance is ${fineText(toleranceOf(seat), system)}, the upright line`}.
          </li>
        ))}
        {contributions.length > shown.length && (
          <li className="fine">
            Less than {fineText(nothing, system)}: {contributions.length - shown.length} more.
          </li>
        )}
      </ul>
    </section>
  );
}
