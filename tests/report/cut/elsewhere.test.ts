/** Metal that came off where the plan takes none is known like any other. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { parseDesign } from '../../../src/design/parse.ts';
import { beliefSection } from '../../../src/report/belief/section.ts';
import { cutSection } from '../../../src/report/cut/section.ts';
import { fitOf } from '../../../src/report/fit/fitOf.ts';

const read = parseDesign(
  readFileSync(new URL('../../../assets/designs/steep-first.conepair.json', import.meta.url), 'utf8'),
);
if (!read.ok) throw new Error('steep-first');
const { design } = read;

test('stock off the steep bush opens its film by as much, though only the journal may be cut', () => {
  expect(design.cut!.allow.some(({ part }) => part === 'bush')).toBe(false);
  const normal = 0.01;
  const trials = [{ taken: [{ seat: 'steep', part: 'bush' as const, normal, sigma: 1e-4 }] }];
  const tried = { ...design, cut: { ...design.cut!, doubt: 1e-5, trials } };
  const film = (of: typeof tried) => fitOf(of).seats.find(({ name }) => name === 'steep')!.leastFilm!;
  const trial = cutSection(tried)!.trials![0]!;
  expect(trial.status).toBe('updated');
  const firstSeat = fitOf(design).firstPosition!;
  const standOff = { value: firstSeat - normal * Math.SQRT2, sigma: 1e-4 };
  const touched = { ...tried, cut: { ...tried.cut, trials: [{ ...trials[0]!, standOff }] } };
  const believed = beliefSection(touched)!;
  expect(believed.notAsRead).toBeUndefined();
  expect(believed.films.steep!.mean).toBeCloseTo(film(tried) + normal, 3);
  expect(cutSection(touched)!.trials![0]!.clashes ?? []).toEqual([]);
});
