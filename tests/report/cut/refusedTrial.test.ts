/** What cannot be written down as a trial, each with its reason. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { Design } from '../../../src/design/definition.ts';
import { parseDesign } from '../../../src/design/parse.ts';
import { validateDesign } from '../../../src/design/validate.ts';
import { expectedTouch } from '../../../src/report/cut/expectedAtTrial.ts';
import { refusedFor, refusedTrial } from '../../../src/report/cut/refusedTrial.ts';

const parsed = parseDesign(
  readFileSync(new URL('../../../assets/designs/steep-first.conepair.json', import.meta.url), 'utf8'),
);
if (!parsed.ok) throw new Error('demo');
const { design } = parsed;
type Trial = NonNullable<NonNullable<Design['cut']>['trials']>[number];
const refused = (trial: Trial, earlier: Trial[] = [], system: 'metric' | 'inch' = 'metric') =>
  refusedTrial(design, earlier, trial, system);
const touch = { value: -0.004, sigma: 0.001 };
const shake = { value: 0.0263, sigma: 0.001, indicator: 30, position: 0.02, direction: 0 };

test('what agrees, or differs by no more than the doubt, is taken', () => {
  expect(refused({ standOff: touch })).toBeNull();
  expect(refused({ standOff: { ...touch, value: 0.006 }, blue: [{ seat: 'steep', prints: true }] })).toBeNull();
  expect(refused({ blue: [{ seat: 'steep', prints: true }] })).toBeNull();
});

test('nothing read and nothing taken is nothing to write down; metal off alone is', () => {
  expect(refused({})).toMatch(/Nothing was read/);
  expect(refused({ note: 'x' })).toMatch(/Nothing was read/);
  expect(refused({ taken: [{ seat: 'steep', part: 'journal', normal: 0.01 }], note: 'x' })).toBeNull();
});

test('a touch that these parts cannot have says where they should touch', () => {
  expect(refused({ standOff: { ...touch, value: 0.9 } })).toMatch(
    /should touch first about .* of the datum, not 900\.0 µm noseward of the datum\. If the stand-off of trial 1 is a slip, which should be −3\.\d\d µm, all agree: \d+ in 100 .*thought possible, 9\.80 µm of film either way/,
  );
  expect(refused({ standOff: { ...touch, value: 0.9 } }, [], 'inch')).toMatch(/tenths/);
});

test('a shake or a print that cannot be', () => {
  expect(refused({ shake: { ...shake, value: 2 } })).toMatch(/cannot shake by 2\.000 mm/);
  expect(refused({ shake: { ...shake, position: -1 } })).toMatch(/press into each other, so no shake can be read/);
  expect(refused({ blue: design.seats.map(({ name }) => ({ seat: name, prints: false })) })).toMatch(
    /some seat must print/,
  );
});

test('after a trial that cannot be, the next has to wait', () => {
  expect(refused({ standOff: touch }, [{ standOff: { value: 0.9, sigma: 0.001 } }])).toMatch(
    /correct it or strike it out first/,
  );
});

test('a trial that does not go with an earlier one names the reading that may be wrong instead', () => {
  const wrong = { standOff: { ...touch, value: 0.009 }, blue: [{ seat: 'steep', prints: true }] };
  const shaken = { shake };
  const said = refused({ standOff: { ...touch, value: -0.016 } }, [wrong, shaken]);
  expect(said).toMatch(
    /If the stand-off of trial 3 is a slip, which should be \S+ µm, all agree: .* Or the stand-off of trial 1 is a slip/,
  );
  expect(said).not.toMatch(/shake of trial|blue of trial/);
  // The same number of the other sign is a slip that a hand makes.
  expect(refused({ standOff: { ...touch, value: -0.0092 } }, [wrong, shaken])).toMatch(
    /If the stand-off of trial 3 has the other sign, 9\.20 µm being meant, all agree: /,
  );
  expect(refused({ standOff: { ...touch, value: 0.9 } }, [{ standOff: touch }])).not.toMatch(/without which/);
});

test('less off than typed is weighed, with its odds, and the doubt with which it would be taken', () => {
  const prints = [{ seat: 'steep', prints: true }];
  const cut = (sigma?: number): Trial => ({
    taken: [{ seat: 'steep', part: 'journal', normal: 0.04, ...(sigma !== undefined && { sigma }) }],
    // as though 24 µm only were off
    standOff: { value: -0.004 - 0.024 * Math.SQRT2, sigma: 0.001 },
    blue: prints,
  });
  const earlier = [{ standOff: touch, blue: prints }];
  const fine = (sigma: number) => refused(cut(sigma), earlier);
  const [most] = refusedFor(design, earlier, cut(0.001));
  expect(fine(0.001)).toMatch(
    /^What .* If less came off the steep journal before trial 2 than typed, (23\.9|24\.[01])\d µm in place of 40\.00 µm, all agree: [6789]\d in 100 it is that\. Known to \S+ µm only \(“Off the steep journal, known to”\), it would be taken\. Or the stand-off of trial 2 is a slip/,
  );
  expect(most).toMatchObject({ what: 'taken', trial: 2, seat: 'steep', part: 'journal', told: 0.04 });
  expect(fine(most!.enough!)).toBeNull();
  // A cut told of before, which nobody gauged since, is named by its own trial.
  const { taken, ...read } = cut(0.001);
  const [before] = refusedFor(design, [...earlier, { taken: taken! }], read);
  expect(before).toMatchObject({ what: 'taken', trial: 2 });
});

test('what is expected follows what was taken', () => {
  // Known so well that no other seat can be the first.
  const cut = { ...design.cut!, doubt: 0.0004 };
  const expected = (...trials: Trial[]) => expectedTouch({ ...design, cut: { ...cut, trials } })!;
  const before = expected({});
  const after = expected({ taken: [{ seat: 'steep', part: 'journal', normal: 0.04, sigma: 1e-7 }] });
  const wide = ({ low, high }: { low: number; high: number }) => high - low;
  expect(Math.abs(before.value + 0.004)).toBeLessThan(wide(before) / 20);
  expect(before.value - after.value).toBeCloseTo(0.04 * Math.SQRT2, 4);
  expect(wide(expected({ standOff: { value: -0.004, sigma: 1e-5 } }, {}))).toBeLessThan(wide(before) / 5);
});

test('stock that would be put back is refused by the file itself', () => {
  const result = validateDesign({
    ...design,
    cut: { ...design.cut, trials: [{ taken: [{ seat: 'steep', part: 'journal', normal: -0.001 }], standOff: touch }] },
  });
  expect(result.ok).toBe(false);
  if (!result.ok) expect(result.errors[0]!.path).toBe('cut.trials[0].taken[0].normal');
});
