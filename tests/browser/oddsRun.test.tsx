/**
 * The odds of the run in Chromium: by hand, by four real workers as by one; ways to make the parts side by side.
 *
 * @module-tag long
 */
import { expect, test } from 'vitest';
import { page as browser, userEvent } from 'vitest/browser';
import type { Design } from '../../src/design/definition.ts';
import { fineText } from '../../src/design/units.ts';
import { piecesOf } from '../../src/report/odds/pieces.ts';
import { askedOf, type Done, runnerOf } from '../../src/report/odds/running.ts';
import { runningShown } from '../../src/report/odds/runningShown.ts';
import { runningSentences } from '../../src/report/odds/runningWords.ts';
import { oddsTold } from '../../src/report/odds/section.ts';
import { timesText } from '../../src/report/odds/times.ts';
import { shareOut } from '../../src/worker/crew.ts';
import { createPool } from '../../src/worker/pool.ts';
import { expectAccessible, expectNoSidewaysScroll, page } from './page.tsx';

const shown = page('#odds');
const solved = { timeout: 60_000 };
const section = () => document.querySelector('.running-odds')?.textContent ?? '';

/** Held by hand, so that a spindle is run in no time. */
function quick(): Design {
  const { cut: _, readings: __, ...design } = shown.work.store.getState().design;
  return {
    ...design,
    run: { speed: 900, oil: { grade: 10 }, pose: { y: -0.0002, z: 0.03 }, heat: { duration: 600 } },
    odds: {
      draws: 1000,
      running: { draws: 24, at: 'set' },
      spread: [
        { seat: 'steep', part: 'bush', of: 'station', sigma: 0.001 },
        { of: 'speed', sigma: 20 },
      ],
    },
  };
}

test('four real workers run the same spindles as one, and as none', { timeout: 120_000 }, async () => {
  const design = quick();
  const pool = createPool(() => new Worker(new URL('../../src/worker/worker.ts', import.meta.url), { type: 'module' }));
  const pieces = piecesOf(40).filter(({ fine }) => !fine);
  const by = async (hands: number) => {
    const done: Done[] = [];
    const used = new Set<number>();
    await shareOut(
      pieces,
      hands,
      (piece, hand) => {
        used.add(hand);
        return pool.job('runPiece', { design, now: false, piece }, { hand });
      },
      (found) => done.push(found!),
    );
    expect(used.size).toBe(Math.min(hands, pieces.length));
    return pool.job('runShown', { design, now: false, done }, { hand: 0 });
  };
  const [four, one] = [await by(4), await by(1)];
  pool.dismiss();
  expect(four).toEqual(one);
  const asked = askedOf(design)!;
  expect(one).toEqual(runningShown(design, asked, pieces.map(runnerOf(asked))));
  expect(one!.report).toMatchObject({ draws: 40, runs: { share: 1 } });
});

test('pairs are run when that is asked, and stopped by another design', { timeout: 120_000 }, async () => {
  const design = quick();
  shown.work.open('quick', { ok: true, design });
  await userEvent.click(browser.getByRole('button', { name: 'Run 24 of these pairs' }));
  await expect.poll(section, solved).toContain('Run in full.');
  const asked = askedOf(design)!;
  const { report } = runningShown(design, asked, piecesOf(24).map(runnerOf(asked)))!;
  for (const sentence of runningSentences(design, report, 'metric')) expect(section()).toContain(sentence);
  expect(document.querySelectorAll('.running-odds .distribution').length).toBe(2);
  expect(section()).not.toMatch(/NaN|Infinity|undefined/);
  await expectNoSidewaysScroll();
  await expectAccessible();
  const many: Design = { ...design, odds: { ...design.odds, running: { draws: 20_000 } } };
  shown.work.open('many', { ok: true, design: many });
  await expect.poll(section).toContain('of the design before');
  await userEvent.click(browser.getByRole('button', { name: 'Run 20000 of these pairs' }));
  await expect
    .poll(() => document.querySelector<HTMLProgressElement>('.running-odds progress')?.value ?? 0, solved)
    .toBeGreaterThan(1);
  await userEvent.click(browser.getByRole('button', { name: 'Stop running' }));
  await expect.poll(section).toContain('Stopped. What was run stays.');
});

test('ways to make the parts are added, named, and told side by side', { timeout: 120_000 }, async () => {
  shown.work.open('quick', { ok: true, design: quick() });
  await userEvent.click(browser.getByRole('button', { name: '+ Way to make them' }));
  await userEvent.fill(browser.getByLabelText('Called', { exact: true }), 'ground here');
  await userEvent.keyboard('{Tab}');
  const design = () => shown.work.store.getState().design;
  expect(design().odds!.processes).toEqual([{ name: 'ground here', spread: quick().odds!.spread }]);
  await userEvent.click(browser.getByRole('button', { name: '+ Spread of ground here' }));
  expect(design().odds!.processes![0]!.spread.length).toBe(3);
  await expect
    .poll(() => document.querySelector('table.processes')?.textContent ?? '', solved)
    .toContain('ground here');
  const [ground] = oddsTold(design())!.processes!;
  const row = () => document.querySelector('.processes tbody tr')!.textContent!;
  await expect.poll(row, solved).toContain(`ground here${timesText(ground!.share)}`);
  expect(row()).toContain(fineText(ground!.setFilms.steep!.p95, 'metric'));
  await userEvent.click(browser.getByRole('button', { name: 'Remove ground here' }));
  expect(design().odds!.processes).toBeUndefined();
});
