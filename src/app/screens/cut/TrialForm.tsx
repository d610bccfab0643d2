/** Asks for what a trial assembly told. It starts empty, and nothing is written down that these parts could not be. */

import { type FormEvent, useMemo, useState } from 'react';
import type { Design, Part, Quantity } from '../../../design/definition.ts';
import type { Millimetres } from '../../../design/dimension.ts';
import type { Bound } from '../../../design/place.ts';
import { quantityText, toldText } from '../../../design/quantity.ts';
import { fineText, placeText, type System } from '../../../design/units.ts';
import { partsAre } from '../../../report/assumed.ts';
import { expectedShakeText, expectedText } from '../../../report/cut/asExpected.ts';
import { withToldSafe } from '../../../report/cut/beyondSafe.ts';
import type { CauseReport } from '../../../report/cut/causes.ts';
import { knownToTitle } from '../../../report/cut/causeWords.ts';
import type { CutReport } from '../../../report/cut/definition.ts';
import { diameterOf, FACE_SIGMA, surfaceSigma } from '../../../report/cut/metalDoubt.ts';
import { refusedFor, refusedTrial } from '../../../report/cut/refusedTrial.ts';
import { blueThickness } from '../../../report/cut/toCut.ts';
import type { Result } from '../../../worker/jobs.ts';
import { above, atLeast, atMost, LocalField } from '../../controls/LocalField.tsx';
import { TypedField } from '../../controls/TypedField.tsx';
import { Entered } from '../../record/Entered.tsx';
import { bare } from '../../record/entered.ts';
import type { Work } from '../../state/store.ts';
import { useRested } from '../../state/useRested.ts';
import { useSolved } from '../../state/useSolved.ts';
import { type Trial, withTrial } from './entries.ts';
import { OtherSurface } from './OtherSurface.tsx';
import { ToKnown } from './ToKnown.tsx';
import { type Draft, INDICATOR, type Measure, metalAlone, tellsMetal, trialOf, usualShake } from './trialDraft.ts';

interface Props {
  work: Work;
  design: Design;
  /** as it stands before this trial */
  cut: CutReport;
  draft: Draft;
  /** changes the newest draft there is */
  change(edit: (draft: Draft) => Draft): void;
  /** place of the trial that is corrected; a new one without */
  index?: number | undefined;
  /** why it was refused as it stands, if it was */
  refused: string | undefined;
  refuse(why: string): void;
  /** leads to the field of how well that metal is known */
  toCut(cause: CauseReport): void;
  system: System;
  close(): void;
}

/** mm: bounds of the design file. */
const MOST_STOCK = 10;
const MOST_MOVE = 1000;

/** Which side of the datum a position is on. */
const SIDES = ['noseward of the datum', 'rearward of the datum'] as const;

