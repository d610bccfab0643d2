/**
 * Workers that cannot be loaded, are killed, or fail: every screen says so, with how to go on, and goes on when asked
 * to.
 *
 * @module-tag long
 */
import { flushSync } from 'react-dom';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { page as browser, userEvent } from 'vitest/browser';
import type { Design } from '../../src/design/definition.ts';
import { validateDesign } from '../../src/design/validate.ts';
import type { Input, JobName } from '../../src/worker/jobs.ts';
import type { Ended } from '../../src/worker/longWork.ts';
import { createPool } from '../../src/worker/pool.ts';
import { createThread, type Thread } from '../../src/worker/thread.ts';
import type { WorkerApi } from '../../src/worker/worker.ts';
import slow from '../regressions/slow-notebook.conepair.json';
import { page } from './page.tsx';

const RealWorker = window.Worker;
let broken = false;
const workers = new Set<Worker>();

/** The browser's, but for a switch that keeps the next ones from being loaded. */
class Workers extends RealWorker {
  constructor(url: string | URL, options?: WorkerOptions) {
    super(broken ? '/not-there.js' : url, options);
    workers.add(this);
  }
}

/** As the browser does when it runs out of room: nobody is told. */
const kill = () => {
  for (const worker of workers) worker.terminate();
  workers.clear();
};

beforeAll(() => {
  window.Worker = Workers;
});
afterAll(() => {
  window.Worker = RealWorker;
});

const asked = async <K extends JobName>(thread: Thread<WorkerApi>, name: K, input: Input<K>) => {
  const ended = await thread.ask(async (worker): Promise<Ended<unknown>> => worker.run(0, name, input));
  return ended.status === 'done' ? ended.result : ended.status;
};

const shown = page('', true);
const again = () => {
  for (const button of document.querySelectorAll<HTMLButtonElement>('[role=alert] button'))
    if (button.textContent === 'Try again') button.click();
};
const alerts = () => [...document.querySelectorAll('[role=alert]')].map((alert) => alert.textContent!);
const design = (validateDesign(slow) as { design: Design }).design;

test('a worker that cannot be loaded fails what was asked; the next one asked is loaded anew', async () => {
  const thread = createThread<WorkerApi>(
    () => new Worker(new URL('../../src/worker/worker.ts', import.meta.url), { type: 'module' }),
  );
  broken = true;
  await expect(asked(thread, 'play', design)).rejects.toThrow(/could not be loaded/);
  broken = false;
  expect(await asked(thread, 'play', design)).toHaveProperty('seated');
  // Killed at rest, it is missed before anybody asks.
  kill();
  await expect.poll(() => asked(thread, 'play', design).catch(() => null)).toHaveProperty('seated');
  thread.end();
});

test('a worker killed at its work fails it', async () => {
  const thread = createThread<WorkerApi>(
    () => new Worker(new URL('../../src/worker/worker.ts', import.meta.url), { type: 'module' }),
  );
  await asked(thread, 'play', { ...design, play: {} });
  const lost = asked(thread, 'measure', { design, tools: 'metric' });
  kill();
  await expect(lost).rejects.toThrow(/ended by the browser/);
});

test('what fails in a worker is told by its own words, and the worker lives on', async () => {
  const thread = createThread<WorkerApi>(
    () => new Worker(new URL('../../src/worker/worker.ts', import.meta.url), { type: 'module' }),
  );
  await expect(asked(thread, 'play', { play: {} } as Design)).rejects.toThrow(/undefined|not iterable/);
  const before = workers.size;
  expect(await asked(thread, 'play', design)).toHaveProperty('seated');
  expect(workers.size).toBe(before);
  thread.end();
});

