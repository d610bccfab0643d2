/** The pages themselves: drawings first, then set-up, steps, order of work, chart and cautions. What has no room goes on to a further page. */
import { type CSSProperties, useRef } from 'react';
import type { Design } from '../../design/definition.ts';
import { fineText, type System, turnText } from '../../design/units.ts';
import type { CutReport } from '../../report/cut/definition.ts';
import type { FilmReport } from '../../report/film/definition.ts';
import { fitSection } from '../../report/fit/section.ts';
import type { Purpose } from '../../report/sheet/purpose.ts';
import type { TolerancedSurface } from '../../report/sheet/tolerancedSurfaces.ts';
import { CheckTable } from './CheckTable.tsx';
import { FilmChart } from './FilmChart.tsx';
import { NearestTable } from './NearestTable.tsx';
import { OrderList } from './OrderList.tsx';
import { NOTED, PartDrawing } from './PartDrawing.tsx';
import { MARGIN, PAPERS, type Paper, PIXELS_PER_MM, pageRule } from './papers.ts';
import { RunFigures } from './RunFigures.tsx';
import { SetUpTable } from './SetUpTable.tsx';
import { SheetHead } from './SheetHead.tsx';
import { StepTable } from './StepTable.tsx';
import { SurfaceTable } from './SurfaceTable.tsx';
import { type Filled, type Heights, TIGHT, useFilled } from './useFilled.ts';

export interface SheetContent {
  purpose: Purpose;
  /** as it is, and as drawn: as it shall be where there is work, else as it is */
  design: Design;
  made: Design;
  /** whether every film wanted is within its tolerance, at the position drawn */
  good: boolean;
  cut: CutReport | null;
  surfaces: readonly TolerancedSurface[];
  /** how the drawn parts run; null while it is worked out, undefined where nothing says how */
  film: FilmReport | null | undefined;
}

interface Props extends SheetContent {
  paper: Paper;
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

export function Pages({ paper, room, ...content }: Props) {
  const { purpose, design, cut, film } = content;
  const pages = useRef<HTMLDivElement>(null);
  const work = purpose.kind === 'work' ? cut : null;
  const [first, second] = useFilled(pages, paper, work ? [CHART, DRAWING] : [DRAWING, CHART]) as [Filled, Filled];
  const { width, height } = PAPERS[paper];
  const fit = Math.min(1, room / (width * PIXELS_PER_MM));
  const style = { '--page-width': `${width}mm`, '--page-height': `${height}mm`, '--margin': `${MARGIN.top}mm ${MARGIN.side}mm ${MARGIN.bottom}mm`, '--fit': fit } as CSSProperties;
  return (
    <div className="pages" style={style} ref={pages} aria-busy={film === null}>
      <style>{pageRule(paper, design.title ?? 'untitled')}</style>
      {work ? <WorkLeaves {...content} work={work} first={first} second={second} /> : <PartLeaves {...content} first={first} second={second} />}
    </div>
  );
}

type Leaves = Omit<Props, 'paper' | 'room'> & { first: Filled; second: Filled };

const leafClass = ({ tight }: Filled, runsOn = false) => ['leaf', tight && TIGHT, runsOn && 'runs-on'].filter((name) => name).join(' ');

/** What is done at the machine first, then what shall come of it. */
function WorkLeaves({ work, first, second, ...content }: Leaves & { work: CutReport }) {
  const { purpose, design, made, good, film, system } = content;
  const few = SURFACE * work.steps.length + work.faces.length <= FEW;
  return (
    <>
      <section className={leafClass(first, first.runsOn)} aria-label="Set-up and steps">
        <div>
          <SheetHead title={design.title ?? 'untitled'} purpose={purpose} />
          <SetUpTable design={design} cut={work} system={system} />
          <StepTable design={design} cut={work} system={system} />
          <TrialLine design={design} cut={work} system={system} />
          <OrderList work={work.work} />
          {few && <Chart made={made} good={good} when="after the cut" told system={system} height={first.height} fills />}
          <Cautions work={work} />
        </div>
      </section>
      <section className={leafClass(second)} aria-label="Drawings">
        <div>
          <Drawings {...content} height={second.height} />
          <Running made={made} film={film} system={system} />
          {!few && <Chart made={made} good={good} when="after the cut" told system={system} height={CHART_BESIDE} />}
        </div>
      </section>
    </>
  );
}

/** The parts as they are; where nothing is to be cut with room for what was measured. */
function PartLeaves({ first, second, ...content }: Leaves) {
  const { purpose, design, made, good, cut, surfaces, film, system } = content;
  const refused = purpose.kind === 'refused';
  return (
    <>
      <section className={leafClass(first, first.runsOn)} aria-label="Drawings">
        <div>
          <SheetHead title={design.title ?? 'untitled'} purpose={purpose} />
          <Drawings {...content} height={first.height} />
        </div>
      </section>
      <section className={leafClass(second)} aria-label="Film and adjuster">
        <div>
          {!refused && <CheckTable design={made} surfaces={surfaces} system={system} />}
          {refused && cut && <NearestTable design={design} cut={cut} system={system} />}
          {!refused && <Running made={made} film={film} system={system} />}
          <Chart made={made} good={good} when="as it is" told={!refused} system={system} height={second.height} fills />
          <Cautions work={null} />
        </div>
      </section>
    </>
  );
}

const PARTS = ['journal', 'bush'] as const;

/** Both parts, every surface in figures, and how these are meant. */
function Drawings({ height, ...content }: Omit<Props, 'paper' | 'room'> & { height: number }) {
  const { made, surfaces, system } = content;
  return (
    <>
      {PARTS.map((part) => (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: on a phone it scrolls sideways, and must be reachable by the keyboard
        <section key={part} className="drawing" data-drawing={part} data-fill="" aria-label={`Drawing of the ${part}`} tabIndex={0}>
          <PartDrawing design={made} part={part} surfaces={surfaces} system={system} height={height} />
        </section>
      ))}
      <SurfaceTable design={made} surfaces={surfaces} system={system} />
      <DrawingNotes {...content} />
    </>
  );
}

function Running({ made, film, system }: Pick<Props, 'made' | 'film' | 'system'>) {
  const { run } = made;
  return run && film !== undefined && <RunFigures design={{ ...made, run }} film={film} system={system} />;
}

interface ChartProps {
  made: Design;
  good: boolean;
  when: string;
  /** whether it is told how to set it */
  told: boolean;
  system: System;
  height: number;
  fills?: boolean;
}

function Chart({ made, good, when, told, system, height, fills }: ChartProps) {
  return (
    <div className="block">
      <p className="under-title">
        <strong>Film and adjuster, {when}.</strong> {told && settingText(made, good, system)}
      </p>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: on a phone it scrolls sideways, and must be reachable by the keyboard */}
      <section className="drawing" data-drawing="chart" data-fill={fills ? '' : undefined} aria-label="Film chart" tabIndex={0}>
        <FilmChart design={made} system={system} height={height} />
      </section>
    </div>
  );
}

