/**
 * What the screens say of each kind of reading, what its entry asks for and starts with: another kind is one more entry
 * here, and its drawing (SetUp.tsx). Tools go by their own names, whatever units the screen shows.
 */
import type { Design, Part, Seat } from '../../../design/definition.ts';
import type { Millimetres } from '../../../design/dimension.ts';
import type { enteredWithNote } from '../../../design/recordDefinition.ts';
import { toolExact } from '../../../design/rounded.ts';
import { madeIn, toolText } from '../../../design/tools.ts';
import { fineText, lengthText, placeText, type System, sidedText, TENTH } from '../../../design/units.ts';
import { ballFor, rollFor, sineSetUp } from '../../../report/measure/bench.ts';
import type { Reading } from '../../../report/measure/kinds.ts';

export { type Reading, tellsSize } from '../../../report/measure/kinds.ts';

export type Kind = Reading['kind'];
export type Of<K extends Kind> = Extract<Reading, { kind: K }>;
/** What every reading has, whatever its kind. */
type OfAll = 'kind' | 'seat' | 'part' | 'value' | 'sigma' | 'after' | keyof typeof enteredWithNote;
/** The numbers of a set-up. */
type AskedOf<R> = R extends Reading ? Exclude<keyof R, OfAll> : never;
export type Asked = AskedOf<Reading>;

/** Where a new entry is to be taken. */
interface Place {
  seat: Seat;
  part: Part;
  design: Design;
  /** whose tools are offered */
  tools: System;
}

export interface KindSaid<K extends Kind> {
  name: string;
  /** how it is taken, in one or two sentences */
  how: string;
  /** how the shape makes the reading, as a person would write it on the bench */
  formula: string;
  /** where that comes from */
  source: string;
  /** what else the entry asks for, beside seat, part, value and uncertainty */
  asks: readonly AskedOf<Of<K>>[];
  /** what the value above nought and below it is called, chosen beside the field in place of a sign */
  sides?: readonly [above: string, below: string];
  /** on which part it can be taken; none where it is taken on the pair */
  parts: readonly Part[];
  /** the set-up without what was read; `on`: the surface */
  setUp(reading: Of<K>, on: string, system: System): string;
  /** what was read, after the set-up and a colon */
  read(reading: Of<K>, system: System): string;
  /** the set-up of a gauge in a few words */
  short(reading: Of<K>, system: System): string;
  /** the set-up a new entry starts with, half way along the surface */
  start(place: Place): Omit<Of<K>, 'kind' | 'value' | 'seat' | 'part'>;
}

/** What a new entry starts with in a metric and in an inch shop (mm): common practice, no source. */
const USUAL = {
  metric: { micrometer: 0.002, indicator: 0.001, place: 0.001 },
  inch: { micrometer: TENTH, indicator: TENTH / 2, place: 10 * TENTH },
};

/** A length that the shop's own scale shows. */
const set = (mm: Millimetres, tools: System) => toolExact(Math.round(mm / USUAL[tools].place) * USUAL[tools].place);
const middle = ({ seat, part, tools }: Place) => set((seat[part].from + seat[part].to) / 2, tools);
const sigma = (gauge: 'micrometer' | 'indicator', { tools }: Place) => USUAL[tools][gauge];

/** A stack is made of the blocks that go with the bar; which end it lifts, its sign in the file, is not told here. */
export const stackOf = ({ stack, bar }: { stack: number; bar: number }, system: System) =>
  lengthText(Math.abs(stack), madeIn(bar, system));

const size = ({ value }: { value: number }, system: System) => fineText(Math.abs(value), system);

