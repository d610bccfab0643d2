/**
 * The plan as steps at the machine, in the order in which they should be done.
 *
 * The bush first, because the journal is the easier to fit to it; on each part the straight surfaces, then the shallow,
 * then the steep, which sets the touch, for last; faces and spacers after all, since they are the easiest to correct.
 * Each step tells the feeds for its stock (feeds.ts), how far the touch of its seat moves, and what gauges and the
 * trial assembly will read when it is half done and done: the readings predicted for the parts as they then are
 * (gauging/readings), all steps before it done too.
 * @source practice (the order)
 */
import type { Radians } from '../../design/dimension.ts';
import { positionForFilm, type SeatInput, type Stretch, seatLines } from '../contact/fit.ts';
import type { Reading } from '../gauging/reading.ts';
import { predict } from '../gauging/readings/index.ts';
import { METRIC_TOOLS, type Tooling } from '../gauging/tooling.ts';
import type { Part } from '../parts/line.ts';
import { movedAxially } from '../parts/shift.ts';
import { diameterChange, withStock } from '../parts/stock.ts';
import { axialFeed, cleanUp, crossFeed, deepest, feedAlong } from './feeds.ts';
import { gaugesFor, tooNearEnd } from './gauges.ts';
import type { Plan } from './plan.ts';
import { type Face, NO_STEP, type PlanInput } from './problem.ts';

/** What the machine's dials and slides are. Lengths m, angles rad. */
export interface Machine {
  /** the cross-feed dial counts the diameter, not the radius */
  diameterDial: boolean;
  /** one division of the cross feed, and of the axial feed */
  division: number;
  axialDivision: number;
  /** cross feed (change of radius) of one pass */
  pass: number;
  /** direction of a slide set over, from the axis; null without one */
  slide: number | null;
}

/**
 * A reading before a step, half way, when what is safe before a trial is off, and when it is done (m); null where the
 * set-up cannot read it.
 */
export interface Stop {
  before: number | null;
  half: number | null;
  /** not there where all of it may be taken at once, or nothing */
  safe?: number | null;
  stop: number | null;
}

export interface GaugeStop extends Stop {
  gauge: Reading;
  /** m to the end of the surface, where its touch comes too near to one; else null */
  nearEnd: number | null;
}

/** Why a surface is cut by this much. */
export type Why = 'cleanup' | 'newLine' | 'film' | 'relation';
/** Why it comes where it does. */
export type Turn = 'only' | 'bushFirst' | 'straightFirst' | 'shallowFirst' | 'steepLast' | 'faceLast';

interface Done {
  /** position of first touch of the whole journal */
  standOff: Stop;
  /** the parts before and after the step */
  before: SeatInput[];
  after: SeatInput[];
  why: Why;
  turn: Turn;
}

export interface SurfaceStep extends Done {
  kind: 'surface';
  seat: number;
  part: Part;
  /** m; the diameter below 0 where it gets less */
  normal: number;
  /** greatest normal stock (m) anywhere along it: more than `normal` where an uneven line is made straight */
  deepest: number;
  diameter: number;
  crossFeed: number;
  axialFeed: number | null;
  /** divisions of the dials */
  crossDivisions: number;
  axialDivisions: number | null;
  /** feed (m) square to the ways with the table set over by the half angle; along the slide that is set over */
  tableFeed: number;
  slideFeed: number | null;
  /** position at which this seat alone touches (m), and the passes it takes */
  touch: Stop;
  passes: { count: number; depth: number; last: number };
  gauges: GaugeStop[];
}

export interface FaceStep extends Done {
  kind: 'face';
  face: number;
  /** metal off (m); below 0 put on */
  off: number;
}

export type CutStep = SurfaceStep | FaceStep;

/** Lengths nearer to each other (m) are the same. */
const NONE = 1e-15;

interface Shop {
  /** the person's own, whose set-ups are taken again */
  readings?: readonly Reading[];
  tools?: Tooling;
  /** normal stock (m) of a surface that may come off before a trial assembly */
  safe?: (seat: number, part: Part) => number | null;
}

