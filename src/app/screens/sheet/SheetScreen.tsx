/** Sheet: what goes to the machine, on one or two pages. */
import { useMemo, useRef, useState } from 'react';
import { useStore } from 'zustand';
import type { Design } from '../../../design/definition.ts';
import type { System } from '../../../design/units.ts';
import { isGuess } from '../../../report/assumed.ts';
import type { NotAsRead } from '../../../report/belief/notAsRead.ts';
import { offSentences, unknownSentence } from '../../../report/belief/words.ts';
import type { CutReport } from '../../../report/cut/definition.ts';
import { isLeft } from '../../../report/cut/leave.ts';
import { runsAsPlanned } from '../../../report/cut/runsAsPlanned.ts';
import type { Withheld } from '../../../report/cut/withheld.ts';
import type { FilmReport } from '../../../report/film/definition.ts';
import { oddsSentence } from '../../../report/odds/words.ts';
import { drawnParts } from '../../../report/sheet/drawnParts.ts';
import { type Purpose, purposeOf } from '../../../report/sheet/purpose.ts';
import { Fault } from '../../frame/Fault.tsx';
import { SettleOnCut } from '../../frame/SettleOnCut.tsx';
import { useAngles } from '../../state/angles.ts';
import { isKnown, useBelief } from '../../state/belief.ts';
import { offer } from '../../state/files.ts';
import { isBefore } from '../../state/isBefore.ts';
import { pageOf } from '../../takeAlong/link.ts';
import { useSlip } from '../cut/useSlip.ts';
import { useWithheld } from '../cut/writing.ts';
import { Pages } from './Pages.tsx';
import { PrintButton } from './PrintButton.tsx';
import { PAPERS, type Paper } from './papers.ts';
import { SheetJump } from './SheetJump.tsx';
import '../../frame/parts.css';
import { svgText } from './svgText.ts';
import './sheet.css';
import { useSize } from '../../pictures/useSize.ts';
import type { Work } from '../../state/store.ts';
import { useShopDesign } from '../../state/useShopDesign.ts';
import { useSolved } from '../../state/useSolved.ts';

/** Every drawing of the Sheet, by the name it is marked with. */
const DRAWINGS = ['journal', 'bush', 'chart'];

const PAPER_NAMES = Object.keys(PAPERS) as Paper[];

export default function SheetScreen({ work }: { work: Work }) {
  const system = useStore(work.store, (state) => state.system);
  const design = useShopDesign(
    useStore(work.store, (state) => state.design),
    system,
  );
  const { value, of, fresh, fault, again } = useSolved('cut', design);
  const way = useAngles();
  const belief = useKnown(design, system, of?.cut && value ? isLeft(value) : false);
  const withheld = useWithheld(work, {
    cut: of?.cut ? value : null,
    notAsRead: of?.cut ? undefined : belief.notAsRead,
    before: isBefore(of, design),
  });
  const slip = useSlip(work, withheld);
  if (fault !== null) return <Fault what="The plan" fault={fault} again={again} />;
  if (!of || (of.cut && !value)) return <p className="loading">The sheet is being drawn.</p>;
  const cut = of.cut ? value : null;
  const told = purposeOf(of, cut, system, way, { notAsRead: cut ? cut.notAsRead : belief.notAsRead, withheld, slip });
  // What the trials leave is told with its own doubt.
  const off = cut?.remaining ? [] : belief.off;
  const purpose = withheld ? told : { ...told, sentences: [...told.sentences, ...off, ...belief.odds] };
  const apart = (cut ? cut.notAsRead : belief.notAsRead) !== undefined;
  const limits = !cut?.trials && !apart && withheld === null;
  // What stands here while another plan is on its way is of before.
  const stale = of.cut !== undefined && !fresh;
  return (
    <Sheet
      design={of}
      cut={withheld ? null : cut}
      withheld={withheld}
      purpose={purpose}
      apart={apart}
      limits={limits}
      stale={stale || belief.pending}
      system={system}
    />
  );
}

/** How well the parts are known, in the words of the sheet. */
function useKnown(
  design: Design,
  system: System,
  left: boolean,
): { off: string[]; odds: string[]; pending: boolean; notAsRead?: NotAsRead | undefined } {
  const { value, of, fault } = useBelief(design);
  const odds = useOddsLine(design, left);
  if (of === null)
    return {
      off: isKnown(design) ? [] : [unknownSentence(design, system)],
      odds: odds.sentences,
      pending: odds.pending || (fault === null && isKnown(design)),
    };
  return {
    off: value ? offSentences(of, value, system) : [],
    odds: odds.sentences,
    pending: odds.pending,
    notAsRead: value?.notAsRead,
  };
}

/** How likely the pair works, of a design that asks for it. */
function useOddsLine(design: Design, left: boolean): { sentences: string[]; pending: boolean } {
  const { value, of, fault } = useSolved('oddsTold', design.odds ? design : null);
  if (of === null) return { sentences: [], pending: fault === null && design.odds !== undefined };
  const sentence = value && of.odds ? oddsSentence(of, value, left) : '';
  return { sentences: sentence ? [sentence] : [], pending: false };
}

