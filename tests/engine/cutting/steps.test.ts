/** Steps at the machine: feeds, order, passes, and the readings at which to stop. */
import { describe, expect, it } from 'vitest';
import { type SeatInput, fit as solveFit } from '../../../src/engine/contact/fit.ts';
import { gaugesFor, tooNearEnd } from '../../../src/engine/cutting/gauges.ts';
import { planCut } from '../../../src/engine/cutting/plan.ts';
import type { PlanInput } from '../../../src/engine/cutting/problem.ts';
import {
  type CutStep,
  feedsOf,
  journalMove,
  type Machine,
  type SurfaceStep,
  stepsOf,
} from '../../../src/engine/cutting/steps.ts';
import type { Reading } from '../../../src/engine/gauging/reading.ts';
import { predict } from '../../../src/engine/gauging/readings/index.ts';
import { INCH_TOOLS, METRIC_TOOLS } from '../../../src/engine/gauging/tooling.ts';
import { allowAll, MM, pair, rad, surface, UM, withFilm } from './pairs.ts';

const machine: Machine = {
  diameterDial: true,
  division: 5 * UM,
  axialDivision: 10 * UM,
  pass: 5 * UM,
  slide: rad(5.739),
};

function stepped(input: PlanInput, readings: Reading[] = []): CutStep[] {
  const verdict = planCut(input);
  if (verdict.status !== 'planned') throw new Error(JSON.stringify(verdict));
  return stepsOf(input, verdict.plan, machine, { readings });
}

/** A pair all of whose surfaces must be cleaned up, and a straight seat behind it. */
const seats: SeatInput[] = [
  ...pair(0.0164, 0.008),
  withFilm({ name: 'rear', journal: surface(0, 20, 0, -60, -40), bush: surface(0, 19.99, 0, -60, -40) }),
];
const input: PlanInput = {
  seats,
  position: 20 * UM,
  allow: allowAll(seats, 0.2 * MM).map((a) => ({ ...a, cleanup: 2 * UM })),
};

describe('the order', () => {
  const steps = stepped(input);

  it('is bush before journal, straight, shallow, steep', () => {
    expect(steps.map((s) => (s.kind === 'surface' ? `${seats[s.seat]!.name} ${s.part}` : ''))).toEqual([
      'rear bush',
      'shallow bush',
      'steep bush',
      'rear journal',
      'shallow journal',
      'steep journal',
    ]);
    expect(steps.map((s) => s.turn)).toEqual([
      'straightFirst',
      'shallowFirst',
      'steepLast',
      'straightFirst',
      'shallowFirst',
      'steepLast',
    ]);
  });

  it('says why each is cut', () => {
    expect(steps.filter((s) => s.why === 'cleanup').every((s) => s.kind === 'surface' && s.normal < 2.0001 * UM)).toBe(
      true,
    );
    expect(steps.find((s) => s.kind === 'surface' && s.seat === 1 && s.normal > 2.1 * UM)!.why).toBe('relation');
    expect(steps.find((s) => s.kind === 'surface' && s.seat === 2 && s.normal > 2.1 * UM)!.why).toBe('film');
  });

  it('goes from the parts as they are, step by step, to the parts of the plan', () => {
    expect(steps[0]!.before).toEqual(seats);
    for (const [i, step] of steps.entries()) if (i > 0) expect(step.before).toEqual(steps[i - 1]!.after);
    const verdict = planCut(input);
    if (verdict.status !== 'planned') throw new Error('no plan');
    expect(steps.at(-1)!.after).toEqual(verdict.plan.seats);
  });

  it('puts a face last', () => {
    const face = {
      name: 'spacer',
      part: 'bush' as const,
      seats: [1],
      moves: -1 as const,
      cleanup: 5 * UM,
      limit: 20 * UM,
      add: 0,
    };
    const last = stepped({ ...input, faces: [face] }).at(-1)!;
    expect(last).toMatchObject({ kind: 'face', turn: 'faceLast' });
  });
});

