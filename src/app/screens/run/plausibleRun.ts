/**
 * A running scenario for a design that has none, so that there is something to look at: invented, and told so. By size
 * alone:
 * a surface speed of 1.3 m/s, a light spindle oil, and on the nose a cut that loads the seats with 0.15 N/mm² of their
 * projected area, a third of it pushing rearward. Common practice for a small lathe, no source.
 */
import type { Design } from '../../../design/definition.ts';
import { fromUnit, inUnit } from '../../../design/measures.ts';
import { tidy } from '../../../design/rounded.ts';
import type { System } from '../../../design/units.ts';

const SURFACE_SPEED = 1300;
const SPECIFIC_LOAD = 0.15;
/** From the indicator, or this far beyond the nose end of the journal (mm). */
const BEYOND = 10;

type Run = NonNullable<Design['run']>;

export function plausibleRun(design: Design, system: System): Run {
  const largest = Math.max(...design.seats.map(({ journal }) => journal.diameter));
  const area = design.seats.reduce(
    (sum, { journal, bush }) =>
      sum + Math.max(0, Math.min(journal.to, bush.to) - Math.max(journal.from, bush.from)) * journal.diameter,
    0,
  );
  const station =
    design.play?.indicator ?? tidy(Math.max(...design.seats.map(({ journal }) => journal.to)) + BEYOND, system);
  const down = force(SPECIFIC_LOAD * area, system);
  const thrust = design.seats.some(({ bush }) => bush.halfAngle !== 0) ? -force(down / 3, system) : 0;
  return {
    speed: rounded((SURFACE_SPEED * 60) / (Math.PI * largest)),
    oil: { grade: 10 },
    load: { x: 0, y: -down, z: thrust, station },
  };
}

/** To what a person would say, in their own unit; one at least. */
const force = (newtons: number, system: System) =>
  fromUnit('force', Math.max(1, rounded(inUnit('force', newtons, system))), system);

/** To two figures. */
const rounded = (value: number) => Number(value.toPrecision(value < 10 ? 1 : 2));
