/**
 * The `cut` section of the report.
 * Over 300 lines and left whole: what the section tells, read from top to bottom.
 */
import * as z from 'zod/mini';
import { reading } from '../../design/definition.ts';
import { notAsRead } from '../belief/definition.ts';
import { mm, mmOrNull } from '../quantities.ts';

const part = z.enum(['journal', 'bush']);
const plain = (description: string) => z.number().check(z.meta({ description }));
const share = (of: string) => plain(`Share that works ${of}`);
const text = (description: string) => z.string().check(z.meta({ description }));

const stop = {
  before: mmOrNull('As it is before the step; null where there is none'),
  half: mmOrNull('Half way'),
  safe: z.optional(
    mmOrNull('When what may be taken before a trial assembly is off; left out where that is all of it or nothing'),
  ),
  stop: mmOrNull('When the step is done'),
};

const feeds = {
  normal: mm('Stock normal to the surface, at its station where it is cut to a new line'),
  diameter: mm('Change of the diameter: below 0 on a journal, above 0 in a bush'),
  crossFeed: mm('Feed square to the axis, on the radius'),
  axialFeed: mmOrNull('Feed along the axis; null where it would be more than 100 times the stock'),
  crossDivisions: plain('Divisions of the cross-feed dial'),
  axialDivisions: z.nullable(plain('Divisions of the axial dial')),
  tableFeed: mm('Feed square to the ways with the table set over by the half angle'),
  slideFeed: mmOrNull('Feed along the slide that is set over; null without one'),
  passes: z.strictObject({
    count: z.int(),
    depth: mm('Cross feed of a pass'),
    last: mm('Cross feed of the last pass'),
  }),
};

const limits = z
  .tuple([mm('Lower'), mm('Upper')])
  .check(z.meta({ description: 'Between these it is 19 times in 20, by the pairs drawn' }));

const cutStep = z.strictObject({
  seat: z.string(),
  part,
  ...feeds,
  sigma: z.optional(mm('Standard uncertainty of the stock, by the doubt of every film; while there are no trials')),
  limits: z.optional(limits),
  safe: z.optional(
    mm(
      'What of it may be taken before a trial assembly: but for the risk that is allowed at least that much is to come off; while there are no trials',
    ),
  ),
  first: z.optional(
    z.strictObject(feeds).check(z.meta({ description: 'How that is taken, where it is a part of the step' })),
  ),
  deepest: mm('Greatest normal stock anywhere along it'),
  touch: z.strictObject(stop).check(z.meta({ description: 'Position at which this seat alone touches' })),
  standOff: z.strictObject(stop).check(z.meta({ description: 'Position of first touch of the whole journal' })),
  gauges: z.array(
    z.strictObject({
      reading: reading.check(z.meta({ description: 'The set-up; its value is that at which to stop' })),
      ...stop,
    }),
  ),
  why: z.enum(['cleanup', 'newLine', 'film', 'relation', 'nearer']),
  turn: z.enum(['only', 'bushFirst', 'straightFirst', 'shallowFirst', 'steepLast', 'faceLast']),
  reason: text('Why this much, and why now, in words'),
  after: z.strictObject({
    halfAngle: plain('Half angle afterwards, degrees'),
    diameter: mm('Diameter afterwards, at the station of the design'),
  }),
});

/** A reading that would make the plan surer. */
const advised = z.strictObject({
  reading: reading.check(z.meta({ description: 'The set-up; its value is what it would most likely read' })),
  again: z.boolean().check(z.meta({ description: 'Whether it was read so before' })),
  rear: z.optional(
    z.literal(true).check(z.meta({ description: 'Of a shake: whether it is read at the rear end of the journal' })),
  ),
  sigma: mm('What sigma would be after it, on the average'),
  quarter: z.optional(mm('and at most in one case of four')),
});

export const faceStep = z.strictObject({
  name: z.string(),
  part,
  seats: z.array(z.string()),
  off: mm('Metal off; below 0 where it is made thicker'),
  standOff: z.strictObject(stop),
  reason: text('Why, in words'),
});

