/**
 * Everything that can be taken out of the program: the design as a file or a link, its report, models, and whatever is
 * shown on the screen below.
 */
import { useEffect, useState } from 'react';
import { useStore } from 'zustand';
import type { Report } from '../../report/definition.ts';
import { listed } from '../../report/listed.ts';
import type { SectionName } from '../../report/report.ts';
import { job } from '../../worker/pool.ts';
import { photographCount } from '../record/photographCount.ts';
import { useAngles } from '../state/angles.ts';
import { nameOf, offer, saveFile } from '../state/files.ts';
import type { Work } from '../state/store.ts';
import { solids } from './drawnNow.ts';
import { isOwnDevice, LONGEST_LINK, linkOf, pageOf } from './link.ts';
import { allOnScreen, csvOf, type OnScreen, pngOf, svgOf } from './onScreen.ts';
import { codeOf, QrCode } from './QrCode.tsx';
import './takeAlong.css';
import { useLatest } from '../state/useLatest.ts';

export default function TakeAlong({ work, close }: { work: Work; close(): void }) {
  const [fault, setFault] = useState<string | null>(null);
  const [taken, setTaken] = useState('');
  // It stays open, for one who takes several; what was taken is said, and Escape closes it.
  const run = (what: string, act: () => unknown) => {
    setFault(null);
    setTaken('');
    Promise.resolve()
      .then(act)
      .then(
        (told) => setTaken(typeof told === 'string' ? told : `${what} is taken.`),
        (error: Error) => setFault(`${what} could not be made: ${error.message}`),
      );
  };
  useClosingKey(close);
  return (
    <section aria-label="Take along" className="take-along">
      <h2>Take along</h2>
      <p role="status">{taken}</p>
      {fault !== null && (
        <p role="alert" className="error">
          {fault}
        </p>
      )}
      <div className="take-along-parts">
        <ThisDesign work={work} run={run} />
        <Models work={work} run={run} />
        <ThisScreen work={work} run={run} />
      </div>
      <p className="buttons">
        <button type="button" onClick={close}>
          Close
        </button>
      </p>
    </section>
  );
}

function useClosingKey(close: () => void) {
  const now = useLatest(close);
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.key === 'Escape' && !event.defaultPrevented) now.current();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, []);
}

interface Part {
  work: Work;
  run(what: string, act: () => unknown): void;
}

function ThisDesign({ work, run }: Part) {
  const design = useStore(work.store, (state) => state.design);
  const [copied, setCopied] = useState(false);
  const [busy, setBusy] = useState(false);
  const page = pageOf(location);
  const way = useAngles();
  const system = useStore(work.store, (state) => state.system);
  const link = linkOf(design, system, way, page);
  const title = nameOf(design.title ?? 'design');
  const report = () => {
    setBusy(true);
    return (
      job('solve', design)
        // Under the name that the design is saved by, as the command line has it of that file.
        .then((found) => {
          const whole = { ...found, file: `${title}.conepair.json` };
          offer(`${title}.report.json`, `${JSON.stringify(whole)}\n`, 'application/json');
          return reportTold(whole);
        })
        .finally(() => setBusy(false))
    );
  };
  const copy = async () => {
    await navigator.clipboard.writeText(link!);
    setCopied(true);
  };
  const own = isOwnDevice(page);
  return (
    <div>
      <h3>This design</h3>
      <p className="buttons">
        <button type="button" onClick={() => saveFile(work)}>
          Save as a file
        </button>
        <button type="button" onClick={() => run('The report', report)} disabled={busy}>
          {busy ? 'The report is being worked out' : 'Report as JSON'}
        </button>
        <a className="show-it" href="#show">
          Show it large, for a projector
        </a>
      </p>
      <p className="fine">
        {photographCount(design) > 0 ? 'Photographs, named versions and undo' : 'Named versions and undo'} stay on this
        device. The link opens in your units and your way of saying angles, the file in those of whoever opens it.
        Versions go along where Jobs saves all jobs as one file.
      </p>
      {link === null ? (
        <p className="fine">Too large for a link ({LONGEST_LINK} characters at most): pass the file on.</p>
      ) : (
        <>
          <p className="buttons">
            <button type="button" onClick={() => run('The link', copy)}>
              {copied ? 'Copied' : 'Copy a link to it'}
            </button>
          </p>
          <p className="fine">
            The whole design is in the link ({link.length} characters); nothing is sent anywhere.
            {link.length > CUT_OFF && ' Some mail programs cut links longer than 2,000: a file is safer.'}
            {!own && codeOf(link) === null && ' It is too long for a code.'}
            {own && ' This page comes from this device itself: the link opens here only, so there is no code of it.'}
          </p>
          {!own && <QrCode link={link} side="11rem" />}
        </>
      )}
    </div>
  );
}

