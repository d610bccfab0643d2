/**
 * Every sentence of every verdict and of the Sheet, for all demos, in the one system and the other: no figure in a unit
 * of the other shop.
 */

import { readdirSync, readFileSync } from 'node:fs';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test, vi } from 'vitest';
import { Pages } from '../../src/app/screens/sheet/Pages.tsx';
import type { Design } from '../../src/design/definition.ts';
import type { System } from '../../src/design/units.ts';
import { parseDesign } from '../../src/design/validate.ts';
import { leftVerdict } from '../../src/report/cut/leftVerdict.ts';
import { runsAsPlanned } from '../../src/report/cut/runsAsPlanned.ts';
import { setUpSentences } from '../../src/report/cut/setUpSentences.ts';
import { withShopTools } from '../../src/report/cut/usualMachine.ts';
import { cutVerdict, limitSentences } from '../../src/report/cut/verdict.ts';
import type { FilmReport } from '../../src/report/film/definition.ts';
import { filmVerdict } from '../../src/report/film/verdict.ts';
import { fitVerdict } from '../../src/report/fit/verdict.ts';
import { faultText } from '../../src/report/measure/faultText.ts';
import { measureSection } from '../../src/report/measure/section.ts';
import { doubtsOf, measureVerdict, suggestionText } from '../../src/report/measure/verdict.ts';
import { fitMeasured } from '../../src/report/measure/withMeasured.ts';
import { playVerdict } from '../../src/report/play/verdict.ts';
import { printVerdict } from '../../src/report/print/verdict.ts';
import { solve } from '../../src/report/report.ts';
import { drawnParts } from '../../src/report/sheet/drawnParts.ts';
import { purposeOf } from '../../src/report/sheet/purpose.ts';

vi.setConfig({ testTimeout: 120_000 });
// The width of lettering is asked of a canvas, which there is none of here.
vi.stubGlobal('document', { createElement: () => ({ getContext: () => null }) });

const folder = new URL('../../assets/designs/', import.meta.url);
const demos = readdirSync(folder).map((file) => {
  const read = parseDesign(readFileSync(new URL(file, folder), 'utf8'));
  if (!read.ok) throw new Error(file);
  return [file.replace('.conepair.json', ''), everything(read.design)] as const;
});

/** A demo made to speak of everything: how it runs, what was read and cut, seats that stick. */
function everything(demo: Design): Design {
  const [first] = demo.seats;
  return {
    ...demo,
    play: demo.play ?? {},
    print: demo.print ?? { thickness: 0.002 },
    run: {
      ...(demo.run ?? { speed: 600, oil: { grade: 10 }, load: { x: 3.3, y: -22.2411080763025, z: 5, station: 20 } }),
      ambient: 23.3,
    },
    readings: demo.readings ?? [
      {
        kind: 'diameter',
        seat: first!.name,
        part: 'journal',
        value: first!.journal.diameter + 0.003,
        sigma: 0.001,
        station: first!.journal.station,
      },
    ],
    cut: { allow: [{ seat: first!.name, part: 'journal' }], ...demo.cut },
  };
}

/** Figures with a unit; a dial, a roll, a ball, a bar or a block keeps the unit it was made in. */
const METRIC = /[\d.](?: |\u00a0)?(?:mm|µm|nm|N|MPa|°C|K|kg)(?![a-z²³])/;
const INCH = /[\d.](?: |\u00a0)?(?:in|tenths|thou|lbf?|psi|°F)(?![a-z])/;
const TOOLS =
  /divisions? of [\d.]+ (?:µm|tenths|mm|in)\b|(?:rolls?|ball|balls|bar) of [\d./ ]+ (?:mm|in)\b|stack (?:of )?[\d.]+ (?:mm|in)\b|blocks [\d.+ ]+ ?(?:mm|in)?\b/gi;
const alien = (text: string, system: System) => (system === 'inch' ? METRIC : INCH).exec(text.replaceAll(TOOLS, ''));

const films = new Map<Design['seats'], FilmReport>();

/** The film of a demo is the same in either shop, and takes longest. */
function filmOf(design: Design): FilmReport {
  const film = films.get(design.seats) ?? solve(design, 'x', ['film']).film!;
  films.set(design.seats, film);
  return film;
}

function verdictsOf(design: Design, system: System): string[] {
  const report = { ...solve(design, 'x', ['fit', 'play', 'print', 'cut']), film: filmOf(design) };
  const measure = measureSection(design, system)!;
  const { fit, play, print, film, cut } = report;
  const verdicts = [
    fitVerdict(design, fit!, system),
    playVerdict(design, play!, fit!, system),
    printVerdict(design, print!, system),
    filmVerdict(design, film!, system),
    measureVerdict(design, measure, fitMeasured(design, measure), system),
    cutVerdict(design, cut!, system),
  ];
  const left = leftVerdict(design, cut!, system);
  return [
    ...[...verdicts, ...(left ? [left] : [])].flatMap(({ headline, sentences }) => [headline, ...sentences]),
    ...limitSentences(cut!, system),
    ...setUpSentences(design, cut!, system),
    ...doubtsOf(design, measure),
    ...measure.impossible.map((fault) => faultText(fault, system)),
    ...(measure.next?.suggestions ?? []).map((suggestion) => suggestionText(design, suggestion, system)),
  ];
}

function sheetOf(design: Design, system: System): string {
  const { cut } = solve(design, 'x', ['cut']);
  const film = filmOf(design);
  const purpose = purposeOf(design, cut!, system);
  const drawn = drawnParts(design, cut!, purpose.kind, system);
  const markup = renderToStaticMarkup(
    <Pages
      stale={false}
      paper="A4"
      room={900}
      purpose={purpose}
      design={design}
      {...drawn}
      cut={cut!}
      film={film}
      runsBadly={runsAsPlanned(drawn.runs, film, true, system)}
      page="https://shop.example/conepair/"
      system={system}
    />,
  );
  return markup.replace(/<[^>]*>/g, ' ').replace(/\s+/g, ' ');
}

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