describe('stop readings', () => {
  const readings: Reading[] = [
    { kind: 'overRolls', seat: 0, part: 'journal', roll: 6 * MM, station: -10 * MM, value: 0, sigma: UM },
    { kind: 'overRolls', seat: 0, part: 'journal', roll: 6 * MM, station: -10 * MM, value: 0, sigma: UM },
    { kind: 'ballDepth', seat: 0, part: 'bush', ball: 21 * MM, face: 0, value: 0, sigma: UM },
  ];
  const steps = stepped(input, readings).filter((s): s is SurfaceStep => s.kind === 'surface');

  it('are those predicted for the parts after the step, before it, and half way', () => {
    for (const { gauges, before, after, seat, part, normal } of steps) {
      expect(gauges).toHaveLength(1);
      const { gauge, before: b, half, stop } = gauges[0]!;
      expect(stop).toBe(predict(gauge, after).value);
      expect(b).toBe(predict(gauge, before).value);
      // lines of one half angle: half the stock is half the change of the reading
      expect(half).toBeCloseTo((b! + stop!) / 2, 13);
      const s = after[seat]![part];
      const change = gauge.kind === 'ballDepth' ? normal / Math.sin(s.halfAngle) : (2 * normal) / Math.cos(s.halfAngle);
      expect(Math.abs(Math.abs(stop! - b!) - change)).toBeLessThan(1e-13);
    }
  });

  it('use the set-ups that were read, each once, and suggest one where there is none', () => {
    const kinds = steps.map(({ seat, part, gauges }) => `${seat} ${part} ${gauges[0]!.gauge.kind}`);
    expect(kinds).toEqual([
      '2 bush diameter',
      '0 bush ballDepth',
      '1 bush ballDepth',
      '2 journal diameter',
      '0 journal overRolls',
      '1 journal overRolls',
    ]);
    expect(steps[1]!.gauges[0]!.gauge).toMatchObject({ ball: 21 * MM });
    for (const { gauges, before, after } of steps)
      for (const { gauge } of gauges)
        for (const parts of [before, after]) expect(predict(gauge, parts).fault).toBeNull();
  });

  it('are told for what is safe before a trial too, where that is a part of the step', () => {
    const verdict = planCut(input);
    if (verdict.status !== 'planned') throw new Error('no plan');
    const safe = (seat: number, part: string) =>
      seat === 1 && part === 'journal' ? 1.5 * UM : seat === 1 ? Number.POSITIVE_INFINITY : 0;
    const cautious = stepsOf(input, verdict.plan, machine, { readings, safe }).filter(
      (s): s is SurfaceStep => s.kind === 'surface',
    );
    for (const [i, step] of cautious.entries()) {
      expect({ ...step, gauges: 0, standOff: 0, touch: 0 }).toEqual({ ...steps[i]!, gauges: 0, standOff: 0, touch: 0 });
      const partly = step.seat === 1 && step.part === 'journal';
      for (const [k, { safe, ...told }] of [step.standOff, step.touch, ...step.gauges].entries()) {
        expect(told).toEqual([steps[i]!.standOff, steps[i]!.touch, ...steps[i]!.gauges][k]);
        expect(safe === undefined).toBe(!partly);
        // what is read moves with the stock, at the most as far as when all of it is off
        const { before, stop } = told;
        if (!partly || before === null || stop === null || before === stop) continue;
        const share = (safe! - before) / (stop - before);
        // the whole journal may come to touch elsewhere on the way
        if (k === 0) expect(share >= 0 && share <= 1).toBe(true);
        else expect(share).toBeCloseTo((1.5 * UM) / step.normal, 4);
      }
    }
    expect(cautious.some(({ seat, part, normal }) => seat === 1 && part === 'journal' && normal > 2 * UM)).toBe(true);
  });

  it('fall back on the diameter where neither rolls nor balls rest', () => {
    const short = [
      withFilm({ name: 'a', journal: surface(59, 22, 0, -0.001, 0), bush: surface(59, 22.01, 0, -0.001, 0) }),
    ];
    expect(gaugesFor(short, 0, 'journal', [])[0]!.kind).toBe('diameter');
  });

  it('touch near the middle of the line, by rolls and balls of the shop, or it is told', () => {
    const touchOf = (seats: readonly SeatInput[], seat: number, part: 'journal' | 'bush', gauge: Reading) => {
      const { from, to } = seats[seat]![part];
      return (predict(gauge, seats).influences.find(({ by }) => by === 'radius')!.station - from) / (to - from);
    };
    let seen = 0;
    for (const angle of [2, 3, 10, 30, 45, 60, -3, -45])
      for (const length of [3, 6, 20])
        for (const [tools, sizes] of [
          [METRIC_TOOLS, (d: number) => 2 * d * 1000],
          [INCH_TOOLS, (d: number) => (32 * d) / 0.0254],
        ] as const) {
          const [from, to] = [-length / 2, length / 2];
          const seats = [
            withFilm({ name: 'a', journal: surface(angle, 24, 0, from, to), bush: surface(angle, 24.01, 0, from, to) }),
          ];
          for (const part of ['journal', 'bush'] as const) {
            const gauge = gaugesFor(seats, 0, part, [], { tools })[0]!;
            if (gauge.kind === 'diameter') continue;
            seen++;
            const size = gauge.kind === 'overRolls' ? gauge.roll : gauge.kind === 'ballDepth' ? gauge.ball : 0;
            expect(Math.abs(sizes(size) - Math.round(sizes(size)))).toBeLessThan(1e-9);
            const share = touchOf(seats, 0, part, gauge);
            if (part === 'journal') expect(Math.abs(share - 0.5)).toBeLessThan(0.05);
            const margin = Math.min(share, 1 - share);
            expect(tooNearEnd(gauge, [seats]) === null).toBe(margin >= 0.1 && margin * length >= 0.3);
          }
        }
    expect(seen).toBeGreaterThan(60);
    const edge = {
      kind: 'overRolls',
      seat: 0,
      part: 'journal',
      roll: 6 * MM,
      station: -1.45 * MM - 3 * MM * Math.sin(rad(45)),
      value: 0,
      sigma: 1,
    } as const;
    const seats = [
      withFilm({ name: 'a', journal: surface(45, 24, 0, -1.5, 1.5), bush: surface(45, 24.01, 0, -1.5, 1.5) }),
    ];
    expect(tooNearEnd(edge, [seats])).toBeCloseTo(0.05 * MM, 12);
  });

  it('tell the stand-off and the touch, as the fit finds them', () => {
    for (const { standOff, touch, after, seat } of steps) {
      const found = solveFit(after, 0);
      expect(standOff.stop).toBeCloseTo(found.firstPosition!, 15);
      if (touch.stop !== null) expect(touch.stop).toBeCloseTo(found.seats[seat]!.seatPosition!, 15);
    }
  });
});

