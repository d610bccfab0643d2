/**
 * A running scenario for a design that has none, so that there is something to look at: invented, and told so. By size
 * alone:
 * a surface speed of 1.3 m/s, a light spindle oil, and on the nose a cut that loads the seats with 0.15 N/mm² of their
 * projected area, a third of it pushing rearward. Common practice for a small lathe, no source.
 */
import type { Design } from '../../../design/definition.ts';

const SURFACE_SPEED = 1300;
const SPECIFIC_LOAD = 0.15;
/** From the indicator, or this far beyond the nose end of the journal (mm). */
const BEYOND = 10;

type Run = NonNullable<Design['run']>;

export function plausibleRun(design: Design): Run {
  const largest = Math.max(...design.seats.map(({ journal }) => journal.diameter));
  const area = design.seats.reduce(
    (sum, { journal, bush }) =>
      sum + Math.max(0, Math.min(journal.to, bush.to) - Math.max(journal.from, bush.from)) * journal.diameter,
    0,
  );
  const station = design.play?.indicator ?? Math.max(...design.seats.map(({ journal }) => journal.to)) + BEYOND;
  const down = Math.max(1, rounded(SPECIFIC_LOAD * area));
  const thrust = design.seats.some(({ bush }) => bush.halfAngle !== 0) ? -Math.max(1, rounded(down / 3)) : 0;
  return {
    speed: rounded((SURFACE_SPEED * 60) / (Math.PI * largest)),
    oil: { grade: 10 },
    load: { x: 0, y: -down, z: thrust, station },
  };
}

/** To two figures. */
const rounded = (value: number) => Number(value.toPrecision(value < 10 ? 1 : 2));
