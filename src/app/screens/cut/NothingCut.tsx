/** A design that says nothing of what may be cut: which surfaces, and how much off each, typed or assumed. */
import { useStore } from 'zustand';
import { withAssumed } from '../../../design/assumed.ts';
import type { Design, Part } from '../../../design/definition.ts';
import { quantityAt } from '../../../design/place.ts';
import { USUAL_LIMIT } from '../../../design/usualMachine.ts';
import { isGuess } from '../../../report/assumed.ts';
import { NOT_AS_READ } from '../../../report/belief/notAsRead.ts';
import { UNGAUGED } from '../../../report/cut/advice.ts';
import { AssumedField } from '../../controls/AssumedField.tsx';
import { useBelief } from '../../state/belief.ts';
import type { Work } from '../../state/store.ts';
import { toolsOf } from '../../state/tools.ts';
import { useUnfinished } from '../../state/useUnfinished.ts';
import { type Cut, plausibleCut } from './entries.ts';

interface Asked {
  /** null: as it is proposed */
  surfaces: { seat: string; part: Part }[] | null;
  /** mm; null: assumed */
  limit: number | null;
}

const EMPTY: Asked = { surfaces: null, limit: null };

/** The design with these surfaces to be cut; a limit that nobody typed is named as assumed. */
function withCutOf(design: Design, allow: Cut['allow'], limit: number | null): Design {
  const cut: Cut = { ...design.cut, allow: limit === null ? allow : allow.map((entry) => ({ ...entry, limit })) };
  return withAssumed({ ...design, cut }, limit === null ? allow.map((_, i) => `cut.allow[${i}].limit`) : []);
}

/** What stands before any plan. */
function Before({ design }: { design: Design }) {
  const { value } = useBelief(design);
  const { notAsRead } = value ?? {};
  if (!notAsRead) return null;
  return (
    <section className={`verdict ${notAsRead === 'other' ? 'mend' : 'stop'}`} aria-live="polite">
      <h2>{NOT_AS_READ[notAsRead]}</h2>
    </section>
  );
}

/** What the ticks are: a proposal, or the person's own. */
const askedText = (ticked: number, proposed: boolean) =>
  ticked === 0
    ? 'Nothing is ticked.'
    : proposed
      ? `Proposed: the ${ticked} ticked.`
      : `The ${ticked} ticked, once it is planned.`;

export function NothingCut({ work }: { work: Work }) {
  const design = useStore(work.store, (state) => state.design);
  const system = useStore(work.store, (state) => state.system);
  const [written, setWritten] = useUnfinished<Asked>(work, 'cut');
  const { surfaces, limit } = written ?? EMPTY;
  const proposed = plausibleCut(design, toolsOf(design, system));
  const chosen = surfaces ?? proposed;
  const usual = USUAL_LIMIT[toolsOf(design, system)];
  const isChosen = (seat: string, part: Part) => chosen.some((one) => one.seat === seat && one.part === part);
  const tick = (seat: string, part: Part, on: boolean) => {
    const others = chosen.filter((one) => one.seat !== seat || one.part !== part).map((one) => ({ ...one }));
    setWritten({ limit, surfaces: on ? [...others, { seat, part }] : others });
  };
  const plan = () => {
    const allow = chosen.map(({ seat, part }) => ({ seat, part, limit: usual }));
    if (work.change((d) => withCutOf(d, allow, limit)).length === 0) setWritten(null);
  };
  return (
    <>
      <Before design={design} />
      <section className="verdict mend" aria-live="polite">
        <h2>What may be cut? {askedText(chosen.length, surfaces === null)}</h2>
        <p>
          Tick the surfaces that may lose metal, and say how much at most; the plan takes the least that brings every
          film to what is wanted at one position.
        </p>
        {isGuess(design) && (
          <p>{UNGAUGED} It is written down here once the cut is planned; nothing is cut before it.</p>
        )}
      </section>
      <fieldset className="may-cut">
        <legend>surfaces; what is not ticked is forbidden</legend>
        {design.seats.flatMap(({ name }) =>
          (['journal', 'bush'] as const).map((part) => (
            <label key={`${name} ${part}`}>
              <input
                type="checkbox"
                checked={isChosen(name, part)}
                onChange={(event) => tick(name, part, event.target.checked)}
              />{' '}
              {name} {part}
            </label>
          )),
        )}
      </fieldset>
      <div className="locals">
        <AssumedField
          title="Greatest stock off"
          at={quantityAt('cut.allow[0].limit')}
          value={limit}
          otherwise={usual}
          set={(next) => setWritten({ surfaces, limit: next })}
          system={system}
        />
      </div>
      <p className="buttons">
        <button type="button" className="main" disabled={chosen.length === 0} onClick={plan}>
          Plan the cut
        </button>
      </p>
    </>
  );
}
