/** The running spindle in words, for every outcome: what must be said, and what must not. */
import { readFileSync } from 'node:fs';
import { expect, test, vi } from 'vitest';
import type { Design } from '../../../src/design/definition.ts';
import { MOST_EFFORT } from '../../../src/engine/run/running.ts';
import { followFields } from '../../../src/report/film/fields.ts';
import { liveVerdict } from '../../../src/report/film/liveVerdict.ts';
import { filmSection } from '../../../src/report/film/section.ts';
import { filmVerdict } from '../../../src/report/film/verdict.ts';

// Whole sections with their warm-up: seconds where the machine is busy.
vi.setConfig({ testTimeout: 40_000 });

const OIL = { viscosity: 0.0086 };
/** Where nothing is asked of how it warms nor of where else it could be set, next to no work is spent on them. */
const COLD = { ...MOST_EFFORT, warmUp: 1, steady: 1, backOff: 1 };

function words(
  name: string,
  run: NonNullable<Design['run']>,
  system: 'metric' | 'inch' = 'metric',
  change: { [K in keyof Design]?: Design[K] | undefined } = {},
  most = MOST_EFFORT,
) {
  const design = {
    ...(JSON.parse(
      readFileSync(new URL(`../../../assets/designs/${name}.conepair.json`, import.meta.url), 'utf8'),
    ) as Design),
    run,
    ...change,
  } as Design;
  const film = filmSection(design, most)!;
  const { tone, headline, sentences } = filmVerdict(design, film, system);
  const text = [headline, ...sentences].join(' ');
  expect(text).not.toMatch(/undefined|NaN|null|Infinity|e-\d/);
  return { tone, headline, text, film };
}

test('a load carried: which seat takes the thrust', () => {
  const { tone, headline, text } = words('rear-bearing', {
    speed: 1200,
    oil: OIL,
    load: { y: -120, z: -40, station: 30 },
    heat: { duration: 10 },
  });
  expect(tone).toBe('good');
  expect(headline).toMatch(
    /^The spindle runs on oil everywhere, at worst 1(\.\d)? times what parts the surfaces; the thinnest film is 0\.7\d µm, in the steep seat\.$/,
  );
  expect(text).toMatch(/Along the axis the oil pushes with 40 N: the steep seat 30 N and the shallow seat 10 N/);
  expect(text).toMatch(/Warm, the journal runs at \d+ °C/);
  expect(text).not.toMatch(/collar|whirls,/);
});

test('cones the oil pushes itself off: the adjuster holds them, or a collar has to', () => {
  const run = { speed: 1200, oil: OIL, load: { y: -120, z: -40, station: 30 }, heat: { duration: 10 } };
  const { tone, text } = words('correct', run);
  expect(tone).toBe('good');
  expect(text).toMatch(
    /That is 64 N more than the load pushes back: the adjuster holds the spindle on its cones, rearward with as much/,
  );
  const bare = words('correct', run, 'metric', { adjuster: undefined });
  expect(bare.tone).toBe('mend');
  expect(bare.text).toMatch(/nothing in this design but a collar could hold the spindle on its cones, rearward/);
});

test('pure thrust on a cone that runs true: no wedge', () => {
  const { tone, headline, text } = words('correct', { speed: 1200, oil: OIL, load: { z: -40 } }, 'metric', {}, COLD);
  expect(tone).toBe('stop');
  expect(headline).toMatch(
    /^No film carries this load: the journal sinks until it touches in the steep seat at station /,
  );
  expect(text).toMatch(/A cone that runs true drags oil round without wedging it, and lifts next to nothing/);
});

test('running true it lifts nothing, and that is said', () => {
  expect(words('correct', { speed: 1200, oil: OIL, heat: { duration: 10 } }).text).toMatch(
    /The cones run true, so their oil has no wedge/,
  );
});

