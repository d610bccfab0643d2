/** All that is told of a running spindle: each part is that of the question asked by itself. */
import { describe, expect, it } from 'vitest';
import { newGrids, overTurn, solveFilms } from '../../../src/engine/film/films.ts';
import { toRoom } from '../../../src/engine/heat/warmFilm.ts';
import { answerOf, type CarriedAnswer, type FailedAnswer } from '../../../src/engine/run/answer.ts';
import { backOff } from '../../../src/engine/run/backOff.ts';
import { FINE, HALF, MOST_EFFORT, type Running } from '../../../src/engine/run/running.ts';
import { accuracyOf, leastFilms, solveRun } from '../../../src/engine/run/solveRun.ts';
import { stiffnessAt } from '../../../src/engine/run/stiffnessAt.ts';
import { asFive, loadAt } from '../../../src/engine/spindle/pose.ts';
import { at, coneSeat } from '../film/bearings.ts';
import { back, rear, runningOf, shallow, steep } from './spindles.ts';

const LITTLE = { ...MOST_EFFORT, whirl: 1 };

function carried(running: Running): CarriedAnswer {
  const answer = answerOf(running);
  if ('failed' in answer) throw new Error(answer.failed.status);
  return answer;
}
function failed(running: Running): FailedAnswer {
  const answer = answerOf(running);
  if ('solved' in answer) throw new Error(answer.solved.status);
  return answer;
}

describe('a spindle that its films carry', () => {
  const cones = { shallow, rear };
  const running = runningOf(cones, { load: loadAt(0, -20, -10, -0.03), most: LITTLE, duration: 1 });
  let answer: CarriedAnswer;

  it('stands where the oil of the fine grid balances the load', () => {
    answer = carried(running);
    const again = solveFilms(newGrids(running.seats, FINE), asFive(answer.solved.pose), running.run);
    if (again.status !== 'solved') throw new Error(again.status);
    again.total.force.forEach((force, i) => {
      expect(force + running.load![i]!).toBeCloseTo(0, 4);
    });
    expect(answer.solved).toMatchObject({ status: 'found', stop: 0 });
    expect(answer.presses).toBe(true);
    expect(answer.nose).toEqual(stiffnessAt(answer.solved, running.nose));
    expect(answer.sought).toBeNull();
    expect(answer.turn).toBeNull();
  });

  it('the error told is a third of what half as fine a grid tells otherwise', () => {
    const { solved, accuracy } = answer;
    const half = solveFilms(newGrids(running.seats, HALF), asFive(solved.pose), running.run);
    if (half.status !== 'solved') throw new Error(half.status);
    expect(accuracy).toEqual(accuracyOf(solved));
    expect(accuracy.torque * 3).toBeCloseTo(Math.abs(solved.total.torque / half.total.torque - 1), 9);
    const off = solved.seats.flatMap(({ force }, i) => [0, 1, 2].map((c) => force[c]! - half.seats[i]!.force[c]!));
    const greatest = Math.max(...solved.seats.map(({ force: [x, y] }) => Math.hypot(x, y)));
    expect((accuracy.force * 3 * greatest) / Math.max(...off.map(Math.abs))).toBeCloseTo(1, 6);
    const thin = Math.min(...solved.seats.map(({ least }) => least.film));
    expect(accuracy.leastFilm * 3).toBeCloseTo(Math.abs(thin - solved.half.leastFilm), 18);
    expect(accuracy.imbalance).toBe(Math.max(...solved.seats.map(({ solution }) => solution.imbalance)));
    // small, and not nothing
    for (const part of [accuracy.torque, accuracy.force]) {
      expect(part).toBeGreaterThan(1e-9);
      expect(part).toBeLessThan(1e-2);
    }
  });

  it('warm it gives the room what the films heat', () => {
    const { steady, warmUp, unreached } = answer;
    expect(unreached).toEqual([]);
    expect(warmUp.points.at(-1)!.time).toBe(1);
    const { heat, toRoom: room, total } = steady!;
    expect(Math.abs(heat.journal - room.journal)).toBeLessThan(1e-4 * total.power);
    expect(Math.abs(heat.bush - room.bush)).toBeLessThan(1e-4 * total.power);
    expect(steady!.toRoom).toEqual({
      journal: toRoom(running.journal, steady!.journal, 20),
      bush: toRoom(running.bush, steady!.bush, 20),
    });
    expect(steady!.toRoom.journal).toBeGreaterThan(0);
    expect(steady!.isCalm).toBe(true);
  });

  it('guidance and film ratio are of the seat with the thinnest film', () => {
    const { guidance, solved } = answer;
    const films = solved.seats.map(({ least }) => least.film);
    expect(guidance.seat).toBe(films.indexOf(Math.min(...films)));
    // 0.1 µm on both
    expect(guidance.filmRatio).toBeCloseTo(Math.min(...films) / (1e-7 * Math.SQRT2), 9);
    // some 1.2 m/s, shafts below the first of the table
    expect(guidance).toMatchObject({ film: 4e-6, within: false });
  });

  it('where a film is less than needed a better place is sought', () => {
    const most = { ...LITTLE, warmUp: 1, steady: 1 };
    const set = { adjusted: true, load: loadAt(0, -30, 0, 0.01), position: -1.5e-6, most };
    const enough = carried(runningOf({ shallow, steep }, { ...set, needed: 0 }));
    expect(enough.sought).toBeNull();
    const film = Math.min(...enough.solved.seats.map(({ least }) => least.film));
    const thin = runningOf({ shallow, steep }, { ...set, needed: 1.03 * film });
    const { sought, solved, unreached, steady } = carried(thin);
    expect(solved.status).toBe('stopped');
    expect(sought).toEqual(backOff(thin));
    expect(sought!.backOff!.position).toBeGreaterThan(-1.5e-6);
    // neither is followed to its end with next to no effort
    expect([unreached, steady]).toEqual([['warmUp', 'steady'], null]);
  });
});

