/** The verdict in words, for every kind of design: what it must say, and what it must not. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { Design } from '../../../src/design/definition.ts';
import { parseDesign } from '../../../src/design/parse.ts';
import { fitSection } from '../../../src/report/fit/section.ts';
import { fitVerdict } from '../../../src/report/fit/verdict.ts';

function demoOf(name: string): Design {
  const result = parseDesign(
    readFileSync(new URL(`../../../assets/designs/${name}.conepair.json`, import.meta.url), 'utf8'),
  );
  if (!result.ok) throw new Error(result.errors[0]!.message);
  return result.design;
}

function demo(name: string, change: (design: Design) => Design = (d) => d) {
  const design = change(demoOf(name));
  const { tone, headline, sentences } = fitVerdict(design, fitSection(design), 'metric');
  return { tone, text: [headline, ...sentences].join(' ') };
}

test('steep first: loose by what the shallow one stands clear, and the move for the film', () => {
  const { tone, text } = demo('steep-first');
  expect(tone).toBe('mend');
  expect(text).toMatch(/No position gives both their film: the cones stand 108\.2 µm wrong/);
  expect(text).toMatch(
    /the steep seat touches first all along its line, 24\.00 µm rearward of here: it stops the journal before the shallow seat is home, so the spindle is loose in that one\. There the shallow seat is still 7\.98 µm clear\./,
  );
  expect(text).toMatch(
    /beyond the 10\.26 µm the tolerances allow\. The Cut screen tells what to take off which surface\./,
  );
  expect(text).toMatch(/20\.46 µm rearward of here \(9\.8° of the adjuster\); the shallow then has 8\.16 µm/);
});

test('what is so at first touch is said of there, wherever the journal stands', () => {
  const at = (position: number) => demo('steep-first', (d) => ({ ...d, position })).text;
  const { firstPosition, seats } = fitSection(demoOf('steep-first'));
  expect(at(firstPosition!)).toMatch(/touches first all along its line, where it stands now: it stops/);
  expect(at(seats[1]!.positionForTarget!)).toMatch(/touches first all along its line, 3\.54 µm rearward of here: it/);
  // Past it nothing goes home any more, least of all noseward.
  expect(at(-0.1)).toMatch(/The steep seat touched first all along its line, 96\.\d\d? µm noseward of here: it stops/);
  expect(at(-0.1)).not.toMatch(/Going home|touches first/);
});

test('a seat that was loose at first touch is loose no more once it is pressed on', () => {
  const { seats } = fitSection(demoOf('steep-first'));
  const at = (position: number) => demo('steep-first', (d) => ({ ...d, position })).text;
  const touches = seats[0]!.seatPosition!;
  expect(at(touches + 0.002)).toMatch(/so the spindle is loose in that one/);
  for (const past of [0, 0.002]) expect(at(touches - past)).not.toMatch(/loose/);
});

test('shallow first: wedges', () => {
  const { text } = demo('shallow-first');
  expect(text).toMatch(/the shallow seat touches first .* wedges and sticks/);
  expect(text).not.toMatch(/loose/);
});

test('a shallow cone with little friction does not stick', () => {
  const { text } = demo('shallow-first', (d) => ({ ...d, friction: 0.04 }));
  expect(text).not.toMatch(/wedges/);
});

test.each(['correct', 'rear-bearing', 'opposed-cones'])('%s: good, and nothing is called loose', (name) => {
  const { tone, text } = demo(name);
  expect(tone).toBe('good');
  expect(text).not.toMatch(/loose|wedges|No one position|0\.0°/);
});

test('a worn bell mouth and a mismatch are uneven, true cones are not', () => {
  expect(demo('worn-bell-mouth').text).toMatch(
    /The shallow film is uneven: 2\.50 µm where it is least, 14\.50 µm where it is greatest/,
  );
  expect(demo('half-angle-mismatch').text).toMatch(/The shallow film is uneven/);
  expect(demo('worn-bell-mouth').tone).toBe('mend');
  expect(demo('correct').text).not.toMatch(/uneven/);
});

test('how far it may go with every film right, from here or from elsewhere', () => {
  expect(demo('correct').text).toMatch(
    /It may go 0\.72 µm rearward or 0\.69 µm noseward of here with every film still within its tolerance/,
  );
  expect(demo('correct', (d) => ({ ...d, position: 0.01 })).text).toMatch(
    /Over 1\.41 µm of travel \(0\.7° of the adjuster\) every film is within its tolerance/,
  );
  expect(demo('steep-first').text).not.toMatch(/It may go|Over /);
});

test('opposed cones: end play', () => {
  expect(demo('opposed-cones').text).toMatch(
    /at 45\.0° it stops the journal without sticking\. There the rear seat is still 3\.85 µm clear; end play is 10\.07 µm\./,
  );
  expect(demo('opposed-cones').text).not.toMatch(/Cut screen/);
});

test('a mismatch says at which end it touches', () => {
  expect(demo('half-angle-mismatch', (d) => ({ ...d, seats: d.seats.slice(0, 1) })).text).toMatch(
    /touches first at its small end \(diameter/,
  );
});

test('pressed past the touch: stop, and by how much', () => {
  const { tone, text } = demo('steep-first', (d) => ({ ...d, position: -0.01 }));
  expect(tone).toBe('stop');
  expect(text).toMatch(/steep journal is 4\.24 µm into its bush/);
});

test('straight seats alone: no axial move closes them; too large: no axial move clears them', () => {
  const straight = (diameter: number) =>
    demo('correct', () => ({
      conepair: 1,
      seats: [
        {
          name: 'plain',
          journal: { halfAngle: 0, diameter, station: 0, from: -20, to: 0 },
          bush: { halfAngle: 0, diameter: 20, station: 0, from: -20, to: 0 },
        },
      ],
    }));
  expect(straight(19.99).text).toBe('No axial move makes any of these seats touch.');
  expect(straight(20.01).text).toMatch(/plain journal is 5\.00 µm into its bush here and no axial move clears it/);
});

test('in inches the films are tenths', () => {
  const result = parseDesign(
    readFileSync(new URL('../../../assets/designs/steep-first.conepair.json', import.meta.url), 'utf8'),
  );
  if (!result.ok) throw new Error('demo');
  const { sentences } = fitVerdict(result.design, fitSection(result.design), 'inch');
  expect(sentences.join(' ')).toMatch(/the shallow seat is still 3\.14 tenths clear/);
});

test('a film wanted that is too thin to part the surfaces as they turn: Run is to be believed, and only then', () => {
  const rough = { journal: 0.0008, bush: 0.0012 };
  const { text } = demo('correct', (d) => ({ ...d, run: { ...d.run!, roughness: rough } }));
  // three times the two together, root of squares: 3·√(0.8² + 1.2²) µm
  expect(text).toMatch(/film wanted in the shallow and steep seats is thinner than the 4\.33 µm .* believe Run/);
  expect(demo('correct').text).not.toMatch(/believe Run/);
  const still = demo('correct', ({ run: _, ...d }) => d);
  expect(still.text).not.toMatch(/believe Run/);
});
