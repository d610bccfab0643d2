/**
 * Seating, shake and end play of three lobed seats; and the same shake by a general-purpose LP package on constraints
 * sampled as finely as the engine promises.
 */
import loadHighs from 'highs';
import { bench, describe } from 'vitest';
import type { Design } from '../src/design/definition.ts';
import { reachToward } from '../src/engine/play/reach.ts';
import { REARWARD, seat } from '../src/engine/play/seating.ts';
import { endPlay, heldAt, shakeAt } from '../src/engine/play/shake.ts';
import { spindleFrom } from './engine/play/designs.ts';
import { places, programme } from './engine/play/reference.ts';

const lobe = (count: number, amplitude: number, phase: number) => ({ count, amplitude, phase });
const design: Design = {
  conepair: 1,
  seats: [
    {
      name: 'shallow',
      journal: {
        halfAngle: 3,
        diameter: 22,
        station: 0,
        from: -26,
        to: 0,
        lobes: [lobe(3, 0.0003, 90), lobe(2, 0.0002, 10)],
      },
      bush: { halfAngle: 3, diameter: 22.006, station: 0, from: -25, to: -0.5, lobes: [lobe(5, 0.0002, 20)] },
    },
    {
      name: 'steep',
      journal: { halfAngle: 45, diameter: 24, station: 1.2, from: 1.2, to: 4.2, lobes: [lobe(2, 0.0003, 40)] },
      bush: { halfAngle: 45, diameter: 24.0071, station: 1.2, from: 1, to: 4, lobes: [lobe(3, 0.0002, 0)] },
    },
    {
      name: 'rear',
      journal: { halfAngle: -30, diameter: 18, station: -90, from: -95, to: -89, lobes: [lobe(3, 0.00025, 0)] },
      bush: { halfAngle: -30, diameter: 18.03, station: -90, from: -94, to: -90, lobes: [lobe(7, 0.00015, 10)] },
    },
  ],
};
const spindle = spindleFrom(design);
const indicator = { station: 0.03, direction: 0 };
const highs = await loadHighs();

// A gap of sampling of δ leaves (10 µm of clearance)·δ²/8 unseen: 1e-9 mm wants 7,000 angles a station. The package
// is timed at 720 of them, a hundredth of the accuracy, so that the run stays short; only the solve is timed, not the
// writing.
const text = programme(places(design, 0), { x: 1, tiltY: 0.03 }, ['x', 'y', 'tiltX', 'tiltY'], 720, []);

describe('three lobed seats', () => {
  bench('seating, shake and end play', () => {
    // end play holds the seating rearward
    endPlay(spindle);
    shakeAt(spindle, 0, indicator);
  });
  bench('seating', () => {
    seat(spindle, REARWARD);
  });
  bench('pulled by a pointer', () => {
    reachToward(heldAt(spindle, 0), 0.03, 2e-5, 1e-5);
  });
});

describe('shake against a general-purpose LP package', () => {
  bench('the engine, both ends of the travel, every angle', () => {
    shakeAt(spindle, 0, indicator);
  });
  bench(
    'the package, one end, 720 angles a station',
    () => {
      highs.solve(text);
    },
    { iterations: 5, time: 500, warmupIterations: 1, warmupTime: 100 },
  );
});
