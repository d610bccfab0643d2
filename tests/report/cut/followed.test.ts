/**
 * Whole jobs in which the advice is followed: true parts drawn from the doubt, tried, read as advised, what is safe
 * taken off with the dial erring, until nothing is asked any more. Counted over all of them: no cut that was advised
 * makes fewer pairs work than before it, and a pair that is told to be left works as often as it is said to.
 *
 * @module-tag long
 */
import { readFileSync } from 'node:fs';
import { expect, it, vi } from 'vitest';
import type { Design } from '../../../src/design/definition.ts';
import { standardNormals } from '../../../src/engine/belief/draws.ts';
import type { SeatInput } from '../../../src/engine/contact/fit.ts';
import { seenAtTrial } from '../../../src/engine/cutting/seenAtTrial.ts';
import { predict } from '../../../src/engine/gauging/readings/index.ts';
import { worksAtBest } from '../../../src/engine/odds/works.ts';
import { withStock } from '../../../src/engine/parts/stock.ts';
import { metres, millimetres, toSeats } from '../../../src/report/convert.ts';
import { lookBefore } from '../../../src/report/cut/advice.ts';
import { isLeft } from '../../../src/report/cut/leave.ts';
import { surfaceSigma } from '../../../src/report/cut/metalDoubt.ts';
import { safePart } from '../../../src/report/cut/safePart.ts';
import { cutSection } from '../../../src/report/cut/section.ts';
import { BLUE } from '../../../src/report/cut/toCut.ts';
import { toReading } from '../../../src/report/measure/toReading.ts';
import { questionOf } from '../../../src/report/odds/question.ts';
import { LONG } from '../../long.ts';

// The machine may be busy; nothing here is timed.
vi.setConfig({ testTimeout: 1_800_000 });

const JOBS = 8 * LONG;
const ROUNDS = 4;
/** m: how far every film may be other than drawn */
const DOUBT = 2e-6;

const url = new URL('../../../assets/designs/steep-first.conepair.json', import.meta.url);
const drawn = JSON.parse(readFileSync(url, 'utf8')) as Design;
const base: Design = {
  ...drawn,
  seats: drawn.seats.map((seat) => ({ ...seat, film: { target: 0.0025, tolerance: 0.001 } })),
  cut: { ...drawn.cut!, doubt: millimetres(DOUBT) },
};
const wanted = toSeats(base);
type Trial = NonNullable<NonNullable<Design['cut']>['trials']>[number];
const works = (pair: readonly SeatInput[]) => worksAtBest(pair, wanted, questionOf(base, base.position ?? 0));

it('following the advice never makes it less likely that the pair works', () => {
  const count = { cuts: 0, before: 0, after: 0, left: 0, leftWorks: 0, said: 0, spread: 0 };
  for (let job = 0; job < JOBS; job++) {
    const normals = standardNormals(100 + job, 60);
    let next = 0;
    const normal = () => normals[next++ % normals.length]!;
    // A film more is a wider bush by that over cos a.
    let truth = wanted.map((seat) => ({
      ...seat,
      bush: { ...seat.bush, radius: seat.bush.radius + (DOUBT * normal()) / Math.cos(seat.bush.halfAngle) },
    }));
    let design = base;
    for (let round = 0; round < ROUNDS; round++) {
      const cut = cutSection(design)!;
      if (isLeft(cut)) {
        count.left++;
        count.leftWorks += works(truth) ? 1 : 0;
        count.said += cut.works!.now;
        count.spread += cut.works!.now * (1 - cut.works!.now);
        break;
      }
      const look = lookBefore(cut, 'metric');
      const { taken = [] } = (look?.when !== 'first' && safePart(cut)) || {};
      const before = works(truth);
      for (const { seat, part, normal: off } of taken) {
        const at = base.seats.findIndex(({ name }) => name === seat);
        const least = surfaceSigma(base, seat, part, 0);
        const error = off < least ? 0 : surfaceSigma(base, seat, part, off) * normal();
        const stock = metres(Math.max(0, off + error));
        truth = truth.map((one, i) => (i === at ? { ...one, [part]: withStock(one[part], part, stock) } : one));
      }
      if (taken.length > 0) {
        count.cuts++;
        count.before += before ? 1 : 0;
        count.after += works(truth) ? 1 : 0;
      }
      const reading = look?.way?.reading?.reading;
      const shaken = reading?.kind === 'shake' ? reading : null;
      const felt = shaken && predict(toReading(design, shaken), truth).value;
      const seen = seenAtTrial(truth, metres(BLUE))!;
      const trial: Trial = {
        ...(taken.length > 0 && { taken }),
        standOff: { value: millimetres(seen.at) + 0.001 * normal(), sigma: 0.001 },
        ...(shaken &&
          felt !== null && {
            shake: {
              value: Math.max(0, millimetres(felt) + 0.001 * normal()),
              sigma: 0.001,
              indicator: shaken.indicator,
              position: shaken.position,
              direction: 0,
            },
          }),
        blue: base.seats.map(({ name }, i) => ({ seat: name, prints: seen.prints[i]! })),
      };
      design = { ...design, cut: { ...design.cut!, trials: [...(design.cut!.trials ?? []), trial] } };
    }
  }
  console.info(JSON.stringify(count));
  expect(count.cuts).toBeGreaterThan(JOBS / 2);
  // Chance alone takes no pair out of its tolerances by what was safe, but once in forty.
  expect(count.after).toBeGreaterThanOrEqual(count.before - count.cuts / 40 - 3.1 * Math.sqrt(count.cuts / 40));
  expect(count.left).toBeGreaterThan(0);
  expect(count.leftWorks).toBeGreaterThanOrEqual(count.said - 3.1 * Math.sqrt(count.spread + 0.25));
});