const limit = z.strictObject({
  what: z.enum(['forbidden', 'limit', 'cleanup', 'add', 'reachFrom', 'reachTo']),
  seat: z.optional(z.string()),
  part: z.optional(part),
  face: z.optional(z.string()),
  limit: mm('As it is'),
  needed: mmOrNull('What it would have to be, all others kept; null where others stand in the way too'),
});

/** A plan that could be chosen. */
const aimed = z.strictObject({
  aim: z.enum(['target', 'tolerance']),
  chosen: z.boolean(),
  feasible: z.boolean(),
  inTolerance: z.boolean(),
  total: mm('All stock together'),
  position: mm('Position of the journal'),
  films: z.record(z.string(), mmOrNull('Least film there')),
  stock: z.array(z.strictObject({ seat: z.string(), part, normal: mm('Normal stock') })),
  faces: z.array(z.strictObject({ name: z.string(), off: mm('Metal off; below 0 put on') })),
});

const missed = z.strictObject({
  seat: z.string(),
  by: mm('Film less what is wanted of it; below 0 where it is too thin'),
  why: z.enum(['limits', 'worth', 'metalMissing']).check(
    z.meta({
      description:
        'A limit stands in the way; it would take more than a hundred times its stock; or it is too great already and no move closes it',
    }),
  ),
});

const way = z.enum(['sineBar', 'alongBar', 'alongSlide', 'alongAxis', 'table', 'scale', 'tailstock']);

const setting = z.strictObject({
  seat: z.string(),
  part,
  halfAngle: plain('Degrees'),
  bar: mm('Length of the sine bar'),
  stack: mm('Height of the blocks'),
  blocks: z.nullable(z.array(mm('Block'))).check(z.meta({ description: 'Null where the set has no such stack' })),
  blocksError: mmOrNull('Stack less the height wanted'),
  blocksFilm: mmOrNull('Film that this costs; null without a stack'),
  dresser: plain('Angle of the dresser, the wheel’s axis lying along the work’s, degrees'),
  stands: z.nullable(
    plain(
      'Greatest error of the half angle with which the film keeps its tolerance, degrees; null without a tolerance, and where the plan leaves it anyway',
    ),
  ),
  room: mmOrNull(
    'Film that an error of the angle may cost, if all errors of the set-up together are to keep the tolerance likely; null as above',
  ),
  hollow: z
    .nullable(
      z.strictObject({
        height: mm('Tool off the centre'),
        depth: mm('Greatest distance of the flank from its own chord: hollow on a journal, proud in a bush'),
        angleError: plain('Half angle of the chord less that set, degrees'),
        profile: z
          .array(z.tuple([mm('Station'), mm('Deviation')]))
          .check(z.meta({ description: 'The flank, for drawing' })),
      }),
    )
    .check(z.meta({ description: 'What a tool off the centre would cut; null where it would be beyond the axis' })),
  ways: z.array(
    z.strictObject({
      way,
      reading: mm('What is set or read'),
      error: plain('Error of the half angle by what can be read and by the lean of the indicator, degrees'),
      film: mm('What that does to the film'),
      enough: z.nullable(z.boolean()).check(z.meta({ description: 'Whether that is within `room`' })),
    }),
  ),
  recommended: z.nullable(way).check(z.meta({ description: 'The way to set it; null where none is enough' })),
  used: way.check(z.meta({ description: 'The way the error budget counts with' })),
  needed: z
    .nullable(
      z.strictObject({
        indicator: mm('Least reading over the travel of the machine'),
        travel: mm('Travel with the least reading of the indicator'),
      }),
    )
    .check(
      z.meta({
        description: 'What would be enough along a sine bar; null where nothing would, and without a tolerance',
      }),
    ),
});

const budget = z.strictObject({
  contributions: z.array(
    z.strictObject({
      seat: z.string(),
      part,
      cause: z.enum(['toolHeight', 'angle', 'dial', 'stop', 'sine', 'growth']),
      film: mm('Change of the film'),
    }),
  ),
  seats: z.array(
    z.strictObject({ seat: z.string(), sum: mm('All at their worst'), likely: mm('Root of the sum of squares') }),
  ),
});

const workItem = z.strictObject({
  id: z.string(),
  text: text('What to do'),
  basis: z.literal('common practice'),
  cautions: z.array(z.string()),
  step: z.optional(z.int().check(z.meta({ description: 'Place of the cut in `steps`, from 0' }))),
  done: z.boolean(),
});

