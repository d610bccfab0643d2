/** What the readings tell, in figures: every surface and what follows from it, with how sure it is. */
import type { Design } from '../../../design/definition.ts';
import {
  type AngleWay,
  angleFigure,
  angleOffSaid,
  angleSaid,
  COVER,
  fineText,
  lengthText,
  type System,
} from '../../../design/units.ts';
import type { ConsequenceReport, MeasureReport } from '../../../report/measure/definition.ts';
import { ANGLE_TITLES, useAngles } from '../../state/angles.ts';

interface Props {
  design: Design;
  measure: MeasureReport;
  system: System;
}

const OPEN = 'open';
/** Chance of a scatter as great as this, or as small, that is worth a word. Common practice, no source. */
const SELDOM = 0.01;

export function Told({ design, measure, system }: Props) {
  const way = useAngles();
  const { relation, relationBetween, firstPosition, films } = measure.consequences;
  const consequences: [string, ConsequenceReport | null][] = [
    [relationName(relationBetween), relation],
    ['Position of first touch', firstPosition],
    ...design.seats.map(({ name }): [string, ConsequenceReport | null] => [`Least film, ${name}`, films[name] ?? null]),
  ];
  return (
    <>
      <div className="told">
        {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a box that scrolls sideways must be reachable by the keyboard */}
        <section className="table" aria-label="The surfaces as measured" tabIndex={0}>
          <table>
            <thead>
              <tr>
                <th scope="col">Surface</th>
                <th scope="col">{ANGLE_TITLES[way]}</th>
                <th scope="col">Diameter</th>
              </tr>
            </thead>
            <tbody>
              {measure.surfaces.map(({ seat, part, halfAngle, diameter, sigma, straight, tapered }) => (
                <tr key={`${seat} ${part}`}>
                  <th scope="row">
                    {seat} {part}
                  </th>
                  <td>
                    {straight ? 'straight' : angleFigure(halfAngle, way)}
                    {straight && tapered && <br />}{' '}
                    <small>{angleDoubt({ halfAngle, sigma, straight, tapered }, way)}</small>
                  </td>
                  <td>
                    {joined(lengthText(Number(diameter.toFixed(5)), system))}{' '}
                    <small>{sigma.diameter === null ? OPEN : `± ${fineText(COVER * sigma.diameter, system)}`}</small>
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </section>
        {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a box that scrolls sideways must be reachable by the keyboard */}
        <section className="table follows" aria-label="What follows from them" tabIndex={0}>
          <table>
            <thead>
              <tr>
                <th scope="col">What follows</th>
                <th scope="col">Value</th>
                <th scope="col">Between</th>
              </tr>
            </thead>
            <tbody>
              {consequences.map(([name, found]) => (
                <tr key={name}>
                  <th scope="row">
                    {name}
                    {found && found.asDrawn.length > 0 && (
                      <small className="drawn">
                        as drawn, not measured: {found.asDrawn.map(({ seat, part }) => `${seat} ${part}`).join(', ')}
                      </small>
                    )}
                  </th>
                  <td>{found === null ? '—' : joined(fineText(found.value, system))}</td>
                  <td>{found === null ? '—' : betweenText(found, system)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      </div>
      <Correlations measure={measure} />
      <p className="fine">
        Every ± and every range here holds the true value 19 times in 20: ± is {COVER} standard uncertainties; a range
        comes from many shapes drawn with these uncertainties, may reach further to one side, and “give or take” is its
        longer side. {agreementText(measure)}
      </p>
    </>
  );
}

/** How sure a half angle is; of a surface held straight what a free fit says. */
function angleDoubt(
  {
    halfAngle,
    sigma,
    straight,
    tapered,
  }: Pick<MeasureReport['surfaces'][number], 'halfAngle' | 'sigma' | 'straight' | 'tapered'>,
  way: AngleWay,
): string {
  const within = (of: number, doubt: number) => `± ${angleOffSaid(of, COVER * doubt, way)}`;
  if (straight)
    return tapered
      ? `read freely: ${angleSaid(tapered.halfAngle, way)} ${within(tapered.halfAngle, tapered.sigma)}`
      : '';
  return sigma.halfAngle === null ? OPEN : within(halfAngle, sigma.halfAngle);
}

/** How each number leans on the others: what one reading tells of two. */
function Correlations({ measure }: { measure: MeasureReport }) {
  const { numbers, matrix } = measure.correlations;
  const names = numbers.map(
    ({ seat, part, of }) => `${seat} ${part}, ${of === 'halfAngle' ? 'half angle' : 'diameter'}`,
  );
  return (
    <details>
      <summary>How the numbers hang together: correlations</summary>
      <p className="fine">
        1 or −1: the one is known no better than the other, and both are off together; 0: each for itself. A half angle
        and a diameter told by the same readings lean on each other; a stand-off or a shake ties the surfaces of a pair.
        {chiSquareText(measure)}
      </p>
      <p className="fine scrolls">The table goes on to the right: push it sideways.</p>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a box that scrolls sideways must be reachable by the keyboard */}
      <section className="table" aria-label="Correlations" tabIndex={0}>
        <table className="correlations">
          <thead>
            <tr>
              <th scope="col">Number</th>
              {names.map((name, k) => (
                <th key={name} scope="col" aria-label={name}>
                  {k + 1}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {matrix.map((row, a) => (
              <tr key={names[a]}>
                <th scope="row">
                  {a + 1}. {names[a]}
                </th>
                {row.map((value, b) => (
                  <td key={names[b]}>
                    {value === null
                      ? '—'
                      : value
                          .toFixed(2)
                          .replace(/^-0\.00$/, '0.00')
                          .replace('-', '−')}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </details>
  );
}

/** The sign of the relation is told with its name. */
function relationName(between: MeasureReport['consequences']['relationBetween']): string {
  const [one, other] = between ?? [];
  return between
    ? `Where the ${one} seat has its film, seen from where the ${other} has (− is rearward)`
    : 'The two cones wrong to each other by';
}

/** A figure that keeps its unit beside it. */
const joined = (text: string) => text.replaceAll(' ', '\u00a0');

function betweenText({ value, sigma, interval }: ConsequenceReport, system: System): string {
  if (sigma === null) return OPEN;
  const [low, high] = interval ?? [value - COVER * sigma, value + COVER * sigma];
  const [from, to] = [fineText(low, system), fineText(high, system)];
  const unit = to.replace(/^\S+/, '');
  // A line may end before the farther end, and nowhere else.
  return `${from.endsWith(unit) ? from.slice(0, -unit.length) : joined(from)} to\u00a0${joined(to)}`;
}

/** For who would reckon it after. */
function chiSquareText({ freedom, chiSquare }: MeasureReport): string {
  return freedom === 0
    ? ''
    : ` Chi-square of all readings ${chiSquare.toFixed(1)} with ${freedom} ${freedom === 1 ? 'reading' : 'readings'} to spare.`;
}

export function agreementText({ freedom, probability }: MeasureReport): string {
  if (freedom === 0) return 'No reading checks another, so nothing tells whether they agree.';
  if (probability < SELDOM) return 'The readings scatter more than their uncertainties promise.';
  if (probability > 1 - SELDOM)
    return 'The readings agree better than their uncertainties promise; these are perhaps stated too large.';
  return 'The readings agree as well as their uncertainties promise.';
}
