/** Measure: from the readings of the bench to the shape of both parts, with how sure one may be. */

import { useId, useMemo, useState } from 'react';
import { useStore } from 'zustand';
import type { Design } from '../../../design/definition.ts';
import { COVER, fineText, type System } from '../../../design/units.ts';
import type { MeasureReport, SuggestionReport } from '../../../report/measure/definition.ts';
import { measuredNow } from '../../../report/measure/now.ts';
import { doubtsOf, measureVerdict, suggestionText, unreadOf } from '../../../report/measure/verdict.ts';
import {
  designWithMeasured,
  designWithTold,
  fitMeasured,
  tellsAnything,
} from '../../../report/measure/withMeasured.ts';
import { WorkContext } from '../../controls/context.ts';
import { CutsSince } from '../../frame/CutsSince.tsx';
import { Fault } from '../../frame/Fault.tsx';
import { type PartEntry, Parts } from '../../frame/Parts.tsx';
import { ShortVerdict } from '../../frame/ShortVerdict.tsx';
import { recordPart } from '../../record/RecordOfJob.tsx';
import { Helpers } from './Helpers.tsx';
import { KINDS, type Reading, readingText } from './kinds.ts';
import { Notebook, revealEntry } from './Notebook.tsx';
import { Priors } from './Priors.tsx';
import { ResidualPlot } from './ResidualPlot.tsx';
import { ShapePicture } from './ShapePicture.tsx';
import { ShapesTaken, type Taken } from './ShapesTaken.tsx';
import { TableOfReadings } from './TableOfReadings.tsx';
import { Tapers } from './Tapers.tsx';
import { agreementText, Told } from './Told.tsx';
import { ToTrial } from './ToTrial.tsx';
import { toldNow } from './toldNow.ts';
import { useAsked } from './useAsked.ts';
import { useMeasured } from './useMeasured.ts';
import './measure.css';
import { useAngles } from '../../state/angles.ts';
import { sameSeats } from '../../state/sameSeats.ts';
import type { Work } from '../../state/store.ts';
import { toolsOf } from '../../state/tools.ts';

export default function MeasureScreen({ work }: { work: Work }) {
  const design = useStore(work.store, (state) => state.design);
  const system = useStore(work.store, (state) => state.system);
  const tools = toolsOf(design, system);
  const { value, of, fresh, fault, again } = useMeasured(design, tools);
  const empty = (design.readings ?? []).length === 0;
  // Of other parts nothing is shown: the last answer is that of the parts and readings it was worked out for.
  const last = !empty && value && of && sameSeats(of, design) ? { measure: value, of } : null;
  const fitted = useMemo(() => value && of && designWithMeasured(of, value), [value, of]);
  const now = useMemo(() => (value && of ? toldNow(value, of, design) : undefined), [value, of, design]);
  const asked = useAsked(work, design);
  const stale = last && !fresh ? 'stale' : '';
  return (
    <WorkContext value={work}>
      <MeasureVerdict
        design={design}
        empty={empty}
        tried={design.cut?.trials?.length ?? 0}
        last={last}
        fresh={fresh}
        fault={fault}
        system={system}
      />
      <CutsSince design={design} />
      <Fault what="The shape of the parts" fault={empty ? null : fault} again={again} />
      {last && fitted && (
        <div className={stale}>
          <div className="shapes">
            {last.of.seats.map((seat, i) => (
              <ShapePicture
                key={seat.name}
                drawn={last.of}
                fitted={fitted}
                measure={last.measure}
                seat={i}
                system={system}
              />
            ))}
          </div>
          <p className="fine">
            Dashed: as drawn. Full: as the readings tell it, with the band in which it lies 19 times in 20. Between the
            two the film at the position of the design.
          </p>
          <Tapers work={work} measure={last.measure} />
          <UseShapes work={work} design={last.of} measure={last.measure} ready={fresh} />
        </div>
      )}
      <Parts
        screen="measure"
        parts={[
          {
            id: 'notebook',
            title: 'Notebook',
            told: empty ? 'no readings yet' : `${design.readings!.length} readings`,
            open: true,
            children: (
              <>
                <Notebook
                  work={work}
                  measure={last ? now : undefined}
                  stale={!fresh}
                  fitted={fresh && fitted ? fitted : undefined}
                  tools={tools}
                  asked={asked}
                />
                <TableOfReadings work={work} />
                <Priors work={work} />
              </>
            ),
          },
          ...(last ? toldParts(last, stale, asked.ask, system) : []),
          recordPart(work),
          {
            id: 'bench',
            title: 'Calculations of the bench',
            short: 'Bench',
            told: 'sine bar, balls and rolls, a warm room, a leaning indicator',
            children: <Helpers work={work} />,
          },
        ]}
      />
    </WorkContext>
  );
}

