/** The design as it is after the cut: for pictures of before and after, and to be taken over once it is done. */
import type { Design, Seat } from '../../design/definition.ts';
import { movedAxially } from '../../engine/parts/shift.ts';
import type { CutReport } from './definition.ts';

/**
 * Every surface cut, the journal at the position of the plan. Renewed surfaces lose profile and lobes; faces move their
 * seats.
 */
export function designWithCut(design: Design, cut: CutReport): Design {
  const seats = design.seats.map((seat): Seat => {
    const changed = { ...seat };
    for (const { seat: name, part, after } of cut.steps) {
      if (name !== seat.name) continue;
      const renewed = design.cut?.allow.some((a) => a.seat === name && a.part === part && a.renew);
      const { profile, lobes, ...line } = changed[part];
      changed[part] = {
        ...line,
        ...(profile && !renewed && { profile }),
        ...(lobes && !renewed && { lobes }),
        ...after,
      };
    }
    for (const { part, seats: moved, name, off } of cut.faces) {
      const face = design.cut?.faces?.find((f) => f.name === name);
      if (face && moved.includes(seat.name))
        changed[part] = movedAxially(changed[part], (face.moves === 'noseward' ? 1 : -1) * off);
    }
    return changed;
  });
  return { ...design, seats, position: cut.position };
}

/** mm: a flank nearer to its line than this is drawn straight. */
const SEEN = 5e-5;

/**
 * The design after the cut with the flanks that a tool off the centre leaves, where they are to be seen; of surfaces
 * that keep a profile, that.
 */
export function withFlanks(after: Design, { settings }: CutReport): { design: Design; shown: boolean } {
  const seen = settings.filter(({ hollow }) => hollow?.profile.some(([, deviation]) => Math.abs(deviation) >= SEEN));
  const seats = after.seats.map((seat): Seat => {
    const changed = { ...seat };
    for (const { seat: name, part, hollow } of seen)
      if (name === seat.name && !changed[part].profile) changed[part] = { ...changed[part], profile: hollow!.profile };
    return changed;
  });
  return { design: { ...after, seats }, shown: seen.length > 0 };
}
