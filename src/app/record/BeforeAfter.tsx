/** Before and after: every surface as it was first measured, after each cut, and now. */
import type { Design } from '../../design/definition.ts';
import {
  type AngleWay,
  angleFigure,
  angleOffSaid,
  COVER,
  fineText,
  lengthText,
  plusMinusText,
  type System,
} from '../../design/units.ts';
import { caseText } from '../../report/cut/caseWords.ts';
import type { StateOfSurface, States, SurfaceHistory } from '../../report/record/states.ts';
import { ANGLE_TITLES, useAngles } from '../state/angles.ts';

interface Props {
  design: Design;
  states: States;
  system: System;
}

export function BeforeAfter({ design, states, system }: Props) {
  const told = states.surfaces.filter(isTold);
  if (told.length === 0) return <p>No surface is measured or cut yet.</p>;
  return (
    <>
      {told.map((surface) => (
        <Surface
          key={`${surface.seat} ${surface.part}`}
          design={design}
          surface={surface}
          after={states.after}
          system={system}
        />
      ))}
      <p className="fine">
        ± is 19 times in 20; without it a number is as drawn, less what came off. A reading from before a cut counts on,
        moved by what came off and with the doubt of that: it never puts a surface back.
      </p>
    </>
  );
}

/** Whether there is anything to tell of a surface. */
const isTold = ({ states }: SurfaceHistory) =>
  states.some(
    ({ sigma, taken, caseLeft, overtaken, readings }) =>
      sigma.diameter !== null || sigma.halfAngle !== null || taken > 0 || caseLeft !== null || overtaken + readings > 0,
  );

function Surface({
  design,
  surface: { seat, part, states },
  after,
  system,
}: {
  design: Design;
  surface: SurfaceHistory;
  after: readonly number[];
  system: System;
}) {
  const way = useAngles();
  const hasCase = states.some(({ caseLeft }) => caseLeft !== null);
  // A state in which nothing was cut or read of this surface is the one before.
  const told = states.flatMap((state, i) => (i === 0 || state.taken > 0 || state.readings > 0 ? [{ state, i }] : []));
  const [first, last] = [states[0]!, states.at(-1)!];
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a box that scrolls sideways must be reachable by the keyboard
    <section className="table before-after" aria-label={`${seat} ${part}, before and after`} tabIndex={0}>
      <h4>
        {seat} {part}: ⌀ {diameterText(first, system)}
        {told.length > 1 && ` → ${diameterText(last, system)}`}
      </h4>
      <table>
        <thead>
          <tr>
            <th scope="col">State</th>
            <th scope="col">{ANGLE_TITLES[way]}</th>
            <th scope="col">Diameter</th>
            <th scope="col">Came off</th>
            {hasCase && <th scope="col">Case left</th>}
            <th scope="col">Readings</th>
          </tr>
        </thead>
        <tbody>
          {told.map(({ state, i }, k) => (
            <tr key={after[i]}>
              <th scope="row">{stateText(design, after[i]!, k, told.length)}</th>
              <td data-name={ANGLE_TITLES[way]}>{angleOf(state, way)}</td>
              <td data-name="Diameter">
                <strong>{diameterText(state, system)}</strong>
              </td>
              <td data-name="Came off">
                {state.taken === 0 ? '—' : plusMinusText(state.taken, state.takenSigma, system)}
              </td>
              {hasCase && (
                <td data-name="Case left">{state.caseLeft === null ? '—' : caseText(state.caseLeft, system)}</td>
              )}
              <td data-name="Readings">{readingsText(state)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function stateText(design: Design, done: number, place: number, count: number): string {
  const isNow = place === count - 1;
  if (place === 0) return isNow ? 'At first, and now' : 'At first';
  const stage = design.cut?.trials?.[done - 1]?.stage;
  const named = `after trial ${done}${stage === undefined ? '' : `, ${stage}`}`;
  return isNow ? `Now, ${named}` : `${named.charAt(0).toUpperCase()}${named.slice(1)}`;
}

const angleOf = ({ halfAngle, sigma, unknown }: StateOfSurface, way: AngleWay) =>
  unknown
    ? '—'
    : `${angleFigure(halfAngle, way)}${sigma.halfAngle ? ` ± ${angleOffSaid(halfAngle, COVER * sigma.halfAngle, way)}` : ''}`;

const diameterText = ({ diameter, sigma, unknown }: StateOfSurface, system: System) =>
  unknown
    ? '—'
    : `${lengthText(Number(diameter.toFixed(4)), system)}${sigma.diameter === null ? '' : ` ± ${fineText(COVER * sigma.diameter, system)}`}`;

/** What the state is known by. */
function readingsText({ readings, older, overtaken }: StateOfSurface): string {
  const parts = [
    readings > 0 ? `${readings}` : '',
    older > 0 ? `${older} older, moved` : '',
    overtaken > 0 ? `${overtaken} of the old line, not used` : '',
  ].filter((part) => part !== '');
  return parts.length === 0 ? 'none' : parts.join(' + ');
}
