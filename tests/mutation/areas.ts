/**
 * What is mutated together, and the tests that are to kill it: unit tests only. The first list is run on every mutant,
 * the second (what takes longer) on those that live through the first.
 */
export interface Area {
  sources: string[];
  tests: string[];
  slower: string[];
}

const FIT = ['tests/engine/fit.cases.test.ts', 'tests/published/tapers.test.ts', 'tests/regressions/fit.test.ts'];

export const AREAS: Record<string, Area> = {
  contact: {
    sources: ['src/engine/contact'],
    tests: ['tests/engine/contact', ...FIT, 'tests/report/fit'],
    slower: ['tests/engine/fit.property.test.ts'],
  },
  cutting: {
    sources: ['src/engine/cutting'],
    tests: ['tests/engine/cutting', 'tests/published/cutting.test.ts'],
    slower: [
      ...['trialJobs', 'trial', 'plan', 'planOracle', 'planContinuity'].map(
        (name) => `tests/engine/cutting/${name}.test.ts`,
      ),
      'tests/report/cut/section.test.ts',
    ],
  },
  belief: {
    sources: ['src/engine/belief'],
    tests: ['tests/engine/belief', 'tests/engine/gauging', 'tests/engine/cutting/trial.test.ts'],
    slower: [
      'tests/engine/belief/consequences.test.ts',
      'tests/engine/gauging/estimate.test.ts',
      'tests/engine/cutting/trialJobs.test.ts',
    ],
  },
  gauging: {
    sources: ['src/engine/gauging'],
    tests: ['tests/engine/gauging', 'tests/published/gauging.test.ts'],
    slower: [
      ...['estimate', 'disagreement', 'derivatives'].map((name) => `tests/engine/gauging/${name}.test.ts`),
      'tests/report/measure/section.test.ts',
    ],
  },
  odds: {
    sources: ['src/engine/odds'],
    tests: ['tests/engine/odds'],
    slower: ['buy', 'published', 'indices', 'shares'].map((name) => `tests/engine/odds/${name}.test.ts`),
  },
  algebra: {
    sources: ['src/engine/algebra'],
    tests: ['tests/engine/algebra'],
    slower: ['tests/engine/cutting/planOracle.test.ts', 'tests/engine/film/equilibrium.test.ts'],
  },
  parts: {
    sources: ['src/engine/parts'],
    tests: ['tests/engine/parts', 'tests/engine/cutting/angles.test.ts', 'tests/published/tapers.test.ts', ...FIT],
    slower: ['tests/engine/cutting/plan.test.ts'],
  },
  spindle: {
    sources: ['src/engine/spindle'],
    tests: ['tests/engine/spindle', 'tests/engine/play'],
    slower: [
      'tests/engine/play/againstHighs.test.ts',
      'tests/engine/play/invariance.test.ts',
      'tests/engine/film/equilibrium.test.ts',
    ],
  },
  run: {
    sources: ['src/engine/run'],
    tests: ['tests/engine/run'],
    slower: [
      ...['answer', 'backOff', 'whirling'].map((name) => `tests/engine/run/${name}.test.ts`),
      'tests/report/film/section.test.ts',
    ],
  },
  play: {
    sources: ['src/engine/play'],
    tests: ['tests/engine/play', 'tests/report/play/section.test.ts'],
    slower: ['againstHighs', 'invariance'].map((name) => `tests/engine/play/${name}.test.ts`),
  },
  heat: {
    sources: ['src/engine/heat'],
    tests: ['tests/engine/heat', 'tests/published/oil.test.ts'],
    slower: ['tests/report/film/section.test.ts'],
  },
  film: {
    sources: ['src/engine/film'],
    tests: [
      'tests/engine/film',
      'tests/published/filmClosedForms.test.ts',
      'tests/published/journalBearing.test.ts',
      'tests/published/oil.test.ts',
    ],
    slower: [
      'tests/engine/film/anySpindle.test.ts',
      'tests/engine/film/equilibrium.test.ts',
      'tests/engine/film/reynolds.test.ts',
      'tests/published/dynamicCoefficients.test.ts',
      'tests/regressions/film.test.ts',
    ],
  },
  design: { sources: ['src/design'], tests: ['tests/design', 'tests/regressions/input.test.ts'], slower: [] },
  report: {
    sources: ['src/report'],
    tests: ['tests/report'],
    slower: [
      'film/verdict',
      'film/section',
      'cut/verdict',
      'cut/advice',
      'measure/fuzz',
      'measure/afterCut',
      'measure/verdict',
      'play/anyDesign',
    ].map((name) => `tests/report/${name}.test.ts`),
  },
};
