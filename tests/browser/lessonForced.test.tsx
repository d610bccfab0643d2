/** A lesson and its class in the colours that a person's system forces: nothing that a tool finds wrong. */
import axe from 'axe-core';
import { expect, test, vi } from 'vitest';
import { page as browser, cdp, userEvent } from 'vitest/browser';
import { page } from './page.tsx';

page('#learn');

const $ = <E extends Element>(selector: string) => document.querySelector<E>(selector);
const there = (selector: string) => expect.poll(() => $(selector), { timeout: 60_000 }).not.toBeNull();
const forced = (value: 'active' | '') =>
  (cdp() as { send(method: string, params: unknown): Promise<unknown> }).send('Emulation.setEmulatedMedia', {
    features: [{ name: 'forced-colors', value }],
  });
async function clean(what: string): Promise<void> {
  const { violations } = await axe.run(document);
  expect(
    violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 120)).join(' | ')}`),
    what,
  ).toEqual([]);
}

test('a lesson and its class in forced colours', { timeout: 120_000 }, async () => {
  localStorage.clear();
  vi.spyOn(Math, 'random').mockReturnValue(0);
  await browser.viewport(820, 1100);
  await forced('active');
  try {
    expect(matchMedia('(forced-colors: active)').matches).toBe(true);
    window.location.hash = '#learn/touches-first';
    await there('.choices');
    await clean('asked');
    await userEvent.click(document.querySelector('.choices input')!);
    await userEvent.click(document.querySelector('.sure input')!);
    await userEvent.click($('.ask button.main')!);
    await there('.saw-options button');
    await clean('let go');
    await userEvent.click($('.saw-options button')!);
    await there('.why');
    await clean('told');
    window.location.hash = '#learn/touches-first/class/1';
    await there('.class-typed button');
    await userEvent.click($('.class-typed button')!);
    await there('.bars');
    await clean('before a class');
  } finally {
    await forced('');
    localStorage.clear();
  }
});
