/**
 * Small calculations of the bench, beside the notebook: the stack for an angle, balls and rolls that touch where they
 * should, corrections.
 */
import { useState } from 'react';
import { useStore } from 'zustand';
import { fineText, INCH, lengthText, type System, THOU } from '../../../design/units.ts';
import { readLeaning, readWarm } from '../../../report/measure/bench.ts';
import { above, atLeast, atMost, LocalField } from '../../controls/LocalField.tsx';
import type { Work } from '../../state/store.ts';
import { toolsOf, withShop } from '../../state/tools.ts';
import { ContactHelper } from './ContactHelper.tsx';
import { OwnTools } from './OwnTools.tsx';
import { StackHelper } from './StackHelper.tsx';
import { openText, useOpenFields } from './useOpenFields.ts';

export function Helpers({ work }: { work: Work }) {
  const system = useStore(work.store, (state) => state.system);
  const design = useStore(work.store, (state) => state.design);
  const tools = toolsOf(design, system);
  return (
    <section aria-label="Calculations of the bench">
      <p className="tools">
        <label htmlFor="tools">Blocks, bars, balls and rolls of the shop</label>{' '}
        <select
          id="tools"
          data-path="shop.tools"
          value={design.shop?.tools ?? ''}
          onChange={(event) =>
            work.change((d) => withShop(d, 'tools', event.target.value === '' ? null : (event.target.value as System)))
          }
        >
          <option value="">{`as the units: ${system}`}</option>
          <option value="metric">metric</option>
          <option value="inch">inch</option>
        </select>
      </p>
      <details>
        <summary>Sine bar: the stack for an angle and back, the blocks for a stack</summary>
        <StackHelper key={tools} design={design} system={system} tools={tools} />
      </details>
      <details>
        <summary>Balls and rolls that touch where they should</summary>
        <OwnTools work={work} design={design} system={system} />
        <ContactHelper design={design} system={system} tools={tools} />
      </details>
      <details>
        <summary>A reading in a room that is not at 20 °C (68 °F)</summary>
        <Warm system={system} />
      </details>
      <details>
        <summary>An indicator whose stylus leans</summary>
        <Lean system={system} />
      </details>
    </section>
  );
}

/** 1/K: plain carbon steel and bearing bronze, the defaults of the design file. */
const STEEL = 11.3e-6;
/** °C: a warm shop, 24 °C or 75 °F */
const WARM = { metric: 24, inch: (75 - 32) / 1.8 };
const EXPANDS = { metric: '11.3 steel, 18 bronze', inch: '6.28 steel, 10 bronze' };

function Warm({ system }: { system: System }) {
  const open = useOpenFields();
  const [read, setRead] = useState(system === 'metric' ? 22 : INCH);
  const [part, setPart] = useState({ expansion: STEEL, temperature: WARM[system] });
  const [tool, setTool] = useState({ expansion: STEEL, temperature: 20 });
  const { atReference, perDegree } = readWarm(read, part, tool, system === 'metric' ? 1 : 5 / 9);
  const temperature = [atLeast(-50), atMost(200)];
  const expansion = [atLeast(0), atMost(1e-3)];
  return (
    <>
      <div className="locals">
        <LocalField
          title="Read"
          about="What the instrument tells"
          quantity="length"
          value={read}
          pending={open.of('Read')}
          set={setRead}
          system={system}
          bounds={[above(0)]}
        />
        <LocalField
          title="Part at"
          about="Temperature of the part"
          quantity="temperature"
          value={part.temperature}
          pending={open.of('Part at')}
          set={(t) => setPart({ ...part, temperature: t })}
          system={system}
          bounds={temperature}
        />
        <LocalField
          title="Part expands"
          about={EXPANDS[system]}
          quantity="expansion"
          value={part.expansion}
          pending={open.of('Part expands')}
          set={(e) => setPart({ ...part, expansion: e })}
          system={system}
          bounds={expansion}
        />
        <LocalField
          title="Instrument at"
          about="Temperature of the instrument or of the blocks it was set to"
          quantity="temperature"
          value={tool.temperature}
          pending={open.of('Instrument at')}
          set={(t) => setTool({ ...tool, temperature: t })}
          system={system}
          bounds={temperature}
        />
        <LocalField
          title="Instrument expands"
          about={`${EXPANDS[system].split(',')[0]}`}
          quantity="expansion"
          value={tool.expansion}
          pending={open.of('Instrument expands')}
          set={(e) => setTool({ ...tool, expansion: e })}
          system={system}
          bounds={expansion}
        />
      </div>
      <p role="status">
        {open.any ? (
          openText(open)
        ) : (
          <>
            At {system === 'metric' ? '20 °C' : '68 °F'} it measures <strong>{lengthText(atReference, system)}</strong>,{' '}
            {fineText(atReference - read, system)} from what was read. A degree more or less on the part is{' '}
            {fineText(perDegree, system)}.
          </>
        )}
      </p>
    </>
  );
}

function Lean({ system }: { system: System }) {
  const open = useOpenFields();
  const [travel, setTravel] = useState(system === 'metric' ? 0.02 : THOU);
  const [lean, setLean] = useState(15);
  const { moved, tooMuch } = readLeaning(travel, lean);
  return (
    <>
      <div className="locals">
        <LocalField
          title="Shown"
          about="What the indicator shows"
          quantity="fine"
          value={travel}
          pending={open.of('Shown')}
          set={setTravel}
          system={system}
          bounds={[atLeast(0), atMost(100)]}
        />
        <LocalField
          title="Lean"
          about="Between the direction measured and that in which the tip moves"
          quantity="phase"
          value={lean}
          pending={open.of('Lean')}
          set={setLean}
          system={system}
          bounds={[atLeast(0), { side: 'greatest', value: 90, inclusive: false }]}
        />
      </div>
      <p role="status">
        {open.any ? (
          openText(open)
        ) : (
          <>
            The surface moved <strong>{fineText(moved, system)}</strong>; the indicator shows{' '}
            {fineText(tooMuch, system)} too much.
          </>
        )}
      </p>
    </>
  );
}
