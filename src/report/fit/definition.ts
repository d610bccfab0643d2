/** The `fit` section of the report. */
import * as z from 'zod/mini';
import { mm, mmOrNull } from '../quantities.ts';

const stretch = z.strictObject({ from: mm('Rearmost'), to: mm('Foremost') });

export const seatFit = z.strictObject({
  name: z.string(),
  closes: z.enum(['rearward', 'noseward', 'never']),
  seatPosition: mmOrNull('Position at which this seat alone would touch, journal centred; null when it never does'),
  contact: z.nullable(
    z.strictObject({
      station: mm('Bush station of first touch; of its small end where a line touches'),
      diameter: mm('Bush diameter there'),
      end: z.enum(['small', 'large', 'middle', 'whole']),
      stretches: z
        .array(z.strictObject({ from: mm('Bush station'), to: mm('Bush station') }))
        .check(
          z.meta({ description: 'Every stretch of the bush that touches at that position, the small end’s first' }),
        ),
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
  tolerated: z.nullable(stretch).check(
    z.meta({
      description:
        'Positions at which the film of this seat is within its tolerance, whatever the others have; null where none is wanted or no move gives it',
    }),
  ),
});

const relation = z.strictObject({
  between: z.tuple([z.string(), z.string()]),
  error: mm('Position for the film of the first named, less that of the second'),
  allowance: mm('What the tolerances of the films allow the error to be'),
});

export const fitReport = z.strictObject({
  position: mm('Axial position of the journal'),
  seats: z.array(seatFit),
  first: z
    .nullable(z.string())
    .check(
      z.meta({ description: 'The seat that touches first as the journal goes rearward; null when none closes so' }),
    ),
  together: z.array(z.string()).check(z.meta({ description: 'All seats that touch at that position' })),
  firstPosition: mmOrNull('Position of first touch'),
  filmsAtFirst: z.record(z.string(), mmOrNull('Least film of the seat at first touch, interference negative')),
  blocked: z.array(z.string()).check(
    z.meta({
      description: 'Seats whose journal is in its bush where the first touches: the spindle does not get so far',
    }),
  ),
  endPlay: mmOrNull(
    'Between the rearward and the noseward stop, when both exist; negative where the two overlap, so that it cannot go in',
  ),
  relation: z
    .nullable(relation)
    .check(z.meta({ description: 'Of the first two seats that a move brings to their films' })),
  relations: z.array(relation).check(z.meta({ description: 'Of every two seats that a move brings to their films' })),
  permitted: z.nullable(stretch).check(
    z.meta({
      description:
        'Positions at which every film wanted is within its tolerance and no journal in its bush; null when there are none',
    }),
  ),
});

export type FitReport = z.infer<typeof fitReport>;
export type SeatFitReport = z.infer<typeof seatFit>;