const leftAmount = {
  sigma: mm('Standard uncertainty of that amount'),
  limits: z.optional(limits),
  safe: mm(
    'What may be taken now: the least that is left for any parts the trials have not ruled out (lower end of what holds 19 in 20); never more than the amount, and nothing while readings clash',
  ),
  doubted: z.string().check(z.meta({ description: 'Seat whose film has most of that uncertainty' })),
};
const smallStep = z.strictObject({
  seat: z.string(),
  part,
  normal: mm('Stock normal to the surface'),
  diameter: mm('Change of the diameter'),
  safeDiameter: mm('Change of the diameter by the stock that may be taken now'),
  crossDivisions: plain('Divisions of the cross-feed dial for all of it'),
  safeDivisions: plain('The same for what may be taken now'),
  ...leftAmount,
});

const trial = z.strictObject({
  status: z.enum(['updated', 'contradiction', 'noModel']),
  came: z.optional(
    z
      .array(
        z.strictObject({
          trial: z.int().check(z.meta({ description: 'Which trial it was told at, from 1' })),
          seat: z.optional(z.string()),
          part: z.optional(part),
          face: z.optional(z.string()),
          told: mm('Metal off as told'),
          sigma: mm('Standard uncertainty of that'),
          likely: mm('Metal that most likely came off'),
        }),
      )
      .check(z.meta({ description: 'What was told to be taken off, against what most likely came off' })),
  ),
  films: z.nullable(
    z.record(
      z.string(),
      z.strictObject({
        more: mm('By how much the film is most likely greater than the design gives'),
        sigma: mm('Standard uncertainty'),
        limits: z.optional(limits),
      }),
    ),
  ),
  drawn: z.optional(
    z.boolean().check(
      z.meta({
        description:
          'Whether sigma is that of the pairs drawn, as on every screen; else it is of the likeliest account alone: of trials long ago, and where hardly a pair goes with what was read',
      }),
    ),
  ),
  touched: z.nullable(z.record(z.string(), plain('Likelihood that this seat touched first'))),
  relation: z.optional(
    z.strictObject({ before: mm('Before this trial'), after: mm('After it') }).check(
      z.meta({
        description:
          'Standard uncertainty of the axial relation of the first two seats that ask for a film; left out where it is not told',
      }),
    ),
  ),
  clashes: z.optional(
    z
      .array(
        z.strictObject({
          trial: z.int().check(z.meta({ description: 'Which trial it was read at, from 1' })),
          what: z.enum(['standOff', 'shake', 'blue']),
          read: mmOrNull('What was read; null for the blue'),
          expected: mmOrNull('What the parts as believed would read'),
          deviations: plain(
            'How far apart, in standard uncertainties of the reading; for the blue those of all that it pushes aside',
          ),
        }),
      )
      .check(z.meta({ description: 'Readings so far that do not go with the rest, the worst first' })),
  ),
});

const asTheyAre = z
  .strictObject({
    position: mm('Position of the journal'),
    films: z.record(z.string(), mmOrNull('Least film there')),
    sigmas: z.optional(
      z
        .record(z.string(), mm('Standard uncertainty of that film, of the pairs drawn'))
        .check(z.meta({ description: 'Once there are trials; left out where the pairs drawn tell none' })),
    ),
  })
  .check(
    z.meta({
      description:
        'Where every film is within its tolerance already, nothing cut; left out where there is no such position',
    }),
  );

const remaining = z.strictObject({
  asTheyAre: z.optional(asTheyAre),
  steps: z.array(smallStep),
  faces: z.array(z.strictObject({ name: z.string(), off: mm('Metal off; below 0 put on'), ...leftAmount })),
  position: mm('Position of the journal'),
  films: z.record(z.string(), mmOrNull('Least film')),
  sigmas: z.optional(
    z
      .record(z.string(), mmOrNull('Standard uncertainty of that film'))
      .check(
        z.meta({ description: 'By the pairs drawn, each cut so, and by the dial; left out where they tell none' }),
      ),
  ),
  limits: z.optional(
    z.record(z.string(), z.nullable(limits)).check(z.meta({ description: 'Of that film, left out likewise' })),
  ),
  standOff: z.strictObject({
    now: mmOrNull('Position of first touch as believed'),
    safe: mmOrNull('When what may be taken now is off'),
    all: mmOrNull('When all of it is off'),
    sigma: z.optional(mm('Standard uncertainty of how far it is short: of now less all')),
  }),
  feasible: z.boolean(),
  inTolerance: z.boolean().check(z.meta({ description: 'Whether every film wanted is then within its tolerance' })),
});

