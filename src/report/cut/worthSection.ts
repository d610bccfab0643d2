/** What would make the plan surer: a trial assembly, or which further reading, and by how much. */
import type { Design } from '../../design/definition.ts';
import type { Millimetres } from '../../design/dimension.ts';
import type { SeatInput } from '../../engine/contact/fit.ts';
import type { LeftAmount } from '../../engine/cutting/leftToCut.ts';
import type { PairsDrawn } from '../../engine/cutting/pairsDrawn.ts';
import { NO_STEP } from '../../engine/cutting/problem.ts';
import { seenAtTrial } from '../../engine/cutting/seenAtTrial.ts';
import { estimateAfter, type Trial } from '../../engine/cutting/trial.ts';
import { type Foreseen, spreadOnceKnown } from '../../engine/cutting/worthKnowing.ts';
import type { Reading } from '../../engine/gauging/reading.ts';
import { predict, seeksProfile } from '../../engine/gauging/readings/index.ts';
import { believedOf } from '../belief/believed.ts';
import { degrees, metres, millimetres, upToMicrometre } from '../convert.ts';
import { doneSoFar } from '../measure/metalBetween.ts';
import { fromReading, toReading } from '../measure/toReading.ts';
import { indicatorOf } from '../play/toPlay.ts';
import type { CutReport } from './definition.ts';
import { NOTHING } from './listed.ts';
import { INDICATOR_SIGMA, standOffSigma, takenSigma } from './metalDoubt.ts';
import { blueThickness, type Cut, orNull, toPlanInput, toTrials } from './toCut.ts';
import type { LeftNow } from './trialSection.ts';

/** m: what a diameter is read to where nothing says otherwise. @source practice */
const DIAMETER_SIGMA = 2e-6;
/**
 * m: so far from the touch a shake is read. Near it a steep seat may stop the nose too, and tells nothing of the
 * shallow one; farther off the shallow one stops it alone.
 */
const CLEAR = [1e-5, 4e-5, 1.2e-4];
/** mm: nearer than this two indicators stand at one place. */
const ONE_PLACE = 1;
/** Set-ups that are weighed, those of surfaces nobody has read first. */
const MOST_READINGS = 8;
/** Where fewer of the pairs count, they tell no worth. */
const FEWEST = 50;
/** Of the pairs one in so many is read by gauges, and one in so many shaken, which costs far more, to find the best. */
const READ = 3;
const SHAKEN = 9;
/** What the best of them leaves is told after so many readings that may come, each worked out as it will be then. */
const TRIED = 16;

type Worth = NonNullable<CutReport['worth']>;
type Told = Pick<Foreseen, 'reads' | 'sees'> | null;
/** `share`: of one in so many of the pairs. */
type Foresee = (tell: (pair: readonly SeatInput[]) => Told, share?: number) => Foreseen[];

export function worthSection(design: Design, cut: Cut, now: LeftNow | null): Pick<CutReport, 'worth'> {
  if (!now?.left.plan || now.known.clashes || now.known.drawn.effective < FEWEST) return {};
  const { plan, amounts } = now.left;
  const surfaces = amounts.filter(({ room }) => plan.rooms[room]!.of.kind === 'surface');
  const most = surfaces.reduce<LeftAmount | null>((a, b) => (a === null || b.sigma > a.sigma ? b : a), null);
  const of = most && plan.rooms[most.room]!.of;
  if (!most || of?.kind !== 'surface' || millimetres(most.sigma) < NOTHING) return {};
  const foresee = foreseeing(now.known.drawn, most.follows.needs);
  const blue = metres(blueThickness(design));
  const trial = foresee((pair) => trialOf(pair, blue));
  const after = afterOf(design, cut, now, most);
  const standOff = metres(standOffSigma(cut));
  const tried = isAllowed(trial)
    ? spreadOnceKnown(trial, [standOff], {
        truths: TRIED,
        after: ([value], sees) => after.trial({ standOff: { value: value!, sigma: standOff }, blue: blueOf(sees) }),
      })
    : null;
  return {
    worth: {
      seat: design.seats[of.seat]!.name,
      part: of.part,
      sigma: millimetres(most.sigma),
      cutting: takenSigma(cut, millimetres(most.amount), degrees(plan.base[of.seat]![of.part].halfAngle)),
      trial: orNull(tried?.mean ?? null),
      ...(tried && { trialQuarter: millimetres(tried.quarter) }),
      ...bestReadings(
        design,
        foresee,
        after,
        isAllowed(trial) ? Math.max(...trial.map(({ reads }) => reads[0]!)) : null,
      ),
    },
  };
}

