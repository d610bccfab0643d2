/** The sine-bar stack for an angle and back, and the blocks for any height, out of a set that the person chooses. */
import { useState } from 'react';
import type { Design } from '../../../design/definition.ts';
import { blocksText, stackText, toolText } from '../../../design/tools.ts';
import { angleErrorText, angleText, fineText, lengthText, type System } from '../../../design/units.ts';
import {
  BLOCK_SETS,
  type BlockSet,
  type Blocks as BlocksFound,
  blocksFor,
  sineAngle,
  sineStack,
  usualBench,
} from '../../../report/measure/bench.ts';
import { above, atLeast, atMost, below } from '../../controls/LocalField.tsx';
import { type Field, LocalFields } from './LocalFields.tsx';
import { openText, useOpenFields } from './useOpenFields.ts';

interface Props {
  design: Design;
  /** the units of the screen */
  system: System;
  /** the system of the tools that are proposed; another one makes another of these */
  tools: System;
}

export function StackHelper({ design, system, tools }: Props) {
  const usual = usualBench(tools);
  const [angle, setAngle] = useState(Math.abs(design.seats[0]!.journal.halfAngle));
  const [bar, setBar] = useState(usual.bar);
  const [name, setName] = useState(usual.blocks);
  const [wear, setWear] = useState(0);
  const open = useOpenFields();
  const set = BLOCK_SETS.find((s) => s.name === name)!;
  const height = sineStack(angle, bar);
  // The stack follows these: what was being typed of it goes with the former one.
  const followed = (take: (value: number) => void) => (value: number) => {
    open.close('Stack');
    take(value);
  };
  const setHeight = (stack: number) => {
    const back = sineAngle(stack, bar);
    if (back === null) return;
    open.close('Half angle');
    setAngle(back);
  };
  const fields: Field[] = [
    {
      title: 'Half angle',
      about: 'Of the surface that is to lie level',
      quantity: 'angle',
      value: angle,
      set: followed(setAngle),
      bounds: [atLeast(0), below(89)],
    },
    {
      title: 'Sine bar',
      about: `Length between its rolls: ${toolText(bar, system)}`,
      quantity: 'length',
      value: bar,
      set: followed(setBar),
      bounds: [above(0), atMost(5000)],
    },
    {
      title: 'Stack',
      about: 'Follows the angle; type one to have the angle it makes',
      quantity: 'length',
      value: height,
      set: setHeight,
      system: set.system,
      bounds: [atLeast(0), below(bar)],
    },
    {
      title: 'Wear blocks',
      about: 'Thickness of both wear blocks together; 0 without',
      quantity: 'length',
      value: wear,
      set: setWear,
      system: set.system,
      bounds: [atLeast(0), atMost(20)],
    },
  ];
  return (
    <>
      <LocalFields fields={fields} open={open} system={system}>
        <div className="local">
          <label htmlFor="block-set">Block set</label>
          <select
            id="block-set"
            value={name}
            onChange={(event) => {
              open.close('Stack', 'Wear blocks');
              setName(event.target.value);
            }}
          >
            {BLOCK_SETS.map((s) => (
              <option key={s.name} value={s.name}>
                {setText(s)}
              </option>
            ))}
          </select>
        </div>
      </LocalFields>
      {open.any && <p role="status">{openText(open)}</p>}
      {!open.any && (
        <p role="status">
          For {angleText(angle)} on a bar of {toolText(bar, system)} a stack of{' '}
          <strong>{stackText(height, set.system, system)}</strong>
          {height > 0 ? (
            <Blocks found={blocksFor(set, { stack: height, wear, bar })} set={set} wear={wear} system={system} />
          ) : (
            ': none, the bar lies level.'
          )}
        </p>
      )}
    </>
  );
}

/** A set by its name, its system and how many pieces it has. */
const setText = ({ name, system, blocks }: BlockSet) =>
  `${name === `${blocks.length}` ? '' : `${name}, `}${system === 'metric' ? 'metric' : 'inch'}, ${blocks.length} pieces`;

function Blocks({ found, set, wear, system }: { found: BlocksFound; set: BlockSet; wear: number; system: System }) {
  if (found.kind === 'outOfReach') {
    return (
      <>
        : no six blocks of this set come near; they reach from {lengthText(found.least, set.system)} to{' '}
        {lengthText(found.greatest, set.system)}.
      </>
    );
  }
  const { error, off } = found;
  const blocks = blocksText(found.blocks, set.system);
  return (
    <>
      : blocks <strong>{blocks}</strong>
      {wear > 0 && ` and the wear blocks (${lengthText(wear, set.system)})`}.{' '}
      {error === 0
        ? 'It is exact.'
        : `It misses by ${fineText(error, system)}, so the bar stands ${off === null ? 'elsewhere' : angleErrorText(off)} off.`}
    </>
  );
}
