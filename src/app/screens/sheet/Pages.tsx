/**
 * The pages themselves: drawings first, then set-up, steps, order of work, chart and cautions. What has no room goes on
 * to a further page.
 */
import { type CSSProperties, useRef } from 'react';
import type { Design } from '../../../design/definition.ts';
import { fineText, type System, turnText } from '../../../design/units.ts';
import { isGuess, partsAre } from '../../../report/assumed.ts';
import { beforeTrial } from '../../../report/cut/beforeTrial.ts';
import { caseLeft } from '../../../report/cut/caseLeft.ts';
import type { CutReport } from '../../../report/cut/definition.ts';
import { NOTHING } from '../../../report/cut/listed.ts';
import { closedCount } from '../../../report/cut/openTrials.ts';
import type { FilmReport } from '../../../report/film/definition.ts';
import { fitSection } from '../../../report/fit/section.ts';
import type { Verdict } from '../../../report/fit/verdict.ts';
import type { DrawnParts } from '../../../report/sheet/drawnParts.ts';
import type { PartsAfterTrials } from '../../../report/sheet/partsAfterTrials.ts';
import type { Purpose } from '../../../report/sheet/purpose.ts';
import { CheckTable } from './CheckTable.tsx';
import { FilmChart } from './FilmChart.tsx';
import { diameterText } from './figures.ts';
import { isAnySafe, LeftTable, StruckPlan } from './LeftTable.tsx';
import { NearestTable } from './NearestTable.tsx';
import { OrderList } from './OrderList.tsx';
import { NOTED, PartDrawing } from './PartDrawing.tsx';
import { MARGIN, PAPERS, type Paper, PIXELS_PER_MM, pageRule } from './papers.ts';
import { RunFigures } from './RunFigures.tsx';
import { SetUpTable } from './SetUpTable.tsx';
import { SheetCode } from './SheetCode.tsx';
import { SheetHead } from './SheetHead.tsx';
import { StepTable } from './StepTable.tsx';
import { SurfaceTable } from './SurfaceTable.tsx';
import { type Filled, type Heights, TIGHT, useFilled } from './useFilled.ts';
import { usePageRule } from './usePageRule.ts';

export interface SheetContent extends DrawnParts {
  purpose: Purpose;
  /** as it is in the file */
  design: Design;
  cut: CutReport | null;
  /** by trials that do not go together: nothing is said of what came off since */
  withheld: boolean;
  /** how the parts run; null while it is worked out, undefined where nothing says how */
  film: FilmReport | null | undefined;
  /** where that speaks against cutting to this sheet, or running so */
  runsBadly: Verdict | null;
  /** address of this program, to be opened with the design in it */
  page: string;
}

interface Props extends SheetContent {
  paper: Paper;
  /** whether another sheet is on its way */
  stale: boolean;
  /** px: room on the screen, to which the pages are made smaller */
  room: number;
  system: System;
}

/** Common practice, no source, but the manual before all. */
const FIRST = 'The machine’s own manual, local rules and licensed practice come before anything on this sheet.';
const GUARDS = 'Guards in place and eyes protected before wheel or work turns; stop both before gauging.';
const LAST = 'All of this is advice: prove it by measurement before metal is cut.';

/** mm of paper: a drawing of a part, the chart where it fills its page, and beside the drawings. */
const DRAWING: Heights = { least: 66, most: 130, apart: 80 };
const CHART: Heights = { least: 45, most: 215, apart: 90 };
const CHART_BESIDE = 52;
/** With more than this to be done the chart goes to the drawings: a surface has an angle to set, and a face none. */
const FEW = 3;
const SURFACE = 2;

export function Pages({ paper, room, stale, ...content }: Props) {
  const { purpose, design, film } = content;
  const pages = useRef<HTMLDivElement>(null);
  const isWork = purpose.kind === 'work' || purpose.kind === 'left';
  const [first, second] = useFilled(pages, paper, isWork ? [CHART, DRAWING] : [DRAWING, CHART]) as [Filled, Filled];
  const { width, height } = PAPERS[paper];
  usePageRule(pageRule(paper, design.title ?? 'untitled'));
  const fit = Math.min(1, room / (width * PIXELS_PER_MM));
  const style = {
    '--page-width': `${width}mm`,
    '--page-height': `${height}mm`,
    '--margin': `${MARGIN.top}mm ${MARGIN.side}mm ${MARGIN.bottom}mm`,
    '--fit': fit,
  } as CSSProperties;
  return (
    <div className="pages" style={style} ref={pages} aria-busy={stale || film === null}>
      {leavesOf(content, { first, second })}
    </div>
  );
}

