/** A size that is only assumed gives way to what is typed: what is typed stays, and no such pair is impossible. */
import { expect, test } from 'vitest';
import { ARRANGEMENTS } from '../../../../src/app/screens/new/arrangements.ts';
import { impossibleIn } from '../../../../src/app/screens/new/impossible.ts';
import { allSizes, idOf } from '../../../../src/app/screens/new/newDesign.ts';

const plan = ARRANGEMENTS.find(({ seats }) => seats.filter(({ halfAngle }) => halfAngle > 0).length === 2)!;
const cones = plan.seats.filter(({ halfAngle }) => halfAngle > 0);
const [shallow, steep] = [cones[0]!, cones[1]!];

function solved(typed: Record<string, number>) {
  const gave: string[] = [];
  const sizes = allSizes(plan, typed, 0.0025, 'metric', (id) => gave.push(id));
  for (const [id, value] of Object.entries(typed)) expect(sizes[id]).toBe(value);
  return { sizes, gave, stops: impossibleIn(plan, sizes, 'metric').filter((one) => one.stops) };
}

test('the bore behind, only assumed, is made smaller than a front cone of which all is typed', () => {
  const typed = {
    [idOf(steep, 'diameter')]: steep.diameter,
    [idOf(steep, 'angle')]: 45,
    [idOf(steep, 'length')]: steep.diameter / 4,
  };
  const { sizes, gave, stops } = solved(typed);
  expect(stops).toEqual([]);
  expect(gave).toContain(idOf(shallow, 'diameter'));
  expect(sizes[idOf(shallow, 'bore')]).toBeLessThan(steep.diameter / 2);
});

test('a length or a diameter, only assumed, leaves no cone that comes to a point', () => {
  for (const angle of [20, 60, 80])
    for (const seat of cones) {
      const own = { [idOf(seat, 'diameter')]: seat.diameter / 3, [idOf(seat, 'angle')]: angle };
      expect(solved(own).stops.filter(({ text }) => /point/.test(text))).toEqual([]);
      const long = { [idOf(seat, 'length')]: 3 * seat.length, [idOf(seat, 'angle')]: angle };
      expect(solved(long).stops.filter(({ text }) => /point/.test(text))).toEqual([]);
    }
});

test('in proportion nothing gives way; what is typed and does not go together is told as ever', () => {
  expect(solved({}).gave).toEqual([]);
  const typed = {
    [idOf(steep, 'diameter')]: steep.diameter,
    [idOf(steep, 'angle')]: 45,
    [idOf(steep, 'length')]: steep.diameter,
  };
  expect(solved(typed).stops).toHaveLength(1);
});
