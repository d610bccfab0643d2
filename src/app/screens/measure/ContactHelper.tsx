/** Balls and rolls of the shop that touch where they should, and what becomes of any other. */
import { useState } from 'react';
import type { Design } from '../../../design/definition.ts';
import { toolText } from '../../../design/tools.ts';
import { lengthText, placeText, type System } from '../../../design/units.ts';
import { ballsFor, ballTried, rollsFor, type TriedTool } from '../../../report/measure/bench.ts';
import { faultText } from '../../../report/measure/faultText.ts';
import { above, atMost, LocalField } from '../../controls/LocalField.tsx';
import { openText, useOpenFields } from './useOpenFields.ts';

interface Props {
  design: Design;
  system: System;
  tools: System;
}

export function ContactHelper({ design, system, tools }: Props) {
  const [size, setSize] = useState<number | null>(null);
  const open = useOpenFields();
  return (
    <>
      <ul className="plain">
        {design.seats.map((seat, i) => (
          <li key={seat.name}>
            <strong>{seat.name}</strong>: {ballsText(design, i, system, tools)}; {rollsText(design, i, system, tools)}.
          </li>
        ))}
      </ul>
      <div className="locals">
        <LocalField
          title="Try a ball"
          about="Any diameter: where it would touch, and what is in its way"
          quantity="length"
          value={size}
          pending={open.of('Try a ball')}
          set={setSize}
          clear={() => setSize(null)}
          instead="none"
          system={system}
          bounds={[above(0), atMost(500)]}
        />
      </div>
      {open.any && <p role="status">{openText(open)}</p>}
      {size !== null && !open.any && (
        <ul className="plain" role="status">
          {design.seats.map((seat, i) => (
            <li key={seat.name}>
              <strong>{seat.name} bush</strong>: {triedText(design, i, ballTried(design, i, size), system)}
            </li>
          ))}
        </ul>
      )}
      <p className="fine">
        Of what the shop has, the two that touch nearest to a tenth from either end are named, where broken edges do no
        harm. Sizes:{' '}
        {tools === 'metric'
          ? 'balls by half millimetres, rolls by whole ones'
          : 'balls by 1/32 in to 1 in and by 1/16 in beyond, rolls by 1/32, 1/16 and 1/8 in'}
        ; tick your own against it.
      </p>
    </>
  );
}

const placeOr = (station: number | null, system: System) => (station === null ? '—' : placeText(station, system));

function ballsText(design: Design, seat: number, system: System, tools: System): string {
  const pair = ballsFor(design, seat, tools);
  if (!pair)
    return design.seats[seat]!.bush.halfAngle === 0
      ? 'a straight bore holds no ball'
      : 'no two balls of the shop rest in this bush clear of its ends';
  const [rear, nose] = pair;
  const one = (t: TriedTool) => `${toolText(t.diameter, system)} (touches at station ${placeOr(t.station, system)})`;
  const smaller = rear.diameter < nose.diameter ? rear : nose;
  return `balls ${one(rear)} and ${one(nose)} in the bush, the smaller reaching down to station ${placeOr(smaller.deepest, system)}`;
}

function rollsText(design: Design, seat: number, system: System, tools: System): string {
  const pair = rollsFor(design, seat, tools);
  if (!pair) return 'no two places on this journal for rolls clear of its ends';
  const [rear, nose] = pair;
  return `rolls of ${toolText(rear.diameter, system)} on the journal, centres at stations ${placeOr(rear.centre, system)} and ${placeOr(nose.centre, system)}`;
}

/** Where a ball comes to rest, what is in its way, and whether it reaches out of the bush at the bottom. */
function triedText(design: Design, seat: number, t: TriedTool, system: System): string {
  if (t.fault) return `no: ${faultText(t.fault, system)}.`;
  const { halfAngle } = design.seats[seat]!.bush;
  const [rear, nose] = [
    Math.min(...design.seats.map((s) => s.bush.from)),
    Math.max(...design.seats.map((s) => s.bush.to)),
  ];
  const out = t.deepest !== null && (halfAngle > 0 ? t.deepest < rear : t.deepest > nose);
  const place = `touches at station ${placeOr(t.station, system)}, ${Math.round(100 * t.share!)} % of the way from the rear end, and reaches down to station ${placeOr(t.deepest, system)}`;
  return `${place}${out ? `: that is beyond the end of the bush (${lengthText(halfAngle > 0 ? rear : nose, system)}), so nothing must close the bore or stand under it there` : ''}.`;
}
