/**
 * The report, defined once: types, the published JSON Schema (assets/report.schema.json), and what the tests
 * hold every report against. Units are those of the files: mm, degrees.
 */
import * as z from 'zod/mini';

const mm = (description: string) => z.number().check(z.meta({ description: `${description}, mm` }));
const orNull = (description: string) => z.nullable(mm(description));

export const seatFit = z.strictObject({
  name: z.string(),
  closes: z.enum(['rearward', 'noseward', 'never']),
  seatPosition: orNull('Position at which this seat alone would touch, journal centred; null when it never does'),
  contact: z.nullable(
    z.strictObject({
      station: mm('Bush station of first touch; of its small end where a line touches'),
      diameter: mm('Bush diameter there'),
      end: z.enum(['small', 'large', 'middle', 'whole']),
      stretches: z.array(z.strictObject({ from: mm('Bush station'), to: mm('Bush station') })).check(z.meta({ description: 'Every stretch of the bush that touches at that position, the small end’s first' })),
    }),
  ),
  leastFilm: orNull('Least film at the position; null where the parts do not overlap'),
  leastFilmStation: orNull('Bush station of the least film'),
  greatestFilm: orNull('Greatest film at the position'),
  sensitivity: z.nullable(z.number().check(z.meta({ description: 'Film gained per axial travel, mm/mm' }))),
  positionForTarget: orNull('Position that gives the film wanted'),
  filmsAtTarget: z.nullable(z.record(z.string(), orNull('Least film of the seat with the journal at that position'))),
  shiftToTarget: orNull('Axial move from the position to there'),
  turnsToTarget: z.nullable(z.number().check(z.meta({ description: 'The same in turns of the adjuster' }))),
});

export const fitReport = z.strictObject({
  position: mm('Axial position of the journal'),
  seats: z.array(seatFit),
  first: z.nullable(z.string()).check(z.meta({ description: 'The seat that touches first as the journal goes rearward; null when none closes so' })),
  together: z.array(z.string()).check(z.meta({ description: 'All seats that touch at that position' })),
  firstPosition: orNull('Position of first touch'),
  filmsAtFirst: z.record(z.string(), orNull('Least film of the seat at first touch')),
  endPlay: orNull('Between the rearward and the noseward stop, when both exist'),
  relation: z.nullable(
    z.strictObject({
      between: z.tuple([z.string(), z.string()]),
      error: mm('Position for the film of the first named, less that of the second'),
      allowance: mm('What the tolerances of the films allow the error to be'),
    }),
  ),
});

export const designError = z.strictObject({ path: z.string(), message: z.string() });

export const report = z.strictObject({
  conepair: z.literal(1),
  file: z.string(),
  title: z.optional(z.string()),
  errors: z.optional(z.array(designError)),
  fit: z.optional(fitReport),
});

export type FitReport = z.infer<typeof fitReport>;
export type SeatFitReport = z.infer<typeof seatFit>;
export type Report = z.infer<typeof report>;