const caseLeft = z.strictObject({
  seat: z.string(),
  part,
  depth: mm('Depth of the hard case before any cut of the history'),
  used: mm('Stock that the cuts of the history took of it, square to the surface'),
  left: mm('What is left of it; below 0 where the cuts went through'),
  sigma: mm('Standard uncertainty of both: that of the stock taken'),
  planned: mm('Greatest stock that is still to come off'),
  after: mm('What is then left of it; below 0 where that goes through'),
  status: z.enum(['kept', 'doubtful', 'through', 'gone']).check(
    z.meta({
      description:
        'Whether what is to come off leaves some of it: surely (39 times in 40), perhaps, or not; gone: there is none left already',
    }),
  ),
});

const lapState = z.strictObject({
  position: mm('Position of the journal'),
  turns: plain('Turns so far'),
  work: plain('Work slid under pressure, N·m'),
  volume: z.strictObject({ journal: plain('Worn off, mm³'), bush: plain('Worn off, mm³') }),
  seats: z.array(
    z.strictObject({
      name: z.string(),
      bearing: plain('Share of its length that bears'),
      journal: mm('Greatest depth worn'),
      bush: mm('Greatest depth worn'),
      seatPosition: mmOrNull('Position at which it touches alone'),
      film: mmOrNull('Least film as the journal stands home'),
    }),
  ),
  relationError: mmOrNull('Error of the relation for the films wanted'),
});

const cause = z.strictObject({
  what: z.enum(['taken', 'faces', 'standOff', 'shake', 'blue', 'parts']).check(
    z.meta({
      description: 'Metal off that is other than told, a reading that is a slip, or parts other than was thought',
    }),
  ),
  trial: z.optional(z.int().check(z.meta({ description: 'Which trial, from 1' }))),
  seat: z.optional(z.string()),
  part: z.optional(part),
  face: z.optional(z.string()),
  told: z.optional(mm('Metal off as told')),
  slip: z.optional(
    z.enum(['ten', 'inch', 'diameter', 'sign', 'seat']).check(
      z.meta({
        description:
          'A slip of the hand: a point in a wrong place, inches and millimetres, the diameter for what came off square, the sign, another seat that printed',
      }),
    ),
  ),
  times: z.optional(plain('Of a slip in a number: how many times as much was meant')),
  chance: plain('That it is this, beside all others and chance alone'),
  likely: mmOrNull('Metal that most likely came off, or what should have been read; null where it is neither'),
  enough: mmOrNull(
    'Standard uncertainty of it, of parts that of every film, with which all would go together; null where it has none',
  ),
});

