/** Where no plan gives the films: what every seat has, what is wanted, and how near the limits let it come. */

import type { Design } from '../../../design/definition.ts';
import type { Millimetres } from '../../../design/dimension.ts';
import { fineText, type System } from '../../../design/units.ts';
import type { CutReport } from '../../../report/cut/definition.ts';
import { fitSection } from '../../../report/fit/section.ts';

export function NearestTable({
  design,
  nearest,
  system,
}: {
  design: Design;
  nearest: Pick<CutReport, 'position' | 'films'>;
  system: System;
}) {
  const told = (mm: Millimetres | null | undefined) => (mm == null ? '—' : fineText(mm, system));
  const now = fitSection(design).seats;
  return (
    <table className="nearest">
      <thead>
        <tr>
          <th scope="col">Least film</th>
          <th scope="col">As it is, at {fineText(design.position ?? 0, system)}</th>
          <th scope="col">Wanted</th>
          <th scope="col">Nearest within the limits, at {fineText(nearest.position, system)}</th>
        </tr>
      </thead>
      <tbody>
        {design.seats.map(({ name, film }, i) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            <td>{told(now[i]!.leastFilm)}</td>
            <td>
              {told(film?.target)}
              {film?.tolerance !== undefined && ` ± ${fineText(film.tolerance, system)}`}
            </td>
            <td>{told(nearest.films[name])}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
