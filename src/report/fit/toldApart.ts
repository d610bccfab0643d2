/** What the verdict tells of seats that no one position serves, as a stretch of the axis for a picture to show. */
import type { Millimetres } from '../../design/dimension.ts';
import { agreementOf } from './agreement.ts';
import type { FitReport } from './definition.ts';

export interface Apart {
  /** the seats by their places in the design: the one that is off, and the one it is told against */
  seats: readonly [out: number, against: number];
  /** mm: from where the one would have the journal to where the other would */
  from: Millimetres;
  to: Millimetres;
}

/**
 * Of two seats from film to film, as their relation is told; of more, from what each that is out tolerates to what the
 * others allow. None where they agree.
 */
export function toldApart(fit: FitReport): Apart[] {
  const { agreed, out } = agreementOf(fit);
  if (out.length === 0 || agreed.length === 0) return [];
  const placeOf = (name: string) => fit.seats.findIndex((seat) => seat.name === name);
  if (agreed.length + out.length === 2) {
    const [one, other] = fit.relations[0]!.between.map(placeOf) as [number, number];
    const [from, to] = [fit.seats[one]!.positionForTarget, fit.seats[other]!.positionForTarget];
    return from === null || to === null ? [] : [{ seats: [one, other], from, to }];
  }
  return out.map(({ name, off }) => {
    const { tolerated } = fit.seats[placeOf(name)]!;
    // The edge of what the others allow is that of the one who allows least.
    const against = agreed.reduce((least, seat) =>
      (off > 0 ? seat.to < least.to : seat.from > least.from) ? seat : least,
    );
    return {
      seats: [placeOf(name), placeOf(against.name)],
      from: off > 0 ? tolerated!.from : tolerated!.to,
      to: (off > 0 ? against.to : against.from) as Millimetres,
    };
  });
}
