/** A window of the program on a store of the test's own, in Chromium: its work, and the end of it. */
import { exampleNamed, isOwn } from '../../src/app/state/opening.ts';
import { createWork, type Work } from '../../src/app/state/store.ts';
import type { Claim } from '../../src/jobs/claims.ts';
import { openDatabase } from '../../src/jobs/database.ts';
import { type Device, thisDevice } from '../../src/jobs/device.ts';
import { createKeeper } from '../../src/jobs/keeper.ts';

export interface Opened {
  work: Work;
  session: Map<string, string>;
  /** The window is gone, without a word: its locks are free, and it writes no more. */
  kill(): void;
}

/** @param store name of the store, shared by the windows of a test */
export async function openWindow(
  store: string,
  session = new Map<string, string>(),
  change: (device: Device) => Device = (device) => device,
): Promise<Opened> {
  const real = thisDevice(store);
  const claims: Claim[] = [];
  let dead = false;
  const device: Device = {
    ...real,
    session: { getItem: (key) => session.get(key) ?? null, setItem: (key, text) => void session.set(key, text) },
    claims: (job, hears) => {
      const claim = real.claims(job, hears);
      claims.push(claim);
      return claim;
    },
    channel: real.channel && { ...real.channel, listen: (hear) => real.channel!.listen((word) => !dead && hear(word)) },
    tables: async () => {
      const tables = await openDatabase(store, () => {});
      return {
        lasting: 'device',
        tables: { ...tables, write: (changes) => (dead ? new Promise(() => {}) : tables.write(changes)) },
      };
    },
  };
  const keeper = createKeeper(change(device), isOwn);
  const started = await keeper.start();
  return {
    work: createWork(await exampleNamed(started.example), keeper, started),
    session,
    kill: () => {
      dead = true;
      for (const claim of claims) claim.release();
    },
  };
}