/** What would most likely come off after a trial or a reading more: as it will be worked out then. */
interface After {
  trial(more: Omit<Trial, 'taken' | 'thickness'>): number | null;
  reading(reading: Reading): number | null;
}

function afterOf(design: Design, cut: Cut, { known }: LeftNow, { follows }: LeftAmount): After {
  const thickness = metres(blueThickness(design));
  const toldBy = (of: Design, more: readonly Trial[]): number | null => {
    const trials = [...toTrials(of, cut), ...more];
    const { films } = believedOf(of);
    const last = trials.length === 0 ? undefined : estimateAfter(toPlanInput(of, cut), trials, films);
    if (last && last.status !== 'updated') return null;
    const likely = last?.films ?? films.mean;
    const amount = follows.gains.reduce((sum, g, i) => sum + g * (likely[i]! - known.films[i]!), follows.need);
    return amount < NO_STEP || amount > follows.most - NO_STEP ? null : amount;
  };
  return {
    trial: (more) => toldBy(design, [{ ...more, taken: [], thickness }]),
    reading: (reading) => {
      const entry = { ...fromReading(design, reading), after: doneSoFar(design) };
      return toldBy({ ...design, readings: [...(design.readings ?? []), entry] }, []);
    },
  };
}

/** Of some of the pairs drawn, evenly taken: what each would tell. */
function foreseeing({ pairs, weights }: PairsDrawn, amounts: readonly number[]): Foresee {
  const taken = pairs.map((pair, k) => ({ pair, weight: weights[k]!, amount: amounts[k]! }));
  return (tell, share = 1) => {
    const some = taken.filter((_, k) => k % share === 0);
    const all = some.reduce((sum, { weight }) => sum + weight, 0);
    return some.flatMap(({ pair, weight, amount }) => {
      const told = tell(pair);
      return told ? [{ weight: weight / all, amount, ...told }] : [];
    });
  };
}

/** A set-up that some of the pairs do not allow is none to advise. */
const isAllowed = (seen: readonly Foreseen[]) => seen.reduce((sum, { weight }) => sum + weight, 0) > 0.999;

/** What a trial would show; null where nothing stops the journal. */
function trialOf(pair: readonly SeatInput[], blue: number): Told {
  const seen = seenAtTrial(pair, blue);
  return seen && { reads: [seen.at], sees: seen.prints.map((does) => (does ? 'x' : 'o')).join('') };
}

const blueOf = (sees: string) => [...sees].map((does, seat) => ({ seat, prints: does === 'x' }));

/** @param touch the farthest toward the nose that any pair touches first (m); null where some never touch */
function bestReadings(
  design: Design,
  foresee: Foresee,
  after: After,
  touch: number | null,
): Pick<Worth, 'reading' | 'ungauged'> {
  const all = [...candidates(design), ...(touch === null ? [] : shakesBeyond(design, touch))];
  const seenOf = (reading: Reading, share: number) =>
    foresee((pair) => {
      const { value } = predict(reading, pair);
      return value === null ? null : { reads: [value], sees: '' };
    }, share);
  const tried = all.flatMap(({ reading, ...how }) => {
    const seen = seenOf(reading, reading.kind === 'shake' ? SHAKEN : READ);
    if (!isAllowed(seen)) return [];
    const value = seen.reduce((sum, { weight, reads }) => sum + weight * reads[0]!, 0);
    return [{ reading: { ...reading, value }, how, known: spreadOnceKnown(seen, [reading.sigma])! }];
  });
  const bestOf = (some: typeof tried) =>
    some.reduce<(typeof tried)[number] | null>((a, b) => (a === null || b.known.mean < a.known.mean ? b : a), null);
  const best = bestOf(tried);
  // A surface that nobody has read is one that perhaps nobody can.
  const ungauged =
    best && 'seat' in best.reading && !best.how.again
      ? bestOf(tried.filter(({ reading }) => reading.kind === 'shake'))
      : null;
  // Which is best is told by the pairs alone; what it is worth as it will be told then.
  const told = ({ reading, how, known }: (typeof tried)[number]): NonNullable<Worth['reading']> => {
    const then = worthThen(reading, seenOf(reading, READ), after) ?? known;
    return {
      reading: { ...fromReading(design, reading), after: doneSoFar(design) },
      ...how,
      sigma: millimetres(then.mean),
      quarter: millimetres(then.quarter),
    };
  };
  return { reading: best && told(best), ...(ungauged && { ungauged: told(ungauged) }) };
}

