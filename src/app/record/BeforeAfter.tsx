/** Before and after: every surface as it was first measured, after each cut, and now. */
import type { Design } from '../../design/definition.ts';
import { angleErrorText, angleText, COVER, fineText, lengthText, plusMinusText, type System } from '../../design/units.ts';
import { caseText } from '../../report/cut/caseWords.ts';
import type { StateOfSurface, States, SurfaceHistory } from '../../report/record/states.ts';

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
  const hasCase = states.some(({ caseLeft }) => caseLeft !== null);
  const [first, last] = [states[0]!, states.at(-1)!];
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a box that scrolls sideways must be reachable by the keyboard
    <section className="table before-after" aria-label={`${seat} ${part}, before and after`} tabIndex={0}>
      <h4>
        {seat} {part}: ⌀ {diameterText(first, system)}
        {states.length > 1 && ` → ${diameterText(last, system)}`}
      </h4>
      <table>
        <thead>
          <tr>
            <th scope="col">State</th>
            <th scope="col">Half angle</th>
            <th scope="col">Diameter</th>
            <th scope="col">Came off</th>
            {hasCase && <th scope="col">Case left</th>}
            <th scope="col">Readings</th>
          </tr>
        </thead>
        <tbody>
          {states.map((state, i) => (
            <tr key={after[i]}>
              <th scope="row">{stateText(design, after, i)}</th>
              <td>{angleOf(state)}</td>
              <td>
                <strong>{diameterText(state, system)}</strong>
              </td>
              <td>{state.taken === 0 ? '—' : plusMinusText(state.taken, state.takenSigma, system)}</td>
              {hasCase && <td>{state.caseLeft === null ? '—' : caseText(state.caseLeft, system)}</td>}
              <td>{readingsText(state)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function stateText(design: Design, after: readonly number[], i: number): string {
  const [done, count] = [after[i]!, design.cut?.trials?.length ?? 0];
  const isNow = i === after.length - 1;
  if (i === 0) return isNow ? 'Now, uncut' : 'At first';
  const stage = design.cut?.trials?.[done - 1]?.stage;
  const named = `after trial ${done}${stage === undefined ? '' : `, ${stage}`}`;
  return isNow ? `Now${count > 0 ? `, ${named}` : ''}` : `${named.charAt(0).toUpperCase()}${named.slice(1)}`;
}

const angleOf = ({ halfAngle, sigma, unknown }: StateOfSurface) =>
  unknown
    ? '—'
    : `${angleText(halfAngle)}${sigma.halfAngle ? ` ± ${angleErrorText(COVER * sigma.halfAngle).replace(/^[+−-]/, '')}` : ''}`;

const diameterText = ({ diameter, sigma, unknown }: StateOfSurface, system: System) =>
  unknown
    ? '—'
    : `${lengthText(Number(diameter.toFixed(5)), system)}${sigma.diameter === null ? '' : ` ± ${fineText(COVER * sigma.diameter, system)}`}`;

/** What the state is known by. */
function readingsText({ readings, older, overtaken }: StateOfSurface): string {
  const parts = [
    readings > 0 ? `${readings}` : '',
    older > 0 ? `${older} older, moved` : '',
    overtaken > 0 ? `${overtaken} of the old line, not used` : '',
  ].filter((part) => part !== '');
  return parts.length === 0 ? 'none' : parts.join(' + ');
}
