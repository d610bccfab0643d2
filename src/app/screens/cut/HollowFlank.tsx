/** The flank that a tool off the centre leaves: in words, and its departure from the line that was set. */
import { extent } from 'd3-array';
import { scaleLinear } from 'd3-scale';
import { useRef } from 'react';
import { fineText, fineUnit, type System } from '../../../design/units.ts';
import type { CutReport } from '../../../report/cut/definition.ts';
import { useSize } from '../../pictures/useSize.ts';
import { errorText } from './angleTexts.ts';

type Setting = CutReport['settings'][number];
type Hollow = NonNullable<Setting['hollow']>;

const HEIGHT = 92;
const MARGIN = { left: 12, right: 12, top: 10, bottom: 10 };
/** Nobody sees less; of the unit of small lengths. */
const LEAST = 0.01;

export function HollowFlank({
  setting: { seat, part },
  hollow: { height, depth, angleError, profile },
  system,
}: {
  setting: Setting;
  hollow: Hollow;
  system: System;
}) {
  const box = useRef<HTMLElement>(null);
  const { width } = useSize(box, { width: 600, height: HEIGHT });
  const least = LEAST * fineUnit(system).size;
  if (height === 0) return <p>With the tool on the centre the flank comes out straight.</p>;
  const [low, high] = extent(profile, ([, deviation]) => deviation) as [number, number];
  const x = scaleLinear([profile[0]![0], profile[profile.length - 1]![0]], [MARGIN.left, width - MARGIN.right]);
  const y = scaleLinear([low, high === low ? low + least : high], [HEIGHT - MARGIN.bottom, MARGIN.top]);
  const unit = fineUnit(system);
  const d = profile.map(([z, deviation]) => `${x(z).toFixed(2)} ${y(deviation).toFixed(2)}`).join('L');
  return (
    <>
      <p>
        A tool {fineText(Math.abs(height), system)} off the centre leaves the flank{' '}
        {part === 'journal' ? 'hollow' : 'proud'} by{' '}
        {depth < least ? `less than ${fineText(least, system)}` : fineText(depth, system)}, and its half angle{' '}
        {errorText(Math.abs(angleError))} {angleError < 0 ? 'less' : 'more'}.
      </p>
      <figure className="chart hollow" ref={box}>
        <svg
          width={width}
          height={HEIGHT}
          role="img"
          aria-label={`Flank of the ${seat} ${part} by a tool off the centre, against the line that was set`}
        >
          {low <= 0 && high >= 0 && (
            <path d={`M${MARGIN.left} ${y(0).toFixed(2)}H${width - MARGIN.right}`} className="set-line" />
          )}
          <path d={`M${d}`} className="flank" />
        </svg>
        <figcaption>
          Rear on the left, nose on the right; metal proud of the line set{low <= 0 && high >= 0 ? ' (dashed)' : ''}:
          from {(low / unit.size).toFixed(4).replace('-', '−')} to {(high / unit.size).toFixed(4).replace('-', '−')}{' '}
          {unit.name}.
        </figcaption>
      </figure>
    </>
  );
}