export function stepsOf(
  input: PlanInput,
  plan: Plan,
  machine: Machine,
  { readings = [], tools = METRIC_TOOLS, safe = () => null }: Shop = {},
): CutStep[] {
  const isNew = ({ seat, part }: { seat: number; part: Part }) =>
    input.allow.some((a) => a.seat === seat && a.part === part && a.renew !== undefined);
  // a new line that is the old one takes nothing off
  const isChanged = ({ seat, part }: { seat: number; part: Part }) =>
    deepest(input.seats[seat]![part], plan.base[seat]![part], part) > NO_STEP;
  const cut = inOrder(plan, isNew, isChanged);
  const shop = { input, plan, machine, readings, tools, safe };
  let now = input.seats.map((seat) => ({ ...seat }));
  return cut.map((k, place): CutStep => {
    const { of, least } = plan.rooms[k]!;
    const amount = plan.amounts[k]!;
    const step =
      of.kind === 'face'
        ? faceStep(now, input.faces![of.face]!, of.face, amount)
        : {
            ...surfaceStep(shop, now, { ...of, amount, least, isRenewed: isNew(of) }),
            turn: turnOf(plan, cut, place),
          };
    now = step.after;
    return step;
  });
}

function faceStep(before: SeatInput[], face: Face, place: number, off: number): FaceStep {
  const after = faceCut(before, face, off);
  return {
    kind: 'face',
    face: place,
    off,
    standOff: standOffs({ before, half: faceCut(before, face, off / 2), safely: null, after }),
    before,
    after,
    why: 'relation',
    turn: 'faceLast',
  };
}

interface SurfaceCut {
  seat: number;
  part: Part;
  /** normal stock (m) that comes off, and the least that must */
  amount: number;
  least: number;
  isRenewed: boolean;
}

/** The step of one surface, all steps before it done. */
function surfaceStep(
  { input, plan, machine, readings, tools, safe }: Required<Shop> & { input: PlanInput; plan: Plan; machine: Machine },
  before: SeatInput[],
  { seat, part, amount, least, isRenewed }: SurfaceCut,
): Omit<SurfaceStep, 'turn'> {
  const cutTo = (normal: number) =>
    before.map((s, i) => (i === seat ? { ...s, [part]: withStock(plan.base[seat]![part], part, normal) } : s));
  // Half way to a new line the old one may still show; then there is nothing to predict.
  const half =
    isRenewed && amount / 2 < cleanUp(before[seat]![part], plan.base[seat]![part], part) ? null : cutTo(amount / 2);
  const after = cutTo(amount);
  const first = safe(seat, part);
  const safely = first === null || first < NO_STEP || first > amount - NO_STEP || isRenewed ? null : cutTo(first);
  const straight = plan.base[seat]![part].halfAngle === 0;
  const why: Why =
    amount > least + NONE
      ? straight || input.seats.filter((s) => s.target !== undefined).length < 2
        ? 'film'
        : 'relation'
      : isRenewed
        ? 'newLine'
        : 'cleanup';
  const gauges = gaugesFor(before, seat, part, readings, { tools, after }).map(
    (gauge): GaugeStop => ({
      gauge,
      nearEnd: tooNearEnd(gauge, [before, after]),
      ...stopOf({ before, half, safely, after }, (seats) => readingOf(gauge, seats)),
    }),
  );
  return {
    kind: 'surface',
    seat,
    part,
    normal: amount,
    deepest: isRenewed ? deepest(before[seat]![part], after[seat]![part], part) : amount,
    ...feedsOf(amount, plan.base[seat]![part].halfAngle, part, machine),
    touch: stopOf({ before, half, safely, after }, (seats) => positionForFilm(seatLines(seats[seat]!), 0)),
    gauges,
    standOff: standOffs({ before, half, safely, after }),
    before,
    after,
    why,
  };
}