describe('feeds and passes', () => {
  it('count the diameter or the radius, in divisions', () => {
    const cone = feedsOf(10 * UM, rad(45), 'journal', machine);
    expect(cone.crossFeed).toBeCloseTo(14.142 * UM, 8);
    expect(cone.diameter).toBeCloseTo(-28.284 * UM, 8);
    expect(cone.crossDivisions).toBeCloseTo(5.657, 3);
    expect(feedsOf(10 * UM, rad(45), 'journal', { ...machine, diameterDial: false }).crossDivisions).toBeCloseTo(
      2.828,
      3,
    );
    expect(cone.axialDivisions).toBeCloseTo(Math.SQRT2, 8);
    expect(cone.tableFeed).toBeCloseTo(10 * UM, 15);
    // a slide at 5.739° from the axis feeds a straight surface by a tenth
    expect(feedsOf(10 * UM, 0, 'journal', machine).slideFeed).toBeCloseTo(100 * UM, 7);
    expect(feedsOf(10 * UM, 0, 'bush', machine)).toMatchObject({
      axialFeed: null,
      axialDivisions: null,
      diameter: 20 * UM,
    });
    expect(feedsOf(10 * UM, rad(45), 'bush', { ...machine, slide: null }).slideFeed).toBeNull();
  });

  it.each([
    [3, 1, 3],
    [5, 1, 5],
    [5.0001, 2, 0.0001],
    [22.4, 5, 2.4],
    [25, 5, 5],
  ])('a cross feed of %d µm at 5 µm a pass is %i passes, the last of %d µm', (cross, count, last) => {
    const { passes } = feedsOf(cross * UM, 0, 'journal', machine);
    expect(passes.count).toBe(count);
    expect(passes.last / UM).toBeCloseTo(last, 8);
    expect(passes.depth).toBeLessThanOrEqual(machine.pass);
    expect((passes.count - 1) * passes.depth + passes.last).toBeCloseTo(cross * UM, 15);
  });
});

it('a new line shows no half-way reading while the old one still stands', () => {
  const worn = [
    withFilm({
      name: 'shallow',
      journal: surface(3, 22, 0, -26, 0),
      bush: surface(3, 22.005, 0, -25, -0.5, [
        [-25, 0],
        [-8, -0.004],
        [-0.5, -0.012],
      ]),
    }),
    pair(0, 0.008)[1]!,
  ];
  const [bush] = stepped({
    seats: worn,
    position: 0,
    allow: [
      { seat: 0, part: 'bush', cleanup: 0, limit: 0.1 * MM, renew: rad(3) },
      { seat: 1, part: 'journal', cleanup: 0, limit: 0.3 * MM },
    ],
  });
  expect(bush).toMatchObject({ kind: 'surface', seat: 0, part: 'bush', why: 'newLine', standOff: { half: null } });
  expect(bush!.after[0]!.bush.profile).toEqual([]);
});

it('tells how far nose and shoulders move, and whether they may', () => {
  expect(journalMove({ position: 20 * UM }, -80 * UM)).toEqual({ shift: -100 * UM, within: true });
  expect(journalMove({ position: 0, reach: { from: -50 * UM, to: 50 * UM } }, -80 * UM).within).toBe(false);
});
