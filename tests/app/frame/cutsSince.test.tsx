/** What a screen of the parts as drawn or measured says of what was done and seen since. */
import { readFileSync } from 'node:fs';
import { renderToStaticMarkup } from 'react-dom/server';
import { expect, test } from 'vitest';
import { CutsSince } from '../../../src/app/frame/CutsSince.tsx';
import type { Design } from '../../../src/design/definition.ts';

const plain: Design = JSON.parse(
  readFileSync(new URL('../../../assets/designs/steep-first.conepair.json', import.meta.url), 'utf8'),
);
type Trials = NonNullable<NonNullable<Design['cut']>['trials']>;
const said = (trials: Trials, also = false) =>
  renderToStaticMarkup(<CutsSince design={{ ...plain, cut: { ...plain.cut!, trials } }} trials={also} />);

const seen: Trials[number] = { standOff: { value: -0.004, sigma: 0.001 } };
const cut: Trials[number] = { taken: [{ seat: 'steep', part: 'journal', normal: 0.01 }] };

test('of cuts on every such screen, of a trial where asked, of neither once both are in the shapes', () => {
  expect(said([])).toBe('');
  expect(said([{ note: 'cleaned' }], true)).toBe('');
  expect(said([seen])).toBe('');
  expect(said([seen], true)).toMatch(/as drawn.*href="#cut".*trial assembly told/);
  expect(said([seen, cut])).toMatch(/One cut was made since/);
  expect(said([seen, cut, cut], true)).toMatch(/2 cuts were made since/);
  expect(said([{ ...seen, inShapes: true }], true)).toBe('');
});
