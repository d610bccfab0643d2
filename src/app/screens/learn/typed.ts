/** An answer as it is typed and told: in the unit of the question, or any other that goes after the number. */
import type { Quantity } from '../../../design/definition.ts';
import { quantityText, typedQuantity } from '../../../design/quantity.ts';
import { TENTH, type Typed, typedLength } from '../../../design/units.ts';
import type { ToldAs } from '../../../lessons/definition.ts';
import type { Speech } from '../../../lessons/template.ts';

const QUANTITY: Record<ToldAs, Quantity> = {
  fine: 'fine',
  reckoned: 'fine',
  tenths: 'fine',
  micrometres: 'fine',
  sided: 'fine',
  length: 'length',
  angle: 'angle',
  turn: 'phase',
  count: 'ratio',
  number: 'ratio',
  ratio: 'ratio',
  share: 'ratio',
  force: 'force',
  speed: 'speed',
  temperature: 'temperature',
  warmer: 'warmer',
};

const FULL = 360;
const HUNDRED = 100;
/** What one of the unit typed is in that of a formula. */
const scaleOf = (as: ToldAs) => (as === 'turn' ? 1 / FULL : as === 'share' ? 1 / HUNDRED : 1);

export function typedAnswer(text: string, as: ToldAs, { system, way }: Speech): Typed {
  if (text.trim() === '') return { ok: false, message: 'type your answer first' };
  if (as === 'tenths' || as === 'micrometres') return typedLength(text, as === 'tenths' ? TENTH : 0.001);
  const plain = as === 'share' ? text.replace(/(in|of) 100|%/, '') : text;
  const at = { title: '', description: '', quantity: QUANTITY[as], unit: '', bounds: [], optional: false };
  const typed = typedQuantity(at, plain, system, way);
  return typed.ok ? { ok: true, value: typed.value * scaleOf(as) } : typed;
}

/** As it would be typed. */
export function answerText(value: number, as: ToldAs, { system, way }: Speech): string {
  if (as === 'tenths') return quantityText('fine', value, 'inch', way);
  if (as === 'micrometres') return quantityText('fine', value, 'metric', way);
  return quantityText(QUANTITY[as], Number((value / scaleOf(as)).toPrecision(4)), system, way);
}

/** The unit a number alone is taken in. */
export const unitHint = (as: ToldAs, speech: Speech): string =>
  as === 'share'
    ? 'in 100'
    : answerText(0, as, speech)
        .replace(/^[−\d.]+ ?/, '')
        .trim();

/** Size and name of the unit that a kind of figure is told in. */
export function unitOf(as: ToldAs, speech: Speech): { size: number; name: string } {
  const name = unitHint(as, speech);
  const shown = Number(
    answerText(1, as, speech)
      .replace('−', '-')
      .replace(/[^\d.eE-]+.*$/, ''),
  );
  return { size: 1 / shown, name };
}
