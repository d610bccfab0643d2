/**
 * The design file, defined once: from here come the types, the validation (validate.ts), the published
 * JSON Schema (assets/design.schema.json) and the name and explanation of every control on the screens.
 *
 * Units are those of the file: lengths mm, angles degrees (tilts of a pose: radians), N, MPa, rev/min, °C.
 * Rules that span several fields (a radius positive along the whole surface, unique names) are in rules.ts.
 * Over 300 lines and left whole: what a file may hold, read from top to bottom.
 */
import * as z from 'zod/mini';
import { cut } from './cutDefinition.ts';
import { DEVIATION, MOVE, name, number, part, pulled, SIZE, sigma, station, text } from './fields.ts';
import { usualMaterial } from './materials.ts';
import { odds } from './oddsDefinition.ts';
import { after, enteredWithNote, recorded, shop } from './recordDefinition.ts';
import { DRY_FRICTION, USUAL_DENSITY, USUAL_INDEX } from './usualOil.ts';

export type { Quantity, QuantityMeta } from './fields.ts';

export const lobe = z.strictObject({
  count: z
    .int()
    .check(
      z.gte(1),
      z.lte(200),
      z.meta({ title: 'Lobes', description: 'How many lobes around', quantity: 'count', unit: '1' }),
    ),
  amplitude: number('fine', 'Lobe amplitude', 'Half the height from valley to crest, normal to the surface', {
    min: 0,
    max: 1,
  }),
  phase: z.optional(
    number('phase', 'Lobe phase', 'Angle of one crest, from x toward y', { min: -360, max: 360 }, { otherwise: 0 }),
  ),
});

export const surface = z.strictObject({
  halfAngle: number('angle', 'Half angle', 'Angle between the line and the axis; above 0 it widens toward the nose', {
    above: -89,
    below: 89,
  }),
  diameter: number('length', 'Diameter', 'Diameter of the surface at its station', SIZE),
  station: station('At station', 'Where along the part the diameter was taken'),
  from: station('Rear end', 'Station where the surface ends toward the rear'),
  to: station('Nose end', 'Station where the surface ends toward the nose'),
  profile: z.optional(
    z
      .array(
        z.tuple([
          station('Station', 'Place along the part'),
          number('fine', 'Deviation', 'Metal standing proud of the straight line, normal to it', DEVIATION),
        ]),
      )
      .check(
        z.minLength(1),
        z.maxLength(20_000),
        z.meta({
          description:
            'Deviation from the straight line as [station, deviation], stations rising, linear between, level beyond the ends',
        }),
      ),
  ),
  lobes: z.optional(
    z
      .array(lobe)
      .check(
        z.maxLength(20),
        z.meta({ description: 'Out-of-round: amplitude·cos(count·(angle - phase)), proud where positive' }),
      ),
  ),
  caseDepth: z.optional(
    number('length', 'Case depth', 'Depth of the hard case, square to the surface, before any cut of the history', {
      above: 0,
      max: 20,
    }),
  ),
});

const filmTarget = z.strictObject({
  target: number('fine', 'Film wanted', 'Least film this seat should run with', { min: 0, max: 10 }),
  tolerance: z.optional(
    number(
      'fine',
      'Film tolerance',
      'How far the film may be from the one wanted',
      { min: 0, max: 10 },
      { otherwise: 0 },
    ),
  ),
});

export const seat = z.strictObject({
  name,
  journal: surface,
  bush: surface,
  film: z.optional(filmTarget),
});

const DIRECTIONS = ['x', 'y', 'z', 'tiltX', 'tiltY'] as const;

export const pose = z.strictObject({
  x: z.optional(
    number('fine', 'Offset to the right', 'Journal axis off the bush axis, seen from the nose', MOVE, { otherwise: 0 }),
  ),
  y: z.optional(number('fine', 'Offset upward', 'Journal axis off the bush axis', MOVE, { otherwise: 0 })),
  z: z.optional(number('fine', 'Position', 'Axial position of the journal, toward the nose', MOVE)),
  tiltX: z.optional(
    number('tilt', 'Tilt about x', 'Small turn of the journal about x', { min: -0.1, max: 0.1 }, { otherwise: 0 }),
  ),
  tiltY: z.optional(
    number('tilt', 'Tilt about y', 'Small turn of the journal about y', { min: -0.1, max: 0.1 }, { otherwise: 0 }),
  ),
});

const force = (title: string, description: string) =>
  number('force', title, description, { min: -1e6, max: 1e6 }, { otherwise: 0 });

export const load = z.strictObject({
  x: z.optional(force('Load to the right', 'Sideways force on the journal')),
  y: z.optional(force('Load upward', 'Upward force on the journal; weight is negative')),
  z: z.optional(force('Thrust', 'Axial force on the journal, toward the nose')),
  station: z.optional(station('Station of the load', 'Where along the spindle the load acts', { otherwise: 0 })),
});

