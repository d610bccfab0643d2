/**
 * Every sentence of every verdict and of the Sheet, for all demos, in the one system and the other: no figure in a unit
 * of the other shop.
 *
 * @module-tag long
 */
import { afterAll, describe, expect, test, vi } from 'vitest';
import type { Design } from '../../src/design/definition.ts';
import type { System } from '../../src/design/units.ts';
import { withShopTools } from '../../src/report/cut/usualMachine.ts';
import { demos, sheetOf, verdictsOf } from './told.tsx';

afterAll(() => void vi.unstubAllGlobals());
vi.setConfig({ testTimeout: 120_000 });
// The width of lettering is asked of a canvas, which there is none of here.
vi.stubGlobal('document', { createElement: () => ({ getContext: () => null }) });

/** Figures with a unit; a dial, a roll, a ball, a bar or a block keeps the unit it was made in. */
const METRIC = /[\d.](?: |\u00a0)?(?:mm|µm|nm|N|MPa|°C|K|kg)(?![a-z²³])/;
const INCH = /[\d.](?: |\u00a0)?(?:in|tenths|thou|lbf?|psi|°F)(?![a-z])/;
const TOOLS =
  /divisions? of [\d.]+ (?:µm|tenths|mm|in)\b|(?:rolls?|ball|balls|bar) of [\d./ ]+ (?:mm|in)\b|stack (?:of )?[\d.]+ (?:mm|in)\b|blocks [\d.+ ]+ ?(?:mm|in)?\b/gi;
const alien = (text: string, system: System) => (system === 'inch' ? METRIC : INCH).exec(text.replaceAll(TOOLS, ''));

describe.each(demos)('%s', (_, demo) => {
  test.each(['metric', 'inch'] as const)('%s', (system) => {
    const design = withShopTools(demo, system);
    const sentences = verdictsOf(design, system);
    expect(sentences.length).toBeGreaterThan(8);
    expect(sentences.filter((sentence) => alien(sentence, system))).toEqual([]);
    const sheet = sheetOf(design, system);
    expect(sheet.length).toBeGreaterThan(500);
    const found = alien(sheet, system);
    expect(found && sheet.slice(Math.max(0, found.index - 60), found.index + 40)).toBeNull();
    // No figure with the tail of a conversion.
    expect(/\d\.\d{7,}/.exec(`${sentences.join(' ')} ${sheet}`)).toBeNull();
  });
});

test('forces, temperatures and rooms as an inch shop says them', () => {
  const [, demo] = demos.find(([name]) => name === 'steep-first')!;
  const run = { speed: 600, oil: { grade: 10 }, load: { y: -22.2411080763025, station: 20 } };
  const loaded: Design = { ...demo, run, seats: [...demo.seats] };
  const sheet = sheetOf(withShopTools(loaded, 'inch'), 'inch');
  expect(sheet).toMatch(/load 5 lbf down at station 0\.787\d* in, room 68 °F\./);
  expect(sheetOf(loaded, 'metric')).toMatch(/load 22\.2 N down at station 20\.000 mm, room 20 °C\./);
});
