/** A small drawing of how a reading is taken, true to scale for the parts as they are in the design. */
import './setUp.css';
import type { Design } from '../../../design/definition.ts';
import { toolText } from '../../../design/tools.ts';
import { fineText, lengthText, type System } from '../../../design/units.ts';
import { ballCentre, partLine, radiusOf } from '../../../report/measure/setUps.ts';
import type { Kind, Of, Reading } from './kinds.ts';
import { Axis, type Drawing, extentOf, PartOf, POINTER, Pointer, Size, textSize } from './SetUpParts.tsx';
import { overRolls } from './SetUpRolls.tsx';
import { sineRise } from './SetUpSine.tsx';

interface Props {
  design: Design;
  reading: Reading;
  system: System;
}

export function SetUp({ design, reading, system }: Props) {
  const drawing = (DRAWINGS[reading.kind] as (typeof DRAWINGS)['diameter'])(design, reading as Of<'diameter'>, system);
  if (!drawing) return null;
  const { extent, body, said } = drawing;
  const down = extent.down ?? extent.up;
  const pad = 0.08 * Math.max(extent.right - extent.left, extent.up + down);
  const width = extent.right - extent.left + 2 * pad;
  const height = extent.up + down + 2 * pad;
  return (
    <svg
      className="set-up"
      viewBox={`${extent.left - pad} ${-extent.up - pad} ${width} ${height}`}
      style={{ aspectRatio: `${width} / ${height}` }}
      role="img"
      aria-label={said}
    >
      {body}
    </svg>
  );
}

const DRAWINGS: { readonly [K in Kind]: (design: Design, reading: Of<K>, system: System) => Drawing | null } = {
  diameter: atStation,
  straightness: atStation,
  overRolls,
  ballDepth,
  sineRise,
  standOff: onThePair,
  shake: onThePair,
};

function atStation(design: Design, reading: Of<'diameter' | 'straightness'>, system: System): Drawing | null {
  const line = partLine(design, reading.seat, reading.part);
  if (!line) return null;
  const lines = design.seats.map(({ name }) => partLine(design, name, reading.part)!);
  const wall = 1.3 * extentOf(lines).up;
  const diameter = reading.kind === 'diameter';
  const plain = extentOf(lines, {
    left: reading.station,
    right: reading.station,
    ...(reading.part === 'bush' && { up: wall }),
  });
  const extent = diameter ? plain : { ...plain, up: plain.up + POINTER * textSize(plain), down: plain.up };
  const at = Math.min(Math.max(reading.station, line.z[0]!), line.z[line.z.length - 1]!);
  const radius = radiusOf(line, at);
  const size = textSize(plain);
  const body = (
    <>
      <PartOf design={design} part={reading.part} seat={reading.seat} wall={wall} />
      <Axis {...extent} />
      {diameter ? (
        <Size
          from={[reading.station, -radius]}
          to={[reading.station, radius]}
          text={lengthText(reading.value, system)}
          size={size}
          within={extent}
        />
      ) : (
        <Pointer
          x={reading.station}
          y={-radius}
          size={size}
          text={fineText(reading.value, system)}
          inward={reading.part === 'journal'}
          within={extent}
        />
      )}
    </>
  );
  return {
    extent,
    body,
    said: `${diameter ? 'A diameter' : 'An indicator'} at station ${lengthText(reading.station, system)} of the ${reading.seat} ${reading.part}`,
  };
}

function ballDepth(design: Design, reading: Of<'ballDepth'>, system: System): Drawing | null {
  const line = partLine(design, reading.seat, 'bush');
  if (!line) return null;
  const centre = ballCentre(line, reading.ball);
  const lines = design.seats.map(({ name }) => partLine(design, name, 'bush')!);
  const wall = 1.3 * extentOf(lines).up;
  const extent = extentOf(lines, {
    up: Math.max(wall, reading.ball / 2),
    left: Math.min(reading.face, (centre ?? reading.face) - reading.ball / 2),
    right: Math.max(reading.face, (centre ?? reading.face) + reading.ball / 2),
  });
  const size = textSize(extent);
  const body = (
    <>
      <PartOf design={design} part="bush" seat={reading.seat} wall={wall} />
      <Axis {...extent} />
      {centre !== null && <circle cx={centre} cy={0} r={reading.ball / 2} className="gauge" />}
      <path d={`M${reading.face} ${-wall}V${wall}`} className="datum" />
      {centre !== null && (
        <Size
          from={[centre + reading.ball / 2, 0]}
          to={[reading.face, 0]}
          text={lengthText(reading.value, system)}
          size={size}
          within={extent}
        />
      )}
    </>
  );
  return {
    extent,
    body,
    said: `A ball of ${toolText(reading.ball, system)} in the ${reading.seat} bush, its depth taken from the face at station ${lengthText(reading.face, system)}`,
  };
}

function onThePair(design: Design, reading: Of<'standOff' | 'shake'>, system: System): Drawing {
  const lines = design.seats.flatMap(({ name }) => [
    partLine(design, name, 'journal')!,
    partLine(design, name, 'bush')!,
  ]);
  const wall = 1.3 * extentOf(lines).up;
  const at = reading.kind === 'shake' ? reading.indicator : extentOf(lines).right;
  const radius = extentOf(lines).up * 0.9;
  const plain = extentOf(lines, { up: wall, left: at, right: at + 0.25 * wall });
  const size = textSize(plain);
  const extent =
    reading.kind === 'shake' ? { ...plain, up: Math.max(wall, radius + POINTER * size), down: wall } : plain;
  const nose = extentOf(lines).right;
  const body = (
    <>
      <PartOf design={design} part="bush" wall={wall} />
      <PartOf design={design} part="journal" wall={wall} />
      {at > nose && <path d={`M${nose} ${-radius}H${at + 0.25 * wall}V${radius}H${nose}Z`} className="part journal" />}
      <Axis {...extent} />
      {reading.kind === 'shake' ? (
        <Pointer x={at} y={-radius} size={size} text={fineText(reading.value, system)} inward within={extent} />
      ) : (
        <Size
          from={[nose, 0]}
          to={[nose - 0.4 * wall, 0]}
          text={`position ${fineText(reading.value, system)}`}
          size={size}
          within={extent}
        />
      )}
    </>
  );
  return {
    extent,
    body,
    said:
      reading.kind === 'shake'
        ? `An indicator at station ${lengthText(reading.indicator, system)}, the spindle pulled from side to side`
        : 'The journal pressed home and its position read',
  };
}
