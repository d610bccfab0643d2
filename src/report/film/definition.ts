/** The `film` section of the report. */
import * as z from 'zod/mini';
import { mm, mmOrNull } from '../quantities.ts';

const described = (unit: string) => (description: string) =>
  z.number().check(z.meta({ description: `${description}, ${unit}` }));
const newton = described('N');
const newtonMm = described('N·mm');
const watt = described('W');
const celsius = described('°C');
const rad = described('rad');
const megapascal = described('MPa');
const flow = described('mm³/s');
const plain = described('1');
const seconds = described('s');
const told = (description: string) => z.meta({ description });

const pose = z.strictObject({
  x: mm('Axis of the journal to the right'),
  y: mm('Axis upward'),
  z: mm('Axial position'),
  tiltX: rad('Tilt about x'),
  tiltY: rad('Tilt about y'),
});
const force = z.strictObject({ x: newton('To the right'), y: newton('Upward'), z: newton('Toward the nose') });
const moment = z.strictObject({ x: newtonMm('About x'), y: newtonMm('About y') });
const place = z.strictObject({
  station: mm('Bush station'),
  angle: z.number().check(told('From x toward y, degrees')),
});

const seatOil = z.strictObject({
  name: z.string(),
  force: z.nullable(force).check(told('Of the oil on the journal')),
  moment: z.nullable(moment).check(told('About the bush datum')),
  torque: z.nullable(newtonMm('Friction that brakes the journal')),
  power: z.nullable(watt('Lost to friction')),
  peakPressure: z.nullable(megapascal('Greatest pressure')),
  peakAt: z.nullable(place),
  leastFilm: mmOrNull('Least film, interference negative; null where the parts do not overlap'),
  leastFilmAt: z.nullable(place),
  flow: z.nullable(flow('Oil out of both ends')),
  supplied: z.nullable(flow('Oil pressed out of the grooves')),
  temperature: z.nullable(celsius('Of the oil as it starts, the room’s; warm ones stand under steady')),
  viscosity: z.nullable(described('Pa·s')('At that temperature')),
  wetted: z.nullable(plain('Part of the seat under pressure')),
});

const warmPoint = z.strictObject({
  time: seconds('Since the start'),
  journal: celsius('Of the journal'),
  bush: celsius('Of the bush'),
  oil: celsius('Of the oil where it is warmest'),
  leastFilm: mm('Least film of all seats'),
  power: watt('Lost to friction'),
});

const steady = z.strictObject({
  journal: celsius('Of the journal'),
  bush: celsius('Of the bush'),
  pose,
  seats: z.array(
    z.strictObject({
      name: z.string(),
      temperature: celsius('Of the oil'),
      viscosity: described('Pa·s')('There'),
      leastFilm: mm('Least film'),
      growth: mm('What growth has added to the film'),
      power: watt('Lost to friction'),
    }),
  ),
  leastFilm: mm('Least film of all seats'),
  calm: z.boolean().check(told('It does not whirl there')),
  power: watt('Lost to friction'),
  heat: z.strictObject({
    journal: watt('To the room from the journal'),
    bush: watt('To the room from the bush'),
    oil: watt('Carried off by the oil'),
  }),
});

const matrix = z.array(z.array(z.number()));

const STATUS = [
  'held',
  'found',
  'stopped',
  'contact',
  'apart',
  'noRoom',
  'standing',
  'notConverged',
  'givenUp',
] as const;

/** What may be given up for the work it takes. */
export const UNREACHED = ['pose', 'whirl', 'warmUp', 'steady', 'backOff'] as const;

