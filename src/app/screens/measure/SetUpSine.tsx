/**
 * A part on a sine bar. Its line lies level when the bar stands at the half angle: the uppermost line of a journal
 * whose large end is low, the lowermost line in the bore of a bush whose large end is high.
 */
import type { Design, Part } from '../../../design/definition.ts';
import { toolText } from '../../../design/tools.ts';
import { placeText, type System } from '../../../design/units.ts';
import { degrees } from '../../../report/convert.ts';
import { partLine, radiusOf } from '../../../report/measure/setUps.ts';
import type { Of } from './kinds.ts';
import { stackOf } from './kinds.ts';
import { Axis, type Drawing, type Extent, end, extentOf, PartOf, Size } from './SetUpParts.tsx';

type SineRise = Of<'sineRise'>;
type Place = readonly [x: number, y: number];

/** Of the length of the bar: the rolls, its thickness, the figures. */
const ROLL = 0.06;
const THICK = 0.09;
const TEXT = 0.055;

export function sineRise(design: Design, reading: SineRise, system: System): Drawing | null {
  const { bar, part } = reading;
  const line = partLine(design, reading.seat, part);
  const sine = reading.stack / bar;
  if (!line || Math.abs(sine) > 1) return null;
  const angle = Math.asin(sine);
  const [roll, size] = [ROLL * bar, TEXT * bar];
  const far: Place = [bar * Math.cos(angle), -bar * sine];
  const floor = Math.max(0, far[1]) + roll;
  const lines = design.seats.map(({ name }) => partLine(design, name, part)!);
  const whole = extentOf(lines);
  const wall = 1.15 * whole.up;
  const lying = lyingOn(bar, angle, part, (whole.left + whole.right) / 2, part === 'journal' ? whole.up : wall);
  const middle = (end(line, 'rear') + end(line, 'nose')) / 2;
  const touch = lying.place(middle, (part === 'journal' ? 1 : -1) * radiusOf(line, middle));
  const corners = [whole.left, whole.right].flatMap((z) =>
    [1, -1].map((side) => lying.place(z, side * (part === 'journal' ? whole.up : wall))),
  );
  const dial: Place = [touch[0], Math.min(...corners.map(([, y]) => y)) - 1.6 * size];
  const lifted = far[1] < 0 ? far : far[1] > 0 ? ([0, 0] as const) : null;
  const label = `stack ${stackOf(reading, system)}`;
  const body = (
    <>
      <path d={`M${-3 * roll} ${floor}H${far[0] + 3 * roll}`} className="datum" />
      {lifted && (
        <rect
          x={lifted[0] - roll}
          y={lifted[1] + roll}
          width={2 * roll}
          height={floor - lifted[1] - roll}
          className="part bush"
        />
      )}
      {[[0, 0] as const, far].map(([x, y]) => (
        <circle key={x} cx={x} cy={y} r={roll} className="gauge" />
      ))}
      <g transform={`rotate(${degrees(-angle)})`}>
        <rect x={-roll / 2} y={-(THICK * bar) / 2} width={bar + roll} height={THICK * bar} className="gauge" />
      </g>
      <g transform={lying.transform}>
        <PartOf design={design} part={part} seat={reading.seat} wall={wall} />
        <Axis left={whole.left} right={whole.right} up={whole.up} />
      </g>
      <path d={`M${touch[0]} ${touch[1]}V${dial[1]}`} className="pointer" />
      <circle cx={touch[0]} cy={touch[1]} r={0.15 * size} className="tip" />
      <circle cx={dial[0]} cy={dial[1]} r={0.8 * size} className="dial" />
      {lifted && (
        <Size
          from={[lifted[0] + (lifted === far ? 1.7 : -1.7) * roll, floor]}
          to={[lifted[0] + (lifted === far ? 1.7 : -1.7) * roll, lifted[1] + roll]}
          text=""
          size={size}
          within={whole}
        />
      )}
      <text x={far[0] / 2} y={floor + 1.5 * size} fontSize={size} textAnchor="middle" className="words">
        {`bar ${toolText(bar, system)}, ${label}`}
      </text>
    </>
  );
  const all = [
    ...corners,
    [-3 * roll, floor],
    [far[0] + 3 * roll, floor],
    [0, -roll],
    [far[0], far[1] - roll],
  ] as const;
  const extent: Extent = {
    left: Math.min(...all.map(([x]) => x)),
    right: Math.max(...all.map(([x]) => x)),
    up: -(dial[1] - size),
    down: floor + 1.5 * size,
  };
  return {
    extent,
    body,
    said: `The ${reading.seat} ${part} on a sine bar of ${toolText(bar, system)} over a ${label}, the indicator at station ${placeText(middle, system)}`,
  };
}

/**
 * The frame of a part lying on the bar: its axis along the bar, `up` (mm) above its middle line and half its thickness,
 * its middle over that of the bar. A journal lies with the nose toward the plate, a bush with the nose away from it.
 */
function lyingOn(
  bar: number,
  angle: number,
  part: Part,
  middle: number,
  up: number,
): { transform: string; place(z: number, off: number): Place } {
  const flip = part === 'journal' ? -1 : 1;
  const [sin, cos] = [Math.sin(angle), Math.cos(angle)];
  const above = (THICK * bar) / 2 + up;
  return {
    transform: `rotate(${degrees(-angle)}) translate(${bar / 2} ${-above}) scale(${flip} 1) translate(${-middle} 0)`,
    place: (z, off) => {
      const [u, w] = [bar / 2 + flip * (z - middle), -above - off];
      return [u * cos + w * sin, -u * sin + w * cos];
    },
  };
}
