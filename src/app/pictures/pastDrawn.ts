/**
 * Where a contact lies past the end of the drawn journal. Moved by p all of it is drawn f·p along the axis, so a place
 * of its line that truly faces the bush may be drawn beyond the bush, and the journal's end within it. The seat is held
 * there all the same: the line goes on, by the same map, as far as the contact.
 */
import type { Drawn, DrawnForce, FilmPlace, Point } from './drawn.ts';

/** From the drawn journal's end to the contact; empty where the drawn journal reaches it. */
export function pastDrawn(drawn: Drawn, { seat, angle, at }: DrawnForce): Point[] {
  const { film, oil, journal } = drawn.at!(angle).find(({ name }) => name === seat)!;
  const contact = film.reduce((nearest, place) => (apart(place.bush, at) < apart(nearest.bush, at) ? place : nearest));
  const [first, last] = [oil[0], oil[oil.length - 1]];
  if (first && last && contact.along >= first.along && contact.along <= last.along) return [];
  const [rear, nose] = [journal[0]!, journal[journal.length - 1]!];
  // The whole film may lie past one end.
  const rearward = first ? contact.along < first.along : apart(rear, contact.journal) < apart(nose, contact.journal);
  const reached = rearward ? (first?.along ?? Number.POSITIVE_INFINITY) : (last?.along ?? Number.NEGATIVE_INFINITY);
  const passed = ({ along }: FilmPlace) =>
    rearward ? along > contact.along && along < reached : along < contact.along && along > reached;
  const between = film.filter(passed).map((place) => place.journal);
  return [rearward ? rear : nose, ...(rearward ? between.toReversed() : between), contact.journal];
}

const apart = ([z, r]: Point, [toZ, toR]: Point) => Math.hypot(z - toZ, r - toR);