test('a pose that touches', () => {
  const { tone, headline } = words('correct', { speed: 1200, oil: OIL, pose: { x: 0.003 } });
  expect(tone).toBe('stop');
  expect(headline).toBe('Held there, the shallow journal is 0.50 µm into its bush at station −25.000 mm.');
});

test('a film thinner than the surfaces are rough', () => {
  const { tone, headline } = words('correct', {
    speed: 1200,
    oil: OIL,
    pose: { x: 0.0024 },
    roughness: { journal: 0.0004, bush: 0.0004 },
    heat: { duration: 10 },
  });
  expect(tone).toBe('stop');
  expect(headline).toMatch(/thinner than the surfaces are rough: metal runs on metal/);
});

test('a load that wants a film thinner than roughness: the film it would need', () => {
  const run = { speed: 1200, oil: OIL, load: { y: -20, z: -100 } };
  const { tone, headline } = words('correct', run, 'metric', {}, COLD);
  expect(tone).toBe('stop');
  expect(headline).toMatch(
    /^To carry this load cold the film of the steep seat would have to be 0\.0\d µm, thinner than the surfaces are rough: metal runs on metal\.$/,
  );
});

test('a film below the published guidance is said to be, and of two films asked for which counts', () => {
  const run = { speed: 1200, oil: OIL, pose: { x: 0.001 }, heat: { duration: 10 } };
  // Fine surfaces: the film wanted parts them.
  expect(words('correct', run).text).toMatch(
    /The film wanted on Fit counts, 2\.50 µm: as fine as these surfaces are, 0\.\d\d µm parts them\. Published guidance \(ISO 7902-3\), 4\.00 µm/,
  );
  // Surfaces too rough for it: what parts them does.
  expect(words('correct', { ...run, roughness: { journal: 0.0007, bush: 0.0007 } }).text).toMatch(
    /Run counts: 2\.50 µm, the film wanted on Fit, does not part surfaces as rough as these; 2\.97 µm would\. Published guidance/,
  );
});

test('standing still', () => {
  expect(words('rear-bearing', { speed: 0, oil: OIL, load: { y: -10 } }).headline).toMatch(
    /^Standing still the spindle rests on metal, hardest in the \w+ seat at station .* mm: it is its turning that makes the oil carry\.$/,
  );
});

test('set where a seat is shut: which, how far, and where the adjuster would have to stand', () => {
  const run = { speed: 1200, oil: OIL, load: { y: -60, z: -20, station: 30 }, heat: { duration: 10 } };
  const shut = words('steep-first', run, 'metric', { position: -1 });
  expect(shut.tone).toBe('stop');
  expect(shut.headline).toMatch(
    /^Set at −1\.000 mm the steep journal is 704\.\d µm into its bush at station .* mm: there is no room for oil\.$/,
  );
  expect(shut.text).toMatch(
    /Set .* further noseward, at (−?\d+\.\d+) µm, .*° of the adjuster, the films part the surfaces under this load, cold\./,
  );
  const position = Number(/at (−?\d+\.\d+) µm, [\d.]+° of/.exec(shut.text)![1]!.replace('−', '-')) / 1000;
  // There they do, and a little further in they do not.
  const there = words('steep-first', run, 'metric', { position: position + 2e-5 });
  expect(there.tone).not.toBe('stop');
  expect(there.text).not.toMatch(/further noseward/);
  expect(words('steep-first', run, 'metric', { position: position - 2e-4 }).text).toMatch(/further noseward/);
});

test('set so far open that the journal sinks: how far to close it', () => {
  const run = { speed: 1500, oil: { grade: 5 }, load: { y: -40, z: -15, station: 30 }, heat: { duration: 10 } };
  for (const position of [0.4, 1]) {
    const { tone, text } = words('correct', run, 'metric', { position });
    expect(tone).toBe('stop');
    expect(text).toMatch(
      /further rearward, at 20\d\.\d µm, .*° of the adjuster, the films part the surfaces under this load, cold/,
    );
  }
});

