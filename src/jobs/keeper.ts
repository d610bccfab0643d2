/**
 * Keeps the job at work in this window: what changes is on the disk within a moment, as one transaction. A job that
 * another window has is followed, not written, until it is taken over.
 */
import type { Design } from '../design/definition.ts';
import type { Claim } from './claims.ts';
import type { Device, Lasting } from './device.ts';
import { type Hears, SILENT } from './hears.ts';
import { createHistory, type History } from './history.ts';
import { isOldWork } from './oldWork.ts';
import type { Kept } from './record.ts';
import { createReminder } from './reminder.ts';
import { createSession, goingOn, quietly } from './session.ts';
import { type Aside, asFound, createShelf, type Opened, type OpenJob, type Place, type Shelf } from './shelf.ts';

export interface Started {
  /** the job gone on with; null: an example */
  job: OpenJob | null;
  held: boolean;
  /** the example that was being looked at, and where its journal stood */
  example: string | null;
  position: number | null;
  lasting: Lasting;
  /** what was to be gone on with, and cannot be read */
  unreadable: Extract<Opened, { ok: false; id: string }> | null;
  aside: readonly Aside[];
  /** what stands on the page of a new job */
  begun: unknown;
}

type Word = { saved: string } | { giveUp: string } | { listed: true };

/** A job in this window. */
interface Here {
  id: string;
  history: History;
  place: Place;
  made: number;
  claim: Claim | null;
  held: boolean;
  /** what is not written yet */
  pending: Kept | null;
  /** the write under way */
  writing: Promise<void> | null;
}

const BEGUN = 'new job';
const NEVER: Place = { slot: 1, turn: 0 };
/** ms: a change is written within this time, the changes between with it */
const WITHIN = 150;
/** ms another window has to let a job go by itself; and until one that does not answer is taken to be elsewhere */
const PATIENCE = 1500;
const ANSWER = 200;

