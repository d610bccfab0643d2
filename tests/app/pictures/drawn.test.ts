/**
 * The honest picture: from the drawn geometry alone, parts touch, cross or stand clear exactly when they do in
 * the solver, at every factor. Distances are taken between the drawn chains by plain segment geometry.
 */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type DrawnSeat, drawnAt, drawnPair } from '../../../src/app/pictures/drawn.ts';
import { groundOf } from '../../../src/app/pictures/drawnMap.ts';
import { factorFor, sunkFactor } from '../../../src/app/pictures/factor.ts';
import { landmarks, reachOf } from '../../../src/app/pictures/journalMove.ts';
import { leaningOf } from '../../../src/app/pictures/leaning.ts';
import { DEMOS } from '../../../src/app/state/demos.ts';
import { filmAlong } from '../../../src/engine/contact/film.ts';
import { positionForFilm, seatLines } from '../../../src/engine/contact/fit.ts';
import { reachToward } from '../../../src/engine/play/reach.ts';
import { heldAt } from '../../../src/engine/play/shake.ts';
import { filmAt } from '../../../src/engine/spindle/height.ts';
import type { Pose } from '../../../src/engine/spindle/pose.ts';
import { spindleOf } from '../../../src/engine/spindle/rigid.ts';
import { metres, toSeat, toSeats } from '../../../src/report/convert.ts';
import { fitSection } from '../../../src/report/fit/section.ts';
import { cross, drawnMeeting } from './meeting.ts';

const halfAngle = fc.oneof(fc.double({ min: 1, max: 12, noNaN: true }), fc.double({ min: 30, max: 60, noNaN: true }));
const anyPair = fc.record({
  halfAngle,
  mismatch: fc.double({ min: -0.05, max: 0.05, noNaN: true }),
  clearance: fc.double({ min: -0.01, max: 0.03, noNaN: true }),
  crown: fc.array(fc.double({ min: -0.003, max: 0.003, noNaN: true }), { minLength: 3, maxLength: 3 }),
  bell: fc.array(fc.double({ min: -0.003, max: 0.003, noNaN: true }), { minLength: 3, maxLength: 3 }),
  lean: fc.constantFrom(1, -1),
  factor: fc.double({ min: 0, max: 3.7, noNaN: true }).map((power) => 10 ** power),
  away: fc.double({ min: 1e-4, max: 0.05, noNaN: true }),
});

test('drawn parts touch, cross and stand clear exactly when they do in the solver, at every factor', () => {
  fc.assert(
    fc.property(anyPair, (pair) => {
      const profile = (heights: number[], stations: number[]) =>
        stations.map((z, i): [number, number] => [z, heights[i]!]);
      const seat = seatLines(
        toSeat({
          name: 'seat',
          journal: {
            halfAngle: pair.lean * (pair.halfAngle + pair.mismatch),
            diameter: 40,
            station: 0,
            from: -6,
            to: 5,
            profile: profile(pair.crown, [-4, 0, 3]),
          },
          bush: {
            halfAngle: pair.lean * pair.halfAngle,
            diameter: 40 + pair.clearance,
            station: 0,
            from: -5,
            to: 5.5,
            profile: profile(pair.bell, [-3, 1, 4]),
          },
        }),
      );
      const touch = positionForFilm(seat, 0);
      fc.pre(touch !== null);
      const meet = (position: number) => {
        const drawn = drawnPair([seat], position, pair.factor);
        const [one] = drawn.seats;
        return { ...drawnMeeting(one!.bush, one!.journal), factor: drawn.factor };
      };
      const away = (pair.lean * pair.away) / 1000;
      const at = meet(touch!);
      expect(at.least).toBeLessThan(1e-11 * at.factor);
      const clear = meet(touch! + away);
      expect(clear.overlap).toBe(false);
      expect(clear.least).toBeGreaterThan(1e-10);
      expect(meet(touch! - away).overlap).toBe(true);
    }),
    { numRuns: 400, seed: 7 },
  );
});

