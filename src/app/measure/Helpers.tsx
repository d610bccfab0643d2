/** Small calculations of the bench, beside the notebook: the stack for an angle, balls and rolls that touch where they should, corrections. */
import { useState } from 'react';
import { useStore } from 'zustand';
import type { Design } from '../../design/definition.ts';
import { angleText, fineText, lengthText, placeText, type System } from '../../design/units.ts';
import { BLOCK_SETS } from '../../engine/gauging/blockSets.ts';
import { stackFor } from '../../engine/gauging/blockStack.ts';
import { bestPair, INCH_BALLS, METRIC_BALLS, METRIC_ROLLS, type Tried, triedBalls, triedRolls } from '../../engine/gauging/choice.ts';
import { cosineError } from '../../engine/gauging/cosineError.ts';
import { angleOfStack, stackOfAngle } from '../../engine/gauging/sineBar.ts';
import { atReference } from '../../engine/gauging/temperature.ts';
import { degrees, metres, millimetres, radians, toSeats } from '../../report/toEngine.ts';
import { above, atLeast, atMost, LocalField } from '../controls/LocalField.tsx';
import type { Work } from '../store.ts';

export function Helpers({ work }: { work: Work }) {
  const system = useStore(work.store, (state) => state.system);
  const design = useStore(work.store, (state) => state.design);
  return (
    <section aria-label="Calculations of the bench">
      <h2>Calculations of the bench</h2>
      <details>
        <summary>Sine bar: the stack for an angle, the blocks for a stack</summary>
        <SineBar design={design} system={system} />
      </details>
      <details>
        <summary>Balls and rolls that touch where they should</summary>
        <Choice design={design} system={system} />
      </details>
      <details>
        <summary>A reading in a room that is not at 20 °C</summary>
        <Warm system={system} />
      </details>
      <details>
        <summary>An indicator whose stylus leans</summary>
        <Lean system={system} />
      </details>
    </section>
  );
}

/** mm: bars made; common practice, no source */
const BARS = { metric: 100, inch: 127 };

function SineBar({ design, system }: { design: Design; system: System }) {
  const sets = BLOCK_SETS.filter((set) => set.system === system);
  const [angle, setAngle] = useState(design.seats[0]!.journal.halfAngle);
  const [bar, setBar] = useState(BARS[system]);
  const [name, setName] = useState(sets[0]!.name);
  const [wear, setWear] = useState(0);
  const set = sets.find((s) => s.name === name) ?? sets[0]!;
  const height = stackOfAngle(radians(Math.abs(angle)), metres(bar));
  const stack = height > 0 ? stackFor(set, height, metres(wear)) : null;
  const made = stack?.kind === 'stack' ? angleOfStack(height + stack.error, metres(bar)) : null;
  return (
    <>
      <div className="locals">
        <LocalField title="Half angle" about="Of the surface that is to lie level" quantity="angle" value={angle} set={setAngle} system={system} bounds={[above(-89), { side: 'greatest', value: 89, inclusive: false }]} />
        <LocalField title="Sine bar" about="Length between its rolls" quantity="length" value={bar} set={setBar} system={system} bounds={[above(0), atMost(5000)]} />
        <div className="local">
          <label htmlFor="block-set">Block set</label>
          <select id="block-set" value={set.name} onChange={(event) => setName(event.target.value)}>
            {sets.map((s) => (
              <option key={s.name} value={s.name}>
                {s.name} ({s.blocks.length} pieces)
              </option>
            ))}
          </select>
        </div>
        <LocalField title="Wear blocks" about="Thickness of both wear blocks together; 0 without" quantity="length" value={wear} set={setWear} system={system} bounds={[atLeast(0), atMost(20)]} />
      </div>
      <p role="status">
        Stack <strong>{lengthText(millimetres(height), system)}</strong>
        {stack?.kind === 'stack' && (
          <>
            : blocks {stack.blocks.map((block) => lengthText(millimetres(block), system)).join(' + ')}
            {wear > 0 && ` and the wear blocks (${lengthText(wear, system)})`}.{' '}
            {Math.abs(stack.error) < 1e-12 ? 'It is exact.' : `It misses by ${fineText(millimetres(stack.error), system)}, so the bar stands at ${made === null ? '—' : angleText(degrees(made))}.`}
          </>
        )}
        {stack?.kind === 'outOfReach' && `: no six blocks of this set come near; they reach from ${lengthText(millimetres(stack.least), system)} to ${lengthText(millimetres(stack.greatest), system)}.`}
        {stack === null && ': none, the bar lies level.'}
      </p>
    </>
  );
}