export function createKeeper(device: Device, isOwn: (design: Design) => boolean) {
  const { channel } = device;
  const session = createSession(device);
  /** what was to be said before anybody heard */
  let owed: (() => void) | null = null;
  const reminder = createReminder(device, (saved) => {
    if (hears === SILENT) owed = () => hears.remind(saved);
    else hears.remind(saved);
  });
  let hears = SILENT;
  let shelf: Shelf;
  let lasting: Lasting = 'device';
  let here: Here | null = null;
  let due = false;
  let failed = false;
  /** jobs that were left with what could not be written */
  const unwritten = new Map<string, Here>();
  const say = (word: Word) => quietly(() => channel?.post(word));
  const enter = (id: string, history: History, place: Place, made: number): Here => {
    here = { id, history, place, made, claim: null, held: true, pending: null, writing: null };
    return here;
  };

  /** Waits for its turn to write; whether it has it at once. */
  function claim(job: Here, isNew = false): Promise<boolean> {
    return new Promise((first) => {
      // A name that is new is nobody else's.
      const late = isNew ? undefined : setTimeout(() => setTimeout(refused), ANSWER);
      const refused = () => {
        job.held = false;
        first(false);
      };
      job.claim = device.claims(job.id, {
        granted: () => {
          clearTimeout(late);
          first(job.held);
          if (!job.held) void takeUp(job);
        },
        lost: () => giveUp(job),
      });
    });
  }
  /** It is this window's now: as the other one left it. */
  async function takeUp(job: Here) {
    await follow(job);
    job.held = true;
    if (here === job) hears.held(true);
  }
  async function follow(job: Here) {
    const opened = await shelf.open(job.id);
    if (!opened.ok || here !== job) return;
    Object.assign(job, { history: opened.job.history, place: opened.job.place });
    hears.followed(opened.job);
  }
  function giveUp(job: Here) {
    job.held = false;
    job.pending = null;
    if (here !== job) return;
    void claim(job);
    hears.held(false);
  }
  channel?.listen((heard) => {
    const word = heard as Word;
    if ('saved' in word && here?.id === word.saved && !here.held) void follow(here);
    if ('giveUp' in word && here?.id === word.giveUp && here.held) {
      const job = here;
      void write(job).then(() => {
        job.claim?.release();
        giveUp(job);
      });
    }
    if ('saved' in word || 'listed' in word) hears.listed();
  });

  async function write(job: Here): Promise<void> {
    const { pending } = job;
    if (!pending || !job.held) return;
    job.pending = null;
    try {
      const found = asFound(pending, job.made, device.now(), job.history);
      const written = shelf.save(job.id, found, job.history, job.place);
      job.writing = written.then(
        () => {},
        () => {},
      );
      job.place = await written;
      unwritten.delete(job.id);
      failed = false;
      hears.outcome('kept');
      say({ saved: job.id });
      void reminder.kept(shelf, job, lasting).catch(() => {});
    } catch (error) {
      job.pending ??= pending;
      if (here !== job) unwritten.set(job.id, job);
      failed = true;
      hears.outcome(isFull(error) ? 'full' : 'failed');
    }
  }
  function soon() {
    if (due) return;
    due = true;
    setTimeout(async () => {
      due = false;
      await here?.writing;
      if (here) await write(here);
    }, WITHIN);
  }
  function leave() {
    const job = here;
    if (!job) return;
    here = null;
    if (job.pending) unwritten.set(job.id, job);
    void write(job).then(() => job.claim?.release());
  }

  const keeper = {
    isOwn,
    get shelf() {
      return shelf;
    },
    /** Whether this window may write the job at work. */
    held: () => here?.held !== false,
    get lasting() {
      return lasting;
    },
    device,
    hear(by: Partial<Hears>) {
      hears = { ...SILENT, ...by };
      owed?.();
      owed = null;
    },
    /** What this window was at, or what was worked on last. */
    async start(): Promise<Started> {
      const given = await device.tables(() => {
        here?.history.writeAll();
        hears.evicted();
      });
      shelf = createShelf(given.tables);
      lasting = given.lasting;
      // Hardly anybody has any left: what takes it over is loaded where it is wanted.
      const aside = isOldWork(device.old)
        ? await import('./takeOver.ts')
            .then(({ takeOver }) => takeOver(device.old, shelf, { ...device, isOwn, lasting: lasting === 'device' }))
            .catch(() => [])
        : [];
      const example = session.example();
      const begun = await shelf.note(BEGUN).catch(() => null);
      const nothing = { job: null, held: true, example: null, position: null, lasting, unreadable: null, aside, begun };
      if (example !== null) return { ...nothing, example, position: session.position() };
      const id = await goingOn(shelf, session.job());
      if (id === null) return nothing;
      const opened = await keeper.open(id);
      if (opened.ok) return { ...nothing, job: opened.job, held: here!.held };
      return { ...nothing, unreadable: opened.id === null ? null : opened };
    },
    /** Begins a job that is not kept until something of it is; of an example, with its name. */
    begin(history: History, example: string | null): string {
      leave();
      const id = device.newName();
      enter(id, history, NEVER, device.now());
      if (example === null) session.atJob(id);
      else session.atExample(example);
      return id;
    },
    /** Where the journal of an example stands, for when the page is loaded anew. */
    stand: session.stand,
    /** Goes on with a job that is kept. */
    async open(id: string): Promise<Opened> {
      leave();
      const lost = unwritten.get(id);
      if (lost?.pending) {
        here = lost;
        session.atJob(id);
        soon();
        const found = asFound(lost.pending, lost.made, device.now(), lost.history);
        return { ok: true, job: { id, found, history: lost.history, place: lost.place, older: null } };
      }
      const opened = await shelf.open(id);
      if (!opened.ok) return opened;
      const { history, place, found, older } = opened.job;
      const job = enter(id, history, place, found.made ?? device.now());
      session.atJob(id);
      await claim(job);
      void reminder.opened(shelf, job, lasting, found.worked ?? 0).catch(() => {});
      if (older && job.held) await shelf.add([], [{ name: device.newName(), since: device.now(), ...older }]);
      return opened;
    },
    /** Another state of the job at work, to be kept. */
    keep(kept: Kept) {
      if (!here?.held) return;
      here.pending = kept;
      if (!here.claim) {
        session.atJob(here.id);
        void claim(here, true);
      }
      soon();
    },
    /** Writes at once what is not written yet. */
    flush: async () => {
      if (!here) return;
      await write(here);
      await here?.writing;
    },
    takeOver() {
      const job = here;
      if (!job || job.held) return;
      say({ giveUp: job.id });
      setTimeout(() => {
        if (here === job && !job.held) job.claim?.seize();
      }, PATIENCE);
    },
    /** Does something to a job that is not at work here; false where another window has it open. */
    async briefly(id: string, act: () => Promise<unknown>): Promise<boolean> {
      const job = here?.id === id ? here : { ...enterNowhere(id) };
      const held = job === here ? job.held : await claim(job);
      try {
        if (held) await act();
      } finally {
        if (job !== here) job.claim?.release();
      }
      if (held) {
        say({ listed: true });
        hears.listed();
      }
      return held;
    },
    /** What stands on the page of a new job, for when the page is loaded anew. */
    keepBegun: (written: unknown) => void shelf.setNote(BEGUN, written).catch(() => {}),
    /** A file was saved of the job at work, or of all. */
    fileSaved: (all = false) => void reminder.fileSaved(shelf, all ? null : (here?.id ?? null)).catch(() => {}),
    /** Whether work would be lost if the page were closed now. */
    unkept: () => (failed && here?.pending != null) || unwritten.size > 0,
  };
  return keeper;
}

export type Keeper = ReturnType<typeof createKeeper>;

const enterNowhere = (id: string): Here => ({
  id,
  history: createHistory(),
  place: NEVER,
  made: 0,
  claim: null,
  held: true,
  pending: null,
  writing: null,
});

const isFull = (error: unknown) => error instanceof DOMException && error.name === 'QuotaExceededError';
