/** The whole app on an empty page for one test of its pictures; a word on the console fails the test. */
import { flushSync } from 'react-dom';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeEach, expect, vi } from 'vitest';
import { App } from '../../src/app/App.tsx';
import { DEMOS, openingDesign } from '../../src/app/demos.ts';
import { createWork, type Work } from '../../src/app/store.ts';
import '../../src/app/style.css';

let root: Root;
export let work: Work;
const complaints: string[] = [];
/** three speaks of a class that fiber still uses, and of a context that a test takes away; software WebGL of slow reads. */
const KNOWN = /THREE\.Clock: This module has been deprecated|GPU stall due to ReadPixels|THREE\.WebGLRenderer: (Context Lost|WEBGL_lose_context extension not supported)/;

beforeEach(() => {
  complaints.length = 0;
  for (const kind of ['error', 'warn', 'log'] as const) {
    vi.spyOn(console, kind).mockImplementation((...words) => {
      const said = words.map(String).join(' ');
      if (!KNOWN.test(said)) complaints.push(said);
    });
  }
  document.body.innerHTML = '<div id="root"></div>';
  document.documentElement.lang = 'en';
  work = createWork(openingDesign(), undefined);
  root = createRoot(document.getElementById('root')!);
});

afterEach(() => {
  flushSync(() => root.unmount());
  vi.restoreAllMocks();
  expect(complaints).toEqual([]);
});

export const show = () => flushSync(() => root.render(<App work={work} />));
export const position = () => work.store.getState().design.position ?? 0;
export const steps = () => work.store.temporal.getState().pastStates.length;
export const frame = () => new Promise((done) => requestAnimationFrame(() => done(null)));
export const open = (name: string) => flushSync(() => work.open(name, { ok: true, design: DEMOS.find((demo) => demo.file.startsWith(name))!.design }));
