/** The `cut` section: as its definition says, exact by the fit alone, and every key of the design told. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Design } from '../../../src/design/definition.ts';
import { parseDesign } from '../../../src/design/parse.ts';
import { validateDesign } from '../../../src/design/validate.ts';
import { cutReport } from '../../../src/report/cut/definition.ts';
import { cutSection } from '../../../src/report/cut/section.ts';
import { designWithCut } from '../../../src/report/cut/withCut.ts';
import { fitSection } from '../../../src/report/fit/section.ts';
import { predictedReading } from '../../../src/report/measure/predictedReading.ts';
import { solve } from '../../../src/report/report.ts';

const folder = new URL('../../../assets/designs/', import.meta.url);
const demos = readdirSync(folder).filter((name) => name.endsWith('.conepair.json'));

function demo(name: string): Design {
  const parsed = parseDesign(readFileSync(new URL(name, folder), 'utf8'));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.errors));
  return parsed.design;
}

const steepFirst = demo('steep-first.conepair.json');
const shallowFirst = demo('shallow-first.conepair.json');
const everything = (design: Design): Design => ({
  ...design,
  cut: {
    allow: design.seats.flatMap(({ name }) => [
      { seat: name, part: 'journal' as const, limit: 1 },
      { seat: name, part: 'bush' as const, limit: 1 },
    ]),
  },
});
const cutOf = (design: Design) => cutSection(design)!;

/** 1e-9 mm */
const EXACT = 1e-9;

/** The films of a design by the fit alone, at its position. */
const filmsOf = (design: Design) => Object.fromEntries(fitSection(design).seats.map((s) => [s.name, s.leastFilm]));

describe.each(demos)('%s', (name) => {
  const own = demo(name);
  const design = own.cut ? own : everything(own);
  const cut = cutOf(design);

  it('is as the definition says and survives JSON', () => {
    expect(cutReport.safeParse(cut).error?.issues ?? []).toEqual([]);
    expect(JSON.parse(JSON.stringify(cut))).toEqual(cut);
    expect(solve(design, name, ['cut']).cut).toEqual(cut);
  });

  it('the steps, taken off the design, give the films told to 1e-9 mm, and the targets where it says so', () => {
    const films = filmsOf(designWithCut(design, cut));
    for (const { name: seat, film } of design.seats) {
      expect(Math.abs(films[seat]! - cut.films[seat]!)).toBeLessThan(EXACT);
      // format.md: feasible is every miss below 1e-6 mm
      if (cut.feasible && film) expect(Math.abs(films[seat]! - film.target)).toBeLessThan(1e-6);
    }
    // the same from diameters alone, as someone else would do it
    const seats = design.seats.map((seat) => {
      const changed = structuredClone(seat);
      for (const step of cut.steps) if (step.seat === seat.name) changed[step.part].diameter += step.diameter;
      return changed;
    });
    const again = filmsOf({ ...design, seats, position: cut.position });
    for (const seat of Object.keys(films)) expect(Math.abs(again[seat]! - films[seat]!)).toBeLessThan(EXACT);
  });

  it('feeds, diameter and stock are those of one triangle', () => {
    for (const step of cut.steps) {
      const a = (design.seats.find((s) => s.name === step.seat)![step.part].halfAngle * Math.PI) / 180;
      expect(step.normal).toBeGreaterThan(0);
      expect(step.deepest).toBe(step.normal);
      expect(step.crossFeed * Math.cos(a)).toBeCloseTo(step.normal, 12);
      expect(step.diameter).toBeCloseTo((step.part === 'journal' ? -2 : 2) * step.crossFeed, 12);
      if (a === 0) expect(step.axialFeed).toBeNull();
      else expect(step.axialFeed! * Math.abs(Math.sin(a))).toBeCloseTo(step.normal, 12);
    }
    expect(cut.steps.reduce((sum, s) => sum + s.normal, 0)).toBeCloseTo(cut.total, 12);
  });

  it('is within limits and cleanups', () => {
    for (const { seat, part, cleanup = 0, limit = 0.1 } of design.cut!.allow) {
      const normal = cut.steps.find((s) => s.seat === seat && s.part === part)?.normal ?? 0;
      expect(normal).toBeGreaterThan(cleanup - EXACT);
      expect(normal).toBeLessThan(limit + EXACT);
    }
    for (const { seat, part } of cut.steps)
      expect(design.cut!.allow.some((a) => a.seat === seat && a.part === part)).toBe(true);
  });
});