export const KINDS: { readonly [K in Kind]: KindSaid<K> } = {
  diameter: {
    name: 'Diameter',
    how: 'Micrometer or bore gauge square to the axis at a known station.',
    formula: 'reading = diameter + 2·(station − its station)·tan a',
    source: 'definition of a cone',
    asks: ['station'],
    parts: ['journal', 'bush'],
    setUp: ({ station }, on, system) => `Diameter of ${on} at station ${placeText(station, system)}`,
    read: ({ value }, system) => lengthText(value, system),
    short: ({ station }, system) => `Diameter at station ${placeText(station, system)}`,
    start: (place) => ({ sigma: sigma('micrometer', place), station: middle(place) }),
  },
  overRolls: {
    name: 'Over two rolls',
    how: 'The journal stands on end on a plate; two equal rolls on equal stacks against its sides, and a micrometer over both. Where metal is in the way of stacks at either end, it is held between centres.',
    formula: 'reading = diameter at the roll centres + roll·(1 + 1/cos a)',
    source: 'tangency; handbooks, “measuring tapers with rolls” (from memory)',
    asks: ['roll', 'station'],
    parts: ['journal'],
    setUp: ({ roll, station }, on, system) =>
      `Over two rolls of ${toolText(roll, system)} on ${on}, centres at station ${placeText(station, system)}`,
    read: ({ value }, system) => lengthText(value, system),
    short: ({ roll, station }, system) =>
      `Over two rolls of ${toolText(roll, system)}, centres at station ${placeText(station, system)}`,
    start: (place) => ({
      sigma: sigma('micrometer', place),
      roll: rollFor(place.design, place.seat[place.part].to - place.seat[place.part].from, place.tools),
      station: middle(place),
    }),
  },
  ballDepth: {
    name: 'Ball depth',
    sides: ['down to its top', 'proud of the face'],
    how: 'A ball resting in the bore; a depth gauge from a clean face down to its top. Two balls give the angle.',
    formula: 'reading = face − (centre of the ball + ball/2); at the centre, radius·cos a = ball/2',
    source: 'tangency; handbooks, “measuring taper holes with balls” (from memory)',
    asks: ['ball', 'face'],
    parts: ['bush'],
    setUp: ({ ball, face }, on, system) =>
      `Ball of ${toolText(ball, system)} resting in ${on}, depth from the face at station ${placeText(face, system)}`,
    read: ({ value }, system) =>
      `${lengthText(Math.abs(value), system)} ${value < 0 ? 'proud of it' : 'down to its top'}`,
    short: ({ ball, face }, system) =>
      `Ball depth, ball ${toolText(ball, system)}, from the face at ${placeText(face, system)}`,
    start: (place) => ({
      sigma: sigma('micrometer', place),
      ball: ballFor(place.design, place.design.seats.indexOf(place.seat), place.tools),
      face: place.seat[place.part].to,
    }),
  },
  sineRise: {
    name: 'Sine bar',
    sides: ['rises', 'falls'],
    how: 'The part held with its axis along a sine bar over a stack; an indicator run along the uppermost line of a journal toward its large end, or the lowermost of a bore toward its small end.',
    formula: 'reading = travel·tan(a − arcsin(stack/bar))',
    source: 'sine rule of the bar; handbooks’ sine-bar constants',
    asks: ['bar', 'stack', 'travel'],
    parts: ['journal', 'bush'],
    setUp: ({ bar, stack, travel }, on, system) =>
      `Sine bar of ${toolText(bar, system)} ${stack === 0 ? 'lying level' : `on a stack of ${stackOf({ stack, bar }, system)}`} under ${on}, travel ${placeText(travel, system)}`,
    read: (reading, system) =>
      reading.value === 0
        ? 'the indicator stays'
        : `the indicator ${reading.value > 0 ? 'rises' : 'falls'} ${size(reading, system)}`,
    short: ({ stack }, system) => `Sine bar, stack ${toolText(stack, system)}`,
    start: (place) => ({
      sigma: sigma('indicator', place),
      ...sineSetUp(place.design, place.seat[place.part].halfAngle, place.tools),
      travel: set(0.7 * (place.seat[place.part].to - place.seat[place.part].from), place.tools),
    }),
  },
  straightness: {
    name: 'Straightness',
    sides: ['proud', 'hollow'],
    how: 'An indicator along the line, set to nothing at both ends; what it shows at a station between.',
    formula: 'reading = how far metal stands proud of the straight line from end to end',
    source: 'end-point reference line, ISO 12780-1 (from memory)',
    asks: ['station'],
    parts: ['journal', 'bush'],
    setUp: ({ station }, on, system) => `Straightness of ${on} at station ${placeText(station, system)}`,
    read: (reading, system) =>
      reading.value === 0 ? 'straight' : `${size(reading, system)} ${reading.value > 0 ? 'proud' : 'hollow'}`,
    short: ({ station }, system) => `Straightness at station ${placeText(station, system)}`,
    start: (place) => ({ sigma: sigma('indicator', place), station: middle(place) }),
  },
  standOff: {
    name: 'Stand-off',
    sides: ['noseward of the datum', 'rearward of the datum'],
    how: 'Trial assembly, dry and clean: the journal pressed gently home and its position read.',
    formula: 'reading = position at which the first of all seats touches',
    source: 'this program’s own contact of lines, exact',
    asks: [],
    parts: [],
    setUp: () => 'Stand-off on trial assembly',
    read: ({ value }, system) => `first touch ${sidedText(value, system)}`,
    short: () => 'Stand-off',
    start: (place) => ({ sigma: sigma('indicator', place) }),
  },
  shake: {
    name: 'Shake',
    how: 'The position held, the nose pulled from side to side, an indicator against it.',
    formula: 'reading = total indicator travel that all seats together leave',
    source: 'this program’s own reckoning of the rigid spindle',
    asks: ['indicator', 'position', 'direction'],
    parts: [],
    setUp: ({ indicator, position, direction }, _, system) =>
      `Shake at station ${placeText(indicator, system)}, the journal ${sidedText(position, system)}${direction === 0 ? '' : `, pulled at ${direction}°`}`,
    read: (reading, system) => `${size(reading, system)} from side to side`,
    short: ({ position }, system) => `Shake at position ${fineText(position, system)}`,
    start: (place) => ({
      sigma: sigma('indicator', place),
      indicator: place.design.play?.indicator ?? place.seat[place.part].to,
      position: place.design.position ?? 0,
      direction: 0,
    }),
  },
};

