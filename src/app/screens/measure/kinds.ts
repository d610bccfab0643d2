/** What the notebook says of each kind of reading, and what its entry asks for. */
import type { Part } from '../../../design/definition.ts';
import type { Reading } from '../../../report/measure/kinds.ts';

export { type Reading, tellsSize } from '../../../report/measure/kinds.ts';

export type Kind = Reading['kind'];

export interface KindWords {
  name: string;
  /** how it is taken, in one or two sentences */
  how: string;
  /** how the shape makes the reading, as a person would write it on the bench */
  formula: string;
  /** where that comes from */
  source: string;
  /** what else the entry asks for, beside seat, part, value and uncertainty */
  asks: readonly string[];
  /** what the value above nought and below it is called, chosen beside the field in place of a sign */
  sides?: readonly [above: string, below: string];
  /** on which part it can be taken; none where it is taken on the pair */
  parts: readonly Part[];
}

export const KINDS: Record<Kind, KindWords> = {
  diameter: {
    name: 'Diameter',
    how: 'Micrometer or bore gauge square to the axis at a known station.',
    formula: 'reading = diameter + 2·(station − its station)·tan a',
    source: 'definition of a cone',
    asks: ['station'],
    parts: ['journal', 'bush'],
  },
  overRolls: {
    name: 'Over two rolls',
    how: 'The journal stands on end on a plate; two equal rolls on equal stacks against its sides, and a micrometer over both. Where metal is in the way of stacks at either end, it is held between centres.',
    formula: 'reading = diameter at the roll centres + roll·(1 + 1/cos a)',
    source: 'tangency; handbooks, “measuring tapers with rolls” (from memory)',
    asks: ['roll', 'station'],
    parts: ['journal'],
  },
  ballDepth: {
    name: 'Ball depth',
    sides: ['down to its top', 'proud of the face'],
    how: 'A ball resting in the bore; a depth gauge from a clean face down to its top. Two balls give the angle.',
    formula: 'reading = face − (centre of the ball + ball/2); at the centre, radius·cos a = ball/2',
    source: 'tangency; handbooks, “measuring taper holes with balls” (from memory)',
    asks: ['ball', 'face'],
    parts: ['bush'],
  },
  sineRise: {
    name: 'Sine bar',
    sides: ['rises', 'falls'],
    how: 'The part held with its axis along a sine bar over a stack; an indicator run along the uppermost line of a journal toward its large end, or the lowermost of a bore toward its small end.',
    formula: 'reading = travel·tan(a − arcsin(stack/bar))',
    source: 'sine rule of the bar; handbooks’ sine-bar constants',
    asks: ['bar', 'stack', 'travel'],
    parts: ['journal', 'bush'],
  },
  straightness: {
    name: 'Straightness',
    sides: ['proud', 'hollow'],
    how: 'An indicator along the line, set to nothing at both ends; what it shows at a station between.',
    formula: 'reading = how far metal stands proud of the straight line from end to end',
    source: 'end-point reference line, ISO 12780-1 (from memory)',
    asks: ['station'],
    parts: ['journal', 'bush'],
  },
  standOff: {
    name: 'Stand-off',
    sides: ['noseward of the datum', 'rearward of the datum'],
    how: 'Trial assembly, dry and clean: the journal pressed gently home and its position read.',
    formula: 'reading = position at which the first of all seats touches',
    source: 'this program’s own contact of lines, exact',
    asks: [],
    parts: [],
  },
  shake: {
    name: 'Shake',
    how: 'The position held, the nose pulled from side to side, an indicator against it.',
    formula: 'reading = total indicator travel that all seats together leave',
    source: 'this program’s own reckoning of the rigid spindle',
    asks: ['indicator', 'position', 'direction'],
    parts: [],
  },
};

export const KIND_NAMES = Object.keys(KINDS) as Kind[];

/** Whether a number of a set-up is the size of a tool, which has its own system. */
export const isTool = (key: string) => key === 'roll' || key === 'ball' || key === 'bar' || key === 'stack';

/** The same of what a set-up asks for. */
export const SIDES_ASKED: Readonly<Record<string, KindWords['sides']>> = {
  position: ['noseward of the datum', 'rearward of the datum'],
};
