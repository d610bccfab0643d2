/** What is asked of a worker is answered or fails, and nothing of it stays behind. */
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { expect, test } from 'vitest';
import { createThread } from '../../src/worker/thread.ts';

class Stub extends EventTarget {
  ended = false;
  postMessage() {}
  terminate() {
    this.ended = true;
  }
  say(kind: string, data: unknown = null) {
    this.dispatchEvent(Object.assign(new Event(kind), { data }));
  }
}

/** A thread, and the workers that it has started. */
function stubbed() {
  const workers: Stub[] = [];
  const thread = createThread<object>(() => {
    workers.push(new Stub());
    return workers.at(-1) as unknown as Worker;
  });
  return { thread, workers };
}

const READY = { alive: null };

setFlagsFromString('--expose-gc');
const collect = runInNewContext('gc') as () => void;

test('an answer that its asker has let go of is gone, while the worker lives on', async () => {
  const { thread, workers } = stubbed();
  const asked = async () => {
    const answer = thread.ask(() => Promise.resolve({ large: new Float64Array(1000) }));
    workers[0]!.say('message', READY);
    return new WeakRef(await answer);
  };
  const failed = async () => {
    const error = await thread.ask(() => Promise.reject(new Error('its own fault'))).catch((thrown: Error) => thrown);
    return new WeakRef(error as Error);
  };
  const left = [await asked(), await failed()];
  await new Promise((done) => setTimeout(done));
  collect();
  expect(left.map((one) => one.deref())).toEqual([undefined, undefined]);
  expect(workers).toHaveLength(1);
});

test('a worker that was ended is gone, though it was never loaded, and whoever asked it too', async () => {
  let worker: WeakRef<Stub> | undefined;
  const thread = createThread<object>(() => {
    const stub = new Stub();
    worker = new WeakRef(stub);
    return stub as unknown as Worker;
  });
  const asked = async () => {
    const asker = { of: 'a screen' };
    const answer = thread.ask(() => Promise.resolve(asker));
    thread.end();
    await answer.catch(() => {});
    return new WeakRef(asker);
  };
  const left = [await asked(), worker!];
  await new Promise((done) => setTimeout(done));
  collect();
  expect(left.map((one) => one.deref())).toEqual([undefined, undefined]);
  expect(thread).toBeDefined();
});

test.each(['error', 'messageerror'])(
  'whatever waits fails once its worker is lost (%s); the next starts another',
  async (kind) => {
    const { thread, workers } = stubbed();
    const waiting = [1, 2].map(() => thread.ask(() => new Promise(() => {})));
    workers[0]!.say('message', READY);
    workers[0]!.say(kind);
    for (const one of waiting) await expect(one).rejects.toThrow('could not be loaded');
    expect(workers[0]!.ended).toBe(true);
    const next = thread.ask(() => Promise.resolve(3));
    workers[1]!.say('message', READY);
    expect(await next).toBe(3);
    workers[0]!.say(kind);
    expect(await thread.ask(() => Promise.resolve(4))).toBe(4);
    expect(workers).toHaveLength(2);
  },
);

test('given up is only a worker that is at something; what waits for it fails', async () => {
  const { thread, workers } = stubbed();
  const first = thread.ask(() => Promise.resolve(1));
  workers[0]!.say('message', READY);
  expect(await first).toBe(1);
  thread.giveUp();
  expect(workers[0]!.ended).toBe(false);
  const waits = thread.ask(() => new Promise(() => {}));
  thread.giveUp();
  await expect(waits).rejects.toThrow('ended by the browser');
  expect(workers[0]!.ended).toBe(true);
});