describe('a spindle held by hand', () => {
  const held = (over: Partial<Running> = {}) =>
    runningOf({ rear }, { load: null, pose: at({ x: 1e-6 }), duration: 1, ...over });

  it('stands as it is held, and is solved there', () => {
    const { solved, nose } = carried(held());
    expect(solved).toMatchObject({ status: 'held', pose: at({ x: 1e-6 }), stop: 0 });
    expect(solved.half.leastFilm).toBeCloseTo(3e-6, 9);
    expect(nose).toHaveLength(2);
  });

  it('where nothing presses nothing is stiff', () => {
    expect(carried(held({ pose: at({}) }))).toMatchObject({ presses: false, nose: null });
  });

  it('over a turn of its lobes: the least and greatest force; nothing where it touches on the way', () => {
    const lobed = (amplitude: number, x: number, phase = 0.3) => {
      const seats = [coneSeat({ ...rear, journalLobes: [{ count: 3, amplitude, phase }] }, 'rear')];
      return held({ seats, pose: at({ x }) });
    };
    const running = lobed(2e-7, 1e-6);
    const turn = carried(running).turn;
    expect(turn).toEqual(overTurn(newGrids(running.seats, HALF), asFive(running.pose), running.run, 24));
    if (turn === null || turn === 'touches') throw new Error(`${turn}`);
    expect(turn.greatest[1]).toBeGreaterThan(turn.least[1]);
    expect(turn.leastFilm).toBeCloseTo(3e-6 - 2e-7, 8);
    expect(carried(lobed(0, 1e-6)).turn).toBeNull();
    // clear as drawn, crests aside; touching a sixth of a turn on
    expect(carried(lobed(4e-7, 3.75e-6, Math.PI / 3)).turn).toBe('touches');
  });

  it('metal, or a journal out of its bush, ends it: which seat, and every film there', () => {
    const touching = failed(held({ pose: at({ x: 5e-6 }) }));
    expect(touching.failed).toEqual({ status: 'contact', pose: at({ x: 5e-6 }), seat: 0 });
    expect(touching.films).toEqual(leastFilms(held().seats, at({ x: 5e-6 })));
    expect(touching.films[0]!.film).toBeCloseTo(-1e-6, 12);
    expect(touching.sought).toEqual({ backOff: null, givenUp: false });
    const out = failed(held({ pose: at({ z: 1 }) }));
    expect(out).toEqual({ failed: { status: 'apart', pose: at({ z: 1 }), seat: 0 }, films: [null], sought: null });
  });
});

describe('a load that is not carried', () => {
  it('standing still it lies on metal', () => {
    const still = runningOf({ front: steep, rear });
    const found = failed({ ...still, run: { ...still.run, omega: 0 } });
    expect(found.failed.status).toBe('standing');
    expect(found.sought).toBeNull();
    for (const film of found.films) expect(film!.film).toBeGreaterThan(-1e-9);
  });

  it('without room in any film: which seat is shut', () => {
    const tight = runningOf({ front: steep, rear: { ...rear, film: -2e-6 } });
    expect(failed(tight).failed).toEqual({ status: 'noRoom', pose: tight.pose, seat: 1 });
  });

  it('too heavy for its oil: the seat that touches, and where else it could be set', () => {
    const heavy = runningOf({ shallow, steep }, { adjusted: true, load: loadAt(0, -1e5, 0, 0.01) });
    const found = failed(heavy);
    expect(found.failed.status).toBe('contact');
    expect(found.failed.seat).not.toBeNull();
    expect(found.sought).toEqual({ backOff: null, givenUp: false });
  });

  it('with next to no effort it is given up', () => {
    const running = runningOf({ steep, back });
    const spent = { ...running, run: { ...running.run, effort: { spent: 1, most: 1 } } };
    const { failed: verdict, sought } = failed(spent);
    expect(verdict).toMatchObject({ status: 'givenUp', seat: null });
    expect(sought).toBeNull();
    expect(solveRun(spent).status).toBe('givenUp');
  });
});
