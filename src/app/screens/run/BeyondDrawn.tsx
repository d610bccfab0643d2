/**
 * The film where the journal's drawn end no longer faces the bush, moved so much further on the screen than it is in
 * truth, while the true one does: the line of the journal goes on there in dashes, so that what is told of the contact
 * is seen in it.
 */
import { betweenPlaces, type Drawn, type DrawnSeat, type FilmPlace } from '../../pictures/drawn.ts';
import { FilmShape } from '../../pictures/FilmPaint.tsx';
import { filmRuns } from '../../pictures/filmClass.ts';
import { onScreen, type Placing } from '../../pictures/sectionLayout.ts';

/** m along the bush: shorter is not seen. */
const SHORT = 1e-6;

/** The contact in use less what is drawn of it: a piece at the rear, one at the nose, or all of it. */
export function beyond({ film, oil }: Pick<DrawnSeat, 'film' | 'oil'>): FilmPlace[][] {
  const [first, last] = [oil[0], oil[oil.length - 1]];
  const pieces =
    first && last
      ? [
          [...film.filter(({ along }) => along < first.along), first],
          [last, ...film.filter(({ along }) => along > last.along)],
        ]
      : [[...film]];
  return pieces.filter((piece) => piece.length > 1 && piece[piece.length - 1]!.along - piece[0]!.along > SHORT);
}

/** `id`: of the patterns of the section. */
export function BeyondDrawn({ drawn, at, id }: { drawn: Drawn; at: Placing; id: string }) {
  return ([1, -1] as const).flatMap((side) =>
    (side === 1 ? drawn.seats : drawn.below).flatMap((seat) =>
      beyond(seat).map((piece) => {
        const on = (part: 'bush' | 'journal') => (place: FilmPlace) => {
          const { x, y } = onScreen(at, place[part], side);
          return `${x.toFixed(2)} ${y.toFixed(2)}`;
        };
        return (
          <g key={`${seat.name} ${side} ${piece[0]!.along}`} className="beyond-drawn">
            {filmRuns(piece, seat.wanted, betweenPlaces).map(({ name, kind, places }) => {
              const points = [...places.map(on('bush')), ...places.toReversed().map(on('journal'))].join(' ');
              return <FilmShape key={name} points={points} kind={kind} id={id} />;
            })}
            <polyline points={piece.map(on('journal')).join(' ')} className="ghost" />
          </g>
        );
      }),
    ),
  );
}

export const reachesBeyond = ({ seats, below }: Drawn) => [...seats, ...below].some((seat) => beyond(seat).length > 0);
