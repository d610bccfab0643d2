/** Measure: from the readings of the bench to the shape of both parts, with how sure one may be. */
import { useId, useMemo, useState } from 'react';
import { useStore } from 'zustand';
import type { Design } from '../../design/definition.ts';
import { fineText, type System } from '../../design/units.ts';
import type { MeasureReport, SuggestionReport } from '../../report/measure/definition.ts';
import { measureSection } from '../../report/measure/section.ts';
import { doubtsOf, measureVerdict, suggestionText } from '../../report/measure/verdict.ts';
import { designWithMeasured, designWithTold, tellsAnything } from '../../report/measure/withMeasured.ts';
import { WorkContext } from '../controls/context.ts';
import { Helpers } from '../measure/Helpers.tsx';
import { KINDS, type Reading } from '../measure/kinds.ts';
import { Notebook } from '../measure/Notebook.tsx';
import { Priors } from '../measure/Priors.tsx';
import { ResidualPlot } from '../measure/ResidualPlot.tsx';
import { ShapePicture } from '../measure/ShapePicture.tsx';
import { TableOfReadings } from '../measure/TableOfReadings.tsx';
import { Tapers } from '../measure/Tapers.tsx';
import { Told } from '../measure/Told.tsx';
import '../measure/measure.css';
import type { Work } from '../store.ts';
import { useTools } from '../tools.ts';

export default function MeasureScreen({ work }: { work: Work }) {
  const design = useStore(work.store, (state) => state.design);
  const system = useStore(work.store, (state) => state.system);
  const tools = useTools(system);
  const measure = useMemo(() => measureSection(design, tools), [design, tools]);
  const fitted = useMemo(() => measure && designWithMeasured(design, measure), [design, measure]);
  const verdict = measure && measureVerdict(design, measure, system);
  const readings = design.readings ?? [];
  const [asked, setAsked] = useState<Reading | null>(null);
  const suggestions = measure?.next?.suggestions ?? [];
  return (
    <WorkContext value={work}>
      <section className={`verdict ${verdict?.tone ?? 'mend'}`} aria-live="polite">
        <h2>{verdict?.headline ?? 'No readings yet: write down what the bench tells, and the shape of both parts follows.'}</h2>
        <p>{verdict?.sentences.join(' ') ?? 'Any mixture will do: rolls, balls, a sine bar, a micrometer, the stand-off of a trial assembly. Begin with a button below the notebook, or take in a table.'}</p>
      </section>
      {measure && fitted && (
        <>
          <div className="shapes">
            {design.seats.map((seat, i) => (
              <ShapePicture key={seat.name} drawn={design} fitted={fitted} measure={measure} seat={i} system={system} />
            ))}
          </div>
          <p className="fine">Dashed: as drawn. Full: as the readings tell it, with the band in which it lies 19 times in 20. Between the two the film at the position of the design.</p>
          <Tapers work={work} measure={measure} />
          <UseShapes work={work} design={design} measure={measure} />
        </>
      )}
      <h2>Notebook</h2>
      <Notebook work={work} measure={measure} fitted={fitted} tools={tools} asked={asked} ask={setAsked} />
      <TableOfReadings work={work} />
      <Priors work={work} />
      {measure && (
        <>
          {suggestions.length > 0 && (
            <section aria-label="What to read next">
              <h2>What to read next</h2>
              <ul className="plain">
                {suggestions.map((suggestion) => (
                  <li key={JSON.stringify(suggestion.reading)}>
                    <button type="button" onClick={() => setAsked(suggestion.reading)} title="Asks for this reading in the notebook">
                      + {KINDS[suggestion.reading.kind].name}
                    </button>{' '}
                    {suggestionText(design, suggestion, system)}
                    {gainText(measure, suggestion, system)}
                  </li>
                ))}
              </ul>
            </section>
          )}
          <Told design={design} measure={measure} system={system} />
          <ResidualPlot normalised={readings.map((_, i) => measure.readings.find((r) => r.index === i)?.normalised ?? null)} names={readings.map(({ kind }) => KINDS[kind].name)} disagreeing={measure.disagreeing.map(({ index }) => index)} />
        </>
      )}
      <Helpers work={work} />
    </WorkContext>
  );
}

/** What a suggested reading makes of the quantity that is wanted. */
function gainText({ next }: MeasureReport, { sigma }: SuggestionReport, system: System): string {
  const wanted = next?.quantity === 'relation' ? 'the relation of the cones' : 'the first touch';
  if (sigma === null) return `: a step toward ${wanted}, which needs more`;
  const now = next?.sigma == null ? '' : `, now ${fineText(next.sigma, system)}`;
  return `: standard uncertainty of ${wanted} then ${fineText(sigma, system)}${now}`;
}

/** The fitted shapes into the design: the thing to do where nothing speaks against it, a second thought where something does. */
function UseShapes({ work, design, measure }: { work: Work; design: Design; measure: MeasureReport }) {
  const why = useId();
  const doubts = doubtsOf(design, measure);
  const take = () => work.change((d) => designWithTold(d, measure));
  if (!tellsAnything(measure)) return <p className="fine">No half angle and no diameter is told yet, so there is no shape to take into the design.</p>;
  if (doubts.length === 0)
    return (
      <p className="buttons">
        <button type="button" className="main" onClick={take}>
          Use these shapes in the design
        </button>
      </p>
    );
  return (
    <p className="buttons doubted">
      <button type="button" onClick={take} aria-describedby={why}>
        Use these shapes all the same
      </button>
      <span id={why}>{doubts.join(' ')} Undo takes it back.</span>
    </p>
  );
}