/** What follows from the readings. */
function toldParts(
  { of, measure }: Answer,
  stale: string,
  ask: (name: string, reading: Reading) => void,
  system: System,
): (PartEntry | null)[] {
  const [next] = measure.next?.suggestions ?? [];
  return [
    next
      ? {
          id: 'next',
          title: 'What to read next',
          short: 'Next',
          told: suggestionText(next, system),
          children: (
            <div className={stale}>
              <NextReadings measure={measure} ask={ask} system={system} />
            </div>
          ),
        }
      : null,
    {
      id: 'tells',
      title: 'What the readings tell',
      short: 'In figures',
      told: 'every surface and what follows, each with its ±',
      children: (
        <div className={stale}>
          <Told design={of} measure={measure} system={system} />
        </div>
      ),
    },
    {
      id: 'residuals',
      title: 'How they agree',
      told: agreementText(measure),
      children: (
        <div className={stale}>
          <Residuals of={of} measure={measure} />
        </div>
      ),
    },
  ];
}

interface Answer {
  measure: MeasureReport;
  of: Design;
}

function MeasureVerdict({
  design,
  empty,
  tried,
  last,
  fresh,
  fault,
  system,
}: {
  design: Design;
  empty: boolean;
  /** trial assemblies that are written down */
  tried: number;
  last: Answer | null;
  fresh: boolean;
  fault: string | null;
  system: System;
}) {
  const way = useAngles();
  if (empty)
    return (
      <section className="verdict mend" aria-live="polite">
        <h2>No readings yet: write down what the bench tells, and the shape of both parts follows.</h2>
        {tried > 0 && (
          <p>
            {tried === 1 ? 'One trial assembly is' : `${tried} trial assemblies are`} written down on Cut; what they
            tell of the pair stands there, and on Fit.
          </p>
        )}
        <p>
          Any mixture will do: rolls, balls, a sine bar, a micrometer, the stand-off of a trial assembly. Begin with a
          button below the notebook, or take in a table.
        </p>
        <ToTrial design={design} unread />
      </section>
    );
  if (!last)
    return (
      <section className="verdict mend" aria-live="polite" aria-busy={fault === null}>
        <h2>
          {fault === null ? 'What the readings tell is being worked out.' : 'What the readings tell is not known.'}
        </h2>
      </section>
    );
  const { tone, headline, sentences } = measureVerdict(
    last.of,
    last.measure,
    fitMeasured(last.of, last.measure),
    system,
    way,
  );
  return (
    <>
      <ShortVerdict
        tone={tone}
        now={measuredNow(last.measure, system)}
        why={headline}
        rest={sentences}
        more="Why, and what to read next"
        busy={!fresh}
        stale={!fresh}
      >
        <ToDoubted of={last.of} measure={last.measure} system={system} />
        <ToTrial design={last.of} unread={unreadOf(last.of, last.measure).length > 0} />
      </ShortVerdict>
      {!fresh && (
        <p className="working" role="status">
          Being worked out anew: what stands here is of the notebook before.
        </p>
      )}
    </>
  );
}

