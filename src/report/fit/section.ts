/** The `fit` section of the report. */
import type { Design } from '../../design/definition.ts';
import { type Contact, fit, type SeatFit, type Stretch } from '../../engine/contact/fit.ts';
import { metres, millimetres, toSeats } from '../convert.ts';
import type { FitReport, SeatFitReport } from './definition.ts';

/** Films (mm) closer than this to nothing are a touch on paper. */
export const TOUCHING = 1e-6;

export function fitSection(design: Design): FitReport {
  const position = design.position ?? 0;
  const result = fit(toSeats(design), metres(position));
  const relations = result.relations.map(({ between, error, allowance }) => ({
    between,
    error: millimetres(error),
    allowance: millimetres(allowance),
  }));
  return {
    position,
    seats: result.seats.map((seat) => seatSection(seat, position, design)),
    first: result.first,
    together: result.together,
    firstPosition: mm(result.firstPosition),
    filmsAtFirst: Object.fromEntries(result.filmsAtFirst.map((film, i) => [result.seats[i]!.name, mm(film)])),
    blocked: result.seats.flatMap(({ name }, i) => ((result.filmsAtFirst[i] ?? 0) < -metres(TOUCHING) ? [name] : [])),
    endPlay: mm(result.endPlay),
    relation: relations[0] ?? null,
    relations,
    permitted: stretchSection(result.permitted),
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
    filmsAtTarget:
      seat.filmsAtTarget && Object.fromEntries(seat.filmsAtTarget.map((film, i) => [design.seats[i]!.name, mm(film)])),
    shiftToTarget: shift,
    turnsToTarget: shift === null || pitch === undefined ? null : shift / pitch,
    tolerated: stretchSection(seat.tolerated),
  };
}

const stretchSection = (stretch: Stretch | null) =>
  stretch && { from: millimetres(stretch.from), to: millimetres(stretch.to) };

const mm = (m: number | null) => (m === null ? null : millimetres(m));

function contactSection(contact: Contact | null): SeatFitReport['contact'] {
  if (contact === null) return null;
  const stretches = contact.stretches.map((stretch) => stretchSection(stretch)!);
  return {
    station: millimetres(contact.station),
    diameter: 2 * millimetres(contact.radius),
    end: contact.end,
    stretches,
  };
}
