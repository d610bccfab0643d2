/** Every seat that is cut or whose film the move changes, large enough to see a micrometre, all at one scale. */
import { useMemo } from 'react';
import type { Design } from '../../../design/definition.ts';
import type { System } from '../../../design/units.ts';
import type { CutReport } from '../../../report/cut/definition.ts';
import { designWithCut } from '../../../report/cut/withCut.ts';
import { allPlaces, closeUpPlaces } from './closeUpPlaces.ts';
import { StockCloseUp } from './StockCloseUp.tsx';

export function CloseUps({ design, cut, system }: { design: Design; cut: CutReport; system: System }) {
  const after = useMemo(() => designWithCut(design, cut), [design, cut]);
  const places = useMemo(() => design.seats.map((_, i) => closeUpPlaces(design, after, i)), [design, after]);
  const moves = after.position !== (design.position ?? 0);
  const touched = (name: string) =>
    cut.steps.some(({ seat }) => seat === name) || cut.faces.some(({ seats }) => seats.includes(name));
  const shown = design.seats.flatMap(({ name }, seat) => (moves || touched(name) ? [{ name, seat }] : []));
  const all = shown.flatMap(({ seat }) => allPlaces(places[seat]!).map(([, out]) => out));
  const reach = [Math.min(...all), Math.max(...all)] as const;
  return (
    <div>
      <div className="close-ups">
        {shown.map(({ name, seat }) => (
          <StockCloseUp
            key={name}
            before={design}
            after={after}
            seat={seat}
            places={places[seat]!}
            reach={reach}
            system={system}
          />
        ))}
      </div>
      <p className="fine">
        Straightened, bush above and journal below, all at one scale. The filled band is what is to come off; in dashes
        where it ends, before the journal moves.
      </p>
    </div>
  );
}
