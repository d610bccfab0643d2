/** The `fit` section of the report. */
import type { Design } from '../../design/definition.ts';
import { type Contact, fit, type SeatFit } from '../../engine/contact/fit.ts';
import { metres, millimetres, toSeats } from '../toEngine.ts';
import type { FitReport, SeatFitReport } from './definition.ts';

export function fitSection(design: Design): FitReport {
  const position = design.position ?? 0;
  const result = fit(toSeats(design), metres(position));
  return {
    position,
    seats: result.seats.map((seat) => seatSection(seat, position, design)),
    first: result.first,
    together: result.together,
    firstPosition: mm(result.firstPosition),
    filmsAtFirst: Object.fromEntries(result.filmsAtFirst.map((film, i) => [result.seats[i]!.name, mm(film)])),
    endPlay: mm(result.endPlay),
    relation: result.relation && { between: result.relation.between, error: millimetres(result.relation.error), allowance: millimetres(result.relation.allowance) },
    permitted: result.permitted && { from: millimetres(result.permitted.from), to: millimetres(result.permitted.to) },
  };
}

function seatSection(seat: SeatFit, position: number, design: Design): SeatFitReport {
  const pitch = design.adjuster?.pitch;
  const positionForTarget = mm(seat.positionForTarget);
  const shift = positionForTarget === null ? null : positionForTarget - position;
  return {
    name: seat.name,
    closes: seat.closes,
    seatPosition: mm(seat.seatPosition),
    contact: contactSection(seat.contact),
    leastFilm: mm(seat.leastFilm),
    leastFilmStation: mm(seat.leastFilmStation),
    greatestFilm: mm(seat.greatestFilm),
    sensitivity: seat.sensitivity,
    positionForTarget,
    filmsAtTarget: seat.filmsAtTarget && Object.fromEntries(seat.filmsAtTarget.map((film, i) => [design.seats[i]!.name, mm(film)])),
    shiftToTarget: shift,
    turnsToTarget: shift === null || pitch === undefined ? null : shift / pitch,
  };
}

const mm = (m: number | null) => (m === null ? null : millimetres(m));

function contactSection(contact: Contact | null): SeatFitReport['contact'] {
  if (contact === null) return null;
  const stretches = contact.stretches.map(({ from, to }) => ({ from: millimetres(from), to: millimetres(to) }));
  return { station: millimetres(contact.station), diameter: 2 * millimetres(contact.radius), end: contact.end, stretches };
}