describe('what the demos teach', () => {
  it('steep-first: the steep journal alone, by the error of the relation times sin 45°', () => {
    const { relation } = fitSection(steepFirst);
    const { steps, position, feasible } = cutOf(steepFirst);
    expect(feasible).toBe(true);
    expect(steps.map((s) => `${s.seat} ${s.part}`)).toEqual(['steep journal']);
    expect(steps[0]!.normal).toBeCloseTo(-relation!.error * Math.SQRT1_2, 12);
    expect(position).toBeCloseTo(-0.108697, 6);
  });

  it('shallow-first: the scored pair cleaned up, the rest off the bush to spare the journal, bush first', () => {
    const { steps, lap } = cutOf(shallowFirst);
    expect(steps.map((s) => `${s.seat} ${s.part} ${s.why}`)).toEqual([
      'shallow bush relation',
      'shallow journal cleanup',
    ]);
    expect(steps[0]!.normal).toBeCloseTo(0.0852 * Math.sin(Math.PI / 60) - 0.002, 5);
    expect(steps[1]!.normal).toBeCloseTo(0.002, 12);
    expect(lap!.stop.why).toBe('bearing');
  });
});

describe('stop readings', () => {
  it('are those predicted for the design after the step, the steps before it done', () => {
    const readings: Design['readings'] = [
      { kind: 'overRolls', seat: 'shallow', part: 'journal', roll: 6, station: -10, value: 32, sigma: 0.001 },
    ];
    const design: Design = { ...everything(steepFirst), readings };
    design.cut!.allow = design.cut!.allow.map((a) => ({ ...a, cleanup: 0.002 }));
    const cut = cutOf(design);
    expect(cut.steps).toHaveLength(4);
    cut.steps.forEach((step, i) => {
      const after = designWithCut(design, { ...cut, steps: cut.steps.slice(0, i + 1) });
      for (const { reading, stop } of step.gauges) {
        expect(predictedReading(after, reading).value).toBeCloseTo(stop!, 11);
        expect(reading.value).toBeCloseTo(stop!, 8);
      }
      expect(fitSection(after).firstPosition).toBeCloseTo(step.standOff.stop!, 10);
      expect(fitSection(after).seats.find((s) => s.name === step.seat)!.seatPosition).toBeCloseTo(step.touch.stop!, 10);
    });
    expect(cut.steps.find((s) => s.seat === 'shallow' && s.part === 'journal')!.gauges[0]!.reading).toMatchObject({
      roll: 6,
      station: -10,
    });
  });
});

