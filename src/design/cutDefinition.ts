/**
 * The `cut` section of the design file: what may be cut, with what preferences, on what machine, and the history of the
 * job. Registered in definition.ts.
 */
import * as z from 'zod/mini';
import { MOVE, name, number, part, pulled, SIZE, STATION, sigma } from './fields.ts';
import { enteredWithNote } from './recordDefinition.ts';
import { USUAL_LIMIT, USUAL_MACHINE } from './usualMachine.ts';

const MACHINE = USUAL_MACHINE.metric;
const RISK = 'Chance you allow that less is left to cut than is said to be safe to take';
const LIMIT = { otherwise: USUAL_LIMIT.metric, of: 'or the cleanup where that is more' };

const flag = (title: string, description: string) => z.boolean().check(z.meta({ title, description }));
const label = (max: number, description: string) =>
  z.string().check(z.minLength(1), z.maxLength(max), z.meta({ description }));

/** No small spindle is moved or cut by more (mm). */
const STOCK = { min: 0, max: 10 };

const safe = z.optional(number('fine', 'Told safe', 'What was told before to be safe', { min: -10, max: 10 }));

const allow = z.strictObject({
  seat: name,
  part,
  cleanup: z.optional(number('fine', 'Cleanup', 'Least normal stock, to clean up scoring', STOCK, { otherwise: 0 })),
  limit: z.optional(number('fine', 'Limit', 'Greatest normal stock', STOCK, LIMIT)),
  renew: z.optional(
    flag('New line', 'Cut to a straight new line instead of following the old one; its profile is then gone'),
  ),
  halfAngle: z.optional(
    number('angle', 'New half angle', 'Of the new line; as it is when left out', { above: -89, below: 89 }),
  ),
});
const face = z.strictObject({
  name: label(40, 'What the face or spacer is called'),
  part,
  seats: z
    .array(name)
    .check(
      z.minLength(1),
      z.maxLength(8),
      z.meta({ description: 'Seats whose surface on that part moves as metal comes off' }),
    ),
  moves: z.enum(['rearward', 'noseward']).check(z.meta({ description: 'Which way they move as metal comes off' })),
  cleanup: z.optional(number('fine', 'Cleanup', 'Least metal off the face', STOCK, { otherwise: 0 })),
  limit: z.optional(number('fine', 'Limit', 'Greatest metal off the face', STOCK, LIMIT)),
  add: z.optional(
    number('fine', 'May be added', 'Greatest thickness that a thicker spacer or a shim may add', STOCK, {
      otherwise: 0,
    }),
  ),
});
const machine = z.strictObject({
  dial: z.optional(
    z
      .enum(['radius', 'diameter'])
      .check(z.meta({ title: 'Cross-feed dial', description: 'What it counts; radius when left out' })),
  ),
  division: z.optional(
    number(
      'fine',
      'Cross-feed division',
      'Of the cross-feed dial',
      { above: 0, max: 1 },
      { otherwise: MACHINE.division },
    ),
  ),
  axialDivision: z.optional(
    number('fine', 'Axial division', 'Of the axial dial', { above: 0, max: 1 }, { otherwise: MACHINE.axialDivision }),
  ),
  pass: z.optional(
    number(
      'fine',
      'Depth of a pass',
      'Cross feed of one pass, on the radius',
      { above: 0, max: 1 },
      { otherwise: MACHINE.pass },
    ),
  ),
  slide: z.optional(
    number('phase', 'Slide set over', 'Direction of a slide that is set over, from the axis', { min: -180, max: 180 }),
  ),
  bar: z.optional(number('length', 'Sine bar', 'Length between its rolls', SIZE, { otherwise: MACHINE.bar })),
  blocks: z.optional(label(10, 'Name of the block set; that of the shop when left out')),
  travel: z.optional(
    number('length', 'Indicator travel', 'Over which an angle is read', SIZE, { otherwise: MACHINE.travel }),
  ),
  indicator: z.optional(
    number(
      'fine',
      'Indicator reading',
      'Least that can be read',
      { above: 0, max: 1 },
      { otherwise: MACHINE.indicator },
    ),
  ),
  scaleRadius: z.optional(
    number('length', 'Scale radius', 'Of the scale of the table, from its pivot', SIZE, {
      otherwise: MACHINE.scaleRadius,
    }),
  ),
  scaleReading: z.optional(
    number(
      'fine',
      'Scale reading',
      'Least that can be told on that scale',
      { above: 0, max: 10 },
      { otherwise: MACHINE.scaleReading },
    ),
  ),
  centres: z.optional(
    number('length', 'Between centres', 'Length of the work between centres', SIZE, { otherwise: MACHINE.centres }),
  ),
  setBy: z.optional(
    z
      .enum(['sineBar', 'alongBar', 'alongSlide', 'alongAxis', 'table', 'scale', 'tailstock'])
      .check(z.meta({ title: 'Angle set by', description: 'The way that costs the film least when left out' })),
  ),
  toolHeight: z.optional(
    number(
      'fine',
      'Tool height',
      'Tool, wheel or diamond above or below the centre',
      { min: -10, max: 10 },
      { otherwise: MACHINE.toolHeight },
    ),
  ),
  lean: z.optional(
    number(
      'phase',
      'Indicator leans',
      'Between its lever or spindle and what is measured',
      { min: -80, max: 80 },
      { otherwise: 5 },
    ),
  ),
  warm: z.optional(
    number('warmer', 'Work warmer', 'Work above the gauge as it is gauged', { min: -100, max: 100 }, { otherwise: 2 }),
  ),
  expansion: z.optional(
    number(
      'expansion',
      'Expansion of the work',
      'That of plain carbon steel (journal) or bearing bronze (bush) when left out',
      { min: 0, max: 1e-3 },
    ),
  ),
  anchor: z.optional(number('length', 'Work held at', 'Station from which the work grows', STATION, { otherwise: 0 })),
});
const trial = z.strictObject({
  ...enteredWithNote,
  inShapes: z.optional(
    flag('In the shapes', 'What was taken is off the surfaces of the design already; it counts as history alone'),
  ),
  taken: z.optional(
    z
      .array(
        z.strictObject({
          seat: name,
          part,
          normal: number('fine', 'Stock taken', 'Normal stock taken since the trial before; none comes back', {
            min: 0,
            max: 10,
          }),
          safe,
          renewed: z.optional(
            flag('To a new line', 'Cut to a straight new line: what was read of the old one says nothing of it'),
          ),
          sigma: z.optional(
            number(
              'fine',
              'Uncertainty',
              'Standard uncertainty; a twentieth of it and half a division of the cross feed, root of squares, when left out',
              { min: 0, max: 1 },
            ),
          ),
        }),
      )
      .check(z.maxLength(64)),
  ),
  faces: z.optional(
    z
      .array(
        z.strictObject({
          name: label(40, 'Name of the face'),
          off: number('fine', 'Metal off', 'Off the face since the trial before; below 0 put on', {
            min: -10,
            max: 10,
          }),
          safe,
          sigma: z.optional(
            number('fine', 'Uncertainty', 'Of the metal off', { min: 0, max: 1 }, { otherwise: 0.0005 }),
          ),
        }),
      )
      .check(z.maxLength(8)),
  ),
  standOff: z.optional(z.strictObject({ value: number('fine', 'Stand-off', 'Position of first touch', MOVE), sigma })),
  shake: z.optional(
    z.strictObject({
      value: number('fine', 'Shake', 'Total indicator travel from side to side', { min: 0, max: 100 }),
      sigma,
      ...pulled,
    }),
  ),
  blue: z.optional(
    z
      .array(z.strictObject({ seat: name, prints: flag('Prints', 'Whether the blue prints there at first touch') }))
      .check(z.maxLength(8)),
  ),
});
/**
 * mm³/(N·m): of the order of fine loose abrasive between steel and bronze. @source Handbooks (the order only)
 */
