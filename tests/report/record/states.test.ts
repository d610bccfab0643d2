/** Before and after: a later state is what the metal says, and no older reading puts it back. */
import { describe, expect, test } from 'vitest';
import type { Design, Part } from '../../../src/design/definition.ts';
import { measureSection } from '../../../src/report/measure/section.ts';
import { designAfter, statesOf } from '../../../src/report/record/states.ts';
import { notebookDemo } from '../measure/notebooks.ts';

const demo = notebookDemo();
const surface = (name: string, part: Part) => demo.seats.find((seat) => seat.name === name)![part];
const steep = surface('steep', 'journal');
const tangent = Math.tan((steep.halfAngle * Math.PI) / 180);
const cosine = Math.cos((steep.halfAngle * Math.PI) / 180);
/** What a micrometer reads on the steep journal with so much (mm) off. */
const read = (share: number, off: number, more: object = {}, error = 0) => {
  const station = steep.from + share * (steep.to - steep.from);
  const value = steep.diameter + 2 * (station - steep.station) * tangent - (2 * off) / cosine + error;
  return { kind: 'diameter', seat: 'steep', part: 'journal', value, sigma: 0.001, station, ...more } as const;
};
const ENDS = [0.1, 0.5, 0.9];
const taken = (normal: number, more: object = {}) => ({ seat: 'steep', part: 'journal' as const, normal, ...more });

function job(readings: Design['readings'], trials: object[], closed: boolean): Design {
  return {
    ...demo,
    readings,
    cut: { allow: [], trials: trials.map((t) => ({ ...t, ...(closed && { inShapes: true }) })) },
  } as Design;
}
const historyOf = (design: Design) => {
  const { after, surfaces } = statesOf(design);
  return { after, states: surfaces.find(({ seat, part }) => seat === 'steep' && part === 'journal')!.states };
};

/** The same job with its cuts in the shapes of the design, and with them still to be taken off. */
const BOTH = [false, true] as const;
/** A design whose surfaces have lost that already. */
const cutBy = (design: Design, off: number): Design => ({
  ...design,
  seats: design.seats.map((seat) =>
    seat.name === 'steep'
      ? { ...seat, journal: { ...seat.journal, diameter: seat.journal.diameter - (2 * off) / cosine } }
      : seat,
  ),
});
const either = (readings: Design['readings'], trials: object[], off: number, closed: boolean) =>
  closed ? cutBy(job(readings, trials, true), off) : job(readings, trials, false);

describe.each(BOTH)('cuts in the shapes: %s', (closed) => {
  test('readings from before tell the state before, and the one after by what came off', () => {
    const design = either(
      ENDS.map((share) => read(share, 0)),
      [{ taken: [taken(0.01, { sigma: 0.0005 })] }],
      0.01,
      closed,
    );
    const { after, states } = historyOf(design);
    expect(after).toEqual([0, 1]);
    const [first, now] = states as [(typeof states)[0], (typeof states)[0]];
    expect(first.diameter).toBeCloseTo(steep.diameter, 7);
    expect(now.diameter).toBeCloseTo(steep.diameter - 0.02 / cosine, 7);
    // The doubt of the stock comes to that of the readings: 2σ/cos a on the diameter.
    expect(now.sigma.diameter!).toBeCloseTo(Math.hypot(first.sigma.diameter!, 0.001 / cosine), 7);
    expect(now).toMatchObject({ taken: 0.01, takenSigma: 0.0005, readings: 0, older: 3, overtaken: 0, unknown: false });
    expect(first).toMatchObject({ taken: 0, readings: 3, older: 0 });
  });

  test('a later reading holds against older ones that say otherwise: the cut was deeper than the dial', () => {
    const told = 0.01;
    const real = 0.014;
    const readings = [
      ...ENDS.map((share) => read(share, 0)),
      ...ENDS.map((share) => read(share, real, { after: 1, sigma: 0.0005 })),
    ] as Design['readings'];
    const { states } = historyOf(either(readings, [{ taken: [taken(told, { sigma: 0.005 })] }], told, closed));
    const now = states.at(-1)!;
    const truth = steep.diameter - (2 * real) / cosine;
    expect(Math.abs(now.diameter - truth)).toBeLessThan(2 * now.sigma.diameter!);
    // Nearer by far to what was read last than to what the older ones and the dial say.
    expect(Math.abs(now.diameter - truth)).toBeLessThan(0.05 * ((2 * (real - told)) / cosine));
    // And the state before is not put right by what was read after.
    expect(states[0]!.diameter).toBeCloseTo(steep.diameter, 7);
    expect(now).toMatchObject({ readings: 3, older: 3 });
  });

  test('each cut is a state; a trial without metal is none', () => {
    const trials = [{ taken: [taken(0.004)] }, { standOff: { value: 0, sigma: 0.001 } }, { taken: [taken(0.003)] }];
    const { after, states } = historyOf(
      either(
        ENDS.map((share) => read(share, 0)),
        trials,
        0.007,
        closed,
      ),
    );
    expect(after).toEqual([0, 1, 3]);
    expect(states.map(({ taken: off }) => off)).toEqual([0, 0.004, 0.003]);
    expect(states[2]!.diameter).toBeCloseTo(steep.diameter - 0.014 / cosine, 7);
  });
});

test('cuts partly in the shapes: every state has its own metal', () => {
  const trials = [{ taken: [taken(0.004)], inShapes: true }, { taken: [taken(0.003)] }];
  const design = cutBy({ ...demo, readings: [], cut: { allow: [], trials } } as Design, 0.004);
  const { states } = historyOf(design);
  expect(states.map(({ diameter }) => diameter)).toEqual([
    expect.closeTo(steep.diameter, 9),
    expect.closeTo(steep.diameter - 0.008 / cosine, 9),
    expect.closeTo(steep.diameter - 0.014 / cosine, 9),
  ]);
  expect(states.every(({ sigma }) => sigma.diameter === null)).toBe(true);
});

test('a line that was cut to a new one: what was read of the old is not used, and before it nothing is made up', () => {
  const cut = { allow: [{ seat: 'steep', part: 'journal' as const, renew: true }], trials: [{ taken: [taken(0.01)] }] };
  const readings = ENDS.map((share) => read(share, 0));
  const { states } = historyOf({ ...demo, readings, cut } as Design);
  expect(states[0]).toMatchObject({ readings: 3, overtaken: 0 });
  expect(states[1]).toMatchObject({ readings: 0, older: 0, overtaken: 3 });
  const closed = { allow: [], trials: [{ taken: [taken(0.01, { renewed: true })], inShapes: true }] };
  const later = historyOf({ ...demo, readings: [], cut: closed } as Design).states;
  expect(later.map(({ unknown }) => unknown)).toEqual([true, false]);
});

test('the design after all its cuts is that of now, and measures alike', () => {
  const readings = ENDS.map((share) => read(share, 0));
  const design = cutBy(job(readings, [{ taken: [taken(0.01)] }], true), 0.01);
  expect(designAfter(design, 1).seats).toEqual(design.seats);
  expect(measureSection(designAfter(design, 1))).toEqual(measureSection(design));
  expect(designAfter(demo, 0)).toMatchObject({ seats: demo.seats });
});
