/** Lapping: work and volume, a perfect pair, and how two cones come to touch together. */
import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { filmAlong } from '../../../src/engine/contact/film.ts';
import { seatLines } from '../../../src/engine/contact/fit.ts';
import { type Lap, type LapState, lapped } from '../../../src/engine/cutting/lapping.ts';
import {
  added,
  depthAt,
  depthBeside,
  integral,
  type WornPiece,
  withoutJumps,
} from '../../../src/engine/cutting/wear.ts';
import { lineOf } from '../../../src/engine/parts/line.ts';
import { MM, pair, rad, surface, UM, withFilm } from './pairs.ts';

// The machine may be busy; nothing here is timed.
vi.setConfig({ testTimeout: 60_000 });

const lap: Lap = {
  force: 20,
  coefficient: { journal: 1e-12, bush: 1e-12 },
  step: 0.2 * UM,
  advance: 20 * UM,
  bearing: 0.8,
  limit: 50 * UM,
};

function states(seats: Parameters<typeof lapped>[0], more: Partial<Lap> = {}): LapState[] {
  const result = lapped(seats, { ...lap, ...more });
  if (result.status !== 'lapped') throw new Error(result.status);
  return result.states;
}

/** Volume of a part between its surface and the axis, by the frusta of its line. */
function solid(s: Parameters<typeof lineOf>[0], metal: 'inside' | 'outside'): number {
  const { z, r } = lineOf(s, metal);
  let sum = 0;
  for (let i = 1; i < z.length; i++)
    sum += (Math.PI / 3) * (z[i]! - z[i - 1]!) * (r[i]! ** 2 + r[i]! * r[i - 1]! + r[i - 1]! ** 2);
  return sum;
}

/** A pair whose journal stands out beyond the bush only where it does no harm. */
const clean = withFilm({ name: 'a', journal: surface(20, 24, 0, -5, 2), bush: surface(20, 24.004, 0, -4, 3) });

describe('work and volume', () => {
  it.each([
    ['equal parts', 1e-12, 1e-12, 1e-11],
    ['a soft bush', 1e-13, 9e-13, 2e-5],
  ])('%s: volume worn is the coefficients times the work', (_, journal, bush, within) => {
    for (const seats of [pair(0.002, 0.09), pair(0.0164, 0.008), [clean]]) {
      const last = states(seats, { coefficient: { journal, bush } }).at(-1)!;
      expect(last.work).toBeGreaterThan(0);
      expect(Math.abs((last.volume.journal + last.volume.bush) / ((journal + bush) * last.work) - 1)).toBeLessThan(
        within,
      );
    }
  });

  it('the volume is what the parts lost, and each part its share', () => {
    const last = states([clean], { coefficient: { journal: 1e-12, bush: 3e-12 } }).at(-1)!;
    const { journal, bush } = last.parts[0]!;
    // the ridge's flank and the ends of the lines make the solids differ a little from the layers
    expect((solid(clean.journal, 'inside') - solid(journal, 'inside')) / last.volume.journal).toBeCloseTo(1, 2);
    expect((solid(bush, 'outside') - solid(clean.bush, 'outside')) / last.volume.bush).toBeCloseTo(1, 2);
    expect(last.volume.bush / last.volume.journal).toBeCloseTo(3, 2);
  });

  it('twice the force takes half the turning, and the same work', () => {
    const [one, two] = [states([clean]).at(-1)!, states([clean], { force: 40 }).at(-1)!];
    expect(two.angle).toBeCloseTo(one.angle / 2, 8);
    expect(two.work).toBeCloseTo(one.work, 14);
  });

  it('the work is the axial force times the slide over sin a, at the radius that bears', () => {
    const short = withFilm({
      name: 'a',
      journal: surface(30, 24, 0, -0.11, 0.1),
      bush: surface(30, 24.004, 0, -0.1, 0.11),
    });
    const last = states([short], { advance: 2 * UM }).at(-1)!;
    // all at one radius, nearly: normal force F/sin a, slid r·θ
    expect(last.work / ((lap.force / Math.sin(rad(30))) * 12 * MM * last.angle)).toBeCloseTo(1, 2);
  });
});