describe('the keys of the design', () => {
  it('machine: dials, slide, passes', () => {
    const machine = { dial: 'radius', division: 0.001, axialDivision: 0.002, pass: 0.01, slide: 10 } as const;
    const [step] = cutOf({ ...steepFirst, cut: { ...steepFirst.cut!, machine } }).steps;
    expect(step!.crossDivisions).toBeCloseTo(step!.crossFeed / 0.001, 9);
    expect(step!.axialDivisions).toBeCloseTo(step!.axialFeed! / 0.002, 9);
    expect(step!.slideFeed).toBeCloseTo(step!.normal / Math.sin((35 * Math.PI) / 180), 12);
    expect(step!.passes.count).toBe(Math.ceil(step!.crossFeed / 0.01));
  });

  it('faces: a spacer taken off puts the seats where the films want them', () => {
    const faces = [
      { name: 'rear spacer', part: 'bush' as const, seats: ['steep'], moves: 'rearward' as const, limit: 0.2 },
    ];
    const design: Design = { ...steepFirst, cut: { allow: [], faces } };
    const cut = cutOf(design);
    expect(cut.steps).toEqual([]);
    expect(cut.faces[0]!.off).toBeCloseTo(-fitSection(steepFirst).relation!.error, 10);
    const films = filmsOf(designWithCut(design, cut));
    for (const { name, film } of design.seats) expect(Math.abs(films[name]! - film!.target)).toBeLessThan(EXACT);
    expect(cut.work.some(({ text }) => text.includes('rear spacer'))).toBe(true);
  });

  it('renew: a worn bush is made straight', () => {
    const worn = demo('worn-bell-mouth.conepair.json');
    const design: Design = {
      ...worn,
      cut: {
        allow: [
          { seat: 'shallow', part: 'bush', renew: true },
          { seat: 'steep', part: 'journal', limit: 1 },
        ],
      },
    };
    const cut = cutOf(design);
    expect(cut.feasible).toBe(true);
    const after = designWithCut(design, cut);
    expect(after.seats[0]!.bush.profile).toBeUndefined();
    const { seats } = fitSection(after);
    for (const s of seats) expect(Math.abs(s.leastFilm! - 0.0025)).toBeLessThan(EXACT);
    expect(seats[0]!.greatestFilm! - seats[0]!.leastFilm!).toBeLessThan(EXACT);
    const mismatch = demo('half-angle-mismatch.conepair.json');
    const { halfAngle } = mismatch.seats[0]!.bush;
    const turned: Design = {
      ...mismatch,
      cut: {
        allow: [
          { seat: 'shallow', part: 'journal', renew: true, halfAngle },
          { seat: 'steep', part: 'journal', limit: 1 },
        ],
      },
    };
    const even = fitSection(designWithCut(turned, cutOf(turned))).seats[0]!;
    expect(even.greatestFilm! - even.leastFilm!).toBeLessThan(EXACT);
  });

  it('prefer and reach', () => {
    const spared = cutOf({
      ...everything(steepFirst),
      cut: { ...everything(steepFirst).cut!, prefer: { spare: 'journal' } },
    });
    expect(spared.steps.map((s) => s.part)).toEqual(['bush']);
    const kept = cutOf({ ...everything(steepFirst), cut: { ...everything(steepFirst).cut!, reach: { to: -0.12 } } });
    expect(kept.position).toBeCloseTo(-0.12, 9);
    expect(kept.feasible).toBe(true);
    expect(kept.inReach).toBe(true);
  });

  it('work: order and ticks', () => {
    const { work } = cutOf({
      ...steepFirst,
      cut: { ...steepFirst.cut!, work: { order: ['trial'], done: ['guards', 'gone'] } },
    });
    expect(work[0]).toMatchObject({ id: 'trial', done: false });
    expect(work.every(({ basis }) => basis === 'common practice')).toBe(true);
    expect(work.find(({ id }) => id === 'guards')!.done).toBe(true);
    expect(work.find(({ id }) => id === 'cut 1 journal')!.step).toBe(0);
  });

  it('trials: the estimate, and what is left', () => {
    const trials = [
      {
        note: 'half way',
        taken: [{ seat: 'steep', part: 'journal' as const, normal: 0.04 }],
        standOff: { value: -0.06, sigma: 0.0005 },
        blue: [
          { seat: 'steep', prints: true },
          { seat: 'shallow', prints: false },
        ],
      },
    ];
    const cut = cutOf({ ...steepFirst, cut: { ...steepFirst.cut!, trials, doubt: 0.0005 } });
    expect(cut.steps[0]!.normal).toBeCloseTo(0.0765, 3);
    expect(cut.trials).toHaveLength(1);
    expect(cut.trials![0]).toMatchObject({ status: 'updated', touched: { shallow: 0, steep: 1 } });
    const left = cut.remaining!;
    expect(left.feasible).toBe(true);
    // it was to stand off 60.57 µm and stood off 60: the film is less by the difference times sin 45°, so more must
    // come off
    expect(left.steps[0]!.normal).toBeGreaterThan(0.0365);
    expect(left.steps[0]!.normal).toBeLessThan(0.0372);
    const broken = cutOf({
      ...steepFirst,
      cut: { ...steepFirst.cut!, trials: [{ standOff: { value: 0.9, sigma: 0.0005 } }] },
    });
    expect(broken.trials![0]!.status).toBe('contradiction');
    expect(broken.remaining).toBeUndefined();
  });

  it('a straight seat is cut with no angle set and by no axial feed', () => {
    const rear = demo('rear-bearing.conepair.json');
    const cut = cutOf({
      ...rear,
      cut: {
        allow: [
          { seat: 'rear', part: 'journal', cleanup: 0.002 },
          { seat: 'rear', part: 'bush' },
        ],
        machine: { setBy: 'sineBar' },
      },
    });
    expect(cutReport.safeParse(cut).success).toBe(true);
    expect(cut.steps.some(({ seat }) => seat === 'rear')).toBe(true);
    expect(cut.settings).toEqual([]);
    expect(cut.steps.every(({ axialFeed }) => axialFeed === null)).toBe(true);
  });

  it('a tool off the centre: hollow on the journal, told with its shape', () => {
    const [setting] = cutOf({ ...steepFirst, cut: { ...steepFirst.cut!, machine: { toolHeight: 0.5 } } }).settings;
    const { height, depth, angleError, profile } = setting!.hollow!;
    expect(height).toBe(0.5);
    expect(depth).toBeGreaterThan(0);
    expect(angleError).toBeLessThan(0);
    const [first, middle, last] = [profile[0]!, profile[8]!, profile[16]!];
    expect((first[1] + last[1]) / 2 - middle[1]).toBeCloseTo(depth, 5);
    expect((first[1] + last[1]) / 2 - middle[1]).toBeGreaterThan(0);
    expect(
      cutOf({ ...steepFirst, cut: { ...steepFirst.cut!, machine: { toolHeight: 10 } } }).settings[0]!.hollow,
    ).not.toBeNull();
    const small: Design = {
      ...steepFirst,
      seats: steepFirst.seats.map((s) =>
        s.name === 'steep'
          ? { ...s, journal: { ...s.journal, diameter: 14 }, bush: { ...s.bush, diameter: 14.008 } }
          : s,
      ),
      cut: { ...steepFirst.cut!, machine: { toolHeight: 10 } },
    };
    expect(cutOf(small).settings.find((s) => s.seat === 'steep')!.hollow).toBeNull();
  });

  it('lap: nothing touches, nothing is lapped', () => {
    const straight: Design = {
      conepair: 1,
      seats: [
        {
          name: 'a',
          journal: { halfAngle: 0, diameter: 20, station: 0, from: -9, to: 0 },
          bush: { halfAngle: 0, diameter: 20.01, station: 0, from: -9, to: 0 },
          film: { target: 0.0025 },
        },
      ],
      cut: { allow: [], lap: { force: 10 } },
    };
    expect(cutOf(straight).lap).toBeNull();
  });

  it('left out without `cut`', () => {
    const { cut: _, ...bare } = steepFirst;
    expect(cutSection(bare)).toBeUndefined();
    expect('cut' in solve(bare, 'x')).toBe(false);
  });
});

