/** How far a stop reading may be missed, against the film of a part cut so far. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { parseDesign } from '../../../src/design/parse.ts';
import { cutSection } from '../../../src/report/cut/section.ts';
import { designWithCut } from '../../../src/report/cut/withCut.ts';
import { fitSection } from '../../../src/report/fit/section.ts';
import { stopTolerance } from '../../../src/report/sheet/stopTolerance.ts';

const read = parseDesign(
  readFileSync(join(import.meta.dirname, '../../../assets/designs/steep-first.conepair.json'), 'utf8'),
);
if (!read.ok) throw new Error('steep-first');
const { design } = read;
const cut = cutSection(design)!;
const [step] = cut.steps;

test('a cone gauged over rolls: as far as its diameter, t/cos a', () => {
  expect(stopTolerance(step!, step!.gauges[0]!, 0.0005)).toBeCloseTo(0.0005 / Math.cos(Math.PI / 4), 9);
});

test('stopped at the end of its tolerance, the film has used half of its own', () => {
  const within = stopTolerance(step!, step!.gauges[0]!, 0.0005)!;
  const made = designWithCut(design, cut);
  // The reading over rolls follows the diameter at a station one to one.
  const over = {
    ...made,
    seats: made.seats.map((seat) =>
      seat.name === 'steep'
        ? { ...seat, journal: { ...seat.journal, diameter: seat.journal.diameter + within } }
        : seat,
    ),
  };
  const [film, missed] = [made, over].map((d) => fitSection(d).seats.find(({ name }) => name === 'steep')!.leastFilm!);
  expect(film! - missed!).toBeCloseTo(0.00025, 8);
});

test('nothing is told without a tolerance, of a new line, or of uneven stock', () => {
  const gauge = { before: 33.2, stop: 33 };
  expect(stopTolerance(step!, gauge, undefined)).toBeNull();
  expect(stopTolerance({ ...step!, why: 'newLine' }, gauge, 0.0005)).toBeNull();
  expect(stopTolerance({ ...step!, deepest: step!.normal + 0.01 }, gauge, 0.0005)).toBeNull();
  expect(stopTolerance(step!, { before: null, stop: 33 }, 0.0005)).toBeNull();
});