/** Which sections the report has: one that the design says nothing for is left out, as the command line does. */
function reportTold(report: Report): string {
  const has = (name: SectionName) => report[name] !== undefined;
  const [there, not] = [SECTION_NAMES.filter(has), SECTION_NAMES.filter((name) => !has(name))];
  const without = not.length === 0 ? '' : ` Without ${listed(not)}: the design does not ask for it yet.`;
  return `The report is taken, with ${listed(there)}.${without}`;
}

/** The sections of a report, in its order; the list of report.ts itself would bring every section's work along. */
const SECTION_NAMES = Object.keys({
  fit: true,
  play: true,
  print: true,
  film: true,
  measure: true,
  belief: true,
  cut: true,
  odds: true,
} satisfies Record<SectionName, true>) as SectionName[];

/** Characters of a link that some programs cut; common practice, no source. */
const CUT_OFF = 2000;

function Models({ work, run }: Part) {
  const design = useStore(work.store, (state) => state.design);
  const factor = useStore(work.store, (state) => state.factor);
  const title = nameOf(design.title ?? 'design');
  const made = async (ext: string, type: string, what: 'journal' | 'bush' | 'pair') => {
    const { content, drawn } = await solids(design, factor, what);
    offer(`${title}-${what}-gaps-x${drawn}.${ext}`, content, type);
  };
  return (
    <div>
      <h3>Models of the pair as drawn</h3>
      <p className="fine">
        Gaps drawn larger by the factor in the file’s name, which may be another than that of a picture; lengths and
        diameters true. STL is in millimetres, glTF in metres. To print a teaching model, let the printer’s program make
        both parts larger alike.
      </p>
      <p className="buttons">
        {(['journal', 'bush'] as const).map((what) => (
          <button key={what} type="button" onClick={() => run('The model', () => made('stl', 'model/stl', what))}>
            {what === 'journal' ? 'Journal' : 'Bush'} as STL
          </button>
        ))}
        <button type="button" onClick={() => run('The model', () => made('glb', 'model/gltf-binary', 'pair'))}>
          Both as glTF
        </button>
      </p>
    </div>
  );
}

function ThisScreen({ work, run }: Part) {
  // What is shown follows the work; looked at again with every change of it.
  const design = useStore(work.store, (state) => state.design);
  const [shown, setShown] = useState<OnScreen[]>([]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another design is another screen to look at
  useEffect(() => setShown(allOnScreen(document.querySelector('main')!)), [design]);
  return (
    <div>
      <h3>On this screen</h3>
      {shown.length === 0 && <p className="fine">Nothing to save stands on this screen yet.</p>}
      <ul className="plain">
        {shown.map((one, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: two pictures may bear one name
          <li key={`${one.name} ${i}`}>
            <span>{one.name}</span>
            <Ways one={one} job={design.title ?? 'untitled'} run={run} />
          </li>
        ))}
      </ul>
      <p className="buttons">
        <button type="button" onClick={() => setShown(allOnScreen(document.querySelector('main')!))}>
          Look again
        </button>
      </p>
    </div>
  );
}

function Ways({ one, job, run }: { one: OnScreen; job: string; run: Part['run'] }) {
  const file = `${nameOf(job)}-${nameOf(one.name)}`;
  const save = (ext: string, content: BlobPart, type: string) => offer(`${file}.${ext}`, content, type);
  const { svg, canvas, rows } = one;
  return (
    <span className="buttons">
      {svg && (
        <button
          type="button"
          aria-label={`${one.name} as SVG`}
          onClick={() => run('The picture', () => save('svg', svgOf(svg, job, one.name), 'image/svg+xml'))}
        >
          SVG
        </button>
      )}
      {(svg ?? canvas) && (
        <button
          type="button"
          aria-label={`${one.name} as PNG`}
          onClick={() => run('The picture', async () => save('png', await pngOf(one, job), 'image/png'))}
        >
          PNG
        </button>
      )}
      {rows && (
        <button
          type="button"
          aria-label={`${one.name} as CSV`}
          onClick={() => run('The table', () => save('csv', csvOf(rows()), 'text/csv'))}
        >
          CSV
        </button>
      )}
    </span>
  );
}