describe('where there is no plan', () => {
  it('the report still holds: nearest result, limits, nothing invented', () => {
    const tight: Design = { ...steepFirst, cut: { allow: [{ seat: 'steep', part: 'journal', limit: 0.05 }] } };
    const cut = cutOf(tight);
    expect(cutReport.safeParse(cut).success).toBe(true);
    expect(cut).toMatchObject({ feasible: false, status: 'infeasible', inTolerance: false });
    expect(cut.steps[0]!.normal).toBeCloseTo(0.05, 12);
    const limit = cut.limits.find((l) => l.what === 'limit')!;
    expect(limit).toMatchObject({ seat: 'steep', part: 'journal', limit: 0.05 });
    expect(limit.needed).toBeCloseTo(0.076532, 6);
  });

  it('says when nothing is wanted, and when parts do not overlap', () => {
    const bare: Design = { ...steepFirst, seats: steepFirst.seats.map(({ film: _, ...seat }) => seat) };
    expect(cutOf(bare)).toMatchObject({ status: 'nothingWanted', feasible: false, steps: [], position: 0.02 });
    const apart: Design = {
      ...steepFirst,
      seats: [{ ...steepFirst.seats[0]!, journal: { ...steepFirst.seats[0]!.journal, from: -200, to: -190 } }],
    };
    expect(cutOf(apart)).toMatchObject({ status: 'apart', apart: ['shallow'], steps: [] });
  });
});