test('a job is given up by its signal alone: those that wait behind it are done all the same, and each fails with its reason', async () => {
  const { job } = createPool(
    () => new Worker(new URL('../../src/worker/worker.ts', import.meta.url), { type: 'module' }),
  );
  const running = { ...design, run: { speed: 600, oil: { viscosity: 0.01 }, load: { x: 0, y: -100, z: -30 } } };
  const [first, second, third] = [new AbortController(), new AbortController(), new AbortController()];
  const told: unknown[] = [];
  const tell = (point: unknown) => {
    told.push(point);
    first.abort(new Error('enough'));
    second.abort(new Error('not that'));
  };
  // So many that the word to stop comes long before the last, however busy the machine.
  const speeds = Array.from({ length: 2000 }, (_, i) => 200 + i / 10);
  const points = job('speeds', { design: running, speeds }, { signal: first.signal, tell });
  const film = job('film', running, { signal: second.signal });
  const last = job('speeds', { design: running, speeds: [300] }, { signal: third.signal });
  film.catch(() => {});
  await expect(points).rejects.toThrow('enough');
  await expect(film).rejects.toThrow('not that');
  expect(await last).toBeDefined();
  expect(told.length).toBeLessThan(speeds.length);
  // What does not tell points is ended with its worker, and the next one has another.
  const readings = job('measure', { design, tools: 'metric' }, { signal: AbortSignal.timeout(1) });
  await expect(readings).rejects.toThrow();
  expect(await job('measure', { design: { ...design, readings: [] }, tools: 'metric' })).toBeUndefined();
});

test.each([
  ['fit', 'Seat and play'],
  ['measure', 'The shape of the parts'],
  ['run', 'The run'],
  ['cut', 'The plan'],
  ['sheet', 'The plan'],
])(
  '%s says that it could not be worked out, and works it out when asked again',
  { timeout: 150_000 },
  async (screen, what) => {
    kill();
    broken = true;
    shown.open('notebook');
    flushSync(() =>
      shown.work.change((d) => ({
        ...d,
        // What was answered for one screen is known to the next.
        title: screen,
        cut: { allow: [{ seat: d.seats[0]!.name, part: 'journal', limit: 0.1 }] },
        run: { speed: 600, oil: { viscosity: 0.01 }, pose: { x: 0, y: 0, z: 0.02, tiltX: 0, tiltY: 0 } },
      })),
    );
    window.location.hash = `#${screen}`;
    shown.show();
    await expect
      .poll(
        () => alerts().some((alert) => alert.startsWith(`${what} could not be worked out: the part of the program`)),
        // What the screen before had asked of a worker that was killed is told late, and this one waits behind it.
        { timeout: 40_000 },
      )
      .toBe(true);
    expect(document.querySelector('header')).toBeTruthy();
    broken = false;
    // Whoever else lost the same worker asks by itself, or is asked; some are told of it late.
    await expect
      .poll(
        () => {
          again();
          return alerts().length;
        },
        { timeout: 40_000 },
      )
      .toBe(0);
    await expect
      .poll(() => document.querySelector('main')!.textContent)
      .not.toMatch(/being worked out|is being drawn|loading/i);
  },
);

test('Measure works beside the screen: the page stays at hand, the last answer stays marked, and the newest wins', async () => {
  window.location.hash = '#measure';
  shown.show();
  shown.open('notebook');
  const verdict = () => document.querySelector('.verdict')!;
  const figures = () => document.querySelectorAll('.shapes .shape').length;
  // The workers of the tests before were killed: another is loaded first.
  await expect.poll(figures, { timeout: 40_000 }).toBeGreaterThan(0);
  await expect.poll(() => verdict().getAttribute('aria-busy')).toBe('false');
  const answer = verdict().textContent;
  // Seats of the same names: what was told of the others stays, and is said to be of before.
  flushSync(() => shown.work.open('slow', { ok: true, design }));
  expect(verdict().textContent).toBe(answer);
  expect(verdict().getAttribute('aria-busy')).toBe('true');
  expect(document.querySelector('main')!.textContent).toMatch(/what stands here is of the notebook before/);
  expect(document.querySelector('.shapes ~ .buttons button')!.getAttribute('aria-disabled')).toBe('true');
  await userEvent.click(browser.getByRole('button', { name: '+ Diameter', exact: true }).first());
  await expect.poll(() => document.querySelector('.new-entry')).toBeTruthy();
  flushSync(() => shown.open('notebook'));
  await expect.poll(() => verdict().getAttribute('aria-busy')).toBe('false');
  expect(verdict().textContent).toBe(answer);
});
