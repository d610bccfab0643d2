/** The odds of the run, ways to make the parts and what to hold to, in the report. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Design } from '../../../src/design/definition.ts';
import { validateDesign } from '../../../src/design/validate.ts';
import { RUN_GRID } from '../../../src/engine/odds/runningGrid.ts';
import { runDrawn } from '../../../src/engine/odds/runningOne.ts';
import { toRunning } from '../../../src/report/film/toSpindle.ts';
import { oddsReport, runningOdds } from '../../../src/report/odds/definition.ts';
import { holdSentence, holdSizes } from '../../../src/report/odds/holdWords.ts';
import { piecesOf } from '../../../src/report/odds/pieces.ts';
import { askedOf, type Done, runnerOf, runningReport, runningTold } from '../../../src/report/odds/running.ts';
import { countedRuns, runningShown } from '../../../src/report/odds/runningShown.ts';
import { filmDoubtSentence, runningBasis, runningSentences } from '../../../src/report/odds/runningWords.ts';
import { oddsSection } from '../../../src/report/odds/section.ts';
import { settingsOf } from '../../../src/report/odds/settings.ts';

const demo = (name: string): Design =>
  JSON.parse(readFileSync(new URL(`../../../assets/designs/${name}.conepair.json`, import.meta.url), 'utf8')) as Design;
const { cut: _, readings: __, ...correct } = demo('correct');

/** Held by hand, so that a draw is quick. */
const held: Design = {
  ...correct,
  run: { speed: 900, oil: { grade: 10 }, pose: { y: -0.0004 }, heat: { duration: 600 } },
  odds: {
    running: { draws: 16, at: 'set' },
    spread: [
      { seat: 'shallow', part: 'journal', of: 'diameter', sigma: 0.0004 },
      { of: 'temperature', sigma: 3 },
      { of: 'speed', sigma: 20 },
      { seat: 'steep', part: 'bush', of: 'lobeAmplitude', sigma: 0.0001 },
    ],
  },
};

describe('the odds of the run', () => {
  const asked = askedOf(held)!;
  const run = runnerOf(asked);
  const done: Done[] = piecesOf(16)
    .filter(({ fine }) => !fine)
    .map(run);
  const report = runningReport(held, asked, done)!;

  it('fit the schema, in the units of the report', () => {
    expect(runningOdds.safeParse(JSON.parse(JSON.stringify(report))).success).toBe(true);
    expect(report).toMatchObject({ of: 'now', at: 'set', draws: 16, unsettled: 0, noShape: 0, notCarried: [3] });
    expect(report.runs.share).toBe(1);
    const alone = runDrawn(toRunning(held as Parameters<typeof toRunning>[0]), RUN_GRID);
    // Sixteen draws about it: their mean is its own to a few parts of the spread.
    const { mean, sd } = report.films.shallow!;
    expect(Math.abs(mean - 1000 * alone.films[0]!)).toBeLessThan(sd);
    expect(Math.abs(report.hottest!.mean - alone.hottest)).toBeLessThan(report.hottest!.sd);
    // 0.4 µm on the diameter is 0.2 µm of film; the oil, heat and speed add theirs.
    expect(sd).toBeGreaterThan(0.00015);
    expect(sd).toBeLessThan(0.0004);
    expect(report.films.steep!.sd).toBeLessThan(0.0001);
    expect(report.hottest!.sd).toBeGreaterThan(1.5);
    expect(report.grid).toMatchObject({ ...RUN_GRID, checked: 0 });
  });

  it('are the same in whatever order the pieces come', () => {
    expect(runningReport(held, asked, done.toReversed())).toEqual(report);
  });

  it('a check on the grid of the run itself is of the same draw', () => {
    const fine = run({ from: 0, count: 1, fine: true });
    const told = runningReport(held, asked, [...done, fine])!;
    expect(told.grid).toMatchObject({ checked: 1, otherwise: 0 });
    const small = done[0]!.block.draws[0]!;
    const off = small.films.map((film, i) => film - fine.block.draws[0]!.films[i]!);
    expect(told.grid.film).toBeCloseTo(1000 * 2 * Math.sqrt((off[0]! ** 2 + off[1]! ** 2) / 2), 9);
    expect({ ...told, grid: null }).toEqual({ ...report, grid: null });
  });

  it('are told in words, in both systems', () => {
    for (const system of ['metric', 'inch'] as const) {
      const sentences = runningSentences(held, report, system);
      expect(sentences[0]).toBe(
        'As the parts are now, set as it is, it runs well almost always: every film parts the surfaces from cold to warm, no oil is hotter than it lasts, nothing whirls.',
      );
      const all = [...sentences, runningBasis(report, system), filmDoubtSentence(held, report, system)].join(' ');
      expect(all).not.toMatch(/undefined|NaN|null/);
      expect(all).toMatch(system === 'metric' ? /µm/ : /tenth|thou/);
      expect(all).toMatch(system === 'metric' ? /°C/ : /°F/);
    }
    const bad = {
      ...report,
      well: { share: 0.2, low: 0.1, high: 0.4 },
      runs: { ...report.runs, share: 0.6 },
      shut: { ...report.shut, share: 0.3 },
      seizes: { ...report.seizes, share: 0.1 },
      cool: { ...report.cool, share: 0.5 },
      calm: { ...report.calm, share: 0.4 },
      parted: {
        all: { ...report.runs, share: 0.3 },
        shallow: { ...report.runs, share: 0.5 },
        steep: { ...report.runs, share: 0.3 },
      },
    };
    expect(runningSentences(held, bad, 'metric').join(' ')).toMatch(
      /it runs well 2 times in 10: .* Every film keeps 0\.67 µm, three times the roughness, 3 times in 10, the steep film 3 times in 10, it runs hotter than oil lasts 1 time in 10 and it whirls, warm, 2 times in 10\. It has no film to start on 3 times in 10 and it seizes as it warms 1 time in 10\./,
    );
    expect(filmDoubtSentence(held, bad, 'metric')).toMatch(/; 6 of them do not run\.$/);
  });

  it('are pictured by even steps that hold every film once', () => {
    const shown = runningShown(held, asked, done)!;
    expect(shown.report).toEqual(report);
    for (const counted of shown.films) expect(counted!.shares.reduce((a, b) => a + b)).toBeCloseTo(1, 12);
    expect(countedRuns([0, 1].flatMap((x) => new Array<number>(10).fill(x)))).toEqual({
      from: 0,
      step: 0.2,
      shares: [0.5, 0, 0, 0, 0.5],
      below: 0,
      above: 0,
      touching: 0,
    });
    expect(countedRuns([1, 2])).toBeNull();
  });

  it('stand in the report where they are asked for, and nowhere else', () => {
    const { running: ___, ...odds } = held.odds!;
    expect(oddsSection({ ...held, odds: { ...odds, draws: 200 } })!.running).toBeUndefined();
    const { run: ____, ...still } = held;
    expect(runningTold(still)).toBeNull();
    expect(askedOf(still)).toBeNull();
  });

  it('of a plan where there is one; as it is set where the doubt of the run is asked', () => {
    const planned = askedOf({ ...demo('steep-first'), run: held.run! })!;
    expect(planned).toMatchObject({ of: 'planned', ask: { at: 'best' } });
    expect(askedOf({ ...demo('steep-first'), run: held.run! }, true)).toMatchObject({ of: 'now', ask: { at: 'set' } });
  });
});

