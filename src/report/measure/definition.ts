/** The `measure` section of the report. */
import * as z from 'zod/mini';
import { reading } from '../../design/definition.ts';
import { mm, mmOrNull } from '../quantities.ts';

const part = z.enum(['journal', 'bush']);
const plain = (description: string) => z.number().check(z.meta({ description }));

const surfaceMeasured = z.strictObject({
  seat: z.string(),
  part,
  halfAngle: plain(
    'Fitted half angle, degrees; as drawn where the readings leave it open (sigma null), and where it is drawn straight',
  ),
  diameter: mm('Fitted diameter at the station of the design; as far as told with a half angle that is held as drawn'),
  sigma: z.strictObject({
    halfAngle: z.nullable(
      plain(
        'Standard uncertainty, degrees; null where the readings leave the half angle open, 0 where it is held straight',
      ),
    ),
    diameter: mmOrNull('Standard uncertainty; null where the readings leave the diameter open'),
  }),
  correlation: z.nullable(plain('Between half angle and diameter; null where one of them is open or held')),
  straight: z.optional(z.literal(true).check(z.meta({ description: 'Drawn straight, and estimated so' }))),
  tapered: z.optional(
    z
      .strictObject({
        halfAngle: plain('Half angle, degrees'),
        sigma: plain('Standard uncertainty, degrees'),
        diameter: mm('Diameter at the station of the design'),
        significance: plain('Chance that a straight surface reads so far off, or farther, where every sigma is right'),
      })
      .check(
        z.meta({
          description:
            'Of a surface drawn straight: what the readings say where it is not held straight; not there where they do not tell',
        }),
      ),
  ),
  profile: z.optional(
    z
      .array(
        z.strictObject({
          station: mm('Place along the part'),
          deviation: mm('Fitted deviation from the end-to-end line, metal proud positive'),
          sigma: mmOrNull('Standard uncertainty; null where open'),
        }),
      )
      .check(z.meta({ description: 'Where the straightness was read' })),
  ),
});

const fault = z.strictObject({
  index: z.int().check(z.meta({ description: 'Place in the list of readings, from 0' })),
  what: z.enum([
    'wrongPart',
    'straight',
    'falls',
    'edge',
    'missed',
    'otherSeat',
    'blocked',
    'stackBeyondBar',
    'travelBeyondLine',
    'riseBeyondBar',
    'crossesAxis',
    'ofEnd',
    'negative',
    'nothingCloses',
    'neverTouches',
    'interferes',
    'unbounded',
    'stalled',
  ]),
  message: z.string().check(z.meta({ description: 'Why it cannot have been read like this' })),
  seat: z.optional(z.string()),
  part: z.optional(part),
  end: z.optional(z.enum(['small', 'large'])),
  lengths: z.optional(z.record(z.string(), mm('Length that the message tells of'))),
  possibleAsDrawn: z.optional(z.boolean()).check(
    z.meta({
      description:
        'Of a reading of the notebook: the parts as drawn would allow it, so that it speaks against the others',
    }),
  ),
});

const suggestion = z.strictObject({
  reading: reading.check(z.meta({ description: 'A set-up with the value it would read on the fitted shape' })),
  sigma: z.nullable(
    plain(
      'Standard uncertainty of the quantity with this reading besides, mm or degrees; null where it would still be open',
    ),
  ),
});

const consequence = z.strictObject({
  value: mm('As it follows from the fitted shape'),
  sigma: mmOrNull('Standard uncertainty, by propagation; null where the readings leave it open'),
  interval: z.nullable(z.tuple([mm('Low end'), mm('High end')])).check(
    z.meta({
      description:
        'Holds the true value in 95 of 100 cases: from shapes drawn with these uncertainties, each put through the fit',
    }),
  ),
  asDrawn: z
    .array(z.strictObject({ seat: z.string(), part }))
    .check(z.meta({ description: 'Surfaces it leans on that no reading tells of' })),
});
const consequenceOrNull = z.nullable(consequence);