type Content = Omit<Props, 'paper' | 'room' | 'stale'>;
type Filling = { first: Filled; second: Filled };
type Leaves = Content & Filling;

function leavesOf(content: Content, filling: Filling) {
  const { purpose, cut, after } = content;
  if (purpose.kind === 'work' && cut) return <WorkLeaves {...content} {...filling} work={cut} />;
  if (purpose.kind === 'left' && cut && after) return <LeftLeaves {...content} {...filling} work={cut} after={after} />;
  return <PartLeaves {...content} {...filling} />;
}

const leafClass = ({ tight }: Filled, runsOn = false) =>
  ['leaf', tight && TIGHT, runsOn && 'runs-on'].filter((name) => name).join(' ');

/** What is done at the machine first, then what shall come of it. */
function WorkLeaves({ work, first, second, ...content }: Leaves & { work: CutReport }) {
  const { purpose, design, system } = content;
  const trial = <TrialLine design={design} expected={expectedStandOff(work)} system={system} />;
  const tryFirst = beforeTrial(work) === 'nothing';
  const few = SURFACE * work.steps.length + work.faces.length <= FEW;
  return (
    <>
      <section className={leafClass(first, first.runsOn)} aria-label="Set-up and steps">
        <div>
          <SheetHead
            title={design.title ?? 'untitled'}
            purpose={purpose}
            runs={content.runsBadly}
            pending={content.film === null}
          />
          {tryFirst && trial}
          <SetUpTable design={design} settings={work.settings} surfaces={content.surfaces} system={system} />
          <StepTable design={design} cut={work} system={system} />
          {!tryFirst && trial}
          <OrderList work={work.work} />
          {few && (
            <Chart
              {...content}
              when={content.target === 'whole' ? 'after the cut' : 'with all of it off'}
              told
              height={first.height}
              fills
            />
          )}
          <Cautions work={work} />
        </div>
      </section>
      <section className={leafClass(second)} aria-label="Drawings">
        <div>
          <Drawings {...content} height={second.height} />
          <Running {...content} />
          {!few && (
            <Chart
              {...content}
              when={content.target === 'whole' ? 'after the cut' : 'with all of it off'}
              told
              height={CHART_BESIDE}
            />
          )}
        </div>
      </section>
    </>
  );
}

/** What the trials leave to be done, and what to read next; the plan they overtook is struck. */
function LeftLeaves({ work, after, first, second, ...content }: Leaves & { work: CutReport; after: PartsAfterTrials }) {
  const { purpose, design, surfaces, system } = content;
  const { steps, standOff } = work.remaining!;
  const isLeft = ({ seat, part }: { seat: string; part: string }) =>
    steps.some((step) => step.seat === seat && step.part === part);
  const expected = isAnySafe(work) ? standOff.safe : standOff.now;
  const unset = steps.filter(
    (step) => !work.settings.some(({ seat, part }) => seat === step.seat && part === step.part),
  );
  return (
    <>
      <section className={leafClass(first, first.runsOn)} aria-label="What is left">
        <div>
          <SheetHead
            title={design.title ?? 'untitled'}
            purpose={purpose}
            runs={content.runsBadly}
            pending={content.film === null}
          />
          <StruckPlan design={design} cut={work} system={system} />
          <SetUpTable design={design} settings={work.settings.filter(isLeft)} surfaces={surfaces} system={system} />
          {unset.length > 0 && (
            <p className="small">
              No setting was worked out for {unset.map(({ seat, part }) => `the ${seat} ${part}`).join(', ')}, which the
              plan did not cut: level the indicator on the surface itself before the cut.
            </p>
          )}
          <LeftTable design={design} cut={work} after={after} system={system} />
          <TrialLine design={design} expected={expected} system={system} />
          <Chart
            {...content}
            after={after}
            when="with all that is most likely left off, as the trials are believed"
            told
            height={first.height}
            fills
          />
          <Cautions work={work} />
        </div>
      </section>
      <section className={leafClass(second)} aria-label="Drawings">
        <div>
          <Drawings {...content} after={after} height={second.height} />
          <Running {...content} after={after} />
        </div>
      </section>
    </>
  );
}

