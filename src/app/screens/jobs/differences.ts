/** What differs between two designs, a row a field: by its name, with both values in the person's units. */
import type { Design } from '../../../design/definition.ts';
import { quantityIfAt } from '../../../design/place.ts';
import { quantityText } from '../../../design/quantity.ts';
import type { AngleWay, System } from '../../../design/units.ts';
import { type Patch, type Place, patchBetween } from '../../../jobs/patch.ts';
import { ANGLE_TITLES } from '../../state/angles.ts';

export interface Difference {
  /** seat and part, or section */
  where: string;
  what: string;
  before: string;
  after: string;
  /** how much it grew; nothing where it is no number */
  by: string;
}

type Change = Patch[number];

/** Lists that are one thing to a person, however many numbers they hold. */
const WHOLE = new Set(['profile', 'lobes', 'order', 'viscosityPoints']);
const NONE = '—';

/** `way`: how the person says angles. */
export function differences(before: Design, after: Design, system: System, way: AngleWay = 'half'): Difference[] {
  const rows = patchBetween(byName(before), byName(after)).map((change) =>
    rowOf(change, [byName(before), byName(after)], [before, after], { system, way }),
  );
  return rows.filter((row, i) => rows.findIndex(({ where, what }) => where === row.where && what === row.what) === i);
}

/** Seats by their names, so that one is compared with itself wherever it stands in the list. */
const byName = ({ seats, $schema: _, conepair: __, ...rest }: Design) => ({
  seats: Object.fromEntries(seats.map(({ name, ...seat }) => [name, seat])),
  ...rest,
});

interface Says {
  system: System;
  way: AngleWay;
}

function rowOf(
  change: Change,
  [was, is]: readonly [unknown, unknown],
  [before, after]: readonly [Design, Design],
  { system, way }: Says,
): Difference {
  const whole = change.at.findIndex((step) => typeof step === 'string' && WHOLE.has(step));
  const at = whole < 0 ? change.at : change.at.slice(0, whole + 1);
  const [old, fresh] = [valueAt(was, at), valueAt(is, at)];
  const quantity = quantityIfAt(pathOf(at, after), after) ?? quantityIfAt(pathOf(at, before), before);
  const text = (value: unknown) =>
    quantity && typeof value === 'number' ? quantityText(quantity.quantity, value, system, way) : plainText(value);
  // Left out, what holds then is what is gone from.
  const number = (value: unknown) => (value === undefined ? quantity?.default : value);
  const [from, to] = [number(old), number(fresh)];
  const grew = quantity && typeof from === 'number' && typeof to === 'number' ? to - from : null;
  // How far an angle is off is told in degrees however it is said, of the half or the included one.
  const inWay = (by: number) => (quantity?.quantity === 'angle' && way === 'included' ? 2 * by : by);
  return {
    ...nameOf(at, titleIn(quantity?.title, way)),
    before: text(old),
    after: text(fresh),
    by:
      grew === null
        ? ''
        : `${grew > 0 ? '+' : ''}${quantityText(differenceOf(quantity!.quantity), round(inWay(grew)), system)}`,
  };
}

/** A difference of temperatures is none; one of lengths is told finely. */
const differenceOf = <Q extends string>(quantity: Q) =>
  quantity === 'temperature' ? 'warmer' : quantity === 'length' ? 'fine' : quantity;

/** A half angle is called what its figure says. */
const titleIn = (title: string | undefined, way: AngleWay) => (title === ANGLE_TITLES.half ? ANGLE_TITLES[way] : title);

/** The noise of a subtraction left out. */
const round = (value: number) => Number(value.toPrecision(6));

const valueAt = (node: unknown, at: Place): unknown =>
  at.reduce<unknown>(
    (now, step) =>
      typeof now === 'object' && now !== null ? (now as Record<string | number, unknown>)[step] : undefined,
    node,
  );

/** A place by names of seats as a path of the file, where the seats are a list. */
function pathOf(at: Place, { seats }: Design): string {
  return at
    .map((step, i) =>
      i === 1 && at[0] === 'seats'
        ? `[${seats.findIndex(({ name }) => name === step)}]`
        : typeof step === 'number'
          ? `[${step}]`
          : `.${step}`,
    )
    .join('')
    .replace(/^\./, '');
}

function nameOf(at: Place, title: string | undefined): Pick<Difference, 'where' | 'what'> {
  const steps = at[0] === 'seats' ? at.slice(1) : at;
  const words = steps.map((step) => (typeof step === 'number' ? `${step + 1}` : inWords(step)));
  const last = words.pop() ?? '';
  return {
    where: words
      .join(' ')
      .replace(/readings (\d+)/, 'reading $1')
      .replace(/trials (\d+)/, 'trial $1'),
    what: title ?? (at[0] === 'seats' && at.length === 2 ? `seat ${last}` : last),
  };
}

/** A key of the file as words; the names of seats stay as they are. */
const inWords = (key: string) =>
  /^[a-z][a-zA-Z]*$/.test(key) ? key.replace(/[A-Z]/g, (c) => ` ${c.toLowerCase()}`) : key;

function plainText(value: unknown): string {
  if (value === undefined) return NONE;
  if (Array.isArray(value)) return value.length === 1 ? '1 entry' : `${value.length} entries`;
  if (typeof value === 'object') return 'there';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  return String(value);
}