/** Worked out beside the form, many pairs being pressed home and shaken; null while it is not known. */
function useExpected(design: Design, earlier: readonly Trial[], shaken: Trial): Result<'expectedAtTrial'> | null {
  const asked = JSON.stringify([earlier, shaken]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is asked, by its text
  const then = useMemo(
    (): Design => ({ ...design, cut: { ...design.cut!, trials: [...earlier, shaken] } }),
    [design, asked],
  );
  const { value, fresh } = useSolved('expectedAtTrial', useRested(then, REST));
  return fresh ? value : null;
}

/** ms without a change before a shake is asked for. */
const REST = 400;

const touchText = (
  told: Result<'expectedAtTrial'> | null,
  read: Parameters<typeof expectedText>[1],
  system: System,
): string => (!told ? '' : told.touch ? expectedText(told.touch, read, system) : 'Nothing stops this journal.');

const shakeText = (
  told: Result<'expectedAtTrial'> | null,
  read: Parameters<typeof expectedShakeText>[1],
  system: System,
): string =>
  !told ? '' : told.shake ? expectedShakeText(told.shake, read, system) : 'These parts have no shake there.';

export function TrialForm({
  work,
  design,
  cut,
  draft,
  change,
  index,
  refused: stands,
  refuse,
  toCut,
  system,
  close,
}: Props) {
  const [open, setOpen] = useState<ReadonlySet<string>>(new Set());
  const [unfinished, setUnfinished] = useState('');
  const refused = unfinished || (stands ?? '');
  const earlier: readonly Trial[] = (design.cut?.trials ?? []).slice(0, index);
  const edit = (how: (now: Draft) => Partial<Draft>) => {
    setUnfinished('');
    change((now) => ({ ...now, ...how(now) }));
  };
  const set = (part: Partial<Draft>) => edit(() => part);
  /** Fields that stand on the form; one that is gone waits for nobody. */
  const standing: string[] = [];
  const usual = usualShake(design);
  // whatever is typed: the place where it is read decides what it should be
  const shaken = trialOf({ ...draft, standOff: null, shake: 1, shakeSigma: null, blue: {} }, design, system);
  const expected = useExpected(design, earlier, shaken);
  const read = (value: number | null, sigma: number | null) =>
    value === null ? null : { value, sigma: sigma ?? INDICATOR[system] };
  const write = (event: FormEvent) => {
    event.preventDefault();
    const pending = [...open].filter((title) => standing.includes(title));
    if (pending.length > 0) return setUnfinished(`First finish what is typed: ${pending.join(', ')}.`);
    put(trialOf(draft, design, system));
  };
  const put = (written: Trial) => {
    const trial = index === undefined ? withToldSafe(design, cut, written) : written;
    const reason =
      refusedTrial(design, earlier, trial, system) ?? work.change((d) => withTrial(d, trial, index))[0]?.message;
    if (reason !== undefined) {
      // What was read and does not go with the rest stands against all that is told of before it.
      const tell = trial.standOff || trial.shake || trial.blue ? refuse : setUnfinished;
      return tell(`Not written down. ${reason}`);
    }
    close();
  };
  const trial = JSON.stringify([stands, draft, earlier]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: what was refused, by its text
  const causes = useMemo(
    () => (stands === undefined ? [] : refusedFor(design, earlier, trialOf(draft, design, system))),
    [design, trial],
  );
  /** What one micrometre square to a surface is in its diameter. */
  const acrossOf = (seat: string, part: Part) => Math.abs(diameterOf(design, seat, part, 1));
  const perSquare = (seat: string, part: Part) => (draft.measure === 'square' ? 1 : acrossOf(seat, part));
  const otherMeasure = (seat: string, part: Part, normal: Millimetres) =>
    draft.measure === 'square'
      ? `That is ${fineText(acrossOf(seat, part) * normal, system)} less in diameter.`
      : `That is ${fineText(normal, system)} square to the surface.`;
  const fine = (mm: Millimetres) => quantityText('fine', mm, system);
  const field = (
    title: string,
    about: string,
    quantity: Quantity,
    value: number | null,
    change: (value: number | null, now: Draft) => Partial<Draft>,
    bounds: Bound[],
    instead?: string,
    sides?: readonly [above: string, below: string],
  ) => {
    standing.push(title);
    return (
      <LocalField
        key={title}
        title={title}
        about={about}
        quantity={quantity}
        value={value}
        set={(typed) => edit((now) => change(typed, now))}
        clear={() => edit((now) => change(null, now))}
        pending={(pending) =>
          setOpen((now) => new Set(pending ? [...now, title] : [...now].filter((name) => name !== title)))
        }
        {...(instead !== undefined && { instead })}
        system={system}
        bounds={bounds}
        sides={sides}
      />
    );
  };
  return (
    <form
      className="trial-form"
      aria-label={index === undefined ? 'A new trial' : `Trial ${index + 1}, corrected`}
      onSubmit={write}
    >
      <fieldset>
        <legend>
          Taken since {earlier.length === 0 ? `the parts were as ${partsAre(design)}` : 'the trial before'}
        </legend>
        <label className="told-by-measure">
          <span>Told</span>
          <select value={draft.measure} onChange={({ target }) => set({ measure: target.value as Measure })}>
            <option value="square">square to the surface</option>
            <option value="diameter">in diameter, as gauges read it</option>
          </select>
        </label>
        <div className="locals">
          {draft.taken.map(({ seat, part, normal, sigma }) => {
            const change = (entry: Partial<Draft['taken'][number]>, now: Draft) => ({
              taken: now.taken.map((one) => (one.seat === seat && one.part === part ? { ...one, ...entry } : one)),
            });
            return [
              field(
                `Off the ${seat} ${part}`,
                // The other measure beside it: a figure typed in the wrong one is seen.
                normal === null || normal === 0 ? '' : otherMeasure(seat, part, normal),
                'fine',
                normal === null ? null : normal * perSquare(seat, part),
                (value, now) => change({ normal: value === null ? null : value / perSquare(seat, part) }, now),
                [atLeast(0), atMost(MOST_STOCK)],
                'nothing',
              ),
              normal
                ? field(
                    knownToTitle({ seat, part }),
                    'Standard uncertainty: gauged before and after it is less than by the dial.',
                    'fine',
                    sigma === undefined ? null : sigma * perSquare(seat, part),
                    (value, now) => change({ sigma: value === null ? undefined : value / perSquare(seat, part) }, now),
                    [above(0), atMost(1)],
                    toldText('fine', perSquare(seat, part) * surfaceSigma(design, seat, part, normal), system),
                  )
                : null,
            ];
          })}
          {draft.faces.map(({ name, off, sigma }) => {
            const change = (entry: Partial<Draft['faces'][number]>, now: Draft) => ({
              faces: now.faces.map((one) => (one.name === name ? { ...one, ...entry } : one)),
            });
            return [
              field(
                `Off ${name}`,
                'Below 0: made thicker.',
                'fine',
                off,
                (value, now) => change({ off: value }, now),
                [atLeast(-MOST_STOCK), atMost(MOST_STOCK)],
                'nothing',
              ),
              off
                ? field(
                    knownToTitle({ face: name }),
                    'Standard uncertainty of its thickness.',
                    'fine',
                    sigma ?? null,
                    (value, now) => change({ sigma: value ?? undefined }, now),
                    [above(0), atMost(1)],
                    fine(FACE_SIGMA),
                  )
                : null,
            ];
          })}
          <OtherSurface
            seats={design.seats}
            taken={draft.taken}
            add={(surface) => edit((now) => ({ taken: [...now.taken, { ...surface, normal: null }] }))}
          />
        </div>
      </fieldset>
      <fieldset>
        <legend>Stand-off: position of first touch</legend>
        <div className="locals">
          {field(
            'Stand-off',
            touchText(expected, read(draft.standOff, draft.standOffSigma), system),
            'fine',
            draft.standOff,
            (standOff) => ({ standOff }),
            [atLeast(-MOST_MOVE), atMost(MOST_MOVE)],
            'not read',
            SIDES,
          )}
          {field(
            'Stand-off known to',
            'Standard uncertainty.',
            'fine',
            draft.standOffSigma,
            (standOffSigma) => ({ standOffSigma }),
            [above(0), atMost(1)],
            fine(INDICATOR[system]),
          )}
        </div>
      </fieldset>
      <fieldset>
        <legend>Shake: indicator travel from side to side</legend>
        <div className="locals">
          {field(
            'Shake',
            `All the indicator travels. ${shakeText(expected, read(draft.shake, draft.shakeSigma), system)}`,
            'fine',
            draft.shake,
            (shake) => ({ shake }),
            [above(0), atMost(100)],
            'not read',
          )}
          {field(
            'Shake known to',
            'Standard uncertainty.',
            'fine',
            draft.shakeSigma,
            (shakeSigma) => ({ shakeSigma }),
            [above(0), atMost(1)],
            fine(INDICATOR[system]),
          )}
          {field(
            'Journal held at',
            'Its position while it was shaken.',
            'fine',
            draft.position,
            (position) => ({ position }),
            [atLeast(-MOST_MOVE), atMost(MOST_MOVE)],
            fineText(usual.position, system),
            SIDES,
          )}
          {field(
            'Indicator at station',
            'Toward the nose above 0.',
            'length',
            draft.indicator,
            (indicator) => ({ indicator }),
            [atLeast(-10_000), atMost(10_000)],
            placeText(usual.indicator, system),
          )}
          {field(
            'Pulled toward',
            'From x toward y.',
            'phase',
            draft.direction,
            (direction) => ({ direction }),
            [atLeast(-360), atMost(360)],
            quantityText('phase', usual.direction, system),
          )}
        </div>
      </fieldset>
      <fieldset>
        <legend>The blue, at first touch</legend>
        <div className="locals">
          {design.seats.map(({ name }) => (
            <label key={name} className="blue-seen">
              <span>{name}</span>
              <select
                value={draft.blue[name] === undefined ? '' : `${draft.blue[name]}`}
                onChange={({ target }) =>
                  edit(({ blue: { [name]: _, ...others } }) => ({
                    blue: target.value === '' ? others : { ...others, [name]: target.value === 'true' },
                  }))
                }
              >
                <option value="">not looked at</option>
                <option value="true">prints</option>
                <option value="false">stays clean</option>
              </select>
            </label>
          ))}
        </div>
        <p className="fine">
          A seat is taken to print where its parts are nearer than {fine(blueThickness(design))}, and to stay clean
          where they are further apart.{' '}
          {design.print?.thickness === undefined
            ? 'So thick the blue is assumed to be: say how thick yours is on Fit, under “Seating, shake, blue”.'
            : 'So thick the blue is on Fit, under “Seating, shake, blue”.'}
        </p>
      </fieldset>
      {/* Enter takes what is typed in a field here; it does not write the trial down. */}
      <fieldset onKeyDown={(event) => event.key === 'Enter' && event.preventDefault()}>
        <legend>When, who, stage</legend>
        <Entered told={draft.told} change={(told) => set({ told: bare(told) })} note={false} />
      </fieldset>
      <div className="local">
        <label htmlFor="trial-note">Note</label>
        <TypedField
          id="trial-note"
          keys="words"
          shown={draft.note}
          about="Anything worth remembering."
          take={(note) => {
            set({ note: note.slice(0, 2_000) });
            return null;
          }}
        />
      </div>
      {refused !== '' && (
        <p className="error" role="alert">
          {refused}
        </p>
      )}
      <p className="buttons">
        <button type="submit" className="main">
          Write it down
        </button>
        <ToKnown causes={causes} go={toCut} />
        {refused !== '' && tellsMetal(draft) && draft.standOff !== null && (
          <button type="button" onClick={() => put(trialOf(metalAlone(draft), design, system))}>
            Write down the metal alone
          </button>
        )}
        <button type="button" onClick={close}>
          Leave it
        </button>
      </p>
    </form>
  );
}
