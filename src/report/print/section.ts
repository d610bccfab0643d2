/** The `print` section of the report: present where the design gives the thickness of the blue. */
import type { Design } from '../../design/definition.ts';
import { type Print, printOf } from '../../engine/play/print.ts';
import { type PrintShape, printShape } from '../../engine/play/printShape.ts';
import { degrees, metres, millimetres, toSeats } from '../convert.ts';
import { freeOf } from '../play/toPlay.ts';
import type { PrintReport, PrintShapeReport } from './definition.ts';

/** Steps of a whole turn: every 7.5°. */
export const TURNS = 48;

export function printSection(design: Design): PrintReport | undefined {
  if (!design.print) return undefined;
  const { thickness } = design.print;
  const seats = toSeats(design);
  const press = printOf(seats, freeOf(design), { thickness: metres(thickness), turns: 1 });
  const turned = printOf(seats, freeOf(design), { thickness: metres(thickness), turns: TURNS });
  return {
    thickness,
    status: press.status === 'solved' ? turned.status : press.status,
    press: shapes(design, press),
    turned: shapes(design, turned),
  };
}

function shapes(design: Design, print: Print): PrintShapeReport[] {
  if (print.status !== 'solved') return [];
  return print.maps.map((map) => {
    const { bush } = design.seats.find((seat) => seat.name === map.seat)!;
    return { seat: map.seat, part: map.part, ...inFileUnits(printShape(map, print.thickness, bush.halfAngle >= 0)) };
  });
}

const inFileUnits = ({ films, from, to, side, ...shape }: PrintShape) => ({
  ...shape,
  films: films && {
    small: millimetres(films.small),
    middle: millimetres(films.middle),
    large: millimetres(films.large),
  },
  from: from === null ? null : millimetres(from),
  to: to === null ? null : millimetres(to),
  side: degrees(side),
});
