/** The `fit` section of the report. */
import * as z from 'zod/mini';
import { mm, mmOrNull } from '../quantities.ts';

export const seatFit = z.strictObject({
  name: z.string(),
  closes: z.enum(['rearward', 'noseward', 'never']),
  seatPosition: mmOrNull('Position at which this seat alone would touch, journal centred; null when it never does'),
  contact: z.nullable(
    z.strictObject({
      station: mm('Bush station of first touch; of its small end where a line touches'),
      diameter: mm('Bush diameter there'),
      end: z.enum(['small', 'large', 'middle', 'whole']),
      stretches: z.array(z.strictObject({ from: mm('Bush station'), to: mm('Bush station') })).check(z.meta({ description: 'Every stretch of the bush that touches at that position, the small end’s first' })),
    }),
  ),
  leastFilm: mmOrNull('Least film at the position; null where the parts do not overlap'),
  leastFilmStation: mmOrNull('Bush station of the least film'),
  greatestFilm: mmOrNull('Greatest film at the position'),
  sensitivity: z.nullable(z.number().check(z.meta({ description: 'Film gained per axial travel, mm/mm' }))),
  positionForTarget: mmOrNull('Position that gives the film wanted'),
  filmsAtTarget: z.nullable(z.record(z.string(), mmOrNull('Least film of the seat with the journal at that position'))),
  shiftToTarget: mmOrNull('Axial move from the position to there'),
  turnsToTarget: z.nullable(z.number().check(z.meta({ description: 'The same in turns of the adjuster' }))),
});

export const fitReport = z.strictObject({
  position: mm('Axial position of the journal'),
  seats: z.array(seatFit),
  first: z.nullable(z.string()).check(z.meta({ description: 'The seat that touches first as the journal goes rearward; null when none closes so' })),
  together: z.array(z.string()).check(z.meta({ description: 'All seats that touch at that position' })),
  firstPosition: mmOrNull('Position of first touch'),
  filmsAtFirst: z.record(z.string(), mmOrNull('Least film of the seat at first touch')),
  endPlay: mmOrNull('Between the rearward and the noseward stop, when both exist'),
  relation: z.nullable(
    z.strictObject({
      between: z.tuple([z.string(), z.string()]),
      error: mm('Position for the film of the first named, less that of the second'),
      allowance: mm('What the tolerances of the films allow the error to be'),
    }),
  ),
  permitted: z.nullable(z.strictObject({ from: mm('Rearmost'), to: mm('Foremost') })).check(z.meta({ description: 'Positions at which every film wanted is within its tolerance; null when there are none' })),
});

export type FitReport = z.infer<typeof fitReport>;
export type SeatFitReport = z.infer<typeof seatFit>;
