/**
 * The way from the screen to what is worked out beside it: `job(name, input)` is answered, or fails with the reason,
 * and with a signal can be given up. Workers are few: jobs of a lane share one and wait for each other, so that what
 * follows the hand never waits for what takes seconds.
 */
import { proxy } from 'comlink';
import type { Input, JobName, Point, Result } from './jobs.ts';
import type { Ended } from './longWork.ts';
import { createThread, promised } from './thread.ts';
import type { WorkerApi } from './worker.ts';

/** `sections` take a part of a second, `readings` and `long` seconds, `follow` a frame or two. */
type Lane = 'sections' | 'readings' | 'follow' | 'long';
/**
 * How a job that is under way is given up: its worker is ended, it is asked to stop at its next point, or its answer is
 * not waited for.
 */
type GivenUp = 'end' | 'stop' | 'leave';

const BESIDE: Record<JobName, [Lane, GivenUp]> = {
  cut: ['sections', 'leave'],
  play: ['sections', 'leave'],
  print: ['sections', 'leave'],
  printMaps: ['sections', 'leave'],
  measure: ['readings', 'end'],
  belief: ['readings', 'leave'],
  expectedAtTrial: ['readings', 'leave'],
  states: ['readings', 'leave'],
  movingFields: ['follow', 'leave'],
  fullFields: ['follow', 'leave'],
  warmFields: ['follow', 'leave'],
  film: ['long', 'end'],
  speeds: ['long', 'stop'],
  clearances: ['long', 'stop'],
  films: ['long', 'stop'],
  coldSettings: ['long', 'stop'],
  odds: ['long', 'stop'],
  oddsTold: ['readings', 'leave'],
  runPiece: ['long', 'leave'],
  runShown: ['long', 'leave'],
  lesson: ['long', 'end'],
  lessonTried: ['long', 'end'],
  lessonAnswer: ['sections', 'leave'],
  solve: ['long', 'end'],
};

/** Asked again by one screen after another, of the same design. */
const KEPT: readonly JobName[] = ['cut', 'film', 'belief', 'oddsTold', 'lesson'];
const MOST_KEPT = 8;

export interface Asking<K extends JobName> {
  /** fails the job with its reason as soon as the job can be given up */
  signal?: AbortSignal;
  /** takes every point of a job that comes point by point */
  tell?: (point: Point<K>) => void;
  /** which hand of a crew (crew.ts) is to do it; each is a worker of its own */
  hand?: number;
}

export function createPool(start: () => Worker) {
  const lane = () => ({ thread: createThread<WorkerApi>(start), last: Promise.resolve() as Promise<unknown> });
  /** A worker is started when it is first asked. */
  const hands: ReturnType<typeof lane>[] = [];
  const handOf = (hand: number) => {
    hands[hand] ??= lane();
    return hands[hand];
  };
  const lanes: Record<Lane, ReturnType<typeof lane>> = {
    sections: lane(),
    readings: lane(),
    follow: lane(),
    long: lane(),
  };
  let jobs = 0;
  /** The last answers to what is asked by more than one screen, newest first. */
  let kept: { key: string; answer: Promise<unknown> }[] = [];

  async function begun<K extends JobName>(
    name: K,
    input: Input<K>,
    { signal, tell }: Asking<K>,
    { thread }: ReturnType<typeof lane>,
  ): Promise<Result<K>> {
    signal?.throwIfAborted();
    const how = BESIDE[name][1];
    jobs++;
    const id = jobs;
    const { promise: left, reject } = promised<never>();
    left.catch(() => {});
    const giveUp = () => {
      reject(signal!.reason as Error);
      if (how === 'end') thread.end();
      else if (how === 'stop') thread.tell((worker) => worker.stop(id));
    };
    signal?.addEventListener('abort', giveUp, { once: true });
    const answer = thread.ask(
      async (worker): Promise<Ended<unknown>> =>
        tell ? worker.run(id, name, input, proxy(tell as (point: unknown) => void)) : worker.run(id, name, input),
    );
    // Whoever gave it up does not wait for the answer.
    answer.catch(() => {});
    try {
      const ended = await Promise.race([answer, left]);
      if (ended.status === 'cancelled') throw signal?.reason ?? new Error('stopped');
      return ended.result as Result<K>;
    } finally {
      signal?.removeEventListener('abort', giveUp);
    }
  }

  return {
    job<K extends JobName>(name: K, input: Input<K>, asking: Asking<K> = {}): Promise<Result<K>> {
      const key = KEPT.includes(name) ? `${name} ${JSON.stringify(input)}` : null;
      const known = kept.find((one) => one.key === key);
      if (known) return known.answer as Promise<Result<K>>;
      const lane = asking.hand === undefined ? lanes[BESIDE[name][0]] : handOf(asking.hand);
      // One after the other, so that what is ended takes no other with it.
      const mine = lane.last.then(() => begun(name, input, asking, lane));
      lane.last = mine.catch(() => {});
      // Only what was answered stays; one that is under way is given up by whoever asked for it.
      if (key !== null)
        void mine.then(() => (kept = [{ key, answer: mine }, ...kept].slice(0, MOST_KEPT))).catch(() => {});
      return mine;
    },
    /** The crew goes home: its workers are ended, and begin anew when they are asked again. */
    dismiss(): void {
      for (const { thread } of hands) thread.end();
    },
  };
}

export const { job, dismiss } = createPool(
  () => new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' }),
);
