/** What undo would take back, in words. */
import { expect, test } from 'vitest';
import { ARRANGEMENTS } from '../../../src/app/screens/new/arrangements.ts';
import { newDesign } from '../../../src/app/screens/new/newDesign.ts';
import { stepText } from '../../../src/app/state/stepText.ts';
import { assumedAfter } from '../../../src/design/assumed.ts';
import type { Design } from '../../../src/design/definition.ts';
import { withValue } from '../../../src/design/place.ts';
import { withSeatCopied } from '../../../src/design/seats.ts';
import { patchBetween } from '../../../src/jobs/patch.ts';

const begun = newDesign(ARRANGEMENTS[0]!, { typed: {}, film: null, pitch: null, title: 'A' }, 'metric');
const said = (after: Design) => stepText(after, patchBetween(begun, after));

test.each([
  [withValue(begun, 'position', 0.02), 'position'],
  [assumedAfter(begun, withValue(begun, 'seats[1].journal.diameter', 23)), 'shallow journal diameter'],
  [{ ...begun, title: 'B' }, 'name of the job'],
  [{ ...begun, seats: begun.seats.toReversed() }, 'names or order of the seats'],
  [withSeatCopied(begun, 0, 'metric'), 'seats'],
  [{ ...begun, assumed: begun.assumed!.slice(1) }, 'what is assumed'],
  [
    withValue(withValue(withValue(begun, 'position', 0.02), 'seats[1].bush.from', -9), 'seats[1].bush.to', 9),
    'shallow bush rear end and 2 more',
  ],
])('%#', (after, text) => {
  expect(said(after as Design)).toBe(text);
});
