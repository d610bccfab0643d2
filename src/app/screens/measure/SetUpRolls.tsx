/** Two rolls against a journal and the width over them. */
import type { Design } from '../../../design/definition.ts';
import { toolText } from '../../../design/tools.ts';
import { lengthText, placeText, type System } from '../../../design/units.ts';
import { type PartLine, partLine, rollCentre } from '../../../report/measure/setUps.ts';
import type { Of } from './kinds.ts';
import { Axis, type Drawing, type Extent, extentOf, joints, PartOf, Size, textSize } from './SetUpParts.tsx';

type OverRolls = Of<'overRolls'>;

export function overRolls(design: Design, reading: OverRolls, system: System): Drawing | null {
  const line = partLine(design, reading.seat, 'journal');
  const centre = line && rollCentre(line, reading.roll, reading.station);
  if (centre === null) return null;
  const lines = design.seats.map(({ name }) => partLine(design, name, 'journal')!);
  const stands = standing(design, lines, reading.station, centre - reading.roll / 2);
  return stands === null
    ? held(design, lines, reading, centre, system)
    : onPlate(design, lines, reading, centre, stands, system);
}

/** What is looked at is the same either way. */
const said = (reading: OverRolls, how: string, system: System) =>
  `Two rolls of ${toolText(reading.roll, system)} beside the ${reading.seat} journal ${how}, their centres at station ${placeText(reading.station, system)}`;

/** On end on a plate, each roll on a stack. */
function onPlate(
  design: Design,
  lines: readonly PartLine[],
  reading: OverRolls,
  centre: number,
  stands: 'nose' | 'rear',
  system: System,
): Drawing {
  const { left, right, up } = extentOf(lines);
  const noseDown = stands === 'nose';
  const outer = centre + reading.roll / 2;
  const down = (station: number) => (noseDown ? station : -station) - (noseDown ? left + right : -(left + right)) / 2;
  const plate = (right - left) / 2;
  const at = down(reading.station);
  const under = at + reading.roll / 2;
  const half = Math.max(outer, up);
  const extent: Extent = {
    left: -half,
    right: half,
    up: Math.max(plate, reading.roll / 2 - at),
    down: Math.max(plate, under),
  };
  const body = (
    <>
      <path d={`M${-1.15 * half} ${plate}H${1.15 * half}`} className="datum" />
      <g transform={`rotate(${noseDown ? 90 : -90}) translate(${-(left + right) / 2} 0)`}>
        <PartOf design={design} part="journal" seat={reading.seat} wall={0} />
        <Axis left={left} right={right} up={up} />
      </g>
      {[1, -1].map((side) => (
        <g key={side}>
          {under < plate && (
            <rect
              x={side * centre - reading.roll / 2}
              y={under}
              width={reading.roll}
              height={plate - under}
              className="part bush"
            />
          )}
          <circle cx={side * centre} cy={at} r={reading.roll / 2} className="gauge" />
        </g>
      ))}
      <Size
        from={[-outer, at]}
        to={[outer, at]}
        text={lengthText(reading.value, system)}
        size={textSize(extent)}
        within={extent}
      />
    </>
  );
  return {
    extent,
    body,
    said: said(reading, `standing on end, its ${stands === 'nose' ? 'nose' : 'rear end'} down`, system),
  };
}

/** Between centres, where metal is in the way of a stack on either side: the rolls are held against the flanks. */
function held(design: Design, lines: readonly PartLine[], reading: OverRolls, centre: number, system: System): Drawing {
  const { left, right, up } = extentOf(lines);
  const outer = centre + reading.roll / 2;
  const tip = 0.12 * (right - left);
  const extent: Extent = { left: left - tip, right: right + tip, up: Math.max(outer, up), down: Math.max(outer, up) };
  const size = textSize(extent);
  const body = (
    <>
      {[
        [left, -1],
        [right, 1],
      ].map(([end, out]) => (
        <path key={out} d={`M${end} 0l${out! * tip} ${-0.5 * tip}v${tip}Z`} className="gauge" />
      ))}
      <PartOf design={design} part="journal" seat={reading.seat} wall={0} />
      <Axis {...extent} />
      {[1, -1].map((side) => (
        <circle key={side} cx={reading.station} cy={side * centre} r={reading.roll / 2} className="gauge" />
      ))}
      <Size
        from={[reading.station, -outer]}
        to={[reading.station, outer]}
        text={lengthText(reading.value, system)}
        size={size}
        within={extent}
      />
      <text
        x={(left + right) / 2}
        y={extent.up + 0.4 * size}
        fontSize={0.6 * size}
        textAnchor="middle"
        className="words"
      >
        between centres: no stack stands clear
      </text>
    </>
  );
  return {
    extent: { ...extent, down: extent.up + 0.6 * size },
    body,
    said: said(reading, 'held between centres, since metal is in the way of a stack on either side', system),
  };
}

/**
 * The end to stand it on, so that the stacks come down clear of metal: the nose where both do, null where neither does.
 */
function standing(design: Design, lines: readonly PartLine[], station: number, inner: number): 'nose' | 'rear' | null {
  const bodies = joints(design, 'journal');
  const blocked = (noseward: boolean) =>
    lines.some(({ z, r }) => r.some((radius, k) => z[k]! > station === noseward && radius > inner)) ||
    bodies.some(([from, to, radius]) => (noseward ? to > station : from < station) && radius > inner);
  return !blocked(true) ? 'nose' : !blocked(false) ? 'rear' : null;
}
