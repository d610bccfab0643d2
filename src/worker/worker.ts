/** The worker: does jobs, one or several at a time, and stops those that come point by point when asked. */
import { expose } from 'comlink';
import { sayAlive } from './alive.ts';
import { JOBS, type JobName } from './jobs.ts';
import { drive, type Ended } from './longWork.ts';

/** Jobs that were asked to stop. */
const stops = new Set<number>();

/** Lets messages in between two points. */
const breathe = () => new Promise<void>((resolve) => setTimeout(resolve, 0));

const isGenerator = (result: unknown): result is Generator =>
  typeof result === 'object' && result !== null && Symbol.iterator in result && 'next' in result;

const WORKER = {
  /** `id`: by which it can be stopped */
  async run(
    id: number,
    name: JobName,
    input: unknown,
    tell: (point: unknown) => void = () => {},
  ): Promise<Ended<unknown>> {
    const result = (JOBS[name] as (input: unknown) => unknown)(input);
    if (!isGenerator(result)) return { status: 'done', result };
    const ended = await drive(result, { tell, stopped: () => stops.has(id), breathe });
    stops.delete(id);
    return ended;
  },
  stop: (id: number) => {
    stops.add(id);
  },
};

export type WorkerApi = typeof WORKER;

expose(WORKER);
sayAlive();