test('a journal pulled aside, lobed or not, touches in the drawing at the angles where it does in the solver, and nowhere else', () => {
  let touches = 0;
  fc.assert(
    fc.property(
      anyPair,
      fc.record({
        toward: fc.double({ min: 0, max: 6.28, noNaN: true }),
        station: fc.double({ min: -0.03, max: 0.03, noNaN: true }),
        lobes: fc.double({ min: 0, max: 0.0008, noNaN: true }),
        angle: fc.double({ min: 0, max: 6.28, noNaN: true }),
      }),
      (pair, { toward, station, lobes, angle }) => {
        const profile = (heights: number[], stations: number[]) =>
          stations.map((z, i): [number, number] => [z, heights[i]!]);
        const round = lobes > 0.0002 ? [{ count: 3, amplitude: lobes, phase: 20 }] : [];
        const journal = {
          halfAngle: pair.lean * (pair.halfAngle + pair.mismatch),
          diameter: 40,
          station: 0,
          from: -6,
          to: 5,
          profile: profile(pair.crown, [-4, 0, 3]),
          lobes: round,
        };
        const bush = {
          halfAngle: pair.lean * pair.halfAngle,
          diameter: 40 + pair.clearance,
          station: 0,
          from: -5,
          to: 5.5,
          profile: profile(pair.bell, [-3, 1, 4]),
          lobes: round.map((lobe) => ({ ...lobe, count: 2 })),
        };
        const seats = toSeats({ conepair: 1, seats: [{ name: 'seat', journal, bush }] });
        const lines = seatLines(seats[0]!);
        const touch = positionForFilm(lines, 0);
        fc.pre(touch !== null);
        const position = touch! + pair.lean * (0.00001 + pair.away / 1000);
        const spindle = spindleOf(seats, ['x', 'y', 'tiltX', 'tiltY']);
        const reach = reachToward(heldAt(spindle, position), station, 0.05 * Math.cos(toward), 0.05 * Math.sin(toward));
        fc.pre(reach.status === 'solved' && reach.contacts.length > 0);
        if (reach.status !== 'solved') return;
        const sectionAt = (pose: Pose, at: number) => {
          // By the map alone: how the journal slides along itself is rigidJournal.test.ts's.
          const ground = { ...groundOf([lines]), home: position };
          const drawn = drawnPair([lines], position, pair.factor, leaningOf(seats, pose), ground);
          const [one] = drawn.at!(at);
          return {
            ...drawnMeeting(one!.bush, one!.journal),
            factor: drawn.factor,
            film: Math.min(...one!.film.map((place) => place.film)),
          };
        };
        // The least film of that half section, from the solver's own formula.
        const chain = filmAlong(lines.gap, position);
        const solved = (pose: Pose, at: number) =>
          Math.min(
            ...Array.from({ length: chain.count }, (_, i) =>
              filmAt(spindle.seats[0]!, chain.film[i]!, chain.u[i]!, at, pose),
            ),
          );
        for (const contact of reach.contacts) {
          touches++;
          const at = sectionAt(reach.pose, contact.angle);
          expect(at.film).toBeCloseTo(solved(reach.pose, contact.angle), 13);
          expect(at.least).toBeLessThan(1e-10 * at.factor);
          const past: Pose = {
            ...reach.pose,
            x: reach.pose.x + 1e-6 * Math.cos(contact.angle),
            y: reach.pose.y + 1e-6 * Math.sin(contact.angle),
          };
          expect(sectionAt(past, contact.angle).overlap).toBe(true);
        }
        const film = solved(reach.pose, angle);
        const there = sectionAt(reach.pose, angle);
        expect(there.film).toBeCloseTo(film, 13);
        if (film > 1e-9) {
          expect(there.overlap).toBe(false);
          expect(there.least).toBeGreaterThan(1e-10);
        }
      },
    ),
    { numRuns: 200, seed: 11 },
  );
  expect(touches).toBeGreaterThan(200);
});

test('the gap drawn square to the line is the film times the factor, for a shallow and for a steep seat', () => {
  for (const angle of [3, 45]) {
    const seat = seatLines(
      toSeat({
        name: 'seat',
        journal: { halfAngle: angle, diameter: 40, station: 0, from: -6, to: 6 },
        bush: { halfAngle: angle, diameter: 40.005, station: 0, from: -5, to: 5 },
      }),
    );
    const drawn = drawnPair([seat], 5e-6, 500);
    const { bush, film } = drawn.seats[0]!;
    const [from, to] = [bush[0]!, bush[1]!];
    const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
    for (const place of film)
      expect(Math.abs(cross(from, to, place.journal)) / length).toBeCloseTo(drawn.factor * place.film, 9);
  }
});