/** Rooms that are cut, by their places in the plan, in the order of work. */
function inOrder(
  { rooms, amounts, base }: Plan,
  isNew: (of: { seat: number; part: Part }) => boolean,
  isChanged: typeof isNew,
): number[] {
  const rank = (k: number): number[] => {
    const { of } = rooms[k]!;
    return of.kind === 'face' ? [2, 0] : [of.part === 'bush' ? 0 : 1, Math.abs(base[of.seat]![of.part].halfAngle)];
  };
  return rooms
    .flatMap(({ of }, k) =>
      Math.abs(amounts[k]!) >= NO_STEP || (of.kind === 'surface' && isNew(of) && isChanged(of)) ? [k] : [],
    )
    .sort((a, b) => {
      const [ra, rb] = [rank(a), rank(b)];
      return ra[0]! - rb[0]! || ra[1]! - rb[1]! || a - b;
    });
}

function turnOf({ rooms, base }: Plan, cut: readonly number[], place: number): Turn {
  const surfaceAt = (i: number) => {
    const of = rooms[cut[i]!]?.of;
    return of?.kind === 'surface' ? of : null;
  };
  const { seat, part } = surfaceAt(place)!;
  const same = cut.flatMap((_, i) => (surfaceAt(i)?.part === part ? [i] : []));
  if (base[seat]![part].halfAngle === 0 && same.length > 1) return 'straightFirst';
  if (same.length > 1) return place === same[same.length - 1] ? 'steepLast' : 'shallowFirst';
  return part === 'bush' && cut.length > 1 ? 'bushFirst' : 'only';
}

/** Every feed that takes off a normal stock, and the passes it takes. */
export function feedsOf(normal: number, halfAngle: Radians, part: Part, machine: Machine) {
  const cross = crossFeed(normal, halfAngle);
  const axial = axialFeed(normal, halfAngle);
  const count = Math.max(1, Math.ceil(cross / machine.pass - 1e-9));
  return {
    diameter: diameterChange(normal, halfAngle, part),
    crossFeed: cross,
    axialFeed: axial,
    crossDivisions: ((machine.diameterDial ? 2 : 1) * cross) / machine.division,
    axialDivisions: axial === null ? null : axial / machine.axialDivision,
    tableFeed: feedAlong(normal, halfAngle, halfAngle + Math.PI / 2)!,
    slideFeed: machine.slide === null ? null : feedAlong(normal, halfAngle, machine.slide),
    passes: { count, depth: Math.min(machine.pass, cross), last: cross - (count - 1) * Math.min(machine.pass, cross) },
  };
}

const faceCut = (seats: readonly SeatInput[], { seats: moved, part, moves }: Face, off: number): SeatInput[] =>
  seats.map((s, i) => (moved.includes(i) ? { ...s, [part]: movedAxially(s[part], moves * off) } : s));

/** The parts as a step goes on; null where a reading cannot be told there. */
interface Stages {
  before: SeatInput[];
  half: SeatInput[] | null;
  safely: SeatInput[] | null;
  after: SeatInput[];
}

const stopOf = ({ before, half, safely, after }: Stages, read: (seats: SeatInput[]) => number | null): Stop => ({
  before: read(before),
  half: half && read(half),
  ...(safely && { safe: read(safely) }),
  stop: read(after),
});

const readingOf = (gauge: Reading, seats: readonly SeatInput[]): number | null => {
  const { value, fault } = predict(gauge, seats);
  return fault ? null : value;
};

const standOffs = (stages: Stages): Stop =>
  stopOf(stages, (seats) => readingOf({ kind: 'standOff', value: 0, sigma: 1 }, seats));

interface JournalMove {
  /** m, toward the nose: how far nose and shoulders of the journal stand from where they were */
  shift: number;
  /** whether adjuster and shoulders let it stand there */
  within: boolean;
}

/** Where the journal ends up. */
export function journalMove({ position, reach }: Pick<PlanInput, 'position' | 'reach'>, after: number): JournalMove {
  const inside = ({ from, to }: Stretch) => after >= from - NONE && after <= to + NONE;
  return { shift: after - position, within: reach === undefined || inside(reach) };
}
