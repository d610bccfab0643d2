/** What is assumed and moves with a change is said, by as much as it moves. */
import { expect, test } from 'vitest';
import { ARRANGEMENTS } from '../../src/app/screens/new/arrangements.ts';
import { newDesign } from '../../src/app/screens/new/newDesign.ts';
import { assumedAfter, withKnown } from '../../src/design/assumed.ts';
import type { Design } from '../../src/design/definition.ts';
import { withFollowing } from '../../src/design/following.ts';
import { followedSentence } from '../../src/report/followed.ts';

const begun = newDesign(ARRANGEMENTS[0]!, { typed: {}, film: null, pitch: null, title: '' }, 'metric');
const wanting = (design: Design, target: number, names: readonly string[]): Design => ({
  ...design,
  seats: design.seats.map((seat) =>
    names.includes(seat.name) ? { ...seat, film: { target, tolerance: 0.001 } } : seat,
  ),
});
const follows = (design: Design, target: number, ...names: string[]) =>
  followedSentence(design, wanting(design, target, names), 'metric');

test('bores that nobody measured follow the film, and it is told by how much', () => {
  const { target } = begun.seats[1]!.film!;
  // 2·1 µm/cos 3° and /cos 45°, to a tenth of a micrometre
  expect(follows(begun, target + 0.001, 'shallow', 'steep')).toBe(
    'Assumed sizes follow the film: the shallow bore is 2.00 µm larger and the steep bore is 2.80 µm larger in diameter with it. Undo takes it all back.',
  );
  expect(follows(begun, target - 0.001, 'steep')).toMatch(/follow the film: the steep bore is 2\.\d\d µm smaller in/);
});

test('as much as the work then does', () => {
  const change = wanting(begun, 0.006, ['steep']);
  const after = withFollowing(begun, assumedAfter(begun, change), 'metric');
  const by = 1000 * (after.seats[2]!.bush.diameter - begun.seats[2]!.bush.diameter);
  expect(by).toBeGreaterThan(1);
  expect(followedSentence(begun, change, 'metric')).toContain(`${by.toFixed(2)} µm larger`);
});

test('what is known stays, and nothing is said of it', () => {
  const known = withKnown(withKnown(begun, 'seats[2].bush.diameter'), 'seats[2].journal.diameter');
  expect(follows(known, 0.006, 'steep')).toBeNull();
  expect(follows(known, 0.006, 'shallow', 'steep')).not.toMatch(/steep/);
  const { assumed: _, ...sure } = begun;
  expect(follows(sure, 0.006, 'shallow', 'steep')).toBeNull();
});
