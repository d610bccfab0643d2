/** What the readings tell, in figures: every surface and what follows from it, with how sure it is. */
import type { Design } from '../../design/definition.ts';
import { angleText, fineText, lengthText, type System } from '../../design/units.ts';
import type { ConsequenceReport, MeasureReport } from '../../report/measure/definition.ts';

interface Props {
  design: Design;
  measure: MeasureReport;
  system: System;
}

const OPEN = 'open';

export function Told({ design, measure, system }: Props) {
  const { relation, firstPosition, films } = measure.consequences;
  const consequences: [string, ConsequenceReport | null][] = [
    ['The two cones wrong to each other by', relation],
    ['Position of first touch', firstPosition],
    ...design.seats.map(({ name }): [string, ConsequenceReport | null] => [`Least film, ${name}`, films[name] ?? null]),
  ];
  return (
    <div className="told">
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a box that scrolls sideways must be reachable by the keyboard */}
      <section className="table" aria-label="The surfaces as measured" tabIndex={0}>
        <table>
          <thead>
            <tr>
              <th scope="col">Surface</th>
              <th scope="col">Half angle</th>
              <th scope="col">Diameter</th>
            </tr>
          </thead>
          <tbody>
            {measure.surfaces.map(({ seat, part, halfAngle, diameter, sigma }) => (
              <tr key={`${seat} ${part}`}>
                <th scope="row">
                  {seat} {part}
                </th>
                <td>
                  {angleText(halfAngle)} <small>{sigma.halfAngle === null ? OPEN : `± ${sigma.halfAngle.toFixed(4)}°`}</small>
                </td>
                <td>
                  {lengthText(Number(diameter.toFixed(5)), system)} <small>{sigma.diameter === null ? OPEN : `± ${fineText(sigma.diameter, system)}`}</small>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a box that scrolls sideways must be reachable by the keyboard */}
      <section className="table" aria-label="What follows from them" tabIndex={0}>
        <table>
          <thead>
            <tr>
              <th scope="col">What follows</th>
              <th scope="col">Value</th>
              <th scope="col">19 times in 20 between</th>
            </tr>
          </thead>
          <tbody>
            {consequences.map(([name, found]) => (
              <tr key={name}>
                <th scope="row">{name}</th>
                <td>
                  {found === null ? '—' : fineText(found.value, system)} <small>{found && (found.sigma === null ? OPEN : `± ${fineText(found.sigma, system)}`)}</small>
                </td>
                <td>{found?.interval ? `${fineText(found.interval[0], system)} and ${fineText(found.interval[1], system)}` : '—'}</td>
              </tr>
            ))}
          </tbody>
        </table>
        <p className="fine">± is one standard uncertainty. {measure.freedom > 0 && `Chi-square ${measure.chiSquare.toFixed(1)} for ${measure.freedom} ${measure.freedom === 1 ? 'check' : 'checks'}.`}</p>
      </section>
    </div>
  );
}
