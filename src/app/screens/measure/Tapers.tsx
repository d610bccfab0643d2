/** Surfaces drawn straight that the readings say are not: asked after, never taken over by themselves. */
import type { Design } from '../../../design/definition.ts';
import type { MeasureReport } from '../../../report/measure/definition.ts';
import { tapersAsked } from '../../../report/measure/tapers.ts';
import { designWithTaper } from '../../../report/measure/withMeasured.ts';
import type { Work } from '../../state/store.ts';

export function Tapers({ work, measure }: { work: Work; measure: MeasureReport }) {
  const asked = tapersAsked(measure);
  if (asked.length === 0) return null;
  return (
    <p className="buttons">
      {asked.map(({ seat, part }) => (
        <button
          key={`${seat} ${part}`}
          type="button"
          onClick={() => work.change((d: Design) => designWithTaper(d, measure, seat, part))}
        >
          Take the taper of the {seat} {part} over
        </button>
      ))}
      <span className="fine">Until then {asked.length === 1 ? 'it stays' : 'they stay'} straight here.</span>
    </p>
  );
}