/** The parts as they are; where nothing is to be cut with room for what was measured. */
function PartLeaves({ first, second, ...content }: Leaves) {
  const { purpose, design, made, cut, surfaces, system } = content;
  const refused = purpose.kind === 'refused';
  return (
    <>
      <section className={leafClass(first, first.runsOn)} aria-label="Drawings">
        <div>
          <SheetHead
            title={design.title ?? 'untitled'}
            purpose={purpose}
            runs={content.runsBadly}
            pending={content.film === null}
          />
          <Drawings {...content} height={first.height} />
        </div>
      </section>
      <section className={leafClass(second)} aria-label="Film and adjuster">
        <div>
          {!refused && <CheckTable design={made} surfaces={surfaces} system={system} />}
          {refused && cut && isKnown(cut) && !isGuess(design) && (
            <NearestTable
              design={content.after?.believedNow ?? design}
              nearest={cut.remaining ?? cut}
              system={system}
            />
          )}
          {!refused && <Running {...content} />}
          <Chart
            {...content}
            when={content.after ? 'as the trials are believed' : 'as it is'}
            told={!refused}
            height={second.height}
            fills
          />
          <Cautions work={null} />
        </div>
      </section>
    </>
  );
}

const PARTS = ['journal', 'bush'] as const;

/** Both parts, every surface in figures, and how these are meant. */
function Drawings({ height, ...content }: Content & { height: number }) {
  const { made, surfaces, system } = content;
  return (
    <>
      {PARTS.map((part) => (
        <section
          key={part}
          className="drawing"
          data-drawing={part}
          data-fill=""
          aria-label={`Drawing of the ${part}`}
          // biome-ignore lint/a11y/noNoninteractiveTabindex: on a phone it scrolls sideways, and must be reachable by the keyboard
          tabIndex={0}
        >
          <PartDrawing design={made} part={part} surfaces={surfaces} system={system} height={height} />
        </section>
      ))}
      <SurfaceTable
        design={made}
        surfaces={surfaces}
        cases={
          content.cut?.case ??
          caseLeft(content.design, content.withheld ? closedCount(content.design.cut ?? {}) : undefined)
        }
        left={content.after !== null}
        target={content.target}
        system={system}
      />
      <DrawingNotes {...content} />
      <SheetCode design={content.design} system={system} page={content.page} />
    </>
  );
}

/** Whether the last trial could be taken in: one that cannot leaves nothing to be said of what is left. */
const isKnown = ({ trials = [] }: CutReport) =>
  trials[trials.length - 1]?.status !== 'contradiction' && trials[trials.length - 1]?.status !== 'noModel';

function Running({ runs, film, system }: Content) {
  const { run } = runs;
  return run && film !== undefined && <RunFigures design={{ ...runs, run }} film={film} system={system} />;
}

interface ChartProps extends Content {
  when: string;
  /** whether it is told how to set it */
  told: boolean;
  height: number;
  fills?: boolean;
}

function Chart({ purpose, runs, good, when, told, system, height, fills }: ChartProps) {
  return (
    <div className="block">
      <p className="under-title">
        <strong>Film and adjuster, {when}.</strong> {told && settingText(runs, good, purpose.kind === 'left', system)}
      </p>
      <section
        className="drawing"
        data-drawing="chart"
        data-fill={fills ? '' : undefined}
        aria-label="Film chart"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: on a phone it scrolls sideways, and must be reachable by the keyboard
        tabIndex={0}
      >
        <FilmChart design={runs} system={system} height={height} />
      </section>
    </div>
  );
}

/** How the figures of the drawings are meant. */
function DrawingNotes(content: Content) {
  const { made, target, whole, runs, surfaces, untoleranced, after, system } = content;
  const isToleranced = surfaces.some(({ form }) => form !== null);
  const notes = [
    `${stateText(content)}${wholeText(whole, target, after !== null, system)} Stations are counted from the datum, toward the nose above 0; ends and body carry no tolerance. Not to be scaled off.`,
    isToleranced &&
      `Tolerances: half of each film’s to each part, the position ${fineText(runs.position ?? 0, system)} being held; the other half is the other part’s. ${after ? 'Angle' : 'Diameter, angle'}, form and run-out share that half: any one may use all of it only if the others are true. Add up what each uses of its own figure; together no more than one.`,
    isToleranced &&
      'Form: straight and round within this zone, square to the surface. Run-out: full movement of an indicator square to the surface, about the axis of the part’s other seats.',
    untoleranced.length > 0 && untolerancedText(made, untoleranced, system),
    made.seats.length > NOTED && 'Letters stand for the surfaces of the table.',
    surfaces.some(({ assumed }) => Object.values(assumed).some(Boolean)) &&
      'Slanted, in dashes: assumed, never measured.',
    surfaces.some(({ asMeasured }) => asMeasured) &&
      '* measured lines and lobes: the figures are those of the straight, round surface.',
  ];
  return <p className="small">{notes.filter((note) => note).join(' ')}</p>;
}

