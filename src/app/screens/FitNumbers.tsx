/** The fit in figures, one row a seat. */
import type { Design } from '../../design/definition.ts';
import { fineText, placeText, type System, turnText } from '../../design/units.ts';
import type { FitReport } from '../../report/fit/definition.ts';

const NONE = '—';

export function FitNumbers({ fit, design, system }: { fit: FitReport; design: Design; system: System }) {
  const fine = (mm: number | null) => (mm === null ? NONE : fineText(mm, system));
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a box that scrolls sideways must be reachable by the keyboard
    <section className="table" aria-label="The fit in figures" tabIndex={0}>
      <table>
        <thead>
          <tr>
            <th scope="col">Seat</th>
            <th scope="col">Least film</th>
            <th scope="col">Greatest film</th>
            <th scope="col">Move for its film</th>
            <th scope="col">Adjuster</th>
            <th scope="col">Film wanted</th>
            <th scope="col">Touches at position</th>
            <th scope="col">Touch at diameter</th>
          </tr>
        </thead>
        <tbody>
          {fit.seats.map((seat, i) => (
            <tr key={seat.name}>
              <th scope="row">{seat.name}</th>
              <td>{fine(seat.leastFilm)}</td>
              <td>{fine(seat.greatestFilm)}</td>
              <td>{seat.shiftToTarget === null ? NONE : `${fineText(Math.abs(seat.shiftToTarget), system)} ${seat.shiftToTarget < 0 ? 'rearward' : 'noseward'}`}</td>
              <td>{seat.turnsToTarget === null ? NONE : turnText(seat.turnsToTarget)}</td>
              <td>{fine(design.seats[i]?.film?.target ?? null)}</td>
              <td>{fine(seat.seatPosition)}</td>
              <td>{seat.contact ? placeText(seat.contact.diameter, system) : NONE}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
