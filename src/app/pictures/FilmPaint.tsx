/** How a class of film is painted in every drawing of lines: its colour, and a pattern that a grey printer keeps. */

import { memo } from 'react';
import type { FilmClass } from './filmClass.ts';
import { CLASS_COLOUR, cssColour } from './filmColour.ts';

/** Lines of each pattern: their angle (degrees) and how far they are apart (px). */
const PATTERN: Partial<Record<FilmClass, { angles: number[]; apart: number }>> = {
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

/** An outline filled as its class is; `id` that of the patterns. */
export function FilmShape({ d, kind, id }: { d: string; kind: FilmClass; id: string }) {
  return (
    <>
      <path d={d} className="film" style={kind === 'plain' ? undefined : { fill: cssColour(CLASS_COLOUR[kind]) }} />
      {PATTERN[kind]?.angles.map((angle, i) => (
        <path key={angle} d={d} className="film-pattern" fill={`url(#${id}${kind}${i})`} />
      ))}
    </>
  );
}
