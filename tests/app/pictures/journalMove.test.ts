/** The journal under a hand: it stops at the first touch however fast, and goes on from there without a leap. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { axialValues } from '../../../src/app/pictures/axialValues.ts';
import { axialDrag, landmarks, reachOf, stopped } from '../../../src/app/pictures/journalMove.ts';
import { DEMOS } from '../../../src/app/state/demos.ts';
import { fitSection } from '../../../src/report/fit/section.ts';

const FITS = DEMOS.map(({ design }) => fitSection(design));
const REACH = 0.002;
const pressed = (design: (typeof DEMOS)[number]['design'], position: number) =>
  fitSection({ ...design, position }).seats.some(({ leastFilm }) => leastFilm !== null && leastFilm < -1e-9);

/** A job, and a hand: where it takes hold within the reach, and how far (mm) it goes at every move. */
const anyDrag = fc.record({
  job: fc.nat(FITS.length - 1),
  begins: fc.double({ min: 0, max: 1, noNaN: true }),
  moves: fc.array(fc.double({ min: -0.08, max: 0.08, noNaN: true }), { minLength: 1, maxLength: 12 }),
});

test('no move of a drag goes from the open into metal: one comes to the touch first', () => {
  fc.assert(
    fc.property(anyDrag, ({ job, begins, moves }) => {
      const [{ design }, fit] = [DEMOS[job]!, FITS[job]!];
      const [low, high] = reachOf(fit.position, landmarks(fit));
      let place = low + begins * (high - low);
      const to = axialDrag(place);
      let by = 0;
      for (const move of moves) {
        by += move;
        const next = to(fit, by, REACH);
        const touching = fit.seats.some(({ seatPosition }) => Math.abs(seatPosition! - place) < 1e-9);
        if (!pressed(design, place) && !touching) expect(pressed(design, next)).toBe(false);
        place = next;
      }
    }),
    { numRuns: 300, seed: 16 },
  );
});

const steepFirst = DEMOS.findIndex(({ file }) => file.startsWith('steep-first'));
const [design, fit] = [DEMOS[steepFirst]!.design, FITS[steepFirst]!];
const touch = fit.firstPosition!;

test('a fast drag stops at the touch once; pushed on it goes into the metal by what the hand goes on, never in a leap', () => {
  const to = axialDrag(touch + 0.02);
  expect(to(fit, -0.03, REACH)).toBe(touch);
  // The push counts from where the hand was when it stopped there.
  expect(to(fit, -0.03 - 0.9 * REACH, REACH)).toBe(touch);
  let before = touch;
  for (let pushed = REACH; pushed < 0.012; pushed += 0.0002) {
    const next = to(fit, -0.03 - pushed, REACH);
    expect(next).toBeCloseTo(touch - (pushed - REACH), 9);
    expect(before - next).toBeLessThanOrEqual(0.0002 + 1e-9);
    before = next;
  }
  // Back out, and in again: it stops again.
  expect(to(fit, 0, REACH)).toBeGreaterThan(touch + 0.01);
  expect(to(fit, -0.06, REACH)).toBe(touch);
});

test('a drag that begins at the touch has to be pushed; one that begins in metal moves at once', () => {
  const from = axialDrag(touch);
  expect(from(fit, -0.5 * REACH, REACH)).toBe(touch);
  expect(from(fit, -3 * REACH, REACH)).toBeCloseTo(touch - 2 * REACH, 9);
  expect(axialDrag(touch - 0.01)(fit, -0.005, REACH)).toBeCloseTo(touch - 0.015, 9);
});

test('a step stops at the touch, and the next goes on', () => {
  for (const step of [0.001, 0.01]) {
    expect(stopped(fit, touch + 0.4 * step, touch - 0.6 * step)).toBe(touch);
    expect(stopped(fit, touch, touch - step)).toBe(touch - step);
    expect(stopped(fit, touch - step, touch - 2 * step)).toBe(touch - 2 * step);
    expect(stopped(fit, touch - step, touch + step)).toBe(touch + step);
  }
});

test('where it is set beyond the touch in one go its value says that it touched, and how deep', () => {
  const said = (position: number) => axialValues(fitSection({ ...design, position }), 'metric')['aria-valuetext'];
  expect(said(touch)).toMatch(/; steep touches$/);
  expect(said(touch - 0.001)).toMatch(/; steep touched, 0\.71 µm into its bush$/);
  expect(said(touch + 0.001)).not.toMatch(/touch/);
});