test('oil too hot, and oil too stiff to start', () => {
  const [load, heat] = [{ y: -40, z: -15, station: 30 }, { duration: 1 }];
  expect(words('correct', { speed: 12_000, oil: { grade: 22 }, load, heat })).toMatchObject({
    tone: 'mend',
    headline: expect.stringMatching(/warm it stands at \d+ °C: hotter than oil lasts/),
  });
  expect(words('correct', { speed: 3000, oil: { grade: 46 }, load, heat })).toMatchObject({
    tone: 'mend',
    headline: expect.stringMatching(/cold its drag takes \d+ W: more than a small lathe’s motor gives/),
  });
});

test('nothing loads it: the edge of whirl, with a groove and without', () => {
  for (const supply of [[], [{ seat: 'shallow', angle: 90, from: -22, to: -3, width: 2, pressure: 0 }]]) {
    const { tone, headline } = words('correct', {
      speed: 1500,
      oil: { grade: 5 },
      load: {},
      supply,
      heat: { duration: 10 },
    });
    expect([tone, headline]).toEqual([
      'mend',
      'The films part the surfaces, but nothing loads the spindle: it stands on the edge of whirl.',
    ]);
  }
});

test('while the hand moves: what the films tell already', () => {
  const demo = JSON.parse(
    readFileSync(new URL('../../../assets/designs/correct.conepair.json', import.meta.url), 'utf8'),
  ) as Design & { run: NonNullable<Design['run']> };
  const told = (change: Partial<Design>, run: Partial<NonNullable<Design['run']>> = {}) => {
    const design = { ...demo, ...change, run: { ...demo.run, ...run } };
    return liveVerdict(design, followFields().fields(design)!, 'metric');
  };
  expect(told({})).toMatchObject({
    tone: 'good',
    headline: expect.stringMatching(/^Cold, the thinnest film is about 2\.0\d µm, in the steep seat\.$/),
  });
  expect(told({ position: -0.01 })).toMatchObject({
    tone: 'stop',
    headline: expect.stringMatching(/^Metal meets metal: the steep journal is 4\.\d\d µm into its bush\.$/),
  });
  expect(told({}, { load: { y: -20_000, station: 30 } })).toMatchObject({
    tone: 'stop',
    headline: expect.stringMatching(/^No film carries this/),
  });
  expect(told({}, { speed: 0 })).toMatchObject({
    tone: 'stop',
    headline: 'Standing still the spindle rests on metal.',
  });
});

test('a load that presses the spindle closer than it is set', () => {
  expect(
    words('correct', { speed: 1200, oil: OIL, load: { y: -40, z: -60, station: 30 }, heat: { duration: 10 } }).text,
  ).toMatch(/The load presses the spindle \d+\.\d+ µm closer than it is set, to −\d/);
});

test('in inch every figure is in the units of an inch shop', () => {
  const { text } = words(
    'correct',
    { speed: 1200, oil: OIL, load: { y: -120, z: -40, station: 30 }, heat: { duration: 10 } },
    'inch',
  );
  expect(text).toMatch(/pushes with \d+ lbf/);
  expect(text).toMatch(/ °F /);
  expect(text).not.toMatch(/µm|mm|\d N\b|°C/);
});

test('a fast, hardly loaded spindle whirls', () => {
  const run = {
    speed: 30_000,
    oil: { viscosity: 0.001 },
    load: { y: -1, z: -0.5, station: 0 },
    heat: { journal: { mass: 3 } },
  };
  const { tone, text, film } = words('rear-bearing', run, 'metric', {}, COLD);
  expect(tone).not.toBe('good');
  expect(text).toMatch(/whirls/);
  // half speed whirl: the oil is carried round at half the speed of the journal
  expect(film.whirl!.ratio).toBeCloseTo(0.5, 3);
});

test('in inches where asked', () => {
  expect(
    words('correct', { speed: 1200, oil: OIL, pose: { x: 0.001 }, heat: { duration: 10 } }, 'inch').headline,
  ).toMatch(/tenths/);
});