export const oil = z.strictObject({
  viscosity: z.optional(
    number('viscosity', 'Viscosity', 'Constant dynamic viscosity; instead of a grade', { above: 0, max: 100 }),
  ),
  grade: z.optional(
    number('kinematicViscosity', 'ISO grade', 'ISO VG: kinematic viscosity at 40 °C', { min: 1, max: 5_000 }),
  ),
  index: z.optional(
    number('ratio', 'Viscosity index', 'Of the oil', { min: -100, max: 400 }, { otherwise: USUAL_INDEX }),
  ),
  density: z.optional(number('density', 'Density', 'At 15 °C', { above: 0.4, below: 2 }, { otherwise: USUAL_DENSITY })),
  measured: z.optional(
    z
      .array(
        z.tuple([
          number('temperature', 'Temperature', 'At which the oil was measured', { min: -50, max: 200 }),
          number('kinematicViscosity', 'Viscosity', 'Kinematic viscosity there', { min: 0.3, max: 1e6 }),
        ]),
      )
      .check(
        z.minLength(2),
        z.maxLength(2),
        z.meta({ description: 'Two measured points [temperature, kinematic viscosity]; instead of a grade' }),
      ),
  ),
});

export const supply = z.strictObject({
  seat: name,
  angle: number('phase', 'Groove angle', 'Where round the bush the groove lies, from x toward y', {
    min: -360,
    max: 360,
  }),
  from: station('Groove from', 'Rear end of the groove'),
  to: station('Groove to', 'Nose end of the groove'),
  width: number('length', 'Groove width', 'Along the arc', { above: 0, max: 1_000 }),
  pressure: number('pressure', 'Supply pressure', 'Above that at the ends of the seat', { min: 0, max: 100 }),
});

/** Masses, areas, cooling: a small lathe's. @source practice */
const body = (part: Part, mass: number, area: number) => {
  const { specificHeat, expansion, name: material } = usualMaterial(part);
  return z.strictObject({
    mass: z.optional(
      number('mass', 'Mass', `Mass of the ${part} that warms`, { above: 0, max: 10_000 }, { otherwise: mass }),
    ),
    specificHeat: z.optional(
      number(
        'specificHeat',
        'Specific heat',
        `Of the ${part}`,
        { above: 0, max: 10_000 },
        { otherwise: specificHeat, of: material },
      ),
    ),
    area: z.optional(number('area', 'Cooled surface', `Of the ${part}`, { above: 0, max: 1e8 }, { otherwise: area })),
    cooling: z.optional(
      number(
        'cooling',
        'Cooling',
        `Surface coefficient of cooling of the ${part}`,
        { min: 0, max: 1e5 },
        { otherwise: 10 },
      ),
    ),
    expansion: z.optional(
      number(
        'expansion',
        'Expansion',
        `Thermal expansion of the ${part}`,
        { min: 0, max: 1e-3 },
        { otherwise: expansion, of: material },
      ),
    ),
    anchor: z.optional(
      station(`Anchor of the ${part}`, `Station at which the ${part} is held axially, from which it grows`, {
        otherwise: 0,
      }),
    ),
  });
};

export const heat = z.strictObject({
  journal: z.optional(body('journal', 0.8, 20_000)),
  bush: z.optional(body('bush', 2, 60_000)),
  duration: z.optional(
    number('time', 'Warm-up followed', 'Time from cold', { above: 0, max: 1e6 }, { otherwise: 3600 }),
  ),
});

export const run = z.strictObject({
  speed: number('speed', 'Speed', 'Speed of the spindle; positive turns anticlockwise, seen from the nose', {
    min: -200_000,
    max: 200_000,
  }),
  oil,
  pose: z.optional(pose),
  load: z.optional(load),
  loads: z.optional(
    z.array(load).check(
      z.maxLength(16),
      z.meta({
        description: 'Further loads at stations of their own (belt pull, weight, cutting force), added to the load',
      }),
    ),
  ),
  supply: z.optional(z.array(supply).check(z.maxLength(32))),
  ambient: z.optional(
    number(
      'temperature',
      'Room temperature',
      'Of the air round the spindle',
      { min: -50, max: 200 },
      { otherwise: 20 },
    ),
  ),
  heat: z.optional(heat),
  roughness: z.optional(
    z.strictObject({
      journal: z.optional(
        number(
          'fine',
          'Journal roughness',
          'Root mean square Rq',
          { above: 0, max: 0.1 },
          { otherwise: 0.0001, of: 'a lapped journal' },
        ),
      ),
      bush: z.optional(
        number(
          'fine',
          'Bush roughness',
          'Root mean square Rq',
          { above: 0, max: 0.1 },
          { otherwise: 0.0002, of: 'a reamed and lapped bush' },
        ),
      ),
    }),
  ),
});

const size = (description: string) => number('length', 'Read', description, SIZE);
const value = (quantity: 'length' | 'fine', description: string) =>
  number(quantity, 'Read', description, { min: -1e5, max: 1e5 });
