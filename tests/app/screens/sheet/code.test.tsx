/** The Sheet's code: of an address that another device can open; else why there is none, on the screen alone. */
import { readFileSync } from 'node:fs';
import { renderToStaticMarkup } from 'react-dom/server';
import { expect, test } from 'vitest';
import { SheetCode } from '../../../../src/app/screens/sheet/SheetCode.tsx';
import { parseDesign } from '../../../../src/design/parse.ts';

const read = parseDesign(
  readFileSync(new URL('../../../../assets/designs/steep-first.conepair.json', import.meta.url), 'utf8'),
);
if (!read.ok) throw new Error('demo');
const shown = (page: string) => renderToStaticMarkup(<SheetCode design={read.design} system="metric" page={page} />);

test.each([
  ['https://shop.example/spindle/', '<svg'],
  ['http://192.168.1.20:8080/', '<svg'],
])('%s has a code', (page, drawing) => expect(shown(page)).toContain(drawing));

test.each([
  ['http://localhost:4173/', 'localhost:4173'],
  ['http://127.0.0.1:8080/', '127.0.0.1:8080'],
  ['file:///media/stick/index.html', 'a file'],
])('%s has none, and says why to who is at the screen', (page, named) => {
  expect(shown(page)).not.toContain('<svg');
  expect(shown(page)).toMatch(/^<p class="[^"]*screen-only/);
  expect(shown(page)).toContain(named);
});
