/** A small section of a pair: the two parts, the gaps between them drawn much larger. */
import { useMemo } from 'react';
import type { Design } from '../../../design/definition.ts';
import { metres } from '../../../report/convert.ts';
import { linesOf } from '../../../report/inFrame.ts';
import { drawnPair } from '../../pictures/drawn.ts';
import { type PointInMm, type SectionFrame, sectionFrame } from '../../pictures/sectionFrame.ts';

/** Each gap as large as this share of the smallest radius at most: more than the factor allows is not asked for. */
const FACTOR = 1500;
const WIDTH = 132;
const HEIGHT = 84;
const EDGE = 3;

export function PairPicture({ design }: { design: Design }) {
  const frame = useMemo(() => sectionFrame(drawnPair(linesOf(design), metres(design.position ?? 0), FACTOR)), [design]);
  const place = placing(frame);
  const parts = [
    { name: 'journal', line: frame.journal },
    { name: 'bush', line: frame.bush },
  ] as const;
  return (
    <svg className="pair-picture" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} width={WIDTH} height={HEIGHT} aria-hidden="true">
      {parts.map(({ name, line }) => {
        const { above, below } = line;
        return name === 'journal' ? (
          <path key={name} className="journal-fill outline" d={`${pathOf(above, place, 1)}${joined(below, place)}Z`} />
        ) : (
          <g key={name} className="bush-fill outline">
            <path d={`${pathOf(above, place, 1)}Z`} />
            <path d={`${pathOf(below, place, -1)}Z`} />
          </g>
        );
      })}
      <path className="axis" d={`M0 ${HEIGHT / 2}H${WIDTH}`} />
    </svg>
  );
}

type Placing = (point: PointInMm, side: 1 | -1) => string;

function placing({ left, right, outer }: SectionFrame): Placing {
  const scale = Math.min((WIDTH - 2 * EDGE) / (right - left), (HEIGHT / 2 - EDGE) / outer);
  const middle = (left + right) / 2;
  return ([z, r], side) =>
    `${(WIDTH / 2 + (z - middle) * scale).toFixed(2)} ${(HEIGHT / 2 - side * r * scale).toFixed(2)}`;
}

const pathOf = (points: readonly PointInMm[], place: Placing, side: 1 | -1) =>
  `M${points.map((point) => place(point, side)).join('L')}`;

/** The lower half, from the nose back to the rear, joined to the upper one. */
const joined = (points: readonly PointInMm[], place: Placing) =>
  `L${[...points]
    .reverse()
    .map((point) => place(point, -1))
    .join('L')}`;
