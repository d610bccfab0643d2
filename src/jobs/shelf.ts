/**
 * The jobs on the device. Each is a head for the list, its state, its steps and its named versions; the state stands in
 * two slots, written in turn with a checksum, so that one that is damaged leaves the one before it.
 */
import type { Design } from '../design/definition.ts';
import { validateDesign } from '../design/validate.ts';
import { checksum } from './checksum.ts';
import { asStep, createHistory, type History, type Step } from './history.ts';
import type { Patch } from './patch.ts';
import { photographsOf } from './photographs.ts';
import { type Kept, named, type OpenedJob, readRecord, recordText, type Unreadable } from './record.ts';
import { savedNote } from './reminder.ts';
import type { Change, Row, Tables } from './tables.ts';

/** What the list tells of a job without opening it. */
export interface Head {
  id: string;
  title: string;
  made: number | null;
  worked: number | null;
  /** characters of its state */
  size: number;
  seats: number;
  readings: number;
  trials: number;
  /** put away: listed apart */
  away: boolean;
  /** when it was deleted; null: it was not */
  deleted: number | null;
}

/** Which slot holds the last good state, and its turn. */
export interface Place {
  slot: 0 | 1;
  turn: number;
}

export interface OpenJob {
  id: string;
  found: OpenedJob;
  history: History;
  place: Place;
  /** the newest state could not be read; what is open is the one before it */
  older: Unreadable | null;
}

export type Opened = { ok: true; job: OpenJob } | ({ ok: false; id: string } & Unreadable) | { ok: false; id: null };

export interface Version {
  n: number;
  name: string;
  made: number;
  design: Design;
}

export interface Aside extends Unreadable {
  name: string;
  since: number;
}

interface Slot extends Row {
  turn: number;
  sum: number;
  text: string;
}

const NEVER: Place = { slot: 1, turn: 0 };

export const headOf = (id: string, { made, worked, design }: OpenedJob, size: number): Head => ({
  id,
  title: design.title ?? 'untitled',
  made,
  worked,
  size,
  seats: design.seats.length,
  readings: design.readings?.length ?? 0,
  trials: design.cut?.trials?.length ?? 0,
  away: false,
  deleted: null,
});

const headRow = ({ id, ...head }: Head): Row => ({ job: id, n: 0, ...head });
const checked = <T extends Row>(row: T, text: string) => ({ ...row, sum: checksum(text), text });

/** The text of a row that is as it was written; null where it is not. */
function textOf(row: unknown): string | null {
  const { sum, text } = (row ?? {}) as Partial<Slot>;
  return typeof text === 'string' && checksum(text) === sum ? text : null;
}

export function createShelf(tables: Tables) {
  const note = async (name: string): Promise<unknown> => {
    const row = (await tables.get('notes', name)) as { value?: unknown } | undefined;
    return row?.value;
  };
  const noting = (name: string, value: unknown): Change => ({
    table: 'notes',
    put: { job: name, n: 0, value } as Row,
  });

  async function open(id: string): Promise<Opened> {
    const [slots, steps, head] = await Promise.all([
      tables.all('slots', id),
      tables.all('steps', id),
      tables.get('heads', id) as Promise<Partial<Head> | undefined>,
    ]);
    const state = newest(slots as Partial<Slot>[]);
    if (state === null) return { ok: false, id: null };
    if (!state.ok) return { id, ...named(state, head?.title ?? 'kept job') };
    const { found, place } = state;
    const older = state.older && named(state.older, found.design.title ?? 'kept job');
    return { ok: true, job: { id, found, place, older, history: createHistory(stepsOf(steps, found)) } };
  }

  /** What is to be written of a job; its state goes to the slot that does not hold the last good one. */
  function saving(id: string, found: OpenedJob, history: History | null, place: Place) {
    const turn = place.turn + 1;
    const slot = place.slot === 0 ? 1 : 0;
    const text = recordText(found);
    const steps = history?.write();
    const changes: Change[] = [
      { table: 'slots', put: checked({ job: id, n: slot, turn }, text) },
      { table: 'heads', put: headRow(headOf(id, found, text.length)) },
      ...(steps?.put ?? []).map(
        (step): Change => ({ table: 'steps', put: checked({ job: id, n: step.n }, step.text) }),
      ),
      ...(steps?.noneBefore == null ? [] : [{ table: 'steps', drop: { job: id, to: steps.noneBefore - 1 } } as const]),
      ...(steps?.noneFrom == null ? [] : [{ table: 'steps', drop: { job: id, from: steps.noneFrom } } as const]),
    ];
    return { changes, place: { slot, turn } as Place, failed: () => steps?.failed() };
  }

  const heads = async (): Promise<Head[]> => ((await tables.all('heads')) as (Row & Partial<Head>)[]).map(readHead);
  const withHead = async (id: string, change: Partial<Head>) => {
    const row = (await tables.get('heads', id)) as (Row & Partial<Head>) | undefined;
    if (row) await tables.write([{ table: 'heads', put: headRow({ ...readHead(row), ...change }) }]);
  };

  const photographs = photographsOf(tables);

  return {
    tables,
    photographs,
    open,
    heads,
    note,
    setNote: (name: string, value: unknown) => tables.write([noting(name, value)]),
    /** Keeps a job, as the one last worked on. */
    async save(id: string, found: OpenedJob, history: History, place: Place): Promise<Place> {
      const { changes, place: written, failed } = saving(id, found, history, place);
      try {
        await tables.write([...changes, noting('last', id)]);
        return written;
      } catch (error) {
        failed();
        throw error;
      }
    },
    /** Jobs made elsewhere, and what could not be read of them, in one transaction. */
    add: (jobs: readonly { id: string; found: OpenedJob }[], aside: readonly Aside[] = [], notes: Change[] = []) =>
      tables.write([
        ...jobs.flatMap(({ id, found }) => saving(id, found, null, NEVER).changes),
        ...aside.map(({ name, ...rest }): Change => ({ table: 'aside', put: { job: name, n: 0, ...rest } as Row })),
        ...notes,
      ]),
    noting,
    putAway: (id: string, away: boolean) => withHead(id, { away }),
    delete: (id: string, at: number | null) => withHead(id, { deleted: at }),
    /** For good. */
    remove: (ids: readonly string[]) =>
      tables.write(
        ids.flatMap((job) => [
          ...(['heads', 'slots', 'steps', 'versions', 'aside'] as const).map(
            (table): Change => ({ table, drop: { job } }),
          ),
          { table: 'notes', drop: { job: savedNote(job) } },
        ]),
      ),
    async aside(): Promise<Aside[]> {
      const rows = (await tables.all('aside')) as (Row & Aside)[];
      return rows.map(({ job, why, file, since }) => ({ name: job, why, file, since }));
    },
    async versions(id: string): Promise<Version[]> {
      const rows = (await tables.all('versions', id)) as Row[];
      return rows.flatMap((row) => readVersion(row));
    },
    async nameVersion(id: string, name: string, design: Design, made: number): Promise<void> {
      const rows = (await tables.all('versions', id)) as Row[];
      const n = rows.reduce((most, row) => Math.max(most, row.n + 1), 0);
      await tables.write([
        { table: 'versions', put: checked({ job: id, n }, JSON.stringify({ name, made, design })) as Row },
      ]);
    },
    dropVersion: (id: string, n: number) => tables.write([{ table: 'versions', drop: { job: id, from: n, to: n } }]),
  };
}

