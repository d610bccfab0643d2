/**
 * Lets the page know that a worker is there, and when it is gone. A worker that is ended tells nobody; but a lock it
 * holds for as long as it lives falls to whoever waits for it.
 */

/**
 * What a worker says of itself once it is loaded: the name of its lock; null where there are none (a page not served
 * securely).
 */
interface Alive {
  alive: string | null;
}

const isAlive = (data: unknown): data is Alive => typeof data === 'object' && data !== null && 'alive' in data;

/** For the worker: takes the lock, and says so. */
export function sayAlive(): void {
  const say = (alive: string | null) => self.postMessage({ alive } satisfies Alive);
  if (!('locks' in navigator)) {
    say(null);
    return;
  }
  const name = `conepair.worker.${Math.random().toString(36).slice(2)}`;
  void navigator.locks.request(name, () => {
    say(name);
    return new Promise(() => {});
  });
}

/** For the page: `ready` once the worker is loaded, `gone` once it is no more. */
export function watch(worker: Worker, ready: () => void, gone: () => void): void {
  worker.addEventListener('message', ({ data }) => {
    if (!isAlive(data)) return;
    ready();
    if (data.alive !== null) void navigator.locks.request(data.alive, gone);
  });
}
