/** How a class of film is painted in every drawing of lines: its colour, and a pattern that a grey printer keeps. */

import { memo } from 'react';
import type { FilmClass } from './filmClass.ts';
import { CLASS_COLOUR, CLASS_FILL, cssColour } from './filmColour.ts';

/** Lines of each pattern: their angle (degrees) and how far they are apart (px). */
export const PATTERN: Partial<Record<FilmClass, { angles: number[]; apart: number }>> = {
  pressed: { angles: [45, -45], apart: 6 },
  thin: { angles: [0], apart: 4 },
  thick: { angles: [90], apart: 6 },
};
const PATTERNED = Object.entries(PATTERN) as [FilmClass, { angles: number[]; apart: number }][];

/** @param scale px to one unit of the drawing */
export const FilmPatterns = memo(function FilmPatterns({ id, scale = 1 }: { id: string; scale?: number }) {
  return (
    <defs>
      {PATTERNED.flatMap(([kind, { angles, apart }]) =>
        angles.map((angle, i) => (
          <pattern
            key={`${kind}${angle}`}
            id={`${id}${kind}${i}`}
            width={apart / scale}
            height={apart / scale}
            patternUnits="userSpaceOnUse"
            patternTransform={`rotate(${angle})`}
          >
            <path d={`M0 0V${apart / scale}`} className="film-line" strokeWidth={1 / scale} />
          </pattern>
        )),
      )}
    </defs>
  );
});

/** The points of a path of straight lines. */
export const pointsOf = (path: string) => path.replace(/[MLZ]/g, ' ').trim();

const FILL: Partial<Record<FilmClass, { fill: string }>> = {
  ...Object.fromEntries(Object.entries(CLASS_COLOUR).map(([kind, colour]) => [kind, { fill: cssColour(colour) }])),
  touch: { fill: CLASS_FILL.touch },
};

/**
 * An outline filled as its class is; `id` that of the patterns. What moves under the hand is drawn by its points: a
 * path is a style too, and worked out anew with every sheet there is.
 */
export function FilmShape({ points, kind, id }: { points: string; kind: FilmClass; id: string }) {
  return (
    <>
      <polygon points={points} className="film" style={FILL[kind]} />
      {PATTERN[kind]?.angles.map((angle, i) => (
        <polygon key={angle} points={points} className="film-pattern" fill={`url(#${id}${kind}${i})`} />
      ))}
    </>
  );
}