/** From what does not go with the others to where it stands: the entries, a press each. */
function ToDoubted({ of, measure, system }: { of: Design; measure: MeasureReport; system: System }) {
  const { readings = [] } = of;
  const places = [...measure.impossible, ...measure.disagreeing].map(({ index }) => index);
  const shown = [...new Set(places)].filter((index) => readings[index]).slice(0, MOST_NAMED);
  if (shown.length === 0) return null;
  return (
    <p className="buttons">
      {shown.map((index) => (
        <button key={index} type="button" onClick={() => revealEntry(index)}>
          To reading {index + 1}: {readingText(readings[index]!, system)}
        </button>
      ))}
    </p>
  );
}

/** Of many that do not go together the first are a beginning. */
const MOST_NAMED = 3;

function NextReadings({
  measure,
  ask,
  system,
}: {
  measure: MeasureReport;
  ask(name: string, reading: Reading): void;
  system: System;
}) {
  const suggestions = measure.next?.suggestions ?? [];
  if (suggestions.length === 0) return null;
  return (
    <section aria-label="What to read next">
      <ul className="plain">
        {suggestions.map((suggestion) => (
          <li key={JSON.stringify(suggestion.reading)}>
            <button
              type="button"
              onClick={() => ask(JSON.stringify(suggestion.reading), suggestion.reading)}
              title="Asks for this reading in the notebook"
            >
              + {KINDS[suggestion.reading.kind].name}
            </button>{' '}
            {suggestionText(suggestion, system)}
            {gainText(measure, suggestion, system)}
          </li>
        ))}
      </ul>
    </section>
  );
}

function Residuals({ of, measure }: { of: Design; measure: MeasureReport }) {
  const readings = of.readings ?? [];
  return (
    <ResidualPlot
      normalised={readings.map((_, i) => measure.readings.find((r) => r.index === i)?.normalised ?? null)}
      names={readings.map(({ kind }) => KINDS[kind].name)}
      disagreeing={measure.disagreeing.map(({ index }) => index)}
    />
  );
}

/** What a suggested reading makes of the quantity that is wanted. */
function gainText({ next }: MeasureReport, { sigma }: SuggestionReport, system: System): string {
  const wanted = next?.quantity === 'relation' ? 'the relation of the cones' : 'the first touch';
  if (sigma === null) return `: a step toward ${wanted}, which needs more`;
  const now = next?.sigma == null ? '' : `, now ± ${fineText(COVER * next.sigma, system)}`;
  return `: ${wanted} then told to ± ${fineText(COVER * sigma, system)}${now}`;
}

/**
 * The fitted shapes into the design: the thing to do where nothing speaks against it, a second thought where something
 * does.
 */
function UseShapes({
  work,
  design,
  measure,
  ready,
}: {
  work: Work;
  design: Design;
  measure: MeasureReport;
  ready: boolean;
}) {
  const why = useId();
  const doubts = doubtsOf(design, measure);
  // While another answer is being worked out this one is not to be taken; nor may the focus fall from the button.
  const [taken, setTaken] = useState<Taken | null>(null);
  const take = () => {
    if (!ready) return;
    const before = work.store.getState().design;
    work.change((d) => designWithTold(d, measure));
    setTaken({ before, after: work.store.getState().design });
  };
  const told = taken && <ShapesTaken work={work} taken={taken} />;
  if (!tellsAnything(measure))
    return (
      <p className="fine">No half angle and no diameter is told yet, so there is no shape to take into the design.</p>
    );
  if (doubts.length === 0)
    return (
      <>
        <p className="buttons">
          <button type="button" className="main" aria-disabled={!ready} onClick={take}>
            Use these shapes in the design
          </button>
        </p>
        {told}
      </>
    );
  return (
    <>
      <p className="buttons doubted">
        <button type="button" aria-disabled={!ready} onClick={take} aria-describedby={why}>
          Use these shapes all the same
        </button>
        <span id={why}>{doubts.join(' ')} Undo takes it back.</span>
      </p>
      {told}
    </>
  );
}
