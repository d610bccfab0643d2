/** The sizes of the job on a drawing, as when it was begun: what is typed there changes the job. */
import { useStore } from 'zustand';
import { inSystem, typedField } from '../../../design/quantity.ts';
import { useAngles } from '../../state/angles.ts';
import type { Work } from '../../state/store.ts';
import { useUnfinished } from '../../state/useUnfinished.ts';
import { faultAt, faultsOf } from '../new/faults.ts';
import { useLengths } from '../new/lengths.ts';
import { type Size, sizesOf } from '../new/newDesign.ts';
import { Caption } from '../new/OnDrawing.tsx';
import { type Held, Sketch } from '../new/Sketch.tsx';
import { isTold, type JobSketch, jobSizes, sketchOf, withSize } from '../new/sketchOfJob.ts';
import { Wrong } from '../new/Wrong.tsx';
import '../new/newJob.css';

export default function JobDrawing({ work }: { work: Work }) {
  const design = useStore(work.store, (state) => state.design);
  const sketch = sketchOf(design);
  if (sketch === null)
    return (
      <p className="fine">
        Seats that overlap along the axis, and more than five, have no room on one drawing: type their sizes below.
      </p>
    );
  return <Drawing work={work} sketch={sketch} />;
}

function Drawing({ work, sketch }: { work: Work; sketch: JobSketch }) {
  const design = useStore(work.store, (state) => state.design);
  const system = useStore(work.store, (state) => state.system);
  const way = useAngles();
  const sizes = jobSizes(design, sketch);
  const [lengths, setLengths] = useLengths(work, sizes);
  const [texts, setTexts] = useUnfinished<Readonly<Record<string, Held>>>(work, 'drawing');
  const { plan } = sketch;
  const fields = sizesOf(plan);
  const faults = faultsOf(plan, sizes, null, system);
  const hold = (id: string, held: Held | null) =>
    setTexts((now) => {
      const { [id]: _, ...others } = now ?? {};
      const all = held ? { ...others, [id]: held } : others;
      return Object.keys(all).length > 0 ? all : null;
    });
  const take = (size: Size, text: string) => {
    // A job that stands has every size: emptied, its field waits like any other that is not taken.
    if (text.trim() === '') return hold(size.id, { text: '', why: EMPTY });
    const typed = typedField(size.at, text, system, way);
    if (!typed.ok) return hold(size.id, { text, why: typed.message });
    const written = withSize(design, sketch, size, typed.value, { lengths, system });
    if (!written.ok) return hold(size.id, { text, why: written.why });
    const [wrong] = work.change(() => written.design, { kept: true });
    if (wrong) return hold(size.id, { text, why: inSystem(wrong.message, system, size.at.quantity) });
    hold(size.id, null);
    setLengths(written.lengths);
  };
  const unread = fields.flatMap(({ id, title }) => (texts?.[id] ? [`${title}: ${texts[id].why}`] : []));
  return (
    <div className="new-job">
      <figure>
        <Sketch
          plan={plan}
          sizes={sizes}
          known={(id) => isTold(design, sketch, fields.find((size) => size.id === id)!, lengths)}
          held={(id) => texts?.[id]}
          fault={(id) => faultAt(faults, id)}
          take={take}
          leave={(id) => hold(id, null)}
          system={system}
        />
        <Caption plan={plan} system={system} />
      </figure>
      <Wrong unread={unread} faults={faults} />
    </div>
  );
}
const EMPTY = 'the field is empty; type a number, or leave the size as it was';