test('a factor that does not fit is cut to one that does, and says so', () => {
  const seat = seatLines(
    toSeat({
      name: 'seat',
      journal: { halfAngle: 3, diameter: 20, station: 0, from: -6, to: 6 },
      bush: { halfAngle: 3, diameter: 20.02, station: 0, from: -5, to: 5 },
    }),
  );
  const drawn = drawnPair([seat], 0, 5000);
  expect(drawn.factor).toBeLessThan(1000);
  expect(Math.min(...drawn.seats[0]!.journal.map(([, r]) => r))).toBeGreaterThan(0);
});

test('with one factor a film that shrinks is drawn shrinking, one that grows is drawn growing, wherever the journal goes', () => {
  const thickness = ({ film }: DrawnSeat) =>
    Math.min(
      ...film.map(
        ({ bush, journal, film: h }) => Math.sign(h) * Math.hypot(bush[0] - journal[0], bush[1] - journal[1]),
      ),
    );
  const least = ({ film }: DrawnSeat) => Math.min(...film.map(({ film: h }) => h));
  let compared = 0;
  for (const { design } of DEMOS) {
    const seats = toSeats(design).map(seatLines);
    const fit = fitSection(design);
    const from = reachOf(fit.position, landmarks(fit)).map(metres) as [number, number];
    const factor = factorFor(seats, metres(fit.position), 400, null, from);
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1000 }), fc.integer({ min: 0, max: 1000 }), (a, b) => {
        const at = (share: number) => drawnAt(seats, from[0] + ((from[1] - from[0]) * share) / 1000, factor);
        const [one, other] = [at(a), at(b)];
        expect(one.factor).toBe(factor);
        one.seats.forEach((seat, i) => {
          const next = other.seats[i]!;
          const [change, drawn] = [least(next) - least(seat), thickness(next) - thickness(seat)];
          if (seat.film.length === 0 || next.film.length === 0 || Math.abs(change) < 1e-9) return;
          compared++;
          expect(Math.sign(drawn), `${design.title} ${seat.name}`).toBe(Math.sign(change));
        });
      }),
      { numRuns: 30, seed: 3 },
    );
    for (const place of from)
      for (const { journal } of drawnAt(seats, place, factor).seats)
        expect(Math.min(...journal.map(([, r]) => r))).toBeGreaterThan(0);
  }
  expect(compared).toBeGreaterThan(200);
});

test('held while it is pressed in ever deeper, the journal stays in sight; all that closes or sinks is drawn so', () => {
  for (const { design } of DEMOS) {
    const seats = toSeats(design).map(seatLines);
    const ground = groundOf(seats);
    const stations = seats.flatMap(({ bush }) => [bush.z[0]!, bush.z[bush.z.length - 1]!]);
    const length = Math.max(...stations) - Math.min(...stations);
    // Of opposed cones one opens as the other closes: no factor but a constant one is honest there.
    if (ground.maps.some(({ sin }) => sin < 0)) {
      expect(sunkFactor(seats, ground.home - 1e-3, 400, ground)).toBe(400);
      continue;
    }
    fc.assert(
      fc.property(
        fc.double({ min: 10, max: 400, noNaN: true }),
        fc.double({ min: 0, max: 5e-4, noNaN: true }),
        fc.double({ min: 1e-7, max: 1e-4, noNaN: true }),
        (held, gone, more) => {
          const at = (off: number) => {
            const position = ground.home - off;
            return drawnAt(seats, position, sunkFactor(seats, position, held, ground), null, ground);
          };
          const [one, deeper] = [at(gone), at(gone + more)];
          for (const { moved } of [one, deeper]) expect(-moved).toBeLessThanOrEqual(0.6 * length * (1 + 1e-9));
          // What fits is drawn as it is held.
          if (held * gone <= 0.4 * length) expect(one.factor).toBe(held);
          expect(-deeper.moved).toBeGreaterThanOrEqual(-one.moved * (1 - 1e-12));
          one.seats.forEach((seat, i) => {
            const next = deeper.seats[i]!;
            if (seat.film.length === 0 || next.film.length === 0) return;
            const least = ({ film }: DrawnSeat) => Math.min(...film.map((place) => place.film));
            expect(least(next) * deeper.factor).toBeLessThanOrEqual(least(seat) * one.factor + 1e-9);
          });
        },
      ),
      { numRuns: 60 },
    );
  }
  // Noseward of the first touch nothing changes it.
  const seats = toSeats(DEMOS[0]!.design).map(seatLines);
  expect(sunkFactor(seats, groundOf(seats).home + 1e-3, 400)).toBe(400);
});