/** What is said of a reading's own kind. */
const kindOf = (reading: Reading) => KINDS[reading.kind] as KindSaid<Kind>;

/** The set-up, without what was read. */
export const setUpText = (reading: Reading, system: System): string =>
  kindOf(reading).setUp(reading, 'seat' in reading ? `the ${reading.seat} ${reading.part}` : '', system);

/** The whole reading. */
export const readingText = (reading: Reading, system: System): string =>
  `${setUpText(reading, system)}: ${kindOf(reading).read(reading, system)}`;

/** The set-up of a gauge in a few words. */
export const gaugeText = (reading: Reading, system: System): string => kindOf(reading).short(reading, system);

/** When it was read, in a notebook from before and after cuts. */
export const whenText = ({ after = 0 }: Reading): string => (after === 0 ? 'before any cut' : `after trial ${after}`);

/** The set-up a new entry of a kind starts with; nothing is read yet. */
export function startOf(kind: Kind, place: Place): Reading {
  const { seat, part } = place;
  const on = KINDS[kind].parts.length === 0 ? {} : { seat: seat.name, part };
  return { kind, ...on, value: 0, ...KINDS[kind].start(place) } as Reading;
}

export const KIND_NAMES = Object.keys(KINDS) as Kind[];

interface AskedSaid {
  /** the size of a tool, which has its own system */
  tool?: true;
  sides?: KindSaid<Kind>['sides'];
}

const ASKED: Readonly<Record<Asked, AskedSaid>> = {
  station: {},
  roll: { tool: true },
  ball: { tool: true },
  face: {},
  bar: { tool: true },
  stack: { tool: true },
  travel: {},
  indicator: {},
  position: { sides: ['noseward of the datum', 'rearward of the datum'] },
  direction: {},
};

/** What is said of a number of a set-up; nothing of one that every reading has. */
export const saidOfAsked = (key: string): AskedSaid => ASKED[key as Asked] ?? {};