export const filmReport = z.strictObject({
  status: z
    .enum(STATUS)
    .check(
      told(
        'held: the pose was given; found: the pose was found for the load; stopped: found, and the adjuster (or without one, something else) holds the axial position; contact: metal touches, in the given pose or because no film carries the load; apart: a journal does not reach its bush; noRoom: a seat is shut at the position set, or without an adjuster at any near it; standing: it does not turn, so the load rests on metal, in the pose told; notConverged: the search did not settle, a fault of the program; givenUp: the pose takes more work to find than is spent on one design',
      ),
    ),
  pose,
  seats: z.array(seatOil),
  force: z.nullable(force).check(told('Of the oil of all seats')),
  moment: z.nullable(moment),
  torque: z.nullable(newtonMm('Of all seats')),
  power: z.nullable(watt('Of all seats')),
  leastFilm: mmOrNull('Of all seats'),
  stop: z.nullable(newton('What a stop has to push the journal with along z')),
  load: z.nullable(z.strictObject({ force, moment })).check(told('The load to be carried; null where a pose is held')),
  contact: z.nullable(z.strictObject({ seat: z.string(), film: mm('There'), ...place.shape })),
  backOff: z
    .nullable(z.strictObject({ position: mm('To set'), leastFilm: mm('Thinnest film there') }))
    .check(
      told(
        'Where the films part the surfaces under this load, cold, if they do not where it is set: the nearest position to the one set; null where they do, where no position within reach does, or where no adjuster holds the journal',
      ),
    ),
  stiffness: matrix.check(
    told(
      'Rows: force x, y, z (N), moment about x, y (N·mm). Columns: per mm of x, y, z, per rad of tiltX, tiltY. Force gained as the journal gives way, about the bush datum; empty where there is none',
    ),
  ),
  damping: matrix.check(told('The same, per mm/s and rad/s')),
  nose: z.nullable(
    z.strictObject({
      station: mm('Where the spindle is pushed'),
      stiffness: matrix.check(
        told(
          'Rows x, y, z: N per mm of the axis there, the rest of the spindle free to follow; x and y alone where a stop holds z',
        ),
      ),
    }),
  ),
  turn: z
    .nullable(
      z.strictObject({
        touches: z.boolean(),
        leastFilm: mmOrNull('Least film over a turn'),
        least: z.nullable(force),
        greatest: z.nullable(force),
      }),
    )
    .check(
      told(
        'A journal with lobes or run-out over one turn, its pose held as above; null for a round one. With a pose held by hand all else in this section is the moment drawn, with one found for a load the mean over the turn',
      ),
    ),
  whirl: z.nullable(
    z.strictObject({
      stable: z.boolean(),
      ratio: plain('Frequency of the least damped motion over that of turning'),
      decay: described('1/s')('How fast it dies away'),
      threshold: z.nullable(
        described('rev/min')(
          'Speed at which whirl sets in under this load with this oil; null: at none looked at; 0: at every one looked at',
        ),
      ),
      mass: described('kg')('Of the rotor taken'),
    }),
  ),
  warmUp: z.array(warmPoint),
  warmUpEnd: z
    .enum(['time', 'contact', 'notConverged', 'givenUp', 'none'])
    .check(
      told(
        'Why the warm-up ends: followed to the end, metal touches, a fault of the program; givenUp: it takes more work than is spent on one design; none: it was never running',
      ),
    ),
  steady: z.nullable(steady).check(told('The state that no longer changes; null where there is none')),
  unreached: z
    .array(z.enum(UNREACHED))
    .check(
      told(
        'What was given up for the work it takes, counted and not timed: the pose and all that follows from it, speeds at which it whirls, the rest of the warm-up, the steady state, a position to set instead',
      ),
    ),
  guidance: z.nullable(
    z.strictObject({
      film: mm('Least film after ISO 7902-3'),
      within: z.boolean().check(told('The shaft is within the table')),
      seat: z.string(),
      filmRatio: plain('Least film over combined roughness'),
    }),
  ),
  accuracy: z
    .nullable(
      z.strictObject({
        rows: z.int(),
        columns: z.int(),
        force: plain('Of the forces, as a part of the greatest'),
        leastFilm: mm('Of the least film'),
        torque: plain('Of the torque'),
        imbalance: plain('Oil that does not balance, as a part of what is dragged'),
        warmRows: z.int(),
        warmColumns: z.int(),
      }),
    )
    .check(
      told(
        'Cells a seat along and around, and what remains of error: a third of what changes from half as fine a grid',
      ),
    ),
});

export type FilmReport = z.infer<typeof filmReport>;
export type SeatOilReport = z.infer<typeof seatOil>;