const coefficient = (of: string, otherwise: number) =>
  z.optional(
    number(
      'wear',
      `Wear of the ${of}`,
      'Volume worn off it for a newton pressed and a metre slid',
      { above: 0, max: 1_000 },
      { otherwise },
    ),
  );
const lap = z.strictObject({
  force: number('force', 'Axial force', 'That presses the journal home', { above: 0, max: 10_000 }),
  journal: coefficient('journal', 0.001),
  bush: coefficient('bush', 0.004),
  step: z.optional(
    number('fine', 'Step', 'Axial advance of one small step', { above: 0, max: 0.1 }, { otherwise: 0.0002 }),
  ),
  advance: z.optional(
    number('fine', 'Advance', 'Axial advance that is followed', { above: 0, max: 1 }, { otherwise: 0.03 }),
  ),
  bearing: z.optional(
    number('share', 'Bearing', 'Share of each seat that should bear', { above: 0, max: 1 }, { otherwise: 0.8 }),
  ),
  limit: z.optional(
    number('fine', 'Greatest wear', 'Depth that may be worn off a surface', { above: 0, max: 1 }, { otherwise: 0.02 }),
  ),
});
export const cut = z.strictObject({
  allow: z.array(allow).check(z.maxLength(16), z.meta({ description: 'The surfaces that may be cut' })),
  faces: z.optional(z.array(face).check(z.maxLength(8), z.meta({ description: 'Faces and spacers that may be cut' }))),
  reach: z.optional(
    z
      .strictObject({
        from: z.optional(number('fine', 'Rearmost', 'Position the adjuster and shoulders let the journal have', MOVE)),
        to: z.optional(number('fine', 'Foremost', 'Position the adjuster and shoulders let the journal have', MOVE)),
      })
      .check(z.meta({ description: 'How far the journal may go' })),
  ),
  prefer: z.optional(
    z.strictObject({
      aim: z.optional(
        z.enum(['target', 'tolerance']).check(
          z.meta({
            title: 'Aim',
            description:
              'Every film just as wanted, or the least stock with every film within four fifths of its tolerance; target when left out',
          }),
        ),
      ),
      spare: z.optional(part),
      oneSetUp: z.optional(flag('One set-up', 'Only one of the two parts is cut')),
      keepPosition: z.optional(flag('Keep the nose', 'The journal stays where it is, as nearly as may be')),
    }),
  ),
  machine: z.optional(machine),
  doubt: z.optional(
    number(
      'fine',
      'Doubt',
      'Standard uncertainty of the film of each seat before any trial, where no readings tell it',
      { above: 0, max: 1 },
      { otherwise: 0.005 },
    ),
  ),
  risk: z.optional(number('share', 'Risk', RISK, { min: 0.01, max: 0.25 }, { otherwise: 0.025 })),
  trials: z.optional(
    z.array(trial).check(z.maxLength(100), z.meta({ description: 'The history of the job: trial assemblies in turn' })),
  ),
  lap: z.optional(lap),
  work: z.optional(
    z.strictObject({
      order: z.optional(
        z
          .array(label(60, 'Name of an item'))
          .check(z.maxLength(300), z.meta({ description: 'The check list in a person’s own order' })),
      ),
      done: z.optional(
        z.array(label(60, 'Name of an item')).check(z.maxLength(300), z.meta({ description: 'What is ticked off' })),
      ),
    }),
  ),
});
