/** The first line of Run says what the headline below it says, in fewer words. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { parseDesign } from '../../../src/design/parse.ts';
import type { FilmReport } from '../../../src/report/film/definition.ts';
import type { RunFields } from '../../../src/report/film/fields.ts';
import { runsNow, runsNowLive, underNow } from '../../../src/report/film/now.ts';
import { filmSection } from '../../../src/report/film/section.ts';
import { filmVerdict } from '../../../src/report/film/verdict.ts';

const read = parseDesign(
  readFileSync(new URL('../../../assets/designs/steep-first.conepair.json', import.meta.url), 'utf8'),
);
if (!read.ok) throw new Error('the demo');
const { design } = read;
const runs = filmSection(design)!;
const { guidance, steady, whirl } = runs;

const CASES: [string, Partial<FilmReport>, now: RegExp, headline: RegExp][] = [
  ['well', {}, /^Runs on oil: \w+ film 3\.37 µm cold, (\w+ )?2\.56 µm warm\.$/, /^The spindle runs on oil everywhere/],
  [
    'not known warm',
    { steady: null, unreached: ['steady'] },
    /^Runs on oil cold: \w+ film 3\.37/,
    /^Cold, the spindle/,
  ],
  ['rubbing', { guidance: { ...guidance!, filmRatio: 0.5 } }, /^Metal runs on metal: /, /metal runs on metal\.$/],
  // Cold is the worse of the two, or warm is: each is said of its own state, the worse first.
  [
    'barely cold',
    { guidance: { ...guidance!, filmRatio: 2 }, steady: { ...steady!, leastFilm: 2 * runs.leastFilm! } },
    /^Barely on oil as it starts, cold: \w+ film 3\.37 µm\.$/,
    /^Cold, the film of the \w+ seat, 3\.37 µm, barely parts the surfaces \(5\.0\d µm would\); warm the thinnest is 6\.7\d µm, which is enough\.$/,
  ],
  [
    'barely warm',
    { guidance: { ...guidance!, filmRatio: 3.5 } },
    /^Barely on oil: \w+ film 2\.56 µm warm\.$/,
    /^Warm, the thinnest film is 2\.56 µm, which barely parts the surfaces \(2\.89 µm would\); cold it is 3\.37 µm, which is enough\.$/,
  ],
  [
    'barely both',
    { guidance: { ...guidance!, filmRatio: 2 } },
    /^Barely on oil: \w+ film .* warm\.$/,
    /^Warm, .*barely parts the surfaces .*; cold it is 3\.37 µm\.$/,
  ],
  // A hair under what parts the surfaces is seen to be under it.
  [
    'at the limit',
    { guidance: { ...guidance!, filmRatio: 2.9995 }, steady: null },
    /film 3\.3\d\d µm\.$/,
    /seat, (3\.3\d\d) µm, barely parts the surfaces \((?!\1)3\.3\d\d µm would\)\.$/,
  ],
  ['seizing', { warmUpEnd: 'contact' }, /seizes as it warms/, /seizes\.$/],
  [
    'thin warm',
    { steady: { ...steady!, leastFilm: 0.0001 } },
    /^Metal runs on metal: \w+ film .* warm\.$/,
    /^Warm, the thinnest/,
  ],
  ['hot', { steady: { ...steady!, journal: 130 } }, /^Too hot: 130 °C once warm/, /hotter than oil lasts/],
  ['dragging', { power: 900 }, /^Too much drag: 900 W cold/, /more than a small lathe/],
  ['whirling', { whirl: { ...whirl!, stable: false } }, /^It whirls at this speed/, /whirls at this speed/],
  ['whirling warm', { steady: { ...steady!, calm: false } }, /^It whirls once warm/, /warm the spindle whirls/],
  ['standing', { status: 'standing' }, /^Standing still, on metal/, /^Standing still the spindle rests/],
  ['outside', { status: 'apart' }, /outside its bush/, /does not reach its bush/],
  ['no room', { status: 'noRoom', contact: null }, /^No room for oil\.$/, /no room for oil/],
];

test.each(CASES)('%s', (_, changed, now, headline) => {
  const film = { ...runs, ...changed };
  const said = runsNow(film, 'metric');
  expect(said).toMatch(now);
  expect(filmVerdict(design, film, 'metric').headline).toMatch(headline);
  expect([...said.matchAll(/[\d.]+/g)].length).toBeLessThanOrEqual(3);
  expect(said.length).toBeLessThanOrEqual(60);
});

test.each(CASES)('%s: what stands below repeats no film of the line above', (_, changed, now) => {
  const film = { ...runs, ...changed };
  const under = underNow(film, 'metric');
  const shown = `${under ?? filmVerdict(design, film, 'metric').headline}`;
  const figures = (text: string) => [...text.matchAll(/[\d.]+(?= [µm°W])/g)].map(([figure]) => figure);
  expect(runsNow(film, 'metric')).toMatch(now);
  if (under !== null)
    for (const figure of figures(runsNow(film, 'metric'))) expect(figures(shown)).not.toContain(figure);
});

test('a journal not set for the films wanted is told in the first line of a good run, and in no other', () => {
  expect(runsNow(runs, 'metric', false)).toMatch(
    /^On oil, not set as wanted: shallow film 3\.37 µm cold, 2\.56 µm warm\.$/,
  );
  for (const [, changed] of CASES.slice(2)) {
    const film = { ...runs, ...changed };
    expect(runsNow(film, 'metric', false)).toBe(runsNow(film, 'metric'));
  }
});

test('what stands below tells what would part the surfaces, or how far beyond that it is', () => {
  const under = (changed: Partial<FilmReport>) => underNow({ ...runs, ...changed }, 'metric');
  expect(under({})).toMatch(/^At worst that is [\d.]+ times what parts the surfaces, in the \w+ seat\.$/);
  expect(under({ guidance: { ...guidance!, filmRatio: 3.5 } })).toBe(
    'It takes 2.89 µm to part the surfaces; cold it is 3.37 µm, which is enough.',
  );
  expect(under({ guidance: { ...guidance!, filmRatio: 2 }, steady: null })).toMatch(
    /^It takes 5\.0\d µm to part the surfaces\.$/,
  );
  expect(under({ status: 'standing', guidance: null, leastFilm: null })).toBeNull();
});

test('a contact is said with its seat, pressed in by how much', () => {
  const contact = { seat: 'steep', film: -0.004, station: 2, angle: 90 };
  expect(runsNow({ ...runs, status: 'contact', load: null, contact }, 'metric')).toBe(
    'Held so, steep is 4.00 µm into its bush.',
  );
  expect(runsNow({ ...runs, status: 'contact', contact }, 'metric')).toBe(
    'No film carries it: metal touches in the steep seat.',
  );
});

test('what follows the hand is of the thinnest seat, and says about', () => {
  const seats = [
    { name: 'shallow', leastFilm: 0.004 },
    { name: 'steep', leastFilm: 0.002 },
  ] as RunFields['seats'];
  const fields = { status: 'found', seats } as RunFields;
  expect(runsNowLive(fields, 'metric')).toBe('Cold: steep film about 2.00 µm.');
  expect(runsNowLive({ ...fields, status: 'contact' }, 'metric')).toBe('Metal touches in the steep seat.');
  expect(runsNowLive({ ...fields, seats: [] }, 'metric')).toMatch(/outside its bush/);
});

test('why warm is another thing than cold is told with it', () => {
  const told = (changed: Partial<NonNullable<FilmReport['steady']>>) =>
    filmVerdict(design, { ...runs, steady: { ...steady!, ...changed } }, 'metric').sentences.find((sentence) =>
      sentence.startsWith('Warm, '),
    );
  expect(told({ journal: 40, bush: 30 })).toMatch(/less than cold: the oil is thinner, and the journal, the warmer,/);
  expect(told({ journal: 30, bush: 30 })).toMatch(/less than cold: the oil is thinner\.$/);
  expect(told({ leastFilm: 2 * runs.leastFilm! })).toMatch(/more than cold: the parts have grown so that it opens/);
});
