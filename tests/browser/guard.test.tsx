/**
 * What cannot be loaded, and what crashes: it is said where it would stand, the rest of the page lives on, and it is
 * tried again.
 */
import { flushSync } from 'react-dom';
import { createRoot } from 'react-dom/client';
import { afterEach, expect, test, vi } from 'vitest';
import { page as browser, userEvent } from 'vitest/browser';
import { App } from '../../src/app/App.tsx';
import { onDemand } from '../../src/app/frame/onDemand.tsx';
import { OPENING } from '../../src/app/state/opening.ts';
import { createWork } from '../../src/app/state/store.ts';

/** React tells the console of every fault it hands to a guard. */
vi.spyOn(console, 'error').mockImplementation(() => {});

let unmount = () => {};
afterEach(() => flushSync(() => unmount()));

function show(part: React.ReactNode) {
  document.body.innerHTML = '<div id="root"></div>';
  const root = createRoot(document.getElementById('root')!);
  unmount = () => root.unmount();
  flushSync(() => root.render(<>beside {part}</>));
}

const text = () => document.body.textContent!;
const again = () => userEvent.click(browser.getByRole('button', { name: 'Try again' }));

test('a part that cannot be loaded says so, and is there once it can be', async () => {
  let answers = false;
  let asked = 0;
  const Part = onDemand(
    async () => {
      asked++;
      if (!answers) throw new Error('Failed to fetch');
      return { default: ({ name }: { name: string }) => <p>here is {name}</p> };
    },
    { what: 'The plan', loading: 'The plan is loading.' },
  );
  show(<Part name="it" />);
  expect(text()).toMatch(/The plan is loading\./);
  await expect.poll(text).toMatch(/The plan could not be loaded: the place this page comes from does not answer\./);
  expect(text()).toMatch(/^beside/);
  await again();
  await expect.poll(() => asked).toBe(2);
  await expect.poll(text).toMatch(/could not be loaded/);
  answers = true;
  await again();
  await expect.poll(text).toMatch(/here is it/);
  // What is loaded is not asked for again.
  show(<Part name="the same" />);
  await expect.poll(text).toMatch(/here is the same/);
  expect(asked).toBe(3);
});

test('a part that could not be loaded is asked for again when it is come back to', async () => {
  let answers = false;
  const Part = onDemand(
    async () => {
      if (!answers) throw new Error('Failed to fetch');
      return { default: () => <p>here it is</p> };
    },
    { what: 'The plan' },
  );
  show(<Part />);
  await expect.poll(text).toMatch(/could not be loaded/);
  flushSync(() => unmount());
  answers = true;
  show(<Part />);
  await expect.poll(text).toMatch(/here it is/);
});

test('a screen that crashes says so, leaves the bar with its buttons, and is back with the change undone', async () => {
  const work = createWork(OPENING.design);
  window.location.hash = '';
  show(<App work={work} />);
  // No design that a file could bring: a slip of the program.
  flushSync(() => {
    work.dragStart();
    work.store.setState({ design: { ...OPENING.design, seats: [{ name: 'no surfaces' }] as never } });
    work.dragEnd();
  });
  await expect
    .poll(() => document.querySelector('main [role=alert]')?.textContent)
    .toMatch(/^This screen cannot be shown; that is a fault of the program, not yours\./);
  // A file picker waits for a hand.
  Object.assign(window, { showSaveFilePicker: undefined });
  const saved: Blob[] = [];
  vi.spyOn(URL, 'createObjectURL').mockImplementation((blob) => {
    saved.push(blob as Blob);
    return '#';
  });
  await userEvent.click(browser.getByRole('button', { name: 'Save', exact: true }));
  expect(await saved[0]!.text()).toMatch(/no surfaces/);
  await userEvent.click(browser.getByRole('button', { name: 'Undo', exact: true }));
  await expect.poll(() => document.querySelector('.verdict')?.textContent).toMatch(/the steep seat touches first/);
});