export type Shelf = ReturnType<typeof createShelf>;

const readHead = ({ job, n: _, ...head }: Row & Partial<Head>): Head => ({
  title: 'untitled',
  made: null,
  worked: null,
  size: 0,
  seats: 0,
  readings: 0,
  trials: 0,
  away: false,
  deleted: null,
  ...head,
  id: job,
});

type State = { ok: true; found: OpenedJob; place: Place; older: Unreadable | null } | ({ ok: false } & Unreadable);

/** The newest of the slots that can be read; null where there is none at all. */
function newest(slots: readonly Partial<Slot>[]): State | null {
  const byTurn = [...slots].sort((a, b) => (b.turn ?? 0) - (a.turn ?? 0));
  let broken: Unreadable | null = null;
  for (const slot of byTurn) {
    const read = readSlot(slot);
    if (!read.ok) {
      broken ??= read;
      continue;
    }
    const place: Place = { slot: slot.n === 0 ? 0 : 1, turn: Math.max(...byTurn.map(({ turn = 0 }) => turn)) };
    return { ok: true, found: read.found, place, older: broken };
  }
  return broken && { ok: false, ...broken };
}

function readSlot(slot: Partial<Slot>) {
  const text = textOf(slot);
  if (text !== null) return readRecord(text);
  const left = typeof slot.text === 'string' ? slot.text : JSON.stringify(slot);
  return { ok: false as const, why: 'it is damaged', file: { name: 'kept-job.txt', text: left } };
}

/** The steps that join on to the state that was found; where one is missing or damaged the history begins after it. */
function stepsOf(rows: readonly unknown[], { first, at }: OpenedJob) {
  const byNumber = new Map((rows as Row[]).map((row) => [row.n, row]));
  const stepAt = (n: number): Step | null => {
    const text = textOf(byNumber.get(n));
    return text === null ? null : asStep(JSON.parse(text) as Patch);
  };
  const before: Step[] = [];
  for (let n = at - 1; n >= first; n--) {
    const step = stepAt(n);
    if (!step) break;
    before.unshift(step);
  }
  const after: Step[] = [];
  for (let step = stepAt(at); step; step = stepAt(at + after.length)) after.push(step);
  return { first: at - before.length, at, steps: [...before, ...after] };
}

function readVersion(row: Row): Version[] {
  const text = textOf(row);
  if (text === null) return [];
  const { name, made, design } = JSON.parse(text) as { name: string; made: number; design: unknown };
  const result = validateDesign(design);
  return result.ok ? [{ n: row.n, name, made, design: result.design }] : [];
}

/** A copy under another title, its history left behind. */
export const copyOf = (found: OpenedJob, title: string, now: number): OpenedJob => ({
  ...found,
  design: { ...found.design, title },
  made: now,
  worked: now,
  first: 0,
  at: 0,
});

/** What of a job is shown and worked on, with when. */
export const asFound = (kept: Kept, made: number, worked: number, history: History): OpenedJob => ({
  ...kept,
  made,
  worked,
  first: history.first,
  at: history.at,
});
