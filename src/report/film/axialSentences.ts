/** What holds the running spindle along its axis, in words. */
import type { Design } from '../../design/definition.ts';
import { fineText, type System } from '../../design/units.ts';
import { listed } from '../listed.ts';
import type { FilmReport, SeatOilReport } from './definition.ts';
import { newtons } from './figures.ts';

/** N: thrust nobody would ask about. */
const NO_THRUST = 0.5;
/** mm: a move along the axis nobody would see. */
const FLOATS = 1e-4;

/** Which seat carries the thrust. */
export function thrustSentence(design: Design, film: FilmReport, system: System): string {
  const carrying = film.seats
    .filter((seat) => Math.abs(seat.force!.z) >= NO_THRUST)
    .sort((a, b) => Math.abs(b.force!.z) - Math.abs(a.force!.z));
  if (carrying.length === 0) {
    const cones = design.seats.some((seat) => seat.bush.halfAngle !== 0);
    return cones ? 'The cones run true, so their oil has no wedge and pushes next to nothing along the axis.' : '';
  }
  const parts = carrying.map(
    (seat) => `the ${seat.name} seat ${newtons(seat.force!.z, system)}${seat.force!.z < 0 ? ' rearward' : ''}`,
  );
  const sum =
    Math.abs(film.force!.z) >= NO_THRUST
      ? `pushes with ${newtons(film.force!.z, system)}: `
      : 'pushes both ways alike: ';
  return `Along the axis the oil ${sum}${listed(parts)}${eccentricClause(design, carrying, system)}.`;
}

/** A shallow cone that lies off centre pushes axially by its sideways load alone. */
function eccentricClause(design: Design, carrying: SeatOilReport[], system: System): string {
  const most = carrying[0]!;
  const halfAngle = Math.abs(design.seats.find((seat) => seat.name === most.name)!.bush.halfAngle);
  const sideways = Math.hypot(most.force!.x, most.force!.y);
  return halfAngle <= 15 && sideways > 2 * Math.abs(most.force!.z)
    ? `; the ${most.name} one through the ${newtons(sideways, system)} it carries sideways`
    : '';
}

export function stopSentence(design: Design, film: FilmReport, system: System): string {
  const stop = film.stop ?? 0;
  if (film.status === 'found') return floatSentence(design, film, system);
  if (film.status !== 'stopped' || Math.abs(stop) < NO_THRUST) return '';
  if (design.seats.every((seat) => seat.bush.halfAngle === 0))
    return `No oil takes ${newtons(stop, system)} of the thrust: a stop has to.`;
  const way = stop < 0 ? 'rearward' : 'noseward';
  return `That is ${newtons(stop, system)} more than the load pushes back: ${design.adjuster ? 'the adjuster holds' : 'nothing in this design but a collar could hold'} the spindle on its cones, ${way} with as much.`;
}

/** Where the oil alone holds it along the axis, away from where it was set. */
function floatSentence(design: Design, { pose }: FilmReport, system: System): string {
  const away = pose.z - (design.position ?? 0);
  const ways = new Set(design.seats.map(({ bush }) => Math.sign(bush.halfAngle)).filter((sign) => sign !== 0));
  if (ways.size !== 1 || Math.abs(away) < FLOATS) return '';
  const closes = ways.has(1) ? away < 0 : away > 0;
  if (closes)
    return `The load presses the spindle ${fineText(Math.abs(away), system)} closer than it is set, to ${fineText(pose.z, system)}.`;
  return `Nothing in this design holds it on its cones: the oil floats it to ${fineText(pose.z, system)}, ${fineText(Math.abs(away), system)} off where it is set.`;
}