describe('settings', () => {
  it('in the units of the engine; what the design has nothing of counts for nothing', () => {
    const lobed: Design = {
      ...held,
      seats: held.seats.map((seat) => ({ ...seat, bush: { ...seat.bush, lobes: [{ count: 3, amplitude: 0.0002 }] } })),
    };
    const { settings, notCarried } = settingsOf(lobed);
    expect(notCarried).toEqual([]);
    expect(settings).toMatchObject([
      { of: 'temperature', sigma: 3, shape: 'normal' },
      { of: 'speed', shape: 'normal' },
      { of: 'lobeAmplitude', seat: 1, part: 'bush', lobe: 0, sigma: expect.closeTo(1e-7, 15) },
    ]);
    expect(settings[1]!.sigma).toBeCloseTo((20 * 2 * Math.PI) / 60, 12);
    expect(settingsOf(held).notCarried).toEqual([3]);
    const set = settingsOf({ ...held, odds: { spread: [{ of: 'position', sigma: 0.002, shape: 'rectangular' }] } });
    expect(set.settings).toEqual([{ of: 'position', sigma: 2e-6, shape: 'rectangular' }]);
  });

  it('of the odds of films, which stand still, none counts', () => {
    const spread = held.odds!.spread!;
    const [still, all] = [spread.slice(0, 1), spread].map(
      (each) => oddsSection({ ...held, odds: { draws: 1000, spread: each } })!,
    );
    expect(all).toEqual(still);
  });
});