export const cutReport = z.strictObject({
  steps: z.array(cutStep),
  position: mm('Position of the journal with the films wanted'),
  films: z.record(z.string(), mmOrNull('Least film there, after the cut')),
  feasible: z.boolean().check(
    z.meta({
      description: 'Whether every film wanted is reached exactly; otherwise the steps are those of the nearest result',
    }),
  ),
  status: z.enum(['planned', 'infeasible', 'nothingWanted', 'apart', 'stalled']),
  apart: z.array(z.string()).check(z.meta({ description: 'Seats whose parts do not overlap' })),
  faces: z.array(faceStep),
  total: mm('All normal stock and metal off faces together'),
  inTolerance: z
    .boolean()
    .check(
      z.meta({ description: 'Whether every film wanted is then within its tolerance, the journal within its reach' }),
    ),
  limits: z.array(limit).check(z.meta({ description: 'Limits that cannot all hold, where no plan is possible' })),
  shift: mm('How far nose and shoulders of the journal then stand from where they are'),
  turns: z.nullable(plain('The same in turns of the adjuster')),
  inReach: z.boolean(),
  together: z
    .array(limit)
    .check(z.meta({ description: 'Limits that would have to give way together, where none alone would do' })),
  missed: z.array(missed).check(z.meta({ description: 'Films that the plan does not bring to what is wanted' })),
  aims: z.array(aimed).check(
    z.meta({
      description:
        'The plans there are to choose from, the films just as wanted or the least stock within their tolerances',
    }),
  ),
  trade: z
    .array(
      z.strictObject({
        share: plain('Share of every tolerance that may be used'),
        total: mm('All stock together that this takes'),
      }),
    )
    .check(
      z.meta({
        description:
          'Least stock against the share of the tolerances used, from none to four fifths; empty without tolerances',
      }),
    ),
  doubt: z.record(
    z.string(),
    z.strictObject({
      sigma: mm('Standard uncertainty of the film before any trial'),
      from: z.enum(['stated', 'readings', 'default']),
      more: z.optional(
        mm('By how much the readings say that the film is greater than the surfaces of the design give'),
      ),
    }),
  ),
  worth: z.optional(
    z
      .strictObject({
        seat: z.string(),
        part,
        sigma: mm('Standard uncertainty of what is to come off there, the greatest of all'),
        cutting: mm('Standard uncertainty of that stock as the dial takes it off'),
        trial: mmOrNull(
          'What sigma would be after a trial assembly with stand-off and blue, on the average; null where nothing stops the journal',
        ),
        trialQuarter: z.optional(mm('and at most in one case of four')),
        reading: z.nullable(advised),
        ungauged: z.optional(
          advised.check(
            z.meta({ description: 'Where that is of a surface nobody has read: the best that needs no gauge of it' }),
          ),
        ),
      })
      .check(z.meta({ description: 'What would make the plan surer, and how much, before it is cut' })),
  ),
  works: z.optional(
    z
      .strictObject({
        now: share('as it stands'),
        safe: share('with what is safe to take off'),
        all: share('with all that is most likely left off'),
        leave: z.optional(
          z
            .literal(true)
            .check(z.meta({ description: 'No cut makes it likelier: the pair is best left as it stands' })),
        ),
      })
      .check(z.meta({ description: 'How often, of the pairs drawn, every film can be brought within its tolerance' })),
  ),
  guess: z.optional(
    z
      .literal(true)
      .check(
        z.meta({ description: 'It leans on sizes that neither gauge, drawing nor trial tells: cut nothing by it' }),
      ),
  ),
  notAsRead: z.optional(notAsRead),
  asTheyAre: z.optional(asTheyAre),
  uncut: z.optional(
    z
      .strictObject({
        position: mm('Position of the journal'),
        films: z.record(z.string(), mmOrNull('Least film there')),
      })
      .check(z.meta({ description: 'The nearest without any metal off, where no plan is possible' })),
  ),
  settings: z
    .array(setting)
    .check(z.meta({ description: 'Of the surfaces that are cut and have an angle to set: straight ones have none' })),
  budget,
  work: z.array(workItem),
  trials: z.optional(
    z.array(trial).check(z.meta({ description: 'One for each trial that is not in the shapes of the design yet' })),
  ),
  causes: z.optional(
    z
      .array(cause)
      .check(z.meta({ description: 'What may be behind trials that do not go together, the most likely first' })),
  ),
  remaining: z.optional(remaining),
  case: z.optional(
    z.array(caseLeft).check(z.meta({ description: 'Of the surfaces that say how deep their hard case is' })),
  ),
  without: z.optional(
    z
      .strictObject({ trial: z.int(), what: z.enum(['standOff', 'shake', 'blue']), remaining })
      .check(
        z.meta({ description: 'What would be left if the reading that goes worst with the rest had not been taken' }),
      ),
  ),
  lap: z.optional(
    z.nullable(
      z.strictObject({
        states: z.array(lapState),
        stop: z.strictObject({ at: z.int(), why: z.enum(['bearing', 'relation', 'limit', 'notYet']) }),
        allowance: mmOrNull('What the tolerances allow the relation to be wrong'),
      }),
    ),
  ),
});

export type CutReport = z.infer<typeof cutReport>;
export type CutStepReport = z.infer<typeof cutStep>;
export type FaceStepReport = z.infer<typeof faceStep>;
export type LimitReport = z.infer<typeof limit>;
