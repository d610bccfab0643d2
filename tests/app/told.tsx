/** Every sentence of every verdict, and the Sheet, of a design made to speak of everything. */
import { readdirSync, readFileSync } from 'node:fs';
import { renderToStaticMarkup } from 'react-dom/server';
import { Pages } from '../../src/app/screens/sheet/Pages.tsx';
import type { Design } from '../../src/design/definition.ts';
import { parseDesign } from '../../src/design/parse.ts';
import type { AngleWay, System } from '../../src/design/units.ts';
import { leftVerdict } from '../../src/report/cut/leftVerdict.ts';
import { runsAsPlanned } from '../../src/report/cut/runsAsPlanned.ts';
import { setUpSentences } from '../../src/report/cut/setUpSentences.ts';
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

const folder = new URL('../../assets/designs/', import.meta.url);
export const demos = readdirSync(folder).map((file) => {
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

const films = new Map<Design['seats'], FilmReport>();

/** The film of a demo is the same in either shop, and takes longest. */
function filmOf(design: Design): FilmReport {
  const film = films.get(design.seats) ?? solve(design, 'x', ['film']).film!;
  films.set(design.seats, film);
  return film;
}

/** `running`: with how it runs, which takes longest. */
export function verdictsOf(
  design: Design,
  system: System,
  { way = 'half' as AngleWay, running = true } = {},
): string[] {
  const report = solve(design, 'x', ['fit', 'play', 'print', 'cut']);
  const measure = measureSection(design, system)!;
  const { fit, play, print, cut } = report;
  const verdicts = [
    fitVerdict(design, fit!, system, way),
    playVerdict(design, play!, fit!, system, way),
    printVerdict(design, print!, system),
    ...(running ? [filmVerdict(design, filmOf(design), system)] : []),
    measureVerdict(design, measure, fitMeasured(design, measure), system, way),
    cutVerdict(design, cut!, system, way),
  ];
  const left = leftVerdict(design, cut!, system);
  return [
    ...[...verdicts, ...(left ? [left] : [])].flatMap(({ headline, sentences }) => [headline, ...sentences]),
    ...limitSentences(cut!, system),
    ...setUpSentences(design, cut!, system, way),
    ...doubtsOf(design, measure),
    ...measure.impossible.map((fault) => faultText(fault, system)),
    ...(measure.next?.suggestions ?? []).map((suggestion) => suggestionText(suggestion, system)),
  ];
}

export function sheetOf(design: Design, system: System, { way = 'half' as AngleWay, running = true } = {}): string {
  const { cut } = solve(design, 'x', ['cut']);
  const film = running ? filmOf(design) : undefined;
  const purpose = purposeOf(design, cut!, system, way);
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
      withheld={false}
      film={film}
      runsBadly={film ? runsAsPlanned(drawn.runs, film, true, system) : null}
      page="https://shop.example/conepair/"
      system={system}
    />,
  );
  return markup.replace(/<[^>]*>/g, ' ').replace(/\s+/g, ' ');
}
