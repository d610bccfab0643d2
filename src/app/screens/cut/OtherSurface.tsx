/** Metal may have come off where the plan takes none: another field for it in the form of a trial. */
import type { Design } from '../../../design/definition.ts';
import type { Draft } from './trialDraft.ts';

type Surface = Pick<Draft['taken'][number], 'seat' | 'part'>;

export function OtherSurface({
  seats,
  taken,
  add,
}: {
  seats: Design['seats'];
  taken: readonly Surface[];
  add(surface: Surface): void;
}) {
  const others = seats.flatMap(({ name }) =>
    (['journal', 'bush'] as const)
      .filter((part) => !taken.some((one) => one.seat === name && one.part === part))
      .map((part): Surface => ({ seat: name, part })),
  );
  if (others.length === 0) return null;
  return (
    <label className="local">
      <span>Off another surface too</span>
      <select value="" onChange={({ target }) => add(others[Number(target.value)]!)}>
        <option value="">none</option>
        {others.map(({ seat, part }, i) => (
          <option key={`${seat} ${part}`} value={i}>
            {seat} {part}
          </option>
        ))}
      </select>
    </label>
  );
}
