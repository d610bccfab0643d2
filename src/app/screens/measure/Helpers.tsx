/**
 * Small calculations of the bench, beside the notebook: the stack for an angle, balls and rolls that touch where they
 * should, corrections.
 */
import { type ReactNode, useState } from 'react';
import { useStore } from 'zustand';
import { expansionFigures } from '../../../design/expansion.ts';
import { usualMaterial } from '../../../design/materials.ts';
import { fromUnit, measureText, unitOf } from '../../../design/measures.ts';
import { fineText, INCH, lengthText, type System, THOU } from '../../../design/units.ts';
import { REFERENCE, readLeaning, readWarm } from '../../../report/measure/bench.ts';
import { above, atLeast, atMost, below } from '../../controls/LocalField.tsx';
import type { Work } from '../../state/store.ts';
import { toolsOf, withShop } from '../../state/tools.ts';
import { ContactHelper } from './ContactHelper.tsx';
import { type Field, LocalFields } from './LocalFields.tsx';
import { OwnTools } from './OwnTools.tsx';
import { StackHelper } from './StackHelper.tsx';
import { type OpenFields, openText, useOpenFields } from './useOpenFields.ts';

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

const STEEL = usualMaterial('journal').expansion;
const BRONZE = usualMaterial('bush').expansion;
/** °C: a warm shop, 24 °C or 75 °F */
const WARM: Record<System, number> = { metric: 24, inch: fromUnit('temperature', 75, 'inch') };

function Warm({ system }: { system: System }) {
  const open = useOpenFields();
  const [read, setRead] = useState(system === 'metric' ? 22 : INCH);
  const [part, setPart] = useState({ expansion: STEEL, temperature: WARM[system] });
  const [tool, setTool] = useState({ expansion: STEEL, temperature: REFERENCE });
  const { atReference, perDegree } = readWarm(read, part, tool, unitOf('warmer', system).size);
  const steel = `${expansionFigures(STEEL, system)} steel`;
  const ofOne = (name: string, on: string, expands: string, one: typeof part, set: typeof setPart): Field[] => [
    {
      title: `${name} at`,
      about: `Temperature of ${on}`,
      quantity: 'temperature',
      value: one.temperature,
      set: (temperature: number) => set({ ...one, temperature }),
      bounds: [atLeast(-50), atMost(200)],
    },
    {
      title: `${name} expands`,
      about: expands,
      quantity: 'expansion',
      value: one.expansion,
      set: (expansion: number) => set({ ...one, expansion }),
      bounds: [atLeast(0), atMost(1e-3)],
    },
  ];
  const instrument = 'the instrument or of the blocks it was set to';
  const fields: Field[] = [
    {
      title: 'Read',
      about: 'What the instrument tells',
      quantity: 'length',
      value: read,
      set: setRead,
      bounds: [above(0)],
    },
    ...ofOne('Part', 'the part', `${steel}, ${expansionFigures(BRONZE, system)} bronze`, part, setPart),
    ...ofOne('Instrument', instrument, steel, tool, setTool),
  ];
  return (
    <>
      <LocalFields fields={fields} open={open} system={system} />
      <Result open={open}>
        At {measureText('temperature', REFERENCE, system)} it measures{' '}
        <strong>{lengthText(atReference, system)}</strong>, {fineText(atReference - read, system)} from what was read. A
        degree more or less on the part is {fineText(perDegree, system)}.
      </Result>
    </>
  );
}

function Lean({ system }: { system: System }) {
  const open = useOpenFields();
  const [travel, setTravel] = useState(system === 'metric' ? 0.02 : THOU);
  const [lean, setLean] = useState(15);
  const { moved, tooMuch } = readLeaning(travel, lean);
  const fields: Field[] = [
    {
      title: 'Shown',
      about: 'What the indicator shows',
      quantity: 'fine',
      value: travel,
      set: setTravel,
      bounds: [atLeast(0), atMost(100)],
    },
    {
      title: 'Lean',
      about: 'Between the direction measured and that in which the tip moves',
      quantity: 'phase',
      value: lean,
      set: setLean,
      bounds: [atLeast(0), below(90)],
    },
  ];
  return (
    <>
      <LocalFields fields={fields} open={open} system={system} />
      <Result open={open}>
        The surface moved <strong>{fineText(moved, system)}</strong>; the indicator shows {fineText(tooMuch, system)}{' '}
        too much.
      </Result>
    </>
  );
}

/** What follows from the fields, while none of them stands open. */
function Result({ open, children }: { open: OpenFields; children: ReactNode }) {
  return <p role="status">{open.any ? openText(open) : children}</p>;
}
