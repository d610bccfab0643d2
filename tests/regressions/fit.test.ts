/** Designs of which the fit once said what is not so. */
import { expect, test } from 'vitest';
import type { Design, Seat } from '../../src/design/definition.ts';
import { firstTouch } from '../../src/engine/contact/firstTouch.ts';
import { fitSection } from '../../src/report/fit/section.ts';
import { fitVerdict } from '../../src/report/fit/verdict.ts';
import { playSection } from '../../src/report/play/section.ts';
import { playVerdict } from '../../src/report/play/verdict.ts';
import { heldPosition } from '../../src/report/sheet/heldPosition.ts';
import { regression } from './read.ts';

function said(design: Design) {
  const fit = fitSection(design);
  const { tone, headline, sentences } = fitVerdict(design, fit, 'metric');
  return { fit, tone, headline, text: [headline, ...sentences].join(' ') };
}

/** A true cone whose film is the one wanted with the journal at `at` (mm). */
function cone(name: string, halfAngle: number, at: number, film: Seat['film']): Seat {
  const a = (halfAngle * Math.PI) / 180;
  const bush = { halfAngle, diameter: 30, station: 0, from: -5, to: 5 };
  // h = Δr·cos a + z·sin a
  const gap = ((film?.target ?? 0) - at * Math.sin(a)) / Math.cos(a);
  return { name, bush, journal: { ...bush, diameter: 30 - 2 * gap, from: -5.5, to: 5.5 }, ...(film && { film }) };
}
const straight = (name: string, clearance: number, film?: Seat['film']): Seat => ({
  name,
  bush: { halfAngle: 0, diameter: 20, station: -60, from: -70, to: -50 },
  journal: { halfAngle: 0, diameter: 20 - 2 * clearance, station: -60, from: -70, to: -50 },
  ...(film && { film }),
});
const film = { target: 0.0025, tolerance: 0.0005 };

test('a straight seat out of its tolerance: no position is permitted, and which seat it is is said', () => {
  const { fit, tone, headline, text } = said(regression('straight-seat-out-of-tolerance'));
  expect(fit.permitted).toBeNull();
  expect(tone).toBe('mend');
  expect(headline).toBe(
    'No position gives every seat its film: the rear film is 50.00 µm, 46.00 µm more than its tolerance allows, and no axial move changes it.',
  );
  expect(text).not.toMatch(/within its tolerance/);
  expect(heldPosition(regression('straight-seat-out-of-tolerance'))).toEqual({ position: -0.0095, good: false });
});

test.each([
  [0.0034, true],
  [0.0036, false],
  [0.0026, true],
  [0.0024, false],
])(
  'a straight seat with %d mm: positions are permitted where its film is within its tolerance (%s)',
  (clearance, good) => {
    const { fit } = said({
      conepair: 1,
      seats: [cone('front', 3, 0.01, film), straight('rear', clearance, { target: 0.003, tolerance: 0.0005 })],
      position: 0.01,
    });
    expect(fit.permitted !== null).toBe(good);
  },
);

test('a straight seat whose profile closes it at one end of the stretch narrows what is permitted to where its film is right', () => {
  const rear = straight('rear', 0.003, { target: 0.003, tolerance: 0.0005 });
  // Two bumps of 0.4 µm, 12 µm apart; going noseward they come over each other: 0.5 µm in all with 7.5 µm between them.
  const bump = (at: number): [number, number][] => [
    [at - 0.01, 0],
    [at, 0.0004],
    [at + 0.01, 0],
  ];
  rear.bush.profile = bump(-60);
  rear.journal.profile = bump(-60.012);
  const design: Design = { conepair: 1, seats: [cone('front', 3, 0, film), rear] };
  const { permitted } = fitSection(design);
  const free = fitSection({ ...design, seats: design.seats.slice(0, 1) }).permitted!;
  expect(permitted).not.toBeNull();
  for (const end of [permitted!.from, permitted!.to]) {
    const [front, back] = fitSection({ ...design, position: end }).seats;
    expect(Math.abs(front!.leastFilm! - 0.0025)).toBeLessThanOrEqual(0.0005 + 1e-9);
    expect(Math.abs(back!.leastFilm! - 0.003)).toBeLessThanOrEqual(0.0005 + 1e-9);
  }
  expect(permitted!.to).toBeCloseTo(0.0045, 6);
  expect(permitted!.from).toBeCloseTo(free.from, 12);
});

