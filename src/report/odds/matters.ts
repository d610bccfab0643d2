/** What the doubt comes from, and what the chance would be with one of it halved. */
import type { Design } from '../../design/definition.ts';
import type { Prior } from '../../engine/gauging/linearise.ts';
import { halvedInTurn } from '../../engine/odds/buy.ts';
import { answerOne } from '../../engine/odds/oneByOne.ts';
import { type Answered, answeredOf, roomFor } from '../../engine/odds/outcomes.ts';
import { samplerOf } from '../../engine/odds/sampler.ts';
import { type GroupShare, sharesOf } from '../../engine/odds/shares.ts';
import type { MattersReport, SourceReport } from './definition.ts';
import type { State } from './drawn.ts';
import { readsOf } from './reads.ts';

/** Blocks of draws: where they are answered by the thousand, and where one by one. */
const FAST = { shares: 4, gains: 8 };
const SLOW = { shares: 1, gains: 1 };

export const NO_MATTERS: MattersReport = { sensitivity: [], of: null, method: null, gains: [] };

/** @param unread numbers that nobody has read */
export function mattersOf(
  design: Design,
  { linear, question }: State,
  seed: number,
  unread: readonly Prior[],
): MattersReport {
  if (!linear || linear.linear.factor.every((row) => row.every((f) => f === 0))) return NO_MATTERS;
  const { seats } = linear.linear;
  const straight = seats.every(({ journal, bush }) => journal.profile.length + bush.profile.length === 0);
  const blocks = straight && samplerOf(linear.linear).varied ? FAST : SLOW;
  const wanted = seats.some(({ target }) => target !== undefined);
  const draws = { blocks: blocks.gains, seed };
  const reads = wanted ? readsOf(design.seats, linear, unread, { question, asked: 'inBandAtBest', draws }) : [];
  return {
    ...sharesSection(design, linear, question, { blocks: blocks.shares, seed }),
    gains: wanted ? gains() : [],
    ...(reads.length > 0 && { reads }),
  };

  function gains(): MattersReport['gains'] {
    const inputs = inputsOf(linear!.names, linear!.linear.factor);
    const halved = halvedInTurn({
      linear: linear!.linear,
      question,
      asked: 'inBandAtBest',
      inputs: inputs.map(({ sources }) => sources),
      draws,
    });
    return inputs.map(({ name }, i) => {
      const { chance, gain, uncertainty } = halved.inputs[i]!;
      return { ...name, ...chance, gain, uncertainty };
    });
  }
}

type Gained = Pick<MattersReport['gains'][number], 'seat' | 'part' | 'by' | 'face'>;

/** What is bought together: all that is in doubt of a surface, and each cut. */
export function inputsOf(names: readonly SourceReport[], factor: readonly Float64Array[]) {
  const found = new Map<string, { name: Gained; sources: number[] }>();
  names.forEach(({ seat, part, of, face }, i) => {
    if (factor[i]!.every((f) => f === 0)) return;
    const by = of === 'stock' || of === 'face' ? 'cutting' : 'measuring';
    const key = `${by} ${part} ${face ?? ''} ${seat}`;
    const known = found.get(key) ?? { name: { seat, part, by, ...(face !== undefined && { face }) }, sources: [] };
    found.set(key, { ...known, sources: [...known.sources, i] });
  });
  return [...found.values()];
}

function sharesSection(
  design: Design,
  { linear, names }: NonNullable<State['linear']>,
  question: State['question'],
  draws: { blocks: number; seed: number },
): Omit<MattersReport, 'gains'> {
  const answered = answeredOf(linear.seats);
  const column = askedColumn(linear.seats, question, answered);
  if (column < 0) return NO_MATTERS;
  const { method, groups } = sharesOf(linear, question, column, draws);
  const sensitivity = merged(groups.flatMap((group) => shareEntries(group, names)));
  const isTold = sensitivity.every(({ share, low, high, total }) => [share, low, high, total].every(Number.isFinite));
  if (!isTold) return NO_MATTERS;
  return { sensitivity, of: askedName(design, answered[column]!), method };
}

/** The relation of two cones where there is one; else the film of a seat that is wanted, or of any. */
function askedColumn(seats: State['middle'], question: State['question'], answered: readonly Answered[]): number {
  const room = roomFor(seats, 1);
  answerOne(seats, seats, question, room, 0);
  const has = (wanted: (answered: Answered) => boolean) =>
    answered.findIndex((one, i) => wanted(one) && Number.isFinite(room.values[i]![0]!));
  const found = [
    has(({ of }) => of === 'relation'),
    has((one) => one.of === 'film' && seats[one.seat]!.target !== undefined),
    has(({ of }) => of === 'film'),
  ];
  return found.find((column) => column >= 0) ?? -1;
}

function askedName({ seats }: Design, asked: Answered): MattersReport['of'] {
  if (asked.of === 'relation')
    return { quantity: 'relation', between: [seats[asked.between[0]]!.name, seats[asked.between[1]]!.name] };
  return asked.of === 'film' ? { quantity: 'film', seat: seats[asked.seat]!.name } : null;
}

type Entry = MattersReport['sensitivity'][number];

function shareEntries({ sources, first, total, each }: GroupShare, names: readonly SourceReport[]): Entry[] {
  if (each) return sources.map((source, i) => ({ ...names[source]!, ...exact(each[i]!) }));
  const told = { share: first.share, low: first.low, high: first.high, total: total.share };
  const [name, ...others] = sources.map((source) => names[source]!);
  return [{ ...name!, ...told, ...(others.length > 0 && { together: [name!, ...others] }) }];
}

const exact = (share: number) => ({ share, low: share, high: share, total: share });

/** Several doubts of the same number, such as one that is believed and a spread beside it, told as one. */
function merged(entries: readonly Entry[]): Entry[] {
  const found = new Map<string, Entry>();
  for (const entry of entries) {
    const { seat, part, of, face, together } = entry;
    const key = `${of} ${part} ${face ?? ''} ${seat} ${together ? JSON.stringify(together) : ''}`;
    const known = found.get(key);
    found.set(
      key,
      known
        ? {
            ...known,
            share: known.share + entry.share,
            low: known.low + entry.low,
            high: known.high + entry.high,
            total: known.total + entry.total,
          }
        : entry,
    );
  }
  return [...found.values()];
}
