/**
 * One look of the fuzz at what comes from anywhere: taken whole, or refused in words that can be read; nothing between.
 */
import { isDeepStrictEqual } from 'node:util';
import { readLobes, readProfile } from '../../src/app/controls/lists.ts';
import { designOfLink, linkOf, systemOfLink, wayOfLink } from '../../src/app/takeAlong/link.ts';
import type { Design } from '../../src/design/definition.ts';
import { parseDesign } from '../../src/design/parse.ts';
import { validateDesign } from '../../src/design/validate.ts';
import type { Keeper } from '../../src/jobs/keeper.ts';
import { fileOfJobs, readJobs, takeIn } from '../../src/jobs/many.ts';
import { isFileOfJobs, readRecord, recordText } from '../../src/jobs/record.ts';
import { createShelf } from '../../src/jobs/shelf.ts';
import { memoryTables } from '../../src/jobs/tables.ts';
import { readingsFromCsv } from '../../src/report/measure/csv.ts';
import type { Case } from './grammarJobs.ts';

/** Characters of a message; and messages to one text. */
const LONGEST = 300;
const MOST = 501;
/** Words that a slip of ours would leave in a message. */
const SLIPS = ['undefined', 'NaN', '[object'];

export interface Tried {
  taken: boolean;
  messages: readonly string[];
  broken: string[];
}

const refusal = (messages: readonly string[], text: string): Tried => ({
  taken: false,
  messages,
  broken: [
    ...(messages.length === 0 || messages.length > MOST ? [`words: ${messages.length} messages`] : []),
    ...messages.flatMap((message) => [
      ...(message.length > LONGEST ? [`words: ${message.slice(0, 80)}… of ${message.length}`] : []),
      ...(message.trim() === '' ? ['words: an empty message'] : []),
      ...(SLIPS.some((slip) => message.includes(slip) && !text.includes(slip)) ? [`words: ${message}`] : []),
    ]),
  ],
});
const taking = (broken: string[]): Tried => ({ taken: true, messages: [], broken });

/** A design that was taken is one, as it stands. */
function designLaws(design: Design): string[] {
  const again = validateDesign(JSON.parse(JSON.stringify(design)));
  if (!again.ok) return [`taken, but no design: ${again.errors[0]!.path} ${again.errors[0]!.message}`];
  return isDeepStrictEqual(JSON.parse(JSON.stringify(again.design)), JSON.parse(JSON.stringify(design)))
    ? []
    : ['taken, but read back otherwise'];
}

/** As much of a keeper as moving jobs asks for. */
function emptyDevice(): Keeper {
  let names = 0;
  return { shelf: createShelf(memoryTables()), device: { newName: () => `${++names}` } } as unknown as Keeper;
}

async function triedFileOfJobs(text: string): Promise<Tried> {
  const read = readJobs(text);
  if (!read.ok)
    return refusal(
      read.errors.map(({ message }) => message),
      text,
    );
  const keeper = emptyDevice();
  await takeIn(keeper, read.jobs);
  const saved = await fileOfJobs(keeper);
  const again = readJobs(saved.text);
  return taking([
    ...read.jobs.flatMap(({ found, versions }) => [found, ...versions].flatMap(({ design }) => designLaws(design))),
    ...(saved.jobs === read.jobs.length ? [] : [`${read.jobs.length} jobs taken, ${saved.jobs} there`]),
    ...(again.ok ? [] : [`saved again it is refused: ${again.errors[0]!.message}`]),
  ]);
}

function triedLink(text: string): Tried {
  const read = designOfLink(text);
  // What a link says of itself is not to be seen in its text.
  if (!read.ok)
    return refusal(
      read.errors.map(({ message }) => message),
      SLIPS.join(),
    );
  const link = linkOf(read.design, systemOfLink(text) ?? 'metric', wayOfLink(text) ?? 'half', '');
  const again = link === null ? read : designOfLink(link);
  return taking([...designLaws(read.design), ...(again.ok ? [] : ['its own link is refused'])]);
}

function triedRecord(text: string): Tried {
  const read = readRecord(text);
  if (!read.ok) return refusal([read.why], text);
  const again = readRecord(recordText(read.found));
  const same = again.ok && isDeepStrictEqual(again.found, JSON.parse(JSON.stringify(read.found)));
  return taking([...designLaws(read.found.design), ...(same ? [] : ['kept again it is another'])]);
}

function triedTable(text: string, design: Design): Tried {
  const read = readingsFromCsv(text, design);
  if (!read.ok)
    return refusal(
      read.errors.map(({ message }) => message),
      text,
    );
  const with_ = validateDesign({ ...design, readings: read.readings });
  return taking(with_.ok ? [] : [`a table taken, but: ${with_.errors[0]!.path} ${with_.errors[0]!.message}`]);
}

const finite = (value: unknown): boolean =>
  typeof value === 'number'
    ? Number.isFinite(value)
    : typeof value !== 'object' || value === null || Object.values(value).every(finite);

function triedList(read: ReturnType<typeof readProfile | typeof readLobes>, text: string): Tried {
  if (!read.ok) return refusal([read.message], text);
  return taking(finite(read.value) ? [] : ['a number that is none']);
}

/** A file that is opened: several jobs by its beginning, otherwise a design. */
function triedFile(text: string): Tried | Promise<Tried> {
  if (isFileOfJobs(text)) return triedFileOfJobs(text);
  const read = parseDesign(text);
  return read.ok
    ? taking(designLaws(read.design))
    : refusal(
        read.errors.map(({ message }) => message),
        text,
      );
}

/** What is broken; a throw is told like a broken law. */
export async function triedCase({ kind, text, design }: Case): Promise<Tried> {
  try {
    switch (kind) {
      case 'jobs':
        return await triedFileOfJobs(text);
      case 'file':
        return await triedFile(text);
      case 'link':
        return triedLink(text);
      case 'record':
        return triedRecord(text);
      case 'table':
        return triedTable(text, design);
      case 'profile':
        return triedList(readProfile(text, 'metric'), text);
      case 'lobes':
        return triedList(readLobes(text, 'inch'), text);
    }
  } catch (error) {
    const where = (error as Error).stack?.split('\n').slice(0, 3).join(' | ');
    return { taken: false, messages: [], broken: [`throws ${where}`] };
  }
}
