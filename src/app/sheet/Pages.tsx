/** The pages themselves: drawings first, then set-up, steps, chart and cautions. What has no room goes on to a further page. */
import type { CSSProperties } from 'react';
import type { Design } from '../../design/definition.ts';
import { fineText, type System } from '../../design/units.ts';
import type { CutReport } from '../../report/cut/definition.ts';
import type { TolerancedSurface } from '../../report/sheet/tolerancedSurfaces.ts';
import { FilmChart } from './FilmChart.tsx';
import { PartDrawing } from './PartDrawing.tsx';
import { chartHeight, drawingHeight, MARGIN, PAPERS, type Paper, PIXELS_PER_MM, pageRule } from './papers.ts';
import { SetUpTable } from './SetUpTable.tsx';
import { StepTable } from './StepTable.tsx';
import { SurfaceTable } from './SurfaceTable.tsx';

interface Props {
  paper: Paper;
  /** px: room on the screen, to which the pages are made smaller */
  room: number;
  headline: string;
  /** as it is, and as it shall be */
  design: Design;
  made: Design;
  cut: CutReport | null;
  surfaces: readonly TolerancedSurface[];
  system: System;
}

/** Common practice, no source, but the manual before all. */
const FIRST = 'The machine’s own manual, local rules and licensed practice come before anything on this sheet.';
const GUARDS = 'Guards in place and eyes protected before wheel or work turns; stop both before gauging.';
const LAST = 'All of this is advice: prove it by measurement before metal is cut.';

export function Pages({ paper, room, headline, design, made, cut, surfaces, system }: Props) {
  const { width, height } = PAPERS[paper];
  const fit = Math.min(1, room / (width * PIXELS_PER_MM));
  const style = { '--page-width': `${width}mm`, '--page-height': `${height}mm`, '--margin': `${MARGIN.top}mm ${MARGIN.side}mm ${MARGIN.bottom}mm`, '--fit': fit } as CSSProperties;
  const drawn = drawingHeight(paper, surfaces.length);
  const isCut = cut !== null && cut.steps.length + cut.faces.length > 0;
  const cautions = [...new Set([FIRST, ...(isCut ? cut.work.flatMap(({ id, cautions: own }) => (id === 'manual' ? [] : own)) : [GUARDS]), LAST])];
  return (
    <div className="pages" style={style}>
      <style>{pageRule(paper, design.title ?? 'untitled')}</style>
      <section className="leaf" aria-label="Drawings">
        <TitleBlock title={design.title ?? 'untitled'} />
        <p className="headline">{headline}</p>
        <div className="drawing" data-drawing="journal">
          <PartDrawing design={made} part="journal" surfaces={surfaces} system={system} height={drawn} />
        </div>
        <div className="drawing" data-drawing="bush">
          <PartDrawing design={made} part="bush" surfaces={surfaces} system={system} height={drawn} />
        </div>
        <SurfaceTable surfaces={surfaces} system={system} />
        <p className="small">
          Stations are counted from the datum, toward the nose above 0. Tolerances: half of the film’s tolerance to each part, at the position {fineText(made.position ?? 0, system)}; each holds by itself. Figures are those{' '}
          {isCut ? 'after the cut' : 'of the design'}.{surfaces.some(({ asMeasured }) => asMeasured) && ' * measured lines and lobes: the figures are those of the straight, round surface.'}
        </p>
      </section>
      <section className="leaf" aria-label="Set-up and steps">
        {cut && isCut && (
          <>
            <h3>Setting the angle</h3>
            <SetUpTable cut={cut} system={system} />
            <h3>Steps, in this order</h3>
            <StepTable design={design} cut={cut} system={system} />
            <TrialLine design={design} cut={cut} system={system} />
          </>
        )}
        <div className="block">
          <h3>Film and adjuster, {isCut ? 'after the cut' : 'as it is'}</h3>
          <div className="drawing" data-drawing="chart">
            <FilmChart design={made} system={system} height={chartHeight(paper)} />
          </div>
        </div>
        <div className="block">
          <h3>Cautions</h3>
          <ul className="cautions">
            {cautions.map((caution) => (
              <li key={caution}>{caution}</li>
            ))}
          </ul>
        </div>
      </section>
    </div>
  );
}

/** What a trial assembly told, to be brought back to the Cut screen. */
function TrialLine({ design, cut, system }: { design: Design; cut: CutReport; system: System }) {
  const last = [...cut.steps, ...cut.faces].at(-1)?.standOff.stop ?? null;
  return (
    <p className="trial-line">
      <strong>Trial, dry, with blue:</strong> stand-off {last === null ? '' : `(${fineText(last, system)} expected) `}
      <span className="read-box" /> shake <span className="read-box" /> prints on{' '}
      {design.seats.map(({ name }) => (
        <span key={name} className="tick">
          <span className="tick-box" /> {name}
        </span>
      ))}
    </p>
  );
}

/** Who, when, which machine: filled in by hand, since the page is printed before the work is done. */
function TitleBlock({ title }: { title: string }) {
  return (
    <div className="title-block">
      <h3>{title}</h3>
      {['Date', 'By', 'Machine'].map((name) => (
        <span key={name}>
          {name} <span className="line" />
        </span>
      ))}
    </div>
  );
}
