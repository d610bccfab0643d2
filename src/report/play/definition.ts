/** The `play` section of the report. */
import * as z from 'zod/mini';
import { mm, mmOrNull } from '../quantities.ts';

const rad = (description: string) => z.number().check(z.meta({ description: `${description}, rad` }));
const describedAs = (description: string) => z.meta({ description });

export const status = z
  .enum(['solved', 'unbounded', 'infeasible', 'stalled'])
  .check(
    describedAs(
      'solved; unbounded: nothing restrains that motion; infeasible: every pose presses the journal into a bush; stalled: no pose settles, as where a part rests on its edge and only just begins to enter the other',
    ),
  );

export const poseReport = z.strictObject({
  x: mm('Axis of the journal to the right of that of the bush, at the bush datum'),
  y: mm('The same upward'),
  z: mm('Axial position'),
  tiltX: rad('Tilt about x'),
  tiltY: rad('Tilt about y'),
});

export const contactReport = z.strictObject({
  seat: z.string(),
  station: mm('Bush station'),
  journalStation: mm('Journal station at the same place'),
  angle: z.number().check(describedAs('From x toward y, degrees')),
  share: z.number().check(describedAs('Normal force on the journal, N, of a push or pull of 1 N')),
  ring: z
    .boolean()
    .check(describedAs('The seat touches all round at this station; this is one place of a tripod that stands for it')),
});

/** What every answer carries: how it ended, and what is known in that case. */
const answer = {
  status,
  pose: z
    .nullable(poseReport)
    .check(
      describedAs(
        'Null where nothing restrains the motion; where the journal does not fit, the pose with the least interference',
      ),
    ),
  contacts: z.array(contactReport),
  shared: z
    .boolean()
    .check(describedAs('More places touch than statics decides between; the shares are those of equal springs')),
  motion: z.optional(poseReport).check(describedAs('The motion nothing restrains; its greatest part is 1')),
  interference: z.optional(mm('How far into a bush the journal is at least')),
};

export const seatedReport = z.strictObject(answer);
export const shakeReport = z.strictObject({
  ...answer,
  total: mmOrNull('Indicator travel in x from the one side to the other'),
  back: z
    .nullable(z.strictObject({ pose: poseReport, contacts: z.array(contactReport) }))
    .check(describedAs('Pulled back, toward -x')),
});

export const playReport = z.strictObject({
  indicator: mm('Station of the indicator'),
  free: z.array(z.enum(['x', 'y', 'z', 'tiltX', 'tiltY'])),
  seated: seatedReport.check(describedAs('Pushed rearward by 1 N')),
  shake: shakeReport.check(describedAs('The position held where it is')),
  shakeAgainst: z
    .nullable(shakeReport)
    .check(describedAs('The position held where the journal sits when pushed rearward; null when nothing stops it')),
  endPlay: mmOrNull(
    'From the rearward to the noseward stop, as the spindle moves with all its free motions; null when there are not both',
  ),
  noseStop: mmOrNull('Position against the noseward stop'),
  map: z
    .nullable(z.array(z.tuple([z.number(), z.number()])))
    .check(
      describedAs(
        'Corners [x, y] of the region the axis reaches at the indicator, position held, mm; null where it is not bounded',
      ),
    ),
  curve: z
    .array(z.strictObject({ position: mm('Position'), total: mmOrNull('Shake there') }))
    .check(describedAs('Shake against position')),
  selfHolding: z.array(z.string()).check(describedAs('Seats that stick once pressed home: tan(half angle) ≤ friction')),
  friction: z.number().check(describedAs('Dry friction taken')),
  freeing: z
    .record(z.string(), z.number())
    .check(describedAs('Axial force that frees each self-holding seat, per force it was pressed home with')),
});

export type PlayReport = z.infer<typeof playReport>;
export type ShakeReport = z.infer<typeof shakeReport>;
export type SeatedReport = z.infer<typeof seatedReport>;
export type ContactReport = z.infer<typeof contactReport>;
export type PoseReport = z.infer<typeof poseReport>;