/** What a reading leaves, as it will be told once it is taken. */
function worthThen(reading: Reading, seen: readonly Foreseen[], after: After) {
  return spreadOnceKnown(seen, [reading.sigma], {
    truths: TRIED,
    after: ([value]) => {
      const read = { ...reading, value: value! };
      return read.kind === 'shake' ? after.trial({ shake: read }) : after.reading(read);
    },
  });
}

interface Candidate {
  reading: Reading;
  /** whether it is in the notebook already */
  again: boolean;
  /** of a shake: whether it is read at the rear end of the journal */
  rear?: true;
}

/**
 * The shake with the journal held clear of every touch there may be, as far as adjuster and shoulders let it go: where
 * it is felt, and at the rear end, for both together tell how the journal leans in its bore, and so what one seat lets
 * it do.
 */
function shakesBeyond(design: Design, touch: number): Candidate[] {
  const most = metres(design.cut?.reach?.to ?? Number.POSITIVE_INFINITY);
  const [near, ...farther] = CLEAR.map((clear) => touch + clear);
  const reached = [near!, ...farther.filter((position) => position <= most)];
  const [felt, rear] = [indicatorOf(design), Math.min(...design.seats.map(({ journal }) => journal.from))];
  return [
    ...reached.map((position) => shakeAt(design, position, felt)),
    ...(Math.abs(felt - rear) < ONE_PLACE
      ? []
      : reached.slice(1).map((position): Candidate => ({ ...shakeAt(design, position, rear), rear: true }))),
  ];
}

/** The nose pulled from side to side; whether it was read there before, as the parts are by now. */
function shakeAt(design: Design, position: number, indicator: Millimetres): Candidate {
  const held = upToMicrometre(position);
  const sigma = INDICATOR_SIGMA;
  const entry = { kind: 'shake', indicator, position: held, direction: 0, value: 0, sigma } as const;
  const isHere = (one: { indicator?: number }) =>
    Math.abs((one.indicator ?? indicatorOf(design)) - indicator) < ONE_PLACE;
  const last = design.cut?.trials?.at(-1)?.shake;
  const read = (design.readings ?? []).some(
    (one) => one.kind === 'shake' && (one.after ?? 0) === doneSoFar(design) && isHere(one),
  );
  return { reading: toReading(design, entry), again: read || (last !== undefined && isHere(last)) };
}

/** A diameter of every surface that nobody has read, in its middle; and every kind of the notebook once more. */
function candidates(design: Design): Candidate[] {
  const unread = believedOf(design).belief.unread.filter(({ of }) => of === 'radius');
  const first = unread.map(({ seat, part }): Candidate => {
    const { from, to } = design.seats[seat]![part];
    const station = metres((from + to) / 2);
    return { reading: { kind: 'diameter', seat, part, station, value: 0, sigma: DIAMETER_SIGMA }, again: false };
  });
  const kinds = new Set<string>();
  const again = (design.readings ?? []).flatMap((entry): Candidate[] => {
    const key = 'seat' in entry ? `${entry.kind} ${entry.seat} ${entry.part}` : '';
    const reading = toReading(design, entry);
    if (!('seat' in entry) || seeksProfile(reading) || kinds.has(key)) return [];
    kinds.add(key);
    return [{ reading, again: true }];
  });
  return [...first, ...again].slice(0, MOST_READINGS);
}
