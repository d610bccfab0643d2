/** The whole pair, small, on the strip below its close-up: with a frame round what is seen of it. */
import { useId } from 'react';
import type { PointInMm, SectionFrame } from '../../pictures/sectionFrame.ts';
import type { Placing } from '../../pictures/sectionLayout.ts';
import type { Size } from '../../pictures/useSize.ts';
import { STRIP } from './closeUp.ts';

const EDGE = 4;
/** px: across and up, at most */
const WIDE = 92;
const HIGH = STRIP - 2 * EDGE;
/** Of the close-up's width: it takes no more of it. */
const SHARE = 0.26;

export function WholePair({ frame, at, size }: { frame: SectionFrame; at: Placing; size: Size }) {
  const id = useId();
  const [long, thick] = [frame.right - frame.left, 2 * frame.outer];
  const scale = Math.min(Math.min(WIDE, SHARE * size.width) / long, HIGH / thick);
  const [width, height] = [long * scale, thick * scale];
  const [x0, y0] = [size.width - EDGE - width, size.height - EDGE - height];
  const x = (z: number) => x0 + (z - frame.left) * scale;
  const y = (r: number) => y0 + height / 2 - r * scale;
  const list = (points: readonly PointInMm[], side: 1 | -1) =>
    points.map(([z, r]) => `${x(z).toFixed(1)},${y(side * r).toFixed(1)}`).join(' ');
  // What of it the close-up shows.
  const seen = {
    left: at.station - at.middle.x / at.scale,
    right: at.station + (size.width - at.middle.x) / at.scale,
    top: at.middle.y / at.scale,
    foot: (at.middle.y - (size.height - STRIP)) / at.scale,
  };
  const [left, right] = [Math.max(x0, x(seen.left)), Math.min(x0 + width, x(seen.right))];
  const [top, foot] = [Math.max(y0, y(seen.top)), Math.min(y0 + height, y(seen.foot))];
  const { journal, bush } = frame;
  return (
    <g className="whole-pair">
      <clipPath id={id}>
        <rect x={x0} y={y0} width={width} height={height} />
      </clipPath>
      <g clipPath={`url(#${id})`}>
        <polygon
          className="journal-fill"
          points={`${list(journal.above, 1)} ${list(journal.below.toReversed(), -1)}`}
        />
        <polygon className="bush-fill" points={list(bush.above, 1)} />
        <polygon className="bush-fill" points={list(bush.below, -1)} />
        <path className="axis" d={`M${x0} ${y(0)}h${width}`} />
      </g>
      <rect className="seen" x={left} y={top} width={Math.max(0, right - left)} height={Math.max(0, foot - top)} />
    </g>
  );
}
