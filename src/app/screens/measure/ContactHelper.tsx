/** Balls and rolls of the shop that touch where they should, and what becomes of any other. */
import { useState } from 'react';
import type { Design } from '../../../design/definition.ts';
import { toolText } from '../../../design/tools.ts';
import { lengthText, placeText, type System } from '../../../design/units.ts';
import { bestPair, deepestOf, type Tried, triedBalls, triedRolls } from '../../../engine/gauging/choice.ts';
import { metres, millimetres, toSeats } from '../../../report/convert.ts';
import { faultReport, faultText } from '../../../report/measure/faultText.ts';
import { shopTools } from '../../../report/shopTools.ts';
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
              <strong>{seat.name} bush</strong>:{' '}
              {triedText(design, i, triedBalls(toSeats(design), i, [metres(size)])[0]!, system)}
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

const stationOf = (t: Tried, system: System) => (t.station === null ? '—' : placeText(millimetres(t.station), system));

function ballsText(design: Design, seat: number, system: System, tools: System): string {
  const pair = bestPair(triedBalls(toSeats(design), seat, shopTools(design, tools).balls));
  if (!pair)
    return design.seats[seat]!.bush.halfAngle === 0
      ? 'a straight bore holds no ball'
      : 'no two balls of the shop rest in this bush clear of its ends';
  const one = (t: Tried) => `${toolText(millimetres(t.diameter), system)} (touches at station ${stationOf(t, system)})`;
  return `balls ${one(pair[0])} and ${one(pair[1])} in the bush, the smaller reaching down to station ${deepestText(design, seat, pair[0].diameter < pair[1].diameter ? pair[0] : pair[1], system)}`;
}

/** So many steps from end to end that two of them are a tenth. */
const PLACES = 20;

function rollsText(design: Design, seat: number, system: System, tools: System): string {
  const seats = toSeats(design);
  const { from, to, halfAngle } = seats[seat]!.journal;
  const { rolls } = shopTools(design, tools);
  const fitting = rolls.filter((roll) => roll <= (to - from) / 3).reverse();
  for (const roll of fitting.length > 0 ? fitting : rolls.slice(0, 1)) {
    // Where it touches goes from end to end; its centre stands off that, and may stand beyond the line.
    const stations = Array.from(
      { length: PLACES + 1 },
      (_, k) => from + ((to - from) * k) / PLACES - (roll / 2) * Math.sin(halfAngle),
    );
    const pair = bestPair(triedRolls(seats, seat, [roll], stations));
    if (pair)
      return `rolls of ${toolText(millimetres(roll), system)} on the journal, centres at stations ${placeText(millimetres(pair[0].centre!), system)} and ${placeText(millimetres(pair[1].centre!), system)}`;
  }
  return 'no two places on this journal for rolls clear of its ends';
}

const deepest = (design: Design, seat: number, t: Tried) =>
  deepestOf(t, design.seats[seat]!.bush.halfAngle > 0 ? 'rearward' : 'noseward');

function deepestText(design: Design, seat: number, t: Tried, system: System): string {
  const at = deepest(design, seat, t);
  return at === null ? '—' : placeText(millimetres(at), system);
}

/** Where a ball comes to rest, what is in its way, and whether it reaches out of the bush at the bottom. */
function triedText(design: Design, seat: number, t: Tried, system: System): string {
  if (t.fault) return `no: ${faultText(faultReport(design, 0, t.fault), system)}.`;
  const bottom = deepest(design, seat, t);
  const { halfAngle } = design.seats[seat]!.bush;
  const [rear, nose] = [
    Math.min(...design.seats.map((s) => s.bush.from)),
    Math.max(...design.seats.map((s) => s.bush.to)),
  ];
  const out = bottom !== null && (halfAngle > 0 ? millimetres(bottom) < rear : millimetres(bottom) > nose);
  const place = `touches at station ${stationOf(t, system)}, ${Math.round(100 * t.share!)} % of the way from the rear end, and reaches down to station ${deepestText(design, seat, t, system)}`;
  return `${place}${out ? `: that is beyond the end of the bush (${lengthText(halfAngle > 0 ? rear : nose, system)}), so nothing must close the bore or stand under it there` : ''}.`;
}
