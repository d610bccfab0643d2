/** The hard case: what the cuts used of it, and what is said before a step goes through it. */
import { describe, expect, test } from 'vitest';
import { DEMOS } from '../../../src/app/state/demos.ts';
import type { Design } from '../../../src/design/definition.ts';
import { caseLeft, caseSection } from '../../../src/report/cut/caseLeft.ts';
import { withCase } from '../../../src/report/cut/caseWords.ts';
import type { CutReport } from '../../../src/report/cut/definition.ts';
import { designWithPlanDone } from '../../../src/report/cut/planDone.ts';
import { cutSection } from '../../../src/report/cut/section.ts';
import { cutVerdict } from '../../../src/report/cut/verdict.ts';
import { purposeOf } from '../../../src/report/sheet/purpose.ts';

const demo = DEMOS.find(({ file }) => file.startsWith('steep-first'))!.design;
const withDepth = (design: Design, caseDepth: number): Design => ({
  ...design,
  seats: design.seats.map((seat) =>
    seat.name === 'steep' ? { ...seat, journal: { ...seat.journal, caseDepth } } : seat,
  ),
});
const taken = (normal: number, sigma?: number) => ({
  seat: 'steep',
  part: 'journal' as const,
  normal,
  ...(sigma && { sigma }),
});
const withTrials = (design: Design, trials: NonNullable<NonNullable<Design['cut']>['trials']>): Design => ({
  ...design,
  cut: { ...design.cut!, trials },
});
const planned = cutSection(demo)!.steps.find(({ seat, part }) => seat === 'steep' && part === 'journal')!.normal;
const good = { tone: 'good' as const, headline: 'Do this.', sentences: ['So.'] };

describe('what is left', () => {
  test('depth less all stock of the history, in the shapes or not, with the doubt of it', () => {
    const design = withTrials(withDepth(demo, 0.1), [
      { taken: [taken(0.02, 0.003)], inShapes: true },
      { taken: [taken(0.01, 0.004), { seat: 'shallow', part: 'journal', normal: 0.5 }] },
      { taken: [{ seat: 'steep', part: 'bush', normal: 0.5 }] },
    ]);
    expect(caseLeft(design)).toEqual([
      {
        seat: 'steep',
        part: 'journal',
        depth: 0.1,
        used: expect.closeTo(0.03, 12),
        left: expect.closeTo(0.07, 12),
        sigma: expect.closeTo(0.005, 12),
      },
    ]);
    expect(caseLeft(design, 1)[0]!.left).toBeCloseTo(0.08, 12);
    expect(caseLeft(design, 0)[0]).toMatchObject({ used: 0, sigma: 0 });
  });

  test('stock of which no doubt is told has that of the dial', () => {
    const [found] = caseLeft(withTrials(withDepth(demo, 0.1), [{ taken: [taken(0.02)] }]));
    expect(found!.sigma).toBeGreaterThan(0.05 * 0.02);
  });

  test('no surface says its depth: nothing is said', () => {
    expect(caseLeft(demo)).toEqual([]);
    expect(cutSection(demo)!.case).toBeUndefined();
  });
});

describe('what the plan does to it', () => {
  const statusAt = (depth: number, trials?: Parameters<typeof withTrials>[1]) => {
    const design = withDepth(demo, depth);
    return cutSection(trials ? withTrials(design, trials) : design)!.case![0]!;
  };

  test('through, perhaps, or surely not', () => {
    expect(statusAt(planned / 2)).toMatchObject({ status: 'through', planned: expect.closeTo(planned, 9) });
    expect(statusAt(planned / 2).after).toBeCloseTo(-planned / 2, 9);
    expect(statusAt(planned + 0.001).status).toBe('doubtful');
    expect(statusAt(planned + 0.2).status).toBe('kept');
  });

  test('what is off already is not taken once more, and counts', () => {
    const report = { steps: cutSection(demo)!.steps } as CutReport;
    const open = withTrials(withDepth(demo, 0.1), [{ taken: [taken(0.03)] }]);
    expect(caseSection(open, report)![0]).toMatchObject({
      used: expect.closeTo(0.03, 12),
      planned: expect.closeTo(planned - 0.03, 9),
      after: expect.closeTo(0.1 - planned, 9),
    });
    const remaining = { steps: [{ seat: 'steep', part: 'journal', normal: 0.05, sigma: 0.001 }] };
    expect(caseSection(open, { ...report, remaining } as CutReport)![0]).toMatchObject({
      planned: 0.05,
      after: expect.closeTo(0.02, 12),
      status: 'kept',
    });
    expect(caseSection(open, { ...report, remaining: { steps: [] } } as unknown as CutReport)![0]!.planned).toBe(0);
  });

  test('a new line takes most where it takes most', () => {
    const [step] = cutSection(demo)!.steps.filter(({ seat }) => seat === 'steep');
    const renewed = { steps: [{ ...step!, deepest: step!.normal + 0.02 }] } as CutReport;
    expect(caseSection(withDepth(demo, 1), renewed)![0]!.planned).toBeCloseTo(step!.normal + 0.02, 12);
  });

  test('gone already', () => {
    expect(statusAt(0.01, [{ taken: [taken(0.02)], inShapes: true }])).toMatchObject({ status: 'gone' });
  });

  test('the plan taken as done has used it', () => {
    const design = withDepth(demo, 0.2);
    const done = designWithPlanDone(design, cutSection(design)!);
    expect(caseLeft(done)[0]!.left).toBeCloseTo(0.2 - planned, 6);
  });
});

describe('in words', () => {
  const verdictAt = (depth: number) => {
    const design = withDepth(demo, depth);
    const cut = cutSection(design)!;
    return { design, cut, verdict: withCase(cutVerdict(design, cut, 'metric'), cut, 'metric') };
  };

  test('what would be cut through comes first, in red, with both figures; on the sheet too', () => {
    const { design, cut, verdict } = verdictAt(0.03);
    expect(verdict.tone).toBe('stop');
    expect(verdict.headline).toMatch(
      /^This would cut through the hard case of the steep journal \(7\d\.\d+ µm to come off, 30\.00 µm of case left\)\.$/,
    );
    expect(verdict.sentences).toContain(cutVerdict(design, cut, 'metric').headline);
    expect(purposeOf(design, cut, 'metric')).toMatchObject({ kind: 'work', tone: 'stop', headline: verdict.headline });
  });

  test('where it may go through there is no praise; where it does not, not a word', () => {
    const { cut } = verdictAt(planned + 0.001);
    const said = withCase(good, cut, 'metric');
    expect(said).toMatchObject({ tone: 'mend', headline: good.headline });
    expect(said.sentences[0]).toContain('may go through');
    expect(withCase(good, verdictAt(1).cut, 'metric')).toEqual(good);
    expect(withCase(good, { case: undefined }, 'metric')).toEqual(good);
  });
});