describe('a perfect pair', () => {
  it('stays perfect: it bears all along, the film even to a thousandth of a nanometre', () => {
    for (const state of states([clean]).slice(1)) {
      expect(state.seats[0]!.bearing).toBeCloseTo(1, 9);
      const lines = seatLines(state.parts[0]!);
      const { count, u, film } = filmAlong(lines.gap, state.position);
      const cos = Math.cos(rad(20));
      // away from the last ten micrometres at either end, where the ridges' flanks are
      const inner = [...film.subarray(0, count)].filter(
        (_, i) => u[i]! > u[0]! + 50 * UM * cos && u[i]! < u[count - 1]! - 50 * UM * cos,
      );
      for (const f of inner) expect(Math.abs(f)).toBeLessThan(1e-12);
    }
  });

  it('two that touch together go on touching together, and their relation does not change', () => {
    // both bushes larger by the same axial distance; each journal runs into what is not worn yet, so that no ridge is
    // left for it to be drawn over
    const seats = [
      withFilm({
        name: 'shallow',
        journal: surface(3, 22, 0, -24, 0),
        bush: surface(3, 22 + 2 * 0.02 * Math.tan(rad(3)), 0, -25, -1),
      }),
      withFilm({ name: 'steep', journal: surface(45, 26, 3, 2, 5), bush: surface(45, 26 + 2 * 0.02, 3, 1, 4) }),
    ];
    const run = states(seats);
    for (const { fit } of run) {
      // but for the corners at the ends, to within a step
      expect(Math.abs(fit.seats[0]!.seatPosition! - fit.seats[1]!.seatPosition!)).toBeLessThan(lap.step / 2);
      // to have 2.5 µm in both, though, the one must go further back than the other
      expect(Math.abs(fit.relation!.error - 2.5 * UM * (1 / Math.sin(rad(3)) - 1 / Math.sin(rad(45))))).toBeLessThan(
        lap.step,
      );
    }
    expect(Math.abs(run.at(-1)!.fit.firstPosition! + 40 * UM)).toBeLessThan(lap.step / 2);
  });

  it('is the same whatever the step', () => {
    const [fine, coarse] = [states([clean], { step: 0.1 * UM }).at(-1)!, states([clean], { step: UM }).at(-1)!];
    expect(fine.volume.journal / coarse.volume.journal).toBeCloseTo(1, 3);
    expect(fine.angle / coarse.angle).toBeCloseTo(1, 3);
  });
});

