/** A design that says nothing of how it runs: the few things that takes, each typed or assumed by size alone. */
import { useStore } from 'zustand';
import { withAssumed } from '../../../design/assumed.ts';
import type { Design } from '../../../design/definition.ts';
import { quantityAt } from '../../../design/place.ts';
import type { System } from '../../../design/units.ts';
import { AssumedField } from '../../controls/AssumedField.tsx';
import type { Work } from '../../state/store.ts';
import { useUnfinished } from '../../state/useUnfinished.ts';
import { Idealisations } from './Idealisations.tsx';
import { plausibleRun } from './plausibleRun.ts';

/** What is asked: where it stands in the design, and how it is said of a spindle. */
const ASKED = [
  { path: 'run.speed', title: 'Speed', sign: 1 },
  { path: 'run.oil.grade', title: 'Oil, ISO VG', sign: 1 },
  { path: 'run.load.y', title: 'Load, down', sign: -1, about: 'Weight and the push of the cut on the journal' },
  { path: 'run.load.z', title: 'Thrust, rearward', sign: -1, about: 'Push on the nose along the axis' },
  { path: 'run.load.station', title: 'Load at station', sign: 1 },
] as const;
export type RunPath = (typeof ASKED)[number]['path'];

/** As it stands in the design, by its place there. */
export type TypedRun = Partial<Record<RunPath, number>>;

/** The design with a run of what was typed; the rest by size alone, and named as assumed. */
function withRunOf(design: Design, typed: TypedRun, system: System): Design {
  const usual = plausibleRun(design, system);
  const at = (path: RunPath) => typed[path] ?? usualAt(usual, path);
  const run = {
    speed: at('run.speed'),
    oil: { grade: at('run.oil.grade') },
    load: { y: at('run.load.y'), z: at('run.load.z'), station: at('run.load.station') },
  };
  return withAssumed(
    { ...design, run },
    ASKED.flatMap(({ path }) => (typed[path] === undefined ? [path] : [])),
  );
}

function usualAt({ speed, oil, load }: ReturnType<typeof plausibleRun>, path: RunPath): number {
  const usual: Record<RunPath, number> = {
    'run.speed': speed,
    'run.oil.grade': oil.grade!,
    'run.load.y': load!.y!,
    'run.load.z': load!.z!,
    'run.load.station': load!.station!,
  };
  return usual[path];
}

export function NothingRuns({ work }: { work: Work }) {
  const design = useStore(work.store, (state) => state.design);
  const system = useStore(work.store, (state) => state.system);
  const [typed, setTyped] = useUnfinished<TypedRun>(work, 'run');
  const run = () => {
    if (work.change((d) => withRunOf(d, typed ?? {}, system)).length === 0) setTyped(null);
  };
  return (
    <>
      <section className="verdict mend" aria-live="polite">
        <h2>How does it run? Nothing says so yet.</h2>
        <p>
          Type what you know. What is dashed is assumed by the size of the spindle alone, and stays marked so until you
          write over it.
        </p>
      </section>
      <div className="locals">
        {ASKED.map((asked) => (
          <Asked key={asked.path} {...asked} design={design} typed={typed ?? {}} set={setTyped} system={system} />
        ))}
      </div>
      <p className="buttons">
        <button type="button" className="main" onClick={run}>
          Work out how it runs
        </button>
      </p>
      <Idealisations />
    </>
  );
}

interface AskedProps {
  path: RunPath;
  title: string;
  sign: 1 | -1;
  about?: string;
  design: Design;
  typed: TypedRun;
  set(typed: TypedRun): void;
  system: System;
}

/** Down and toward the rear are what a load on a spindle is; the file counts them below nought. */
function Asked({ path, title, sign, about, design, typed, set, system }: AskedProps) {
  const { [path]: value, ...others } = typed;
  return (
    <AssumedField
      title={title}
      at={quantityAt(path)}
      value={value === undefined ? null : sign * value}
      otherwise={sign * usualAt(plausibleRun(design, system), path)}
      set={(next) => set(next === null ? others : { ...others, [path]: sign * next })}
      about={about}
      system={system}
    />
  );
}