/** How the figures of the drawings are meant. */
function DrawingNotes({ purpose, made, surfaces, system }: Omit<Props, 'paper' | 'room'>) {
  const isToleranced = surfaces.some(({ diameterTolerance }) => diameterTolerance !== null);
  const notes = [
    `Figures are those ${purpose.kind === 'work' ? 'after the cut' : purpose.kind === 'refused' ? 'of the parts as they are' : 'of the design'}. Stations are counted from the datum, toward the nose above 0; ends and body carry no tolerance. Not to be scaled off.`,
    isToleranced &&
      `Tolerances: half of each film’s to each part, the position ${fineText(made.position ?? 0, system)} being held; each holds by itself. Form: straight and round within this zone, square to the surface. Run-out: full movement of an indicator square to the surface, about the axis of the part’s other seats.`,
    made.seats.length > NOTED && 'Letters stand for the surfaces of the table.',
    surfaces.some(({ asMeasured }) => asMeasured) && '* measured lines and lobes: the figures are those of the straight, round surface.',
  ];
  return <p className="small">{notes.filter((note) => note).join(' ')}</p>;
}

/** How far to back off from first touch. */
function settingText(made: Design, good: boolean, system: System): string {
  const { firstPosition, first, position } = fitSection(made);
  if (!good) return 'No position of these parts gives every seat its film.';
  if (firstPosition === null || first === null) return '';
  const off = position - firstPosition;
  if (off <= 0) return `The ${first} seat touches before the journal is where it should run.`;
  const pitch = made.adjuster?.pitch;
  return `Set it so: bring the journal rearward until the ${first} seat touches, dry, at ${fineText(firstPosition, system)}; then back off ${fineText(off, system)}${pitch === undefined ? '' : `, ${turnText(off / pitch)} of the adjuster`}, to ${fineText(position, system)}.`;
}

/** What a trial assembly told, to be brought back to the Cut screen. */
function TrialLine({ design, cut, system }: { design: Design; cut: CutReport; system: System }) {
  const last = [...cut.steps, ...cut.faces].at(-1)?.standOff.stop ?? null;
  return (
    <p className="trial-line">
      <strong>Trial, dry, with blue:</strong> stand-off {last === null ? '' : `(${fineText(last, system)} expected) `}
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
  const cautions = [...new Set([FIRST, ...(work ? work.work.flatMap(({ id, cautions: own }) => (id === 'manual' ? [] : own)) : [GUARDS]), LAST])];
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