const onPart = { seat: name, part, sigma, after, ...enteredWithNote };

export const reading = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('diameter'),
    ...onPart,
    value: size('Diameter'),
    station: station('Station', 'Where it was read'),
  }),
  z.strictObject({
    kind: z.literal('overRolls'),
    ...onPart,
    value: size('Width over both rolls'),
    roll: number('length', 'Roll diameter', 'Of each of the two rolls', SIZE),
    station: station('Station', 'Of the roll centres'),
  }),
  z.strictObject({
    kind: z.literal('ballDepth'),
    ...onPart,
    value: value('length', 'From the face down to the top of the ball; negative where it stands proud'),
    ball: number('length', 'Ball diameter', 'Of the ball resting in the bush', SIZE),
    face: station('Face', 'Station of the face measured from'),
  }),
  z.strictObject({
    kind: z.literal('sineRise'),
    ...onPart,
    value: value('fine', 'Rise of the indicator over the travel'),
    bar: number('length', 'Sine bar', 'Length between its rolls', SIZE),
    stack: number('length', 'Stack', 'Height of the blocks', { min: -5_000, max: 5_000 }),
    travel: number('length', 'Travel', 'Of the indicator along the line', SIZE),
  }),
  z.strictObject({
    kind: z.literal('straightness'),
    ...onPart,
    value: value('fine', 'Deviation from the line end to end, metal proud positive'),
    station: station('Station', 'Where it was read'),
  }),
  z.strictObject({
    kind: z.literal('standOff'),
    sigma,
    after,
    ...enteredWithNote,
    value: value('fine', 'Position of first touch on trial assembly'),
  }),
  z.strictObject({
    kind: z.literal('shake'),
    sigma,
    after,
    ...enteredWithNote,
    value: value('fine', 'Total indicator travel from side to side'),
    ...pulled,
  }),
]);

export const prior = z.strictObject({
  seat: name,
  part,
  of: z.enum(['halfAngle', 'diameter']),
  sigma: z
    .number()
    .check(
      z.gt(0),
      z.lte(100),
      z.meta({ description: 'Standard uncertainty of the value drawn, in the unit of the quantity' }),
    ),
});

export const design = z.strictObject({
  $schema: z.optional(text(500, 'Where an editor finds the JSON Schema')),
  conepair: z.literal(1),
  title: z.optional(text(200, 'What the design is called')),
  notes: z.optional(text(20_000, 'Anything worth remembering')),
  seats: z
    .array(seat)
    .check(
      z.minLength(1),
      z.maxLength(8),
      z.meta({ description: 'Pairs of mating surfaces, one journal surface and the bush surface it runs in' }),
    ),
  position: z.optional(
    number('fine', 'Position', 'Axial position of the journal now; toward the nose is positive', MOVE, {
      otherwise: 0,
    }),
  ),
  adjuster: z.optional(
    z.strictObject({
      pitch: number('length', 'Adjuster pitch', 'Axial travel of the journal for one turn of the adjuster', {
        above: 0,
        max: 100,
      }),
    }),
  ),
  play: z.optional(
    z.strictObject({
      indicator: z.optional(
        station('Indicator', 'Station at which shake is felt; the nose end of the journal when left out'),
      ),
      free: z.optional(
        z
          .array(z.enum(DIRECTIONS))
          .check(
            z.maxLength(5),
            z.meta({ description: 'Which motions are free; x, y, tiltX and tiltY when left out' }),
          ),
      ),
    }),
  ),
  print: z.optional(
    z.strictObject({
      thickness: number('fine', 'Blue thickness', 'Thickness of marking blue that shows as contact', {
        min: 0,
        max: 1,
      }),
    }),
  ),
  friction: z.optional(
    number(
      'ratio',
      'Friction',
      'Dry friction coefficient, for self-holding',
      { min: 0, max: 2 },
      { otherwise: DRY_FRICTION },
    ),
  ),
  run: z.optional(run),
  readings: z.optional(z.array(reading).check(z.maxLength(5_000))),
  priors: z.optional(
    z
      .array(prior)
      .check(
        z.maxLength(32),
        z.meta({ description: 'How far the half angles and diameters drawn may be trusted before anything is read' }),
      ),
  ),
  cut: z.optional(cut),
  record: z.optional(
    z
      .array(recorded)
      .check(
        z.maxLength(1_000),
        z.meta({ description: 'Notes and photographs of the job, beside readings and trials' }),
      ),
  ),
  shop: z.optional(shop),
  odds: z.optional(odds),
  assumed: z.optional(
    z.array(text(120, 'A place of the design, such as seats[0].bush.diameter')).check(
      z.maxLength(500),
      z.meta({
        description:
          'Numbers nobody has read or drawn yet: they keep a proportion taken from the rest until they are typed or measured',
      }),
    ),
  ),
});

export type Design = z.infer<typeof design>;
export type Seat = z.infer<typeof seat>;
export type Surface = z.infer<typeof surface>;
export type Part = z.infer<typeof part>;