/** What the screen says above the pages, which is not printed. */
function screenVerdict(
  { kind, tone, headline }: Purpose,
  { planned, unread, apart, limits }: { planned: boolean; unread: boolean; apart: boolean; limits: boolean },
): { tone: Purpose['tone']; headline: string; more: string } {
  const boxes =
    'Print it, or save any drawing by itself. Write what was read into the boxes, and bring it back to Measure or to a trial.';
  if (tone === 'stop' && kind !== 'refused')
    return {
      tone,
      headline,
      more: `It stands so at the top of the sheet. ${apart ? 'Measure settles it.' : 'Mend it on the Cut screen.'}`,
    };
  switch (kind) {
    case 'refused':
      return {
        tone,
        headline: limits && !unread ? 'No plan gives these films, so this is no work order.' : headline,
        more: unread
          ? 'Until then this is no work order: it has drawings of the parts as they are assumed.'
          : !limits
            ? `Until then this is no work order. ${apart ? 'Measure settles it.' : 'Cut tells what would settle it.'}`
            : 'It says what stands in the way, with drawings of the parts as they are. Let a limit go on the Cut screen, and steps and stop readings stand here.',
      };
    case 'left':
      return {
        tone,
        headline: 'What the trials leave: how much of it to take, and what to read next.',
        more: 'The plan before the trials is struck on it: its readings no longer say when to stop. Print this one anew after every trial.',
      };
    case 'work':
      return { tone, headline: 'Drawings, order of work, settings and stop readings for the machine.', more: boxes };
    case 'parts':
      return {
        tone,
        headline: planned
          ? 'Drawings of both parts; nothing need be cut.'
          : 'Drawings of both parts; what may be cut is said on the Cut screen.',
        more: boxes,
      };
  }
}

interface SheetProps {
  design: Design;
  /** whether another is being drawn */
  stale: boolean;
  /** null too where what it tells is withheld: the parts are then drawn as they are in the design, nothing off them */
  cut: CutReport | null;
  withheld: Withheld | null;
  purpose: Purpose;
  /** readings contradict each other, or tell of other parts than are drawn */
  apart: boolean;
  /** it is limits of what may be cut that stand in the way, where anything does */
  limits: boolean;
  system: System;
}

function Sheet({ design, cut, withheld, purpose, apart, limits, stale, system }: SheetProps) {
  const [chosen, setPaper] = useState<Paper | null>(null);
  const paper = chosen ?? (system === 'inch' ? 'Letter' : 'A4');
  const box = useRef<HTMLDivElement>(null);
  const { width } = useSize(box, { width: 800, height: 1000 });
  const drawn = useMemo(() => drawnParts(design, cut, purpose.kind, system), [design, cut, purpose.kind, system]);
  const { film, fault, again } = useFilm(purpose.kind === 'refused' ? null : drawn.runs);
  const cuts = purpose.kind === 'work' || purpose.kind === 'left';
  const runsBadly = film ? runsAsPlanned(drawn.runs, film, cuts, system) : null;
  const { tone, headline, more } =
    runsBadly?.tone === 'stop'
      ? { ...runsBadly, more: 'It stands so at the top of the sheet. The Run screen tells what would help.' }
      : screenVerdict(purpose, {
          planned: cut !== null || withheld !== null,
          unread: isGuess(design),
          apart,
          limits,
        });
  return (
    <div ref={box} className="sheet-screen">
      <section className={`verdict ${tone} screen-only`} aria-live="polite">
        <h2>{headline}</h2>
        <p>{more}</p>
        {withheld && <SettleOnCut why={withheld} />}
      </section>
      <p className="buttons screen-only">
        <PrintButton ready={film !== null && !stale} />
        <label className="paper-choice">
          <span>Paper</span>
          <select value={paper} onChange={(event) => setPaper(event.target.value as Paper)}>
            {PAPER_NAMES.map((name) => (
              <option key={name} value={name}>
                {name}
              </option>
            ))}
          </select>
        </label>
      </p>
      <details className="screen-only save-drawings">
        <summary>Save a drawing by itself</summary>
        <p className="buttons">
          {DRAWINGS.map((name) => (
            <button
              key={name}
              type="button"
              onClick={() =>
                offer(
                  `${name}.svg`,
                  svgText(box.current!.querySelector<SVGSVGElement>(`[data-drawing="${name}"] svg`)!),
                  'image/svg+xml',
                )
              }
            >
              Save the {name} as SVG
            </button>
          ))}
        </p>
      </details>
      <SheetJump box={box} drawings={DRAWINGS} />
      <div className="screen-only">
        <Fault what="How it runs" fault={fault} again={again} />
      </div>
      <Pages
        stale={stale}
        paper={paper}
        room={width}
        purpose={purpose}
        design={design}
        {...drawn}
        cut={cut}
        withheld={withheld !== null}
        film={film}
        runsBadly={runsBadly}
        page={pageOf(window.location)}
        system={system}
      />
    </div>
  );
}

/** How the parts run: null while it is worked out, undefined where the design does not say how, or it cannot be had. */
function useFilm(made: Design | null): { film: FilmReport | null | undefined; fault: string | null; again(): void } {
  const running = made?.run ? made : null;
  const { value, fresh, fault, again } = useSolved('film', running);
  const told = running !== null && fault === null;
  return { film: told ? (fresh ? value : null) : undefined, fault: running && fault, again };
}