function Choice({ design, system }: { design: Design; system: System }) {
  const seats = toSeats(design);
  const place = (t: Tried) => `${placeText(millimetres(t.diameter), system)} (touches at station ${t.station === null ? '—' : placeText(millimetres(t.station), system)})`;
  return (
    <ul className="plain">
      {design.seats.map((seat, i) => {
        const { from, to } = seats[i]!.journal;
        const balls = bestPair(triedBalls(seats, i, system === 'metric' ? METRIC_BALLS : INCH_BALLS));
        const stations = Array.from({ length: 13 }, (_, k) => from + ((to - from) * k) / 12);
        const rolls = bestPair(triedRolls(seats, i, [METRIC_ROLLS.findLast((roll) => roll <= (to - from) / 3) ?? METRIC_ROLLS[0]!], stations));
        return (
          <li key={seat.name}>
            <strong>{seat.name}</strong>
            {': '}
            {balls ? `balls ${place(balls[0])} and ${place(balls[1])} in the bush` : 'no two balls rest in this bush clear of its ends'}
            {'; '}
            {rolls
              ? `rolls of ${placeText(millimetres(rolls[0].diameter), system)} on the journal, centres at stations ${placeText(millimetres(rolls[0].centre!), system)} and ${placeText(millimetres(rolls[1].centre!), system)}`
              : 'no two places on this journal for rolls clear of its ends'}
            .
          </li>
        );
      })}
    </ul>
  );
}

/** 1/K: plain carbon steel and bearing bronze, the defaults of the design file. */
const STEEL = 11.3e-6;

function Warm({ system }: { system: System }) {
  const [read, setRead] = useState(22);
  const [part, setPart] = useState({ expansion: STEEL, temperature: 24 });
  const [tool, setTool] = useState({ expansion: STEEL, temperature: 20 });
  const true20 = millimetres(atReference(metres(read), part, tool));
  const temperature = [atLeast(-50), atMost(200)];
  const expansion = [atLeast(0), atMost(1e-3)];
  return (
    <>
      <div className="locals">
        <LocalField title="Read" about="What the instrument tells" quantity="length" value={read} set={setRead} system={system} bounds={[above(0)]} />
        <LocalField title="Part at" about="Temperature of the part" quantity="temperature" value={part.temperature} set={(t) => setPart({ ...part, temperature: t })} system={system} bounds={temperature} />
        <LocalField title="Part expands" about="11.3e-6 steel, 18e-6 bronze" quantity="expansion" value={part.expansion} set={(e) => setPart({ ...part, expansion: e })} system={system} bounds={expansion} />
        <LocalField
          title="Instrument at"
          about="Temperature of the instrument or of the blocks it was set to"
          quantity="temperature"
          value={tool.temperature}
          set={(t) => setTool({ ...tool, temperature: t })}
          system={system}
          bounds={temperature}
        />
        <LocalField title="Instrument expands" about="11.3e-6 for a steel one" quantity="expansion" value={tool.expansion} set={(e) => setTool({ ...tool, expansion: e })} system={system} bounds={expansion} />
      </div>
      <p role="status">
        At 20 °C it measures <strong>{lengthText(true20, system)}</strong>, {fineText(true20 - read, system)} from what was read.
      </p>
    </>
  );
}

function Lean({ system }: { system: System }) {
  const [travel, setTravel] = useState(0.02);
  const [lean, setLean] = useState(15);
  return (
    <>
      <div className="locals">
        <LocalField title="True travel" about="How far the surface moves" quantity="fine" value={travel} set={setTravel} system={system} bounds={[atLeast(0), atMost(100)]} />
        <LocalField title="Lean" about="Between the direction measured and that in which the tip moves" quantity="phase" value={lean} set={setLean} system={system} bounds={[atLeast(0), { side: 'greatest', value: 90, inclusive: false }]} />
      </div>
      <p role="status">
        The indicator shows <strong>{fineText(millimetres(cosineError(metres(travel), radians(lean))), system)}</strong> too much.
      </p>
    </>
  );
}
