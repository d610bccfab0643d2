/** The notes above a section, or below it, one a seat, each with a leader to its film. */

import type { DrawnSeat, Point } from './drawn.ts';
import type { SectionFrame } from './sectionFrame.ts';
import { NOTE, type Placing } from './sectionLayout.ts';
import { type Note, placedNotes, SECOND } from './sectionNotes.ts';
import { textWidth } from './textWidth.ts';
import type { Size } from './useSize.ts';

interface Props {
  notes: readonly Note[];
  frame: SectionFrame;
  at: Placing;
  size: Size;
  /** they stand below the section and point at its lower half */
  below?: boolean;
}

export function SeatNotes({ notes, frame, at, size, below = false }: Props) {
  const head = below ? size.height - at.notesEnd - 2 : 0;
  const placed = placedNotes(notes, at, size, textWidth);
  // Where nothing but what is known asks for a second line there is no row of its own for it.
  const more = at.level === 'none' && placed.some(({ lines }) => lines[1] !== '') ? 17 : 0;
  const end = below ? head + 2 : at.notesEnd + 2 + more;
  const outside = frame.outer * at.scale + 4;
  const knee = below
    ? Math.min(end - 12, Math.max(at.middle.y + outside, 0))
    : Math.max(end + 12, Math.min(at.middle.y - outside, size.height));
  const beyond = (y: number) => (below ? y < knee : y > knee);
  return (
    <g>
      {placed.map(({ name, lines, x, at: seat }) => (
        <g key={name} className="note">
          <path
            d={`M${x.toFixed(1)} ${end}L${seat.x.toFixed(1)} ${knee.toFixed(1)}${beyond(seat.y) ? `V${seat.y.toFixed(1)}` : ''}`}
          />
          <circle cx={seat.x} cy={beyond(seat.y) ? seat.y : knee} r={2.2} />
          <text x={x} y={head + NOTE + 6} fontSize={NOTE} textAnchor="middle">
            {lines[0]}
          </text>
          {lines[1] !== '' && (
            <text x={x} y={head + NOTE + 6 + 17} fontSize={SECOND} textAnchor="middle" className="second">
              {lines[1]}
            </text>
          )}
        </g>
      ))}
    </g>
  );
}

/** Middle of the film, or of the bush's line where there is none. */
export function middleOf(seat: DrawnSeat): Point {
  const [first, last] =
    seat.oil.length > 1
      ? [amid(seat.oil[0]!), amid(seat.oil[seat.oil.length - 1]!)]
      : [seat.bush[0]!, seat.bush[seat.bush.length - 1]!];
  return [(first[0] + last[0]) / 2, (first[1] + last[1]) / 2];
}

export const amid = ({ bush, journal }: DrawnSeat['film'][number]): Point => [
  (bush[0] + journal[0]) / 2,
  (bush[1] + journal[1]) / 2,
];
