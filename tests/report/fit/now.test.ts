import { describe, expect, test } from 'vitest';
import { DEMOS } from '../../../src/app/state/demos.ts';
import type { Design } from '../../../src/design/definition.ts';
import { fineText } from '../../../src/design/units.ts';
import { nextLine, ratioSentence, standsNow, touchingNow } from '../../../src/report/fit/now.ts';
import { fitSection } from '../../../src/report/fit/section.ts';

const demo = (name: string) => DEMOS.find(({ file }) => file.startsWith(name))!.design;
const steepFirst = demo('steep-first');
const at = (design: Design, position: number, pulled: string[] | null = null, system: 'metric' | 'inch' = 'metric') => {
  const placed = { ...design, position };
  return standsNow(placed, fitSection(placed), system, pulled);
};
const touch = fitSection(steepFirst).firstPosition!;

describe('what is so now', () => {
  test('the touch is announced, with how far the other stands off', () => {
    expect(at(steepFirst, touch)).toBe('Steep touches. Shallow stands 7.98 µm off.');
    expect(at(steepFirst, touch, null, 'inch')).toMatch(/^Steep touches\. Shallow stands 3\.1\d tenths off\.$/);
    expect(touchingNow(fitSection({ ...steepFirst, position: touch })).map(({ name }) => name)).toEqual(['steep']);
    expect(touchingNow(fitSection({ ...steepFirst, position: touch + 1e-4 }))).toEqual([]);
  });

  test('beyond it, how far into the bush; before it, what each film is to its seat', () => {
    expect(at(steepFirst, touch - 0.001)).toBe('Steep touched and is 0.71 µm into its bush: metal must give.');
    expect(at(steepFirst, 0.02)).toBe('Shallow 9.24 µm, too thick; steep 16.97 µm, too thick.');
    const { positionForTarget } = fitSection(steepFirst).seats.find(({ name }) => name === 'steep')!;
    expect(at(steepFirst, positionForTarget!)).toMatch(/^Shallow 8\.16 µm, too thick; steep 2\.50 µm, as wanted\.$/);
    expect(at(steepFirst, touch + 0.0005)).toMatch(/steep 0\.35 µm, too thin/);
  });

  test('all films as wanted', () => {
    expect(at(demo('correct'), demo('correct').position ?? 0)).toBe('Both films are as wanted.');
  });

  test('a film that is right only where it is least is not called as wanted', () => {
    const bell = demo('worn-bell-mouth');
    const fit = fitSection(bell);
    const said = at(bell, bell.position ?? 0);
    const thick = fit.seats.filter(({ greatestFilm }, i) => {
      const film = bell.seats[i]!.film;
      return film && greatestFilm! > film.target + (film.tolerance ?? 0) + 1e-4;
    });
    expect(thick.map(({ name }) => name)).toEqual(['shallow']);
    expect(said).toBe(
      `Shallow is as wanted only in part: up to ${fineText(thick[0]!.greatestFilm!, 'metric')}, too thick.`,
    );
    // Nowhere is all called right of which some is not.
    for (const { design } of DEMOS)
      for (const { positionForTarget } of fitSection(design).seats) {
        const placed = { ...design, position: positionForTarget ?? 0 };
        const { seats } = fitSection(placed);
        const all = seats.every(({ leastFilm, greatestFilm }, i) => {
          const film = design.seats[i]!.film;
          const off = (h: number | null) => Math.abs(h! - film!.target) > (film!.tolerance ?? 0) + 1.01e-4;
          return !film || (!off(leastFilm) && !off(greatestFilm));
        });
        if (!all) expect(at(placed, placed.position)).not.toMatch(/films are as wanted|has its film/);
      }
  });

  test('with the nose pulled it speaks of that, not of the journal on its axis', () => {
    expect(at(steepFirst, 0.02, ['shallow', 'steep'])).toBe('Nose pulled aside until shallow and steep touch.');
    expect(at(steepFirst, 0.02, ['steep'])).toBe('Nose pulled aside until steep touches.');
    expect(at(steepFirst, 0.02, [])).toBe('Nose pulled aside.');
  });

  test('a journal clear of its bush; many seats are counted', () => {
    expect(at(steepFirst, 200)).toBe('Shallow and steep stand outside their bushes.');
    const many: Design = {
      ...steepFirst,
      seats: [0, 1].flatMap((k) => steepFirst.seats.map((seat) => ({ ...seat, name: `${seat.name} ${k}` }))),
    };
    expect(at(many, 0.02)).toBe('0 of 4 films as wanted.');
  });

  test('at most three numbers, whatever stands there', () => {
    for (const { design } of DEMOS)
      for (const move of [-0.05, -0.01, 0, 0.01, 0.05]) {
        const said = at(design, (design.position ?? 0) + move);
        expect(said.match(/\d+(\.\d+)?/g)?.length ?? 0, said).toBeLessThanOrEqual(3);
        expect(said).not.toMatch(/undefined|null|NaN/);
      }
  });
});

test('which touches first, and after how far, while every seat is open; how much faster its film changes', () => {
  const said = (design: Design, position: number) => nextLine(fitSection({ ...design, position }), 'metric');
  expect(said(steepFirst, touch + 0.0123)).toBe(
    'Steep touches first, 12.30 µm rearward; its film changes 13.5 times as fast.',
  );
  // At the touch and beyond it the first line says which; what is left is the other.
  const ratio = ratioSentence(fitSection(steepFirst));
  expect(said(steepFirst, touch)).toBe(ratio);
  // The shallow one goes on closing by the sine of 3°: 0.05 µm of its 7.98 in 1 µm more, and touches at its own place.
  const home = fitSection(steepFirst).seats.find(({ name }) => name === 'shallow')!.seatPosition!;
  expect(said(steepFirst, touch - 0.001)).toBe(`Shallow stands 7.93 µm off. ${ratio}`);
  expect(said(steepFirst, home)).toBe(`Shallow touches. ${ratio}`);
  expect(said(steepFirst, home - 0.01)).toBe(`Shallow is pressed in too. ${ratio}`);
  // The slower one touches first: whose film is the faster is named.
  const shallow = demo('shallow-first');
  const first = fitSection(shallow).firstPosition!;
  expect(said(shallow, first + 0.01)).toMatch(/^Shallow touches first, 10\.00 µm rearward\. The steep film changes /);
  for (const { design } of DEMOS) {
    const fit = fitSection(design);
    const next = nextLine(fit, 'metric');
    const named = /^(.*) touch(?:es first| together), /.exec(next)?.[1];
    const open = fit.seats.every(({ leastFilm }) => leastFilm !== null && leastFilm > 1e-9);
    // Told as the journal is moved there: then that seat, and no other, touches.
    if (!open || fit.firstPosition === null) expect(named).toBeUndefined();
    else {
      const there = touchingNow(fitSection({ ...design, position: fit.firstPosition })).map(({ name }) => name);
      expect(named?.toLowerCase()).toBe(there.join(' and ').toLowerCase());
    }
  }
});

test('how much faster the one film changes: sin 45° to sin 3°', () => {
  const times = Math.sin(Math.PI / 4) / Math.sin(Math.PI / 60);
  expect(ratioSentence(fitSection(steepFirst))).toBe(
    `The steep film changes ${times.toPrecision(3)} times as fast as the shallow one.`,
  );
  expect(ratioSentence(fitSection({ ...steepFirst, seats: steepFirst.seats.slice(0, 1) }))).toBe('');
});
