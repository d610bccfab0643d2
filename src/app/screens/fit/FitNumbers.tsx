/** The fit in figures, a column a seat, so that the pair fits the narrowest screen. */
import { useStore } from 'zustand';
import type { Millimetres } from '../../../design/dimension.ts';
import { fineText, placeText, turnText } from '../../../design/units.ts';
import type { SeatFitReport } from '../../../report/fit/definition.ts';
import { fitOf } from '../../../report/fit/fitOf.ts';
import type { Work } from '../../state/store.ts';

const NONE = '—';
/** mm: so near nobody can set it closer */
const STANDS = 5e-5;

export default function FitNumbers({ work }: { work: Work }) {
  const design = useStore(work.store, (state) => state.design);
  const system = useStore(work.store, (state) => state.system);
  const fit = fitOf(design);
  const fine = (mm: Millimetres | null) => (mm === null ? NONE : fineText(mm, system));
  const rows: [name: string, text: (seat: SeatFitReport, index: number) => string][] = [
    ['Least film', (seat) => fine(seat.leastFilm)],
    ['Greatest film', (seat) => fine(seat.greatestFilm)],
    ['Film wanted', (_, i) => fine(design.seats[i]?.film?.target ?? null)],
    [
      'Move for its film',
      (seat) =>
        seat.shiftToTarget === null
          ? NONE
          : Math.abs(seat.shiftToTarget) < STANDS
            ? 'stands there'
            : `${fineText(Math.abs(seat.shiftToTarget), system)} ${seat.shiftToTarget < 0 ? 'rearward' : 'noseward'}`,
    ],
    ['The same on the adjuster', (seat) => (seat.turnsToTarget === null ? NONE : turnText(seat.turnsToTarget))],
    ['Touches at position', (seat) => fine(seat.seatPosition)],
    ['Touches at diameter', (seat) => (seat.contact ? placeText(seat.contact.diameter, system) : NONE)],
  ];
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a box that scrolls sideways must be reachable by the keyboard
    <section className="table" aria-label="The fit in figures" tabIndex={0}>
      <table>
        <thead>
          <tr>
            <th scope="col">Seat</th>
            {fit.seats.map((seat) => (
              <th key={seat.name} scope="col">
                {seat.name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(([name, text]) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              {fit.seats.map((seat, i) => (
                <td key={seat.name}>{text(seat, i)}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
