/** The print in words: each fault is named, and on the right part. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { Design, Seat, Surface } from '../../../src/design/definition.ts';
import { parseDesign } from '../../../src/design/parse.ts';
import { printSection } from '../../../src/report/print/section.ts';
import { printVerdict } from '../../../src/report/print/verdict.ts';

const surface: Surface = { halfAngle: 20, diameter: 30, station: -5, from: -10, to: 0 };
const cone = (journal: Partial<Surface> = {}, bush: Partial<Surface> = {}): Seat => ({
  name: 'cone',
  journal: { ...surface, ...journal },
  bush: { ...surface, ...bush },
});

const said = (...seats: Seat[]) => saidOf({ conepair: 1, seats, print: { thickness: 0.002 } });

function saidOf(design: Design) {
  const { tone, headline, sentences } = printVerdict(design, printSection(design)!, 'metric');
  const text = [headline, ...sentences].join(' ');
  expect(text).not.toMatch(/undefined|NaN|null|Infinity/);
  return { tone, headline, text };
}

test('a true pair prints all along', () => {
  expect(said(cone())).toMatchObject({
    tone: 'good',
    headline: 'With 2.00 µm of blue the cone seat prints along its whole length.',
  });
});

test.each<[RegExp, Partial<Surface>, Partial<Surface>]>([
  [
    /bare toward its large end, over about \w+ \w+ of its length: the film opens evenly along it, so the journal is more nearly straight than the bush/,
    { halfAngle: 19.95 },
    {},
  ],
  [
    /bare toward its small end, over about \w+ \w+ of its length: the film opens evenly along it, so the journal tapers more than the bush/,
    { halfAngle: 20.05 },
    {},
  ],
  [
    /bare between its two ends over about \w+ \w+ of its length: one of the two lines is hollow/,
    {},
    {
      profile: [
        [-10, 0],
        [-5, -0.008],
        [0, 0],
      ],
    },
  ],
  [
    /a band part way along: one of the two lines is barrelled/,
    {},
    {
      profile: [
        [-10, -0.02],
        [-5, 0],
        [0, -0.02],
      ],
    },
  ],
])('%s', (words, journal, bush) => {
  const { tone, text } = said(cone(journal, bush));
  expect(tone).toBe('mend');
  expect(text).toMatch(words);
});

const lobes = [{ count: 3, amplitude: 0.004, phase: 90 }];

test('a lobed journal and a lobed bush are told apart by turning', () => {
  expect(said(cone({ lobes })).text).toMatch(
    /in 3 patches round: out of round\. Turned, the patches stay on the journal/,
  );
  expect(said(cone({}, { lobes })).text).toMatch(
    /in 3 patches round: out of round\. Turned, the patches stay in the bush/,
  );
});

test('a seat that stays clean is named', () => {
  const steep: Seat = {
    name: 'steep',
    journal: { halfAngle: 45, diameter: 40, station: 2, from: 2, to: 5 },
    bush: { halfAngle: 45, diameter: 40.02, station: 2, from: 2, to: 5 },
  };
  expect(said(cone(), steep)).toMatchObject({ tone: 'mend', headline: 'The cone seat prints; the steep stays clean.' });
});

test('axes that cross', () => {
  const plain = (diameter: number): Surface => ({ halfAngle: 0, diameter, station: 0, from: -71, to: -70 });
  const rear: Seat = {
    name: 'rear',
    journal: { ...plain(19.999), from: -85, to: -55 },
    bush: { ...plain(20), lobes: [{ count: 1, amplitude: 0.03, phase: 0 }] },
  };
  expect(said(cone({ from: -11, to: 1 }), rear).text).toMatch(
    /Cone: .* at the small end on one side and at the large end on the other: the two axes cross/,
  );
});

test('no stop, no print', () => {
  const plain = (diameter: number): Surface => ({ halfAngle: 0, diameter, station: 0, from: -20, to: 0 });
  expect(said({ name: 'plain', journal: plain(19.99), bush: plain(20) })).toMatchObject({
    tone: 'stop',
    headline: 'No print: nothing stops the journal going home.',
  });
});

/** A demo blued this thick (mm), all its seats or one alone. */
function demo(name: string, thickness: number, alone?: string) {
  const result = parseDesign(
    readFileSync(new URL(`../../../assets/designs/${name}.conepair.json`, import.meta.url), 'utf8'),
  );
  if (!result.ok) throw new Error(result.errors[0]!.message);
  return saidOf({
    ...result.design,
    seats: result.design.seats.filter((seat) => alone === undefined || seat.name === alone),
    print: { thickness },
  });
}

test.each<[string, number, RegExp, RegExp]>([
  [
    'worn-bell-mouth',
    0.005,
    /but the shallow is bare toward its large end, over about a fifth of its length\./,
    /79 % blue; .*worn at its mouth.* 2\.91 µm at the small end and 14\.31 µm at the large end/,
  ],
  [
    'worn-bell-mouth',
    0.01,
    /but the shallow is bare toward its large end, over about a twentieth/,
    /94 % blue; .*worn at its mouth/,
  ],
  [
    'half-angle-mismatch',
    0.01,
    /but the shallow is bare toward its large end, over about a tenth/,
    /90 % blue; .*more nearly straight than the bush/,
  ],
])('%s with %d mm of blue: the bare end is named, thick blue or not', (name, thickness, headline, meaning) => {
  const verdict = demo(name, thickness);
  expect(verdict.tone).toBe('mend');
  expect(verdict.headline).toMatch(headline);
  expect(verdict.text).toMatch(meaning);
});

test('the good pair prints whole with blue thicker than its films, and its overhanging ends do not count', () => {
  expect(demo('correct', 0.005)).toMatchObject({
    tone: 'good',
    headline: 'With 5.00 µm of blue every seat prints along its whole length.',
  });
});

test('the worn bush tried with the shallow seat alone: worn at its mouth, though a thin blue is bare at both ends', () => {
  expect(demo('worn-bell-mouth', 0.0024, 'shallow').text).toMatch(
    /the shallow seat prints, but is bare toward its large end, over about a fifth .* worn at its mouth/,
  );
  expect(demo('worn-bell-mouth', 0.0003, 'shallow').text).toMatch(
    /a band part way along: it stands much further off at the large end, so the bush is worn at its mouth/,
  );
  expect(demo('correct', 0.0024, 'shallow').tone).toBe('good');
});
