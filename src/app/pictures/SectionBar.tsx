/** How large a micrometre of gap looks, at the lower left of a section. */
import { memo } from 'react';
import type { System } from '../../design/units.ts';
import { scaleBar } from './scaleBar.ts';
import { NOTE } from './sectionLayout.ts';
import { textWidth } from './textWidth.ts';
import type { Size } from './useSize.ts';

interface Props {
  perMm: number;
  size: Size;
  system: System;
}

export const SectionBar = memo(function SectionBar({ perMm, size, system }: Props) {
  const { width, text } = scaleBar(perMm, 0.2 * size.width, system);
  const label = `${text} of gap`;
  const y = size.height - 8;
  return (
    <g className="bar">
      <rect x={4} y={y - 26} width={Math.max(width, textWidth(label, NOTE)) + 12} height={30} className="backing" />
      <path d={`M10 ${y - 6}V${y}H${10 + width}V${y - 6}`} />
      <text x={10} y={y - 11} fontSize={NOTE}>
        {label}
      </text>
    </g>
  );
});
