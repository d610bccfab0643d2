/**
 * Slips made on purpose in jobs drawn at random, as often as they are said to be made: what is named most likely is so
 * at least as often as its odds say, over all of them; and in sound jobs none is named oftener than that.
 */
import { expect, it, vi } from 'vitest';
import { standardNormals } from '../../../src/engine/belief/draws.ts';
import { fit as solveFit } from '../../../src/engine/contact/fit.ts';
import { causesOf } from '../../../src/engine/cutting/causes.ts';
import { type HandSlip, metalSlips, printedBy, readSlips, SLIP } from '../../../src/engine/cutting/slipsMade.ts';
import { type Trial, trialsOf } from '../../../src/engine/cutting/trial.ts';
import { believed } from '../../../src/engine/cutting/trialReadings.ts';
import { withStock } from '../../../src/engine/parts/stock.ts';
import { LONG } from '../../long.ts';
import { evenDoubt, pair, UM } from './pairs.ts';

// The machine may be busy; nothing here is timed.
vi.setConfig({ testTimeout: 1_200_000 });

const seats = pair(0.0164, 0.008);
const DOUBT = 3 * UM;
const SIGMA = UM;
const BLUE = 2 * UM;
/** jobs of each slip, and of none */
const EACH = 4 * LONG;
const SOUND = 150 * LONG;

type Typed = readonly Trial[];

/** Two trials with metal off between them, as they were; all normal. */
function sound(seed: number): Trial[] {
  const normals = standardNormals(seed, 12);
  let next = 0;
  const normal = () => normals[next++]!;
  const parts = believed(seats, [DOUBT * normal(), DOUBT * normal()]);
  const told = (20 + 8 * Math.tanh(normal())) * UM;
  const sigma = Math.hypot(0.05 * told, 1.2 * UM);
  const after = parts.map((seat, i) =>
    i === 1 ? { ...seat, journal: withStock(seat.journal, 'journal', told + sigma * normal()) } : seat,
  );
  return [parts, after].map((now, trial): Trial => {
    const at = solveFit(now, 0).firstPosition!;
    const blue = solveFit(now, at).seats.map(({ leastFilm }, seat) => ({ seat, prints: leastFilm! < BLUE }));
    return {
      taken: trial === 0 ? [] : [{ seat: 1, part: 'journal', normal: told, sigma }],
      thickness: BLUE,
      standOff: { value: at + SIGMA * normal(), sigma: SIGMA },
      blue,
    };
  });
}

interface Made {
  kind: HandSlip;
  /** what it would be named, and the trials as they are typed with it */
  name: string;
  typed: Typed;
}

const nameOf = (doubted: object) => {
  const { trial, what, of, kind, times, seat } = doubted as Record<string, unknown>;
  return [trial, what ?? of, kind, typeof times === 'number' ? times.toFixed(3) : '', seat].join(' ');
};

/** Every slip that could be made in these trials: what is typed in place of what is so. */
function slipsIn(trials: Typed): Made[] {
  const error = { trial: 1, of: 'taken' as const, place: 0 };
  const metal = metalSlips(error, seats, trials).map((slip): Made => {
    const [one] = trials[1]!.taken;
    const normal = one!.normal / slip.times;
    const typed = { ...one!, normal, sigma: Math.hypot(0.05 * normal, 1.2 * UM) };
    return {
      kind: slip.kind,
      name: nameOf(slip),
      typed: trials.map((trial, t) => (t === 1 ? { ...trial, taken: [typed] } : trial)),
    };
  });
  const read = readSlips(trials).flatMap((slip): Made[] => {
    const typed = (change: (trial: Trial) => Trial) => trials.map((one, t) => (t === slip.trial ? change(one) : one));
    if (slip.kind !== 'seat')
      return [
        {
          kind: slip.kind,
          name: nameOf(slip),
          typed: typed((one) => ({
            ...one,
            standOff: { ...one.standOff!, value: one.standOff!.value / slip.times },
          })),
        },
      ];
    // Typed is the seat that did not print; it is named by the one that did.
    const { seat } = trials[slip.trial]!.blue!.find(({ prints }) => prints)!;
    return [
      {
        kind: 'seat',
        name: nameOf({ ...slip, seat }),
        typed: typed((one) => ({ ...one, blue: printedBy(one.blue!, slip.seat) })),
      },
    ];
  });
  return [...metal, ...read];
}

const before = evenDoubt(2, DOUBT);
const topOf = (trials: Typed) => {
  const last = trialsOf({ seats }, trials, before).at(-1)!;
  if (last.status === 'updated' && last.clashes.length === 0) return null;
  return causesOf({ input: { seats }, trials, before })[0] ?? null;
};

it('what is named most likely is right at least as often as its odds say', () => {
  const all = { said: 0, right: 0, spread: 0 };
  const each = new Map<HandSlip, { made: number; called: number; right: number }>();
  /** weight: how often such a job comes beside the others */
  const count = (trials: Typed, weight: number, name: string | null, kind: HandSlip | null) => {
    const top = topOf(trials);
    const of = kind && (each.get(kind) ?? { made: 0, called: 0, right: 0 });
    if (of) of.made++;
    if (top && 'kind' in top.doubted) {
      const right = nameOf(top.doubted) === name;
      all.said += weight * top.chance;
      all.right += weight * (right ? 1 : 0);
      all.spread += weight * weight * Math.max(top.chance * (1 - top.chance), 0.01);
      if (of) {
        of.called++;
        if (right) of.right++;
      }
    }
    if (of) each.set(kind, of);
  };
  for (let job = 0; job < EACH; job++)
    for (const { kind, name, typed } of slipsIn(sound(1000 + job))) count(typed, SLIP[kind] / EACH, name, kind);
  for (let job = 0; job < SOUND; job++) count(sound(9000 + job), 0.85 / SOUND, null, null);
  console.info(JSON.stringify({ ...all, each: [...each] }));
  expect(all.right).toBeGreaterThanOrEqual(all.said - 3.1 * Math.sqrt(all.spread));
  expect(each.size).toBe(5);
  // Those that shift the touch by far are named; a seat that printed is where the films tell it apart.
  for (const kind of ['ten', 'inch', 'diameter', 'sign'] as const)
    expect(each.get(kind)!.right).toBeGreaterThan(each.get(kind)!.called / 2);
});

it('in sound jobs hardly a slip is named', () => {
  let named = 0;
  for (let job = 0; job < SOUND; job++) {
    const top = topOf(sound(20_000 + job));
    if (top && 'kind' in top.doubted && top.chance > 0.5) named++;
  }
  // Six in a hundred jobs have a slip by what is said of it: of those without any still fewer are taken to have one.
  expect(named).toBeLessThanOrEqual(0.06 * SOUND);
});
