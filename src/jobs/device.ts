/** What this browser gives to keep jobs with; any part of it may be forbidden, and asking for it may throw. */
import { askedClaims, type Channel, type Claims, lockClaims, soleClaims } from './claims.ts';
import { openDatabase } from './database.ts';
import type { OldStore } from './oldWork.ts';
import { memoryTables, type Tables } from './tables.ts';

/** `nowhere`: as long as the page is open · `newer`: what is there belongs to a newer program, and stays as it is */
export type Lasting = 'device' | 'nowhere' | 'newer';

export interface Device {
  /** `lost`: called when the browser takes the store away */
  tables(lost: () => void): Promise<{ tables: Tables; lasting: Lasting }>;
  /** where an earlier program kept its work */
  old: OldStore | null;
  /** lasts as long as this one tab */
  session: Pick<Storage, 'getItem' | 'setItem'> | null;
  claims: Claims;
  /** word to all other windows, and from them */
  channel: Channel | null;
  now(): number;
  /** ms, only ever on, whatever is done to the clock */
  elapsed(): number;
  newName(): string;
  /** Asks that what is kept be not thrown away when room is short. */
  persist(): Promise<boolean>;
}

/** ms after which a store that says nothing is done without */
const PATIENCE = 5000;

/** @param name of the store; tests have their own */
export function thisDevice(name = 'conepair'): Device {
  const channel = allowed(() => channelOf(name));
  const newName = () => `${Date.now().toString(36)}-${Math.random().toString(36).slice(2, 8)}`;
  const locks = allowed(() => navigator.locks ?? null);
  const inName =
    (claims: Claims): Claims =>
    (job, hears) =>
      claims(`${name} ${job}`, hears);
  return {
    tables: (lost) => lastingTables(name, lost),
    old: allowed(() => readable(window.localStorage)),
    session: allowed(() => readable(window.sessionStorage)),
    claims: inName(locks ? lockClaims(locks) : channel ? askedClaims(channel, newName()) : soleClaims),
    channel,
    now: () => Date.now(),
    elapsed: () => performance.now(),
    newName,
    persist: async () => (await navigator.storage?.persist?.()) ?? false,
  };
}

async function lastingTables(name: string, lost: () => void): Promise<{ tables: Tables; lasting: Lasting }> {
  const late = new Promise<never>((_, refuse) => setTimeout(() => refuse(new Error('no answer')), PATIENCE));
  try {
    return { tables: await Promise.race([openDatabase(name, lost), late]), lasting: 'device' };
  } catch (error) {
    const newer = error instanceof DOMException && error.name === 'VersionError';
    return { tables: memoryTables(), lasting: newer ? 'newer' : 'nowhere' };
  }
}

function allowed<T>(give: () => T): T | null {
  try {
    return give();
  } catch {
    return null;
  }
}

function readable(storage: Storage): Storage {
  storage.getItem('');
  return storage;
}

function channelOf(name: string): Channel {
  const channel = new BroadcastChannel(name);
  return {
    post: (word) => channel.postMessage(word),
    listen: (hear) => channel.addEventListener('message', ({ data }) => hear(data)),
  };
}
