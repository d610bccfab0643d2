/** Workers that cannot be loaded, are killed, or fail: every screen says so, with how to go on, and goes on when asked to. */
import { flushSync } from 'react-dom';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { page as browser, userEvent } from 'vitest/browser';
import type { Design } from '../../src/design/definition.ts';
import { validateDesign } from '../../src/design/validate.ts';
import type { Solvers } from '../../src/worker/solver.ts';
import { createThread } from '../../src/worker/thread.ts';
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

const shown = page('', true);
const alerts = () => [...document.querySelectorAll('[role=alert]')].map((alert) => alert.textContent!);
const design = (validateDesign(slow) as { design: Design }).design;

test('a worker that cannot be loaded fails what was asked; the next one asked is loaded anew', async () => {
  const thread = createThread<Solvers>(() => new Worker(new URL('../../src/worker/solver.ts', import.meta.url), { type: 'module' }));
  broken = true;
  await expect(thread.ask((solver) => solver.play(design))).rejects.toThrow(/could not be loaded/);
  broken = false;
  expect(await thread.ask((solver) => solver.play(design))).toHaveProperty('seated');
  // Killed at rest, it is missed before anybody asks.
  kill();
  await expect.poll(() => thread.ask((solver) => solver.play(design)).catch(() => null)).toHaveProperty('seated');
  thread.end();
});

test('a worker killed at its work fails it', async () => {
  const thread = createThread<Solvers>(() => new Worker(new URL('../../src/worker/solver.ts', import.meta.url), { type: 'module' }));
  await thread.ask((solver) => solver.play({ ...design, play: {} }));
  const asked = thread.ask((solver) => solver.measure(design));
  kill();
  await expect(asked).rejects.toThrow(/ended by the browser/);
});

test('what fails in a worker is told by its own words, and the worker lives on', async () => {
  const thread = createThread<Solvers>(() => new Worker(new URL('../../src/worker/solver.ts', import.meta.url), { type: 'module' }));
  await expect(thread.ask((solver) => solver.play({ play: {} } as Design))).rejects.toThrow(/undefined|not iterable/);
  const before = workers.size;
  expect(await thread.ask((solver) => solver.play(design))).toHaveProperty('seated');
  expect(workers.size).toBe(before);
  thread.end();
});

test.each([
  ['fit', 'Seat and play'],
  ['measure', 'The shape of the parts'],
  ['run', 'The run'],
  ['cut', 'The plan'],
  ['sheet', 'The plan'],
])('%s says that it could not be worked out, and works it out when asked again', async (screen, what) => {
  kill();
  broken = true;
  shown.open('notebook');
  flushSync(() => shown.work.change((d) => ({ ...d, cut: { allow: [{ seat: d.seats[0]!.name, part: 'journal', limit: 0.1 }] }, run: { speed: 600, oil: { viscosity: 0.01 }, pose: { x: 0, y: 0, z: 0.02, tiltX: 0, tiltY: 0 } } })));
  window.location.hash = `#${screen}`;
  shown.show();
  await expect.poll(() => alerts().some((alert) => alert.startsWith(`${what} could not be worked out: the part of the program`))).toBe(true);
  expect(document.querySelector('header')).toBeTruthy();
  broken = false;
  // Whoever else lost the same worker asks by itself, or is asked.
  while (alerts().length > 0) {
    const left = alerts().length;
    await userEvent.click(browser.getByRole('button', { name: 'Try again' }).first());
    await expect.poll(() => alerts().length).toBeLessThan(left);
  }
  await expect.poll(() => document.querySelector('main')!.textContent).not.toMatch(/being worked out|is being drawn|loading/i);
});

test('Measure works beside the screen: the page stays at hand, the last answer stays marked, and the newest wins', async () => {
  window.location.hash = '#measure';
  shown.show();
  shown.open('notebook');
  const verdict = () => document.querySelector('.verdict')!;
  const figures = () => document.querySelectorAll('.shapes .shape').length;
  await expect.poll(figures).toBeGreaterThan(0);
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