describe('bad input', () => {
  const errors = (cut: unknown) => {
    const result = validateDesign({ ...steepFirst, cut });
    return result.ok ? [] : result.errors.map(({ path }) => path);
  };

  it.each([
    [{ allow: [{ seat: 'middle', part: 'journal' }] }, 'cut.allow[0].seat'],
    [{ allow: [{ seat: 'steep', part: 'nose' }] }, 'cut.allow[0].part'],
    [{ allow: [{ seat: 'steep', part: 'journal', cleanup: 0.02, limit: 0.01 }] }, 'cut.allow[0].cleanup'],
    [{ allow: [{ seat: 'steep', part: 'journal', halfAngle: 44 }] }, 'cut.allow[0].halfAngle'],
    [
      {
        allow: [
          { seat: 'steep', part: 'journal' },
          { seat: 'steep', part: 'journal' },
        ],
      },
      'cut.allow[1]',
    ],
    [
      { allow: [], faces: [{ name: 'f', part: 'bush', seats: ['middle'], moves: 'rearward' }] },
      'cut.faces[0].seats[0]',
    ],
    [{ allow: [], faces: [{ name: 'f', part: 'bush', seats: ['steep'], moves: 'up' }] }, 'cut.faces[0].moves'],
    [
      { allow: [], faces: [{ name: 'f', part: 'bush', seats: ['steep'], moves: 'rearward', cleanup: 0.01, add: 0.1 }] },
      'cut.faces[0].add',
    ],
    [
      {
        allow: [],
        faces: [
          { name: 'f', part: 'bush', seats: ['steep'], moves: 'rearward' },
          { name: 'f', part: 'bush', seats: ['steep'], moves: 'rearward' },
        ],
      },
      'cut.faces[1].name',
    ],
    [{ allow: [], reach: { from: 1, to: 0 } }, 'cut.reach.to'],
    [{ allow: [], machine: { division: 0 } }, 'cut.machine.division'],
    [{ allow: [], trials: [{ taken: [{ seat: 'middle', part: 'bush', normal: 0 }] }] }, 'cut.trials[0].taken[0].seat'],
    [{ allow: [], trials: [{ blue: [{ seat: 'middle', prints: true }] }] }, 'cut.trials[0].blue[0].seat'],
    [{ allow: [], trials: [{ faces: [{ name: 'g', off: 0 }] }] }, 'cut.trials[0].faces[0].name'],
    [{ allow: [], lap: { force: 0 } }, 'cut.lap.force'],
    [{ allow: [], lap: { force: 10, step: 0.00001, advance: 0.1 } }, 'cut.lap.step'],
    [{ allow: [], lap: { force: 10, advance: 0.2 } }, 'cut.lap.step'],
    [{}, 'cut.allow'],
  ])('%j is refused at %s', (cut, path) => {
    expect(errors(cut)).toContain(path);
  });

  it('what is left out has its default, and an allowance of nothing is one', () => {
    expect(errors({ allow: [{ seat: 'steep', part: 'journal', cleanup: 0.3 }] })).toEqual([]);
    expect(
      cutOf({ ...steepFirst, cut: { allow: [{ seat: 'steep', part: 'journal', cleanup: 0.3 }] } }).steps[0]!.normal,
    ).toBeCloseTo(0.3, 9);
    expect(errors({ allow: [{ seat: 'steep', part: 'journal', limit: 0 }] })).toEqual([]);
  });
});
