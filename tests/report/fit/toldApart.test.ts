/** What the track draws between seats that no one position serves is the figure that the verdict tells. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { DEMOS } from '../../../src/app/state/demos.ts';
import type { Design } from '../../../src/design/definition.ts';
import { fineText } from '../../../src/design/units.ts';
import { agreementOf, offHeadline, relationSentences } from '../../../src/report/fit/agreement.ts';
import { fitSection } from '../../../src/report/fit/section.ts';
import { toldApart } from '../../../src/report/fit/toldApart.ts';

const told = (design: Design) => {
  const fit = fitSection(design);
  return {
    fit,
    apart: toldApart(fit),
    text: [offHeadline(design, fit, 'metric'), ...relationSentences(design, fit, 'metric')],
  };
};

let [two, more] = [0, 0];
/** A third cone behind the two, as the shallow one. */
const ofThree = ({ file, design }: (typeof DEMOS)[number]) => {
  const [seat] = design.seats;
  const behind = <T extends { from: number; to: number; station: number }>(part: T) => ({
    ...part,
    station: part.station - 40,
    from: part.from - 40,
    to: part.to - 40,
  });
  const third = { ...seat!, name: 'third', journal: behind(seat!.journal as never), bush: behind(seat!.bush as never) };
  return { file: `${file} with a third cone`, design: { ...design, seats: [...design.seats, third] } as Design };
};

test.each([...DEMOS, ofThree(DEMOS[0]!)])('$file: as long as the sentence says, from film to film', ({ design }) => {
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: -0.05, max: 0.05, noNaN: true }), {
        minLength: design.seats.length,
        maxLength: design.seats.length,
      }),
      (steps) => {
        const seats = design.seats.map((seat, i) => ({
          ...seat,
          bush: { ...seat.bush, diameter: seat.bush.diameter + steps[i]! },
        }));
        const { fit, apart, text } = told({ ...design, seats } as Design);
        const { agreed, out } = agreementOf(fit);
        expect(apart.length > 0).toBe(out.length > 0);
        for (const {
          seats: [one, other],
          from,
          to,
        } of apart) {
          expect(text.join(' ')).toContain(fineText(Math.abs(to - from), 'metric'));
          // It ends at the bars that the track draws of both.
          for (const [seat, place] of [
            [one, from],
            [other, to],
          ] as const) {
            const { tolerated } = fit.seats[seat]!;
            expect(place).toBeGreaterThanOrEqual(tolerated!.from - 1e-9);
            expect(place).toBeLessThanOrEqual(tolerated!.to + 1e-9);
          }
          if (agreed.length + out.length === 2) two++;
          else more++;
        }
      },
    ),
    { numRuns: 40, seed: 6 },
  );
});

test('both kinds were told', () => {
  expect(two).toBeGreaterThan(40);
  expect(more).toBeGreaterThan(10);
});
