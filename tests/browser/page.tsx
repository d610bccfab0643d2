/** The whole page on a design, for the browser tests; what it says to the console is held against it. */
import { flushSync } from 'react-dom';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeEach, expect, vi } from 'vitest';
import { App } from '../../src/app/App.tsx';
import { openingDesign } from '../../src/app/demos.ts';
import { createWork, type Work } from '../../src/app/store.ts';
import '../../src/app/style.css';

/** three speaks of a class that fiber still uses; nothing of ours. Software WebGL speaks of slow reads. */
const KNOWN = /THREE\.Clock: This module has been deprecated|GPU stall due to ReadPixels/;

export interface Shown {
  work: Work;
}

/** Opens the page before each test and closes it after. */
export function page(hash = ''): Shown {
  const shown = {} as Shown;
  const complaints: string[] = [];
  let root: Root;
  beforeEach(() => {
    complaints.length = 0;
    for (const kind of ['error', 'warn'] as const) {
      vi.spyOn(console, kind).mockImplementation((...words) => {
        const said = words.map(String).join(' ');
        if (!KNOWN.test(said)) complaints.push(said);
      });
    }
    window.location.hash = hash;
    document.body.innerHTML = '<div id="root"></div>';
    document.documentElement.lang = 'en';
    document.title = 'Conepair';
    shown.work = createWork(openingDesign(), undefined);
    root = createRoot(document.getElementById('root')!);
    flushSync(() => root.render(<App work={shown.work} />));
  });
  afterEach(() => {
    flushSync(() => root.unmount());
    vi.restoreAllMocks();
    expect(complaints).toEqual([]);
  });
  return shown;
}