export const measureReport = z.strictObject({
  surfaces: z.array(surfaceMeasured),
  correlations: z.strictObject({
    numbers: z.array(z.strictObject({ seat: z.string(), part, of: z.enum(['halfAngle', 'diameter']) })),
    matrix: z.array(z.array(z.nullable(z.number()))).check(
      z.meta({
        description: 'Between each two of the numbers, rows and columns in their order; null where one of them is open',
      }),
    ),
  }),
  readings: z.array(
    z.strictObject({
      index: z.int().check(
        z.meta({
          description: 'Place in the list of readings, from 0; those that cannot have been read are left out',
        }),
      ),
      fitted: mm('What the fitted shape would read'),
      residual: mm('Value less fitted'),
      normalised: plain(
        'Residual over its own standard deviation, sigma·√(1 − leverage): so that a reading that pulls the fit to itself is not hidden; 0 where nothing else checks it',
      ),
      leverage: plain('Share of its own value in what is fitted to it: 1 where nothing else checks it'),
    }),
  ),
  chiSquare: plain('Sum of squared residuals over their sigma'),
  freedom: z.int().check(z.meta({ description: 'Readings that tell something, less the numbers they settle' })),
  probability: plain('Of a chi-square as great as this by chance, where every sigma is right'),
  settled: z.boolean().check(z.meta({ description: 'Whether the estimate came to rest' })),
  impossible: z.array(fault),
  overtaken: z
    .array(
      z.strictObject({
        index: z.int(),
        surfaces: z
          .array(z.strictObject({ seat: z.string(), part }))
          .check(z.meta({ description: 'Cut to another line since' })),
      }),
    )
    .check(
      z.meta({
        description: 'Readings of a line that is no more: they say nothing of these surfaces and are not used',
      }),
    ),
  aside: z
    .array(
      z.strictObject({
        index: z.int(),
        touched: z
          .record(z.string(), plain('Chance that it was this seat'))
          .check(z.meta({ description: 'Seats on which it may have been read' })),
        unread: z
          .array(z.strictObject({ seat: z.string(), part }))
          .check(z.meta({ description: 'Surfaces of these seats that were never read' })),
      }),
    )
    .check(
      z.meta({
        description:
          'Stand-offs that may be those of several seats, of which one was never read: they are not used until that is',
      }),
    ),
  disagreeing: z.array(
    z.strictObject({
      index: z.int(),
      normalised: plain('As in readings; 0 where the fitted shape does not allow it'),
      probability: plain(
        'That leaving out the best one of all lessens chi-square as much by chance; 0 where a reading would have been impossible beside the others',
      ),
      chiSquareWithout: plain(
        'Chi-square of the others, fitted without it; where several are named, nothing tells which is wrong',
      ),
      probabilityWithout: plain(
        'Of a chi-square as great as that by chance: small where the others do not agree either',
      ),
      slips: z.optional(
        z
          .array(
            z.strictObject({
              kind: z.enum(['roll', 'ball', 'tenfold', 'thou', 'turn', 'sign', 'face', 'halved', 'metal']),
              instead: reading.check(z.meta({ description: 'The reading as it would be without the slip' })),
              metal: z.optional(
                z
                  .strictObject({
                    seat: z.optional(z.string()),
                    part: z.enum(['journal', 'bush']),
                    told: mm('Metal off as it is written down, between this reading and others'),
                    meant: mm('As it may have been meant, with which all agree'),
                  })
                  .check(
                    z.meta({ description: 'Of the slip `metal`: that amount, off a surface or a face (no seat)' }),
                  ),
              ),
              chance: plain('That it is this, beside no slip and any other'),
            }),
          )
          .check(z.meta({ description: 'Likely slips with which all would agree, the most likely first' })),
      ),
    }),
  ),
  undetermined: z.array(
    z.strictObject({
      seat: z.string(),
      part,
      of: z.enum(['halfAngle', 'diameter', 'deviation']),
      station: z.optional(mm('Of the deviation')),
      held: z.boolean().check(z.meta({ description: 'Held as drawn; otherwise it hangs on one that is' })),
      next: z
        .nullable(suggestion)
        .check(z.meta({ description: 'A reading that would settle it, or comes nearest to that' })),
    }),
  ),
  consequences: z.strictObject({
    relation: consequenceOrNull.check(z.meta({ description: 'Error of the axial relation, as in fit' })),
    relationBetween: z.nullable(z.tuple([z.string(), z.string()])).check(
      z.meta({
        description: 'Seats whose relation that is: position for the film of the first, less that of the second',
      }),
    ),
    firstPosition: consequenceOrNull.check(z.meta({ description: 'Position of first touch' })),
    seatPositions: z.record(z.string(), consequenceOrNull),
    films: z
      .record(z.string(), consequenceOrNull)
      .check(z.meta({ description: 'Least film of each seat at the position' })),
    first: z.nullable(z.record(z.string(), plain('Probability that this seat touches first'))),
  }),
  next: z.nullable(
    z.strictObject({
      quantity: z.enum(['relation', 'firstPosition']),
      sigma: mmOrNull('Its standard uncertainty now; null where open'),
      suggestions: z
        .array(suggestion)
        .check(z.meta({ description: 'Further readings, the one that shrinks it most first' })),
    }),
  ),
});

export type MeasureReport = z.infer<typeof measureReport>;
export type SuggestionReport = z.infer<typeof suggestion>;
export type ConsequenceReport = z.infer<typeof consequence>;
export type FaultReport = z.infer<typeof fault>;
