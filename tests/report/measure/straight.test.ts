/** Drawn straight, told straight: Measure asks after a taper, Cut and Sheet set no angle for one that is none. */

import { expect, test } from 'vitest';
import type { Design } from '../../../src/design/definition.ts';
import { cutSection } from '../../../src/report/cut/section.ts';
import { measureReport } from '../../../src/report/measure/definition.ts';
import { measureSection } from '../../../src/report/measure/section.ts';
import { tapersAsked } from '../../../src/report/measure/tapers.ts';
import { doubtsOf, measureVerdict } from '../../../src/report/measure/verdict.ts';
import { designWithTaper, designWithTold, fitMeasured } from '../../../src/report/measure/withMeasured.ts';

const TENTH = 0.00254;
const straight = (diameter: number) => ({ halfAngle: 0, diameter, station: -60, from: -70, to: -50 });
const cone = (diameter: number) => ({ halfAngle: 3, diameter, station: 0, from: -20, to: 0 });
const read = (station: number, value: number) => ({
  kind: 'diameter' as const,
  seat: 'rear',
  part: 'journal' as const,
  value,
  sigma: TENTH,
  station,
});
const job = (apart: number): Design => ({
  conepair: 1,
  seats: [
    { name: 'cone', journal: cone(20), bush: cone(20.006), film: { target: 0.0025, tolerance: 0.0005 } },
    { name: 'rear', journal: straight(14), bush: straight(14.004), film: { target: 0.004, tolerance: 0.001 } },
  ],
  readings: [read(-68, 13.9992 + apart / 2), read(-52, 13.9992 - apart / 2)],
  cut: { allow: [{ seat: 'rear', part: 'journal', limit: 0.05 }] },
});
const rearOf = (design: Design) => measureSection(design)!.surfaces.find(({ seat }) => seat === 'rear')!;

test('two readings a tenth apart leave it straight: nothing asked, nothing tapered, no angle to set, no axial feed', () => {
  const design = job(TENTH);
  const measure = measureSection(design)!;
  expect(measureReport.safeParse(measure).error?.issues ?? []).toEqual([]);
  expect(rearOf(design)).toMatchObject({ straight: true, halfAngle: 0, sigma: { halfAngle: 0 }, correlation: null });
  expect(rearOf(design).diameter).toBeCloseTo(13.9992, 9);
  expect(rearOf(design).tapered!.significance).toBeGreaterThan(0.4);
  expect(tapersAsked(measure)).toEqual([]);
  expect(measureVerdict(design, measure, fitMeasured(design, measure), 'inch').headline).toMatch(
    /^The rear journal is straight, with a diameter of 0\.5511\d* in\.$/,
  );
  const made = designWithTold(design, measure);
  expect(made.seats[1]!.journal).toEqual({ ...straight(14), diameter: rearOf(design).diameter });
  const { steps, settings, work } = cutSection(made)!;
  expect(steps).toMatchObject([{ seat: 'rear', axialFeed: null, axialDivisions: null }]);
  expect(settings).toEqual([]);
  expect(work.find(({ id }) => id.startsWith('angle'))!.text).toMatch(/true to the axis for the rear journal/);
});

test('readings that deny it are asked after; the taper is taken over only when asked for', () => {
  const design = job(6 * TENTH);
  const measure = measureSection(design)!;
  expect(tapersAsked(measure)).toHaveLength(1);
  const { tone, headline, sentences } = measureVerdict(design, measure, fitMeasured(design, measure), 'metric');
  expect(tone).toBe('mend');
  expect(headline).toMatch(
    /^The rear journal was drawn straight; the readings say a half angle of 0\.0273°, larger by 19\.05 µm in diameter at its rear end\. A straight one reads so in one case in 4\d,000: take the taper over, or read it again\.$/,
  );
  expect(sentences.join(' ')).not.toMatch(/scatter|contradict|does not go/);
  expect(doubtsOf(design, measure).join(' ')).toMatch(/The rear journal stays straight, which the readings deny/);
  expect(designWithTold(design, measure).seats[1]!.journal.halfAngle).toBe(0);
  const taken = designWithTaper(design, measure, 'rear', 'journal');
  expect(taken.seats[1]!.journal.halfAngle).toBeCloseTo((-Math.atan((6 * TENTH) / 32) * 180) / Math.PI, 9);
  expect(taken.seats[0]).toEqual(design.seats[0]);
  expect(rearOf(taken).straight).toBeUndefined();
  expect(tapersAsked(measureSection(taken)!)).toEqual([]);
});

test('a taper of a few micrometres, once in the design, is cut as straight', () => {
  const plan = (halfAngle: number) =>
    cutSection({
      ...job(0),
      seats: job(0).seats.map((seat) =>
        seat.name === 'rear'
          ? { ...seat, journal: { ...seat.journal, halfAngle }, bush: { ...seat.bush, halfAngle } }
          : seat,
      ),
    })!;
  const [nearly, slow, cone] = [plan(-0.0052), plan(-0.3), plan(-1)];
  expect(nearly.steps.map(({ axialFeed }) => axialFeed)).toEqual([null]);
  expect(nearly.settings).toEqual([]);
  // A slow cone meant as one has its angle, though no axial feed is of use; above 1 in 100 both.
  expect(slow.steps.map(({ axialFeed }) => axialFeed)).toEqual([null]);
  expect(slow.settings).toHaveLength(1);
  expect(cone.steps[0]!.axialFeed! / cone.steps[0]!.normal).toBeCloseTo(1 / Math.sin(Math.PI / 180), 6);
});
