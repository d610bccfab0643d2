/** What every kind of reading keeps to, a new one too: the compiler asks for its example here. */
import { describe, expect, test } from 'vitest';
import { gradientOf } from '../../../src/engine/belief/unknowns.ts';
import { type Kind, NOWHERE, type ReadingOf } from '../../../src/engine/gauging/reading.ts';
import { predict, surfacesOf } from '../../../src/engine/gauging/readings/index.ts';
import { startingShape } from '../../../src/engine/gauging/shape.ts';
import { doubleCone, MM, UM } from './pairs.ts';

const read = { value: 0, sigma: UM };
const bush = { seat: 0, part: 'bush', ...read } as const;
const EXAMPLES: { [K in Kind]: ReadingOf<K> } = {
  diameter: { kind: 'diameter', ...bush, station: -10 * MM },
  overRolls: { kind: 'overRolls', ...bush, part: 'journal', roll: 3 * MM, station: -10 * MM },
  ballDepth: { kind: 'ballDepth', ...bush, ball: 21 * MM, face: 5 * MM },
  sineRise: { kind: 'sineRise', ...bush, bar: 100 * MM, stack: 5.2 * MM, travel: 15 * MM },
  straightness: { kind: 'straightness', ...bush, station: -10 * MM },
  standOff: { kind: 'standOff', ...read },
  shake: {
    kind: 'shake',
    ...read,
    indicator: 30 * MM,
    position: 20 * UM,
    direction: 0,
    free: ['x', 'y', 'tiltX', 'tiltY'],
  },
};

describe('a reading that is the only one of its kind', () => {
  test.each(Object.values(EXAMPLES))('$kind: what it follows is sought', (reading) => {
    const pair = doubleCone();
    const { seats, unknowns } = startingShape(pair, surfacesOf(reading, pair), [reading]);
    const { value, fault, influences } = predict(reading, seats);
    expect(fault).toBeNull();
    expect(value).not.toBeNull();
    expect(influences.length).toBeGreaterThan(0);
    for (const influence of influences) {
      const { from, to } = seats[influence.seat]![influence.part];
      // A profile is nothing at its ends, by definition.
      const atEnd = Math.min(influence.station - from, to - influence.station) < NOWHERE;
      if (influence.rate === 0 || (influence.by === 'deviation' && atEnd)) continue;
      const moved = gradientOf([influence], seats, unknowns).filter((rate) => rate !== 0).length;
      expect(moved, `${JSON.stringify(influence)}: say in its kind where a profile is sought`).toBeGreaterThan(0);
    }
  });
});
