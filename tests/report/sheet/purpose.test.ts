/** What a sheet says it is: never a work order where the plan does not give the films. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { Design } from '../../../src/design/definition.ts';
import { parseDesign } from '../../../src/design/parse.ts';
import { cutSection } from '../../../src/report/cut/section.ts';
import { purposeOf } from '../../../src/report/sheet/purpose.ts';

function demo(file: string): Design {
  const read = parseDesign(
    readFileSync(join(import.meta.dirname, `../../../assets/designs/${file}.conepair.json`), 'utf8'),
  );
  if (!read.ok) throw new Error(file);
  return read.design;
}
const of = (design: Design) => purposeOf(design, cutSection(design) ?? null, 'metric');
const steep = demo('steep-first');

test('a plan that gives the films is work, and says what comes off', () => {
  const sure = of({ ...steep, cut: { ...steep.cut!, doubt: 1e-9 } });
  expect(sure.kind).toBe('work');
  expect(sure.headline).toContain('off the steep journal');
  // Where nothing of it is safe yet a trial comes first.
  const { kind, headline, sentences } = of(steep);
  expect([kind, headline]).toEqual(['work', expect.stringMatching(/^A trial assembly first: nothing/)]);
  expect(sentences[0]).toContain('off the steep journal');
});

test('limits that cannot all hold: refused, with what stands in the way and what would do, and nothing of adjusters', () => {
  const { kind, tone, headline, sentences } = of({
    ...steep,
    cut: { ...steep.cut, allow: [{ seat: 'steep', part: 'journal', limit: 0.002 }] },
  });
  expect({ kind, tone }).toEqual({ kind: 'refused', tone: 'stop' });
  expect(headline).toContain('cannot be had');
  expect(sentences.join(' ')).toContain('the steep journal may lose at most 2.00 µm');
  expect(sentences.join(' ')).toContain('76.53 µm off the steep journal');
  expect(sentences.join(' ')).not.toMatch(/adjuster|then runs/);
});

test('parts that never reach each other are refused too', () => {
  const [shallow, other] = steep.seats;
  const apart: Design = {
    ...steep,
    seats: [{ ...shallow!, journal: { ...shallow!.journal, station: 200, from: 180, to: 200 } }, other!],
  };
  expect(of(apart).kind).toBe('refused');
});

test('without a plan, and with a plan that takes nothing off, it is the parts', () => {
  expect(of(demo('opposed-cones')).kind).toBe('parts');
  const opposed = demo('opposed-cones');
  const { kind, headline } = of({ ...opposed, cut: { allow: [{ seat: 'front', part: 'journal', limit: 0.1 }] } });
  expect(kind).toBe('parts');
  expect(headline).toContain('Nothing need be cut');
});

test('with many cuts the headline counts them, and the steps say their order', () => {
  const seats = [0, 1].flatMap((k) => steep.seats.map((seat) => ({ ...seat, name: `${seat.name} ${k}` })));
  const allow = seats.flatMap(({ name }) =>
    (['journal', 'bush'] as const).map((part) => ({ seat: name, part, cleanup: 0.001, limit: 0.2 })),
  );
  const { kind, headline, sentences } = of({ ...steep, seats, cut: { allow } });
  expect(kind).toBe('work');
  // What may be done now leads, as on Cut.
  expect(headline).toBe('Part of it off 8 surfaces, then a trial with its shake.');
  expect(sentences).toContain('All of it: 8 cuts, as the steps say, give every seat its film at one position.');
  expect(sentences.join(' ')).not.toContain('In this order');
});