describe('pairs that are wrong', () => {
  it('the seat that touches first wears until the other touches too; then both bear', () => {
    const result = lapped(pair(0.002, 0.078), { ...lap, advance: 30 * UM });
    if (result.status !== 'lapped') throw new Error(result.status);
    const { stop, states: all } = result;
    expect(stop.why).toBe('bearing');
    expect(all[1]!.seats[1]!.bearing).toBe(0);
    expect(all[stop.at]!.seats.every(({ bearing }) => bearing > 0.8)).toBe(true);
    expect(Math.abs(all[stop.at]!.position + 39 * UM)).toBeLessThan(UM);
  });

  it('a mismatch of angle bears at one end first, and further along as it goes on', () => {
    const mismatch = [
      withFilm({ name: 'a', journal: surface(3.02, 22, 0, -20, -1), bush: surface(3, 22.01, 0, -19, 0) }),
    ];
    const shares = states(mismatch, { advance: 100 * UM, step: UM }).map(({ seats }) => seats[0]!.bearing);
    for (let i = 2; i < shares.length; i++) expect(shares[i]!).toBeGreaterThan(shares[i - 1]! - 1e-9);
    expect(shares[2]!).toBeLessThan(0.2);
    expect(shares.at(-1)!).toBeGreaterThan(0.5);
  });

  it('stops where the relation leaves what the films allow, and where a surface has lost too much', () => {
    const right = pair(0, 0).map((seat) => ({
      ...seat,
      bush: { ...seat.bush, radius: seat.journal.radius + seat.target! / Math.cos(seat.journal.halfAngle) },
    }));
    const drifting = lapped(right, { ...lap, bearing: 1, limit: MM, advance: 30 * UM });
    expect(drifting).toMatchObject({ status: 'lapped', stop: { why: 'relation' } });
    const worn = lapped(pair(0.0164, 0.008), { ...lap, limit: 3 * UM });
    if (worn.status !== 'lapped') throw new Error(worn.status);
    expect(worn.stop.why).toBe('limit');
    expect(worn.states[worn.stop.at]!.seats[1]!.depth.journal).toBeLessThanOrEqual(3 * UM);
    expect(lapped(pair(0.0164, 0.008), { ...lap, advance: UM })).toMatchObject({ stop: { why: 'notYet' } });
  });

  it('what does not stop the journal is not lapped', () => {
    const straight = [withFilm({ name: 'a', journal: surface(0, 20, 0, -20, 0), bush: surface(0, 20.01, 0, -20, 0) })];
    expect(lapped(straight, lap)).toEqual({ status: 'nothingTouches' });
  });
});

describe('wear as pieces', () => {
  const pieces: fc.Arbitrary<WornPiece[]> = fc
    .array(
      fc.tuple(
        fc.double({ min: 0.1, max: 1, noNaN: true }),
        fc.double({ min: 0.05, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
      ),
      { minLength: 1, maxLength: 6 },
    )
    .map((raw) => {
      let at = 0;
      return raw.map(([gap, length, start, end]) => {
        const from = at + gap;
        at = from + length;
        return { from, to: at, start, end };
      });
    });
  const total = (list: readonly WornPiece[]) =>
    list.reduce((sum, piece) => sum + integral(piece, (u) => depthAt(piece, u)), 0);

  it('adds up everywhere, and nothing is lost', () => {
    fc.assert(
      fc.property(pieces, pieces, (a, b) => {
        const sum = added(a, b);
        expect(total(sum)).toBeCloseTo(total(a) + total(b), 12);
        for (const u of [0.33, 1.01, 2.7, 4.4])
          expect(depthBeside(sum, u, u + 1e-9)).toBeCloseTo(
            depthBeside(a, u, u + 1e-9) + depthBeside(b, u, u + 1e-9),
            6,
          );
        for (let i = 1; i < sum.length; i++) expect(sum[i]!.from).toBeGreaterThanOrEqual(sum[i - 1]!.to);
      }),
      { seed: 31 },
    );
  });

  it('without jumps it is nowhere less, nowhere steeper than asked, and the same where it was gentle', () => {
    fc.assert(
      fc.property(pieces, (list) => {
        const points = withoutJumps(list, 0, 12, 0.5);
        for (let i = 1; i < points.length; i++) {
          expect(points[i]![0]).toBeGreaterThanOrEqual(points[i - 1]![0] - 1e-12);
          const run = points[i]![0] - points[i - 1]![0];
          const rise = Math.abs(points[i]![1] - points[i - 1]![1]);
          const own = Math.max(...list.map(({ from, to, start, end }) => Math.abs(end - start) / (to - from)), 0.5);
          expect(rise).toBeLessThan(own * run + 1e-9);
        }
        const at = (u: number) => {
          const k = points.findIndex(([v]) => v >= u);
          const [[u0, d0], [u1, d1]] = [points[k - 1]!, points[k]!];
          return u1 === u0 ? d1 : d0 + ((d1 - d0) * (u - u0)) / (u1 - u0);
        };
        for (let u = 0.05; u < 12; u += 0.13) expect(at(u)).toBeGreaterThan(depthBeside(list, u, u + 1e-9) - 1e-9);
      }),
      { seed: 32 },
    );
  });
});