test('a seat that wants no film but is pressed in shuts the positions where it is', () => {
  const free = said({ conepair: 1, seats: [cone('front', 3, 0, film)] }).fit.permitted!;
  const { fit } = said({ conepair: 1, seats: [cone('front', 3, 0, film), cone('stop', 45, 0.002, undefined)] });
  expect(fit.permitted!.from).toBeCloseTo(0.002, 9);
  expect(fit.permitted!.to).toBeCloseTo(free.to, 9);
  const nose = said({ conepair: 1, seats: [cone('front', 3, 0, film), cone('stop', -45, 0.002, undefined)] });
  expect(nose.fit.permitted!.to).toBeCloseTo(0.002, 9);
});

test('three cones, two that agree and one that does not: no praise, and how far off which one is', () => {
  const seats = [cone('shallow', 3, 0.01, film), cone('steep', 45, 0.0101, film), cone('rear', 10, 0.05, film)];
  const { fit, tone, headline, text } = said({ conepair: 1, seats, position: 0.06 });
  expect(fit.relations.map(({ between }) => between.join(' '))).toEqual([
    'shallow steep',
    'shallow rear',
    'steep rear',
  ]);
  expect(fit.relation).toEqual(fit.relations[0]);
  expect(fit.relations[1]!.error).toBeCloseTo(-0.04, 9);
  expect(fit.relations[2]!.allowance).toBeCloseTo(0.0005 / Math.sin(Math.PI / 4) + 0.0005 / Math.sin(Math.PI / 18), 12);
  expect(fit.permitted).toBeNull();
  expect(tone).toBe('mend');
  expect(headline).toBe(
    'No one position gives every seat its film: the shallow and steep seats agree, the rear seat does not.',
  );
  // from 0.05 less its own 2.88 µm to the 0.71 µm beyond 10.1 of the steep one
  expect(text).toContain(
    'The rear seat wants the journal 36.31 µm further noseward than the others allow. The Cut screen tells',
  );
  expect(text).not.toMatch(/agree well enough|some position/);
});

test('the first two disagree, the others agree: the odd one out is named', () => {
  const { headline, text } = said({
    conepair: 1,
    seats: [
      cone('a', 3, 0.09, film),
      cone('b', 45, 0.01, film),
      cone('c', 10, 0.01, film),
      cone('d', 20, 0.0102, film),
    ],
    position: 0.2,
  });
  expect(headline).toBe('No one position gives every seat its film: the b, c and d seats agree, the a seat does not.');
  expect(text).toMatch(/The a seat wants the journal 69\.\d\d µm further noseward than the others allow/);
});

test('three cones of which no two agree; three that do', () => {
  const apart = said({
    conepair: 1,
    seats: [cone('a', 20, 0, film), cone('b', 30, 0.05, film), cone('c', 45, -0.05, film)],
    position: 0.06,
  });
  expect(apart.headline).toBe('No one position gives every seat its film: no two of the 3 cones agree.');
  expect(apart.text).toMatch(/The c seat wants the journal 4\d\.\d\d µm further rearward than the a seat allows/);
  const together = said({
    conepair: 1,
    seats: [cone('a', 20, 0, film), cone('b', 30, 0, film), cone('c', 45, 0, film)],
    position: 0.05,
  });
  expect(together.headline).toBe(
    'The cones agree well enough: some position gives the a, b and c seats their film; it is not this one.',
  );
  expect(together.fit.permitted).not.toBeNull();
});

