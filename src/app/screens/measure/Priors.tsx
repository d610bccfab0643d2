/** What is known of the parts before anything is read: how far a half angle or a diameter as drawn may be trusted. */
import { useStore } from 'zustand';
import type { Design, Part } from '../../../design/definition.ts';
import { above, atMost, LocalField } from '../../controls/LocalField.tsx';
import type { Work } from '../../state/store.ts';

type Prior = NonNullable<Design['priors']>[number];

export function Priors({ work }: { work: Work }) {
  const seats = useStore(work.store, (state) => state.design.seats);
  const priors = useStore(work.store, (state) => state.design.priors) ?? NONE;
  const system = useStore(work.store, (state) => state.system);
  const fields = seats.flatMap(({ name }) =>
    (['journal', 'bush'] as const).flatMap((part) =>
      (['halfAngle', 'diameter'] as const).map((of) => ({ seat: name, part, of })),
    ),
  );
  return (
    <details>
      <summary>
        What is known before anything is read
        {priors.length > 0 ? `: ${priors.length} of ${fields.length}` : ': nothing taken for granted'}
      </summary>
      <p className="fine">
        How far the sizes as drawn may be off, as a standard uncertainty. An empty field takes nothing for granted.
      </p>
      <div className="locals">
        {fields.map(({ seat, part, of }) => (
          <LocalField
            key={`${seat} ${part} ${of}`}
            title={`${seat} ${part}, ${of === 'halfAngle' ? 'half angle' : 'diameter'} ±`}
            about="Standard uncertainty of the value as drawn"
            quantity={of === 'halfAngle' ? 'phase' : 'fine'}
            value={priors.find((p) => p.seat === seat && p.part === part && p.of === of)?.sigma ?? null}
            set={(sigma) => work.change((design) => withPrior(design, seat, part, of, sigma))}
            clear={() => work.change((design) => withPrior(design, seat, part, of, null))}
            instead="open"
            system={system}
            bounds={[above(0), atMost(of === 'halfAngle' ? 10 : 100)]}
          />
        ))}
      </div>
    </details>
  );
}

const NONE: readonly Prior[] = [];

/** The design with another prior on one number of one surface; null takes it away. */
function withPrior(design: Design, seat: string, part: Part, of: Prior['of'], sigma: number | null): Design {
  const { priors = [], ...rest } = design;
  const others = priors.filter((p) => p.seat !== seat || p.part !== part || p.of !== of);
  const kept = sigma === null ? others : [...others, { seat, part, of, sigma }];
  return kept.length > 0 ? { ...rest, priors: kept } : rest;
}
