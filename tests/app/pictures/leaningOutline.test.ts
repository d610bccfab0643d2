/** The journal pulled aside, as the section outlines it: a rigid body that tilts; nothing jumps as it is taken. */
import { expect, test } from 'vitest';
import { drawnAt, type Point } from '../../../src/app/pictures/drawn.ts';
import { factorFor } from '../../../src/app/pictures/factor.ts';
import { leaningOf } from '../../../src/app/pictures/leaning.ts';
import { sectionFrame } from '../../../src/app/pictures/sectionFrame.ts';
import { DEMOS } from '../../../src/app/state/demos.ts';
import { seatLines } from '../../../src/engine/contact/fit.ts';
import { AT_HOME } from '../../../src/engine/spindle/pose.ts';
import { metres, toSeats } from '../../../src/report/convert.ts';

const slope = ([a, b]: readonly Point[]) => (b![1] - a![1]) / (b![0] - a![0]);

test.each(DEMOS.map(({ file, design }) => [file, design] as const))(
  '%s: taken hold of it is drawn as it stood, and tilted all of it leans alike',
  (_, design) => {
    const parts = toSeats(design);
    const lines = parts.map(seatLines);
    const position = metres(design.position ?? 0);
    const factor = factorFor(lines, position, 400);
    const frameAt = (tiltX: number) =>
      sectionFrame(drawnAt(lines, position, factor, leaningOf(parts, { ...AT_HOME, tiltX })));
    // Lobed parts are no straight bodies to measure.
    if (parts.some(({ journal, bush }) => (journal.lobes?.length ?? 0) + (bush.lobes?.length ?? 0) > 0)) return;
    const rest = sectionFrame(drawnAt(lines, position, factor));
    expect(frameAt(0).journal).toEqual(rest.journal);
    const tilt = 1e-5;
    const leant = frameAt(-tilt);
    expect([leant.left, leant.right, leant.journalLeft, leant.journalRight].map((z) => z.toFixed(9))).toEqual(
      [rest.left, rest.right, rest.journalLeft, rest.journalRight].map((z) => z.toFixed(9)),
    );
    expect(leant.bush).toEqual(rest.bush);
    const above = leant.journal.above;
    // The nose up: its face leans back above the axis as far as its lower half comes forward.
    const face = (frame: typeof rest) => {
      const [top, bottom] = [frame.journal.above.at(-1)!, frame.journal.below.at(-1)!];
      return (top[0] - bottom[0]) / (top[1] + bottom[1]);
    };
    expect(face(leant)).toBeCloseTo(-factor * tilt, 6);
    // Each straight shallow seat turns by the tilt, drawn as often larger.
    lines.forEach(({ gap }, i) => {
      const { journal } = drawnAt(lines, position, factor).seats[i]!;
      if (Math.abs(gap.halfAngle) > 0.3 || journal.length > 2) return;
      const turned = drawnAt(lines, position, factor, leaningOf(parts, { ...AT_HOME, tiltX: -tilt })).seats[i]!.journal;
      expect(slope(turned)).toBeCloseTo(slope(journal) + (factor * tilt) / Math.cos(gap.halfAngle) ** 2, 6);
    });
    expect(above.every(([z, r]) => Number.isFinite(z) && r > 0)).toBe(true);
  },
);