test('a tolerance beyond the film itself allows no interference', () => {
  const loose = { target: 0.001, tolerance: 0.01 };
  const { fit, headline } = said({
    conepair: 1,
    seats: [cone('a', 45, 0, loose), cone('b', 45, 0.02, { target: 0.001, tolerance: 0 })],
    position: 0.3,
  });
  expect(fit.permitted).toBeNull();
  expect(headline).toMatch(/^No position gives both/);
});

test('two stops that overlap: it cannot go in, whatever else', () => {
  const design = regression('stops-overlap');
  const { fit, tone, text } = said(design);
  expect(fit.endPlay).toBeLessThan(-29);
  expect(tone).toBe('stop');
  expect(text).toBe(
    'The shallow journal is 69.73 µm into its bush here, and no position clears every seat. The two stops overlap by 29.36537 mm, so it cannot go in.',
  );
  const play = playSection(design)!;
  expect(playVerdict(design, play, fitSection(design), 'metric')).toEqual({
    tone: 'stop',
    headline: 'The spindle does not go in: its two stops overlap by 29.36546 mm.',
    sentences: [],
  });
});

test('a straight seat too tight where the cone would touch: the spindle does not go home', () => {
  const rear = straight('rear', -0.005);
  const design: Design = { conepair: 1, seats: [cone('front', 3, 0.01, film), rear], position: 30 };
  const long: Design = {
    ...design,
    seats: [{ ...design.seats[0]!, journal: { ...design.seats[0]!.journal, from: -5.5, to: 5.5 } }, rear],
  };
  const { fit, tone, headline, text } = said(long);
  expect(fit.blocked).toEqual(['rear']);
  expect(fit.filmsAtFirst.rear).toBeCloseTo(-0.005, 9);
  expect(tone).toBe('stop');
  expect(headline).toBe(
    'The spindle does not go home: where the front seat would touch, the rear journal is 5.00 µm into its bush.',
  );
  expect(text).not.toMatch(/wedges|stops the journal/);
  const here = said({ ...long, position: 0 });
  expect(here.headline).toBe('The rear journal is 5.00 µm into its bush here and no axial move clears it.');
});

test('a straight ridge in the way of a cone still on its film: said beside the film', () => {
  const rear = straight('rear', 0.003);
  rear.bush.profile = [
    [-60.005, 0.002],
    [-60, 0],
  ];
  rear.journal.profile = [
    [-59.996, 0],
    [-59.99, 0.0025],
    [-59.984, 0],
  ];
  const { fit, text } = said({ conepair: 1, seats: [cone('front', 3, 0.01, film), rear], position: 0.01 });
  expect(fit.blocked).toEqual(['rear']);
  expect(text).toMatch(
    /Going home, the front seat would touch first all along its line, but there the rear journal is 1\.50 µm into its bush\./,
  );
});

test('a journal larger than its bush all along does not go in', () => {
  const bush = { halfAngle: 45, diameter: 20, station: 0, from: -5, to: 5 };
  expect(
    said({
      conepair: 1,
      seats: [{ name: 'a', bush, journal: { ...bush, diameter: 60, station: 40, from: 35, to: 45 } }],
    }).headline,
  ).toBe('The a journal is larger than its bush all along: it does not go in.');
});

test('a film without a number is touched nowhere, on lines that widen and on those that do not', () => {
  const line = (rise: number) => ({
    halfAngle: rise,
    z: Float64Array.of(0, 1, 2),
    r: Float64Array.of(1, 1 + rise, 1 + 0.5 * rise),
  });
  const widening = (rise: number) => ({ halfAngle: rise, z: Float64Array.of(0, 1), r: Float64Array.of(1, 1 + rise) });
  for (const make of [line, widening]) {
    expect(firstTouch(make(0.1), make(0.1), Number.NaN)).toBeNull();
    expect(firstTouch(make(0.1), make(0.1), 0)).not.toBeNull();
  }
});
