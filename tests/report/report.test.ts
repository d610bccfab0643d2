/** The report: its shape for every kind of fit, and what it leaves out. */
import { describe, expect, it } from 'vitest';
import type { Design } from '../../src/design/definition.ts';
import { report as definition } from '../../src/report/definition.ts';
import { solve } from '../../src/report/report.ts';

const cone = (halfAngle: number, diameter: number, from: number, to: number) => ({
  halfAngle,
  diameter,
  station: 0,
  from,
  to,
});
const seat = (name: string, halfAngle: number, journal: number, bush: number) => ({
  name,
  journal: cone(halfAngle, journal, -4, 0),
  bush: cone(halfAngle, bush, -3, -1),
  film: { target: 0.0025 },
});

describe('solve', () => {
  it.each([
    ['two cones', [seat('a', 3, 22, 22.006), seat('b', 45, 26, 26.008)]],
    ['opposed cones', [seat('a', 30, 22, 22.006), seat('b', -30, 26, 26.008)]],
    ['a straight bearing', [seat('a', 0, 22, 22.006)]],
    ['parts that never meet', [seat('a', 3, 10, 22)]],
  ])('%s: the report is as its definition says and survives JSON', (_, seats) => {
    const design: Design = { conepair: 1, title: 'T', seats, position: 0.02, adjuster: { pitch: 0.75 } };
    const found = solve(design, 'x.conepair.json');
    expect(definition.safeParse(found).error?.issues ?? []).toEqual([]);
    expect(JSON.parse(JSON.stringify(found))).toEqual(found);
    expect(found).toMatchObject({ conepair: 1, file: 'x.conepair.json', title: 'T' });
  });

  it('leaves out a title that is not there, and the sections not asked for', () => {
    const design: Design = { conepair: 1, seats: [seat('a', 3, 22, 22.006)] };
    expect(solve(design, 'f', [])).toEqual({ conepair: 1, file: 'f' });
    expect('title' in solve(design, 'f')).toBe(false);
  });

  it('does not change the design', () => {
    const design: Design = { conepair: 1, seats: [seat('a', 3, 22, 22.006)] };
    const before = structuredClone(design);
    solve(design, 'f');
    expect(design).toEqual(before);
  });
});
