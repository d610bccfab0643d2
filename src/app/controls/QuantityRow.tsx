/** A number of the design, made from its definition: its field, what is assumed of it, and what is not taken yet. */
import { useState } from 'react';
import { useStore } from 'zustand';
import { isAssumed, withKnown } from '../../design/assumed.ts';
import { type QuantityAt, quantityAt, valueAt } from '../../design/place.ts';
import { hintText, inSystem, quantityText, restingText, typedField } from '../../design/quantity.ts';
import { madeIn } from '../../design/tools.ts';
import { type AngleWay, angleText, type System, taperOfHalfAngle } from '../../design/units.ts';
import { ANGLE_TITLES, useAngles } from '../state/angles.ts';
import { type Draft, draftsOf, leave, typeAt, useHeldText } from '../state/draft.ts';
import { useWork } from './context.ts';
import { keysFor } from './keys.ts';
import { Labelled } from './Labelled.tsx';
import { TypedField } from './TypedField.tsx';

export interface QuantityControl {
  kind: 'quantity';
  path: string;
  title?: string;
  /** what holds where the design says nothing, where the definition has it otherwise; in the unit of the file */
  otherwise?: number;
  /** the size of a tool, in whichever system that is made in */
  tool?: boolean;
  /** the two ways it may go, above nought and below, chosen beside the field in place of a sign */
  sides?: readonly [above: string, below: string];
}

export function QuantityRow({ path, title, otherwise, tool, sides }: QuantityControl) {
  const work = useWork();
  const liked = useStore(work.store, (state) => state.system);
  const value = useStore(work.store, (state) => valueAt(state.design, path)) as number | undefined;
  const assumed = useStore(work.store, (state) => isAssumed(state.design, path));
  const [, redraw] = useState(0);
  const way = useAngles();
  const held = useHeldText(work, path);
  const system = tool && value !== undefined ? madeIn(value, liked) : liked;
  const at = quantityAt(path, work.store.getState().design);
  const name = title ?? (at.title === ANGLE_TITLES.half ? ANGLE_TITLES[way] : at.title);
  const holds = otherwise ?? at.default;
  const hint = hintText(at, system, holds);
  const about = at.quantity === 'angle' ? `${hint}. Type degrees, or 6 incl, 1:20, 0.6 in/ft` : hint;
  const sized = (number: number) => (sides ? Math.abs(number) : number);
  const text = (number: number) => quantityText(at.quantity, sized(number), system, way);
  const rest = (number: number) => restingText(at.quantity, sized(number), system, way);
  const own = value !== undefined && at.quantity === 'share' ? typedAs(work, path, value) : null;
  const below = value !== undefined && value < 0;
  const side = sides && { names: sides, below };
  return (
    <Labelled title={name} about={about}>
      {(id) => (
        <div data-path={path} className="quantity">
          <TypedField
            id={id}
            shown={value === undefined ? '' : (own ?? text(value))}
            resting={value === undefined ? '' : (own ?? rest(value))}
            about={`${about}.`}
            instead={holds === undefined ? undefined : rest(holds)}
            beside={at.quantity === 'angle' && value !== undefined ? taperText(value, way) : undefined}
            take={(typed) => {
              take(work, path, at, typed, { system, way, below: side?.below ?? false });
              // The same chance said otherwise changes nothing but its text.
              redraw((times) => times + 1);
              return null;
            }}
            held={held}
            leave={() => leave(work, path)}
            assumed={assumed}
            keys={keysFor(at, system, sides !== undefined)}
          />
          {side && value !== undefined && value !== 0 && (
            <select
              aria-label={`${name}: which way`}
              value={side.below ? 'below' : 'above'}
              onChange={() => typeAt(work, path, { text: '', put: { value: -value } })}
            >
              <option value="above">{side.names[0]}</option>
              <option value="below">{side.names[1]}</option>
            </select>
          )}
          {assumed && !held && <Assumed path={path} title={name} />}
        </div>
      )}
    </Labelled>
  );
}

/** A chance is said in several ways, and nobody's is put into another's: 1 in 200 stays so. */
const typedBy = new WeakMap<object, Map<string, { text: string; value: number }>>();

function rememberTyped(work: object, path: string, typed: { text: string; value: number }): void {
  typedBy.set(work, new Map([...(typedBy.get(work) ?? []), [path, typed]]));
}

/** The text the value there was typed as; null of another value. */
function typedAs(work: object, path: string, value: number): string | null {
  const typed = typedBy.get(work)?.get(path);
  return typed?.value === value ? typed.text : null;
}

/** Takes what was typed, or keeps it in the field. A sign that is typed counts before the side that is chosen. */
function take(
  work: ReturnType<typeof useWork>,
  path: string,
  at: QuantityAt,
  text: string,
  { system, way, below }: { system: System; way: AngleWay; below: boolean },
): void {
  const hold = (draft: Draft) => typeAt(work, path, draft);
  if (text.trim() === '' && at.optional) {
    hold({ text, put: { value: undefined } });
    return;
  }
  const typed = typedField(at, text, system, way);
  if (!typed.ok) {
    // What is wrong is said of the file, in its units; a person reads it in the unit of the field.
    hold({ text, why: inSystem(typed.message, system, at.quantity) });
    return;
  }
  if (at.quantity === 'share') rememberTyped(work, path, { text: text.trim(), value: typed.value });
  const signed = /^\s*[+\-−]/.test(text);
  const value = below && !signed ? -typed.value : typed.value;
  // Typed as it is already: nothing to take, and what is assumed is so.
  const { design } = work.store.getState();
  if (value !== valueAt(design, path) || path in draftsOf(work.store.getState())) hold({ text, put: { value } });
  else if (isAssumed(design, path)) work.change((d) => withKnown(d, path));
}

function Assumed({ path, title }: { path: string; title: string }) {
  const work = useWork();
  return (
    <button
      type="button"
      className="so"
      aria-label={`${title}: it is so`}
      title="Assumed. It is read or drawn so: assumed no more"
      onClick={() => work.change((design) => withKnown(design, path))}
    >
      It is so
    </button>
  );
}

/** The same angle as the trade also writes it. */
function taperText(halfAngle: number, way: AngleWay): string {
  const taper = Math.abs(taperOfHalfAngle(halfAngle));
  if (taper === 0) return 'straight';
  const ways = [
    ...(way === 'half' ? [] : [`half ${angleText(Math.abs(halfAngle))}`]),
    `included ${angleText(Math.abs(2 * halfAngle))}`,
    `1:${(1 / taper).toFixed(4)}`,
    `${(taper * 12).toFixed(4)} in/ft`,
  ];
  return ways.join(' · ');
}