/** Why surfaces have no tolerance although a film is wanted of them. */
function untolerancedText({ seats }: Design, names: readonly string[], system: System): string {
  const wanted = names.map((name) => {
    const { target, tolerance } = seats.find((seat) => seat.name === name)!.film!;
    return `${name} ${fineText(target, system)} ± ${fineText(tolerance ?? 0, system)}`;
  });
  return `No tolerance: as drawn nothing is left of what the film wanted allows (${wanted.join('; ')}). Bring the film nearer to what is wanted, on Fit or by Cut, before parts are made to this drawing.`;
}

/** Which state of the parts is drawn. */
function stateText({ design, purpose: { kind }, after, target, withheld }: Content): string {
  const are = partsAre(design);
  if (withheld) return `Drawn: the parts as ${are}, before all that came off since.`;
  if (after && kind === 'refused') return `Drawn: the parts as ${are}, less what the trials say is off.`;
  if (after)
    return `Drawn: the parts as ${are}, less what the trials say is off${LEFT_OFF[target]}. Diameters are reckoned and carry no tolerance: the trials tell films, and the stand-off says when it is done.`;
  return kind === 'work'
    ? WORK_OFF[target]
    : kind === 'refused'
      ? 'Figures are those of the parts as they stand in the design.'
      : 'Figures are those of the design.';
}

const LEFT_OFF = {
  whole: ' and all that is most likely left',
  part: ' and what is safe to take now, no more',
  none: ', for nothing of the rest is safe to take now',
} as const;
const WORK_OFF = {
  whole: 'Figures are those after the cut.',
  part: 'Figures are those with what is safe to take now off: stop there and try it.',
  none: 'Figures are those of the parts as they are: nothing is safe to take before a trial.',
} as const;

/** What all of it would come to, where only some may come off now. */
function wholeText(whole: DrawnParts['whole'], target: DrawnParts['target'], tried: boolean, system: System): string {
  if (target === 'whole' || whole.length === 0) return '';
  const told = whole.map(({ seat, part, diameter }) => `${seat} ${part} ${diameterText(diameter, null, system)}`);
  return ` The whole would most likely be: ${told.join(', ')}; not before ${tried ? 'another' : 'a'} trial.`;
}

/** How far to back off from first touch. */
function settingText(made: Design, good: boolean, isToCome: boolean, system: System): string {
  const { firstPosition, first, position } = fitSection(made);
  if (!good) return 'No position of these parts gives every seat its film.';
  if (firstPosition === null || first === null) return '';
  const off = position - firstPosition;
  if (off <= 0) return `The ${first} seat touches before the journal is where it should run.`;
  const pitch = made.adjuster?.pitch;
  return `${isToCome ? 'Once that is off and a trial agrees, set' : 'Set'} it so: bring the journal rearward until the ${first} seat touches, dry, at ${fineText(firstPosition, system)}; then back off ${fineText(off, system)}${pitch === undefined ? '' : `, ${turnText(off / pitch)} of the adjuster`}, to ${fineText(position, system)}.`;
}

/** Where the journal should touch at the trial that comes next: of a step that is stopped before its end, there. */
function expectedStandOff({ steps, faces }: CutReport): number | null {
  const early = steps.find(({ normal, safe }) => safe !== undefined && safe < normal - NOTHING);
  if (early) return early.standOff.safe ?? early.standOff.before;
  return [...steps, ...faces].at(-1)?.standOff.stop ?? null;
}

/** What a trial assembly told, to be brought back to the Cut screen. */
function TrialLine({ design, expected, system }: { design: Design; expected: number | null; system: System }) {
  const trials = design.cut?.trials?.length ?? 0;
  return (
    <p className="trial-line">
      <strong>Trial{trials > 0 && ` ${trials + 1}`}, dry, with blue:</strong> stand-off{' '}
      {expected === null ? '' : `(${fineText(expected, system)} expected) `}
      <span className="read-box" /> shake <span className="read-box" />
      <span>prints on</span>
      {design.seats.map(({ name }) => (
        <span key={name} className="tick">
          <span className="tick-box" /> {name}
        </span>
      ))}
    </p>
  );
}

function Cautions({ work }: { work: CutReport | null }) {
  const cautions = [
    ...new Set([
      FIRST,
      ...(work ? work.work.flatMap(({ id, cautions: own }) => (id === 'manual' ? [] : own)) : [GUARDS]),
      LAST,
    ]),
  ];
  return (
    <div className="block cautions">
      <strong>Cautions.</strong>{' '}
      <ul>
        {cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </div>
  );
}