describe('ways to make the parts', () => {
  const close = [{ seat: 'steep', part: 'bush', of: 'station', sigma: 0.002 }] as const;
  const loose = [{ seat: 'steep', part: 'bush', of: 'station', sigma: 0.02 }] as const;
  const design: Design = {
    ...correct,
    odds: {
      draws: 4000,
      spread: [...close],
      processes: [
        { name: 'ground here', spread: [...loose] },
        { name: 'lapped elsewhere', spread: [...close] },
      ],
    },
  };
  const odds = oddsSection(design)!;

  it('each is as the odds would be by its spreads alone', () => {
    const [ground, lapped] = odds.processes!;
    expect(oddsReport.safeParse(JSON.parse(JSON.stringify(odds))).success).toBe(true);
    const alone = oddsSection({ ...correct, odds: { draws: 4000, spread: [...loose] } })!;
    expect(ground).toEqual({
      name: 'ground here',
      share: alone.best.inBand.all,
      ...alone.limits.best.all,
      set: { share: alone.inBand.all, ...alone.limits.inBand.all },
      films: alone.best.films,
      setFilms: alone.films,
    });
    expect(lapped!.share).toBe(odds.best.inBand.all);
    expect(lapped!.share).toBeGreaterThan(ground!.share + 0.2);
    // The station alone in doubt: left as it is, the film is off by sin 45° of it.
    expect(ground!.setFilms.steep!.sd / (0.02 * Math.SQRT1_2)).toBeCloseTo(1, 1);
    expect(lapped!.setFilms.steep!.sd / (0.002 * Math.SQRT1_2)).toBeCloseTo(1, 1);
  });

  it('names are told apart, and seats named must be there', () => {
    const [first] = design.odds!.processes!;
    const errors = (processes: unknown) => {
      const result = validateDesign({ ...design, odds: { processes } });
      return result.ok ? [] : result.errors.map(({ path }) => path);
    };
    expect(errors([first, first])).toEqual(['odds.processes[1].name']);
    expect(errors([{ name: 'x', spread: [{ ...loose[0], seat: 'other' }] }])).toEqual([
      'odds.processes[0].spread[0].seat',
    ]);
    expect(errors([{ name: 'x', spread: [{ of: 'speed', sigma: 1, seat: 'steep' }] }])).toEqual([
      'odds.processes[0].spread[0].seat',
    ]);
    expect(errors([{ name: 'x', spread: [{ of: 'spede', sigma: 1 }] }])).toEqual(['odds.processes[0].spread[0].of']);
  });
});

describe('what to hold to', () => {
  /** One relation, two stations: the chance is that of a normal quantity within the allowance. */
  const spread = (a: number, b: number) => [
    { seat: 'steep', part: 'bush', of: 'station', sigma: a } as const,
    { seat: 'steep', part: 'journal', of: 'station', sigma: b } as const,
  ];
  const asked = (odds: NonNullable<Design['odds']>): Design => ({ ...correct, odds: { draws: 1000, ...odds } });
  const design = asked({ wanted: 0.95, spread: spread(0.02, 0.02) });
  const { hold } = oddsSection(design)!;
  const toleranced = (i: number) => correct.seats[i]!.film!.tolerance!;
  const allowance =
    toleranced(0) / Math.sin((correct.seats[0]!.journal.halfAngle * Math.PI) / 180) +
    toleranced(1) / Math.sin((correct.seats[1]!.journal.halfAngle * Math.PI) / 180);

  it('two alike are held alike, so that both together leave the allowance 1 time in 20', () => {
    const [a, b] = hold!.inputs;
    expect(a!.multiplier / b!.multiplier).toBeCloseTo(1, 1);
    // The middle is off its relation by a part of the allowance, so the spread is a little less than it would allow.
    const together = 0.02 * Math.hypot(a!.multiplier, b!.multiplier);
    expect(together).toBeLessThan((1.02 * allowance) / 1.96);
    expect(together).toBeGreaterThan((0.85 * allowance) / 1.96);
    expect(Math.abs(hold!.share - 0.95)).toBeLessThan(0.02);
    expect(a!.numbers).toEqual([
      { of: 'station', now: expect.closeTo(0.02, 9), hold: expect.closeTo(0.02 * a!.multiplier, 9), shape: 'normal' },
    ]);
  });

  it('the wider one is held closer', () => {
    const { hold: uneven } = oddsSection(asked({ wanted: 0.95, spread: spread(0.04, 0.01) }))!;
    const [wide, narrow] = uneven!.inputs;
    expect(wide!.multiplier).toBeLessThan(narrow!.multiplier / 1.5);
  });

  it('is told in the sizes of the bench, and only where it is asked for', () => {
    const told = holdSentence(hold!, 0.95);
    expect(told).toMatch(
      /^To be right 19 times in 20 hold the steep (bush|journal) \d\.\d times as close and the steep/,
    );
    const { name, to, now } = holdSizes(hold!.inputs[0]!, 'metric');
    expect(name).toMatch(/^steep/);
    expect(now).toBe('station ± 39.20 µm');
    expect(to).toMatch(/^station ± [\d.]+ µm$/);
    const even = {
      ...hold!.inputs[0]!,
      numbers: [{ of: 'diameter' as const, now: 0.002, hold: 0.001, shape: 'rectangular' as const }],
    };
    expect(holdSizes(even, 'metric').to).toBe('diameter ± 1.73 µm');
    expect(oddsSection(asked({ spread: spread(0.02, 0.02) }))!.hold).toBeUndefined();
  });

  it('nothing where nothing is small enough', () => {
    const off = structuredClone(correct);
    off.seats[1]!.bush.station += 0.05;
    const { hold: none } = oddsSection({ ...off, odds: { draws: 1000, wanted: 0.95, spread: spread(0.02, 0.02) } })!;
    expect(none).toBeNull();
    expect(holdSentence(null, 0.95)).toMatch(/^No spread is small enough for it to work 19 times in 20/);
  });
});
