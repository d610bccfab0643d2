/**
 * The odds of the run: pairs drawn as those of the odds are (the same draws for the same seed), each run from cold to
 * warm (runningOne.ts), each where its films suit it best or all where the journal is set.
 *
 *   const ask = …;  blocks of runDraws(ask, RUN_GRID), by any workers in any order;  runningOf(ask, blocks)
 *
 * A block is told by its place, so that what is put together is the same to the last digit however it was shared out.
 * What the small grid costs is told by the first draws that run, run again on the grid of the run itself:
 *
 *   bias = mean of (small - fine)        error = 95 % of them are nearer than this, by 2·√(mean square)
 */
import type { SeatInput } from '../contact/fit.ts';
import type { GridSize } from '../film/films.ts';
import type { Surface } from '../parts/line.ts';
import { OIL_LASTS } from '../run/limits.ts';
import { type Running, WARM } from '../run/running.ts';
import { rigidSeat } from '../spindle/rigid.ts';
import { type Chance, chanceOf } from './limits.ts';
import { answerOne } from './oneByOne.ts';
import { columnsOf, type Question, roomFor } from './outcomes.ts';
import { coldNear, ended, type RunDrawn, type RunEnd, runDrawn, withPair } from './runningOne.ts';
import { type Marginal, type Sampler, standard } from './sampler.ts';
import { sobolPoints } from './sobol.ts';

/** What else is in doubt of a spindle that runs, besides its pair. */
export type Setting = { sigma: number; shape: Marginal } & (
  | { of: 'lobeAmplitude'; seat: number; part: 'journal' | 'bush'; lobe: number }
  /** °C of the room; rad/s; m of where the journal is set */
  | { of: 'temperature' | 'speed' | 'position' }
);

export interface RunningAsk {
  /** the spindle in the middle of the draws */
  running: Running;
  sampler: Sampler;
  middle: readonly SeatInput[];
  question: Question;
  /** each pair set where its films suit it best, or all where the question has it */
  at: 'best' | 'set';
  settings: readonly Setting[];
  seed: number;
}

/** Draws `from` to `from` + `count` - 1. */
export function runDraws(ask: RunningAsk, grid: GridSize): (from: number, count: number) => RunDrawn[] {
  const { running, sampler, middle, question, at, settings, seed } = ask;
  const points = sobolPoints(seed);
  const dimensions = sampler.dimensions + settings.length;
  const near = coldNear(atBest(withPair(running, middle, question.position), ask, middle), grid);
  return (from, count) => {
    const u = Array.from({ length: dimensions }, (_, d) => {
      const column = new Float64Array(count);
      points(d, from, column);
      return column;
    });
    return Array.from({ length: count }, (_, k) => {
      const pair = sampler.shape(Float64Array.from({ length: sampler.dimensions }, (__, d) => u[d]![k]!));
      if (!pair) return ended('noShape', middle.length);
      const set = at === 'best' ? bestOf(pair, ask) : question.position;
      const drawn = settings.map(({ shape, sigma }, i) => sigma * standard(u[sampler.dimensions + i]![k]!, shape));
      return runDrawn(withSettings(withPair(running, pair, set), settings, drawn), grid, near);
    });
  };
}

const atBest = (running: Running, ask: RunningAsk, pair: readonly SeatInput[]): Running =>
  ask.at === 'set' ? running : withPair(running, pair, bestOf(pair, ask));

/** Where there is no best position, none is wanted or none is clear of metal: where the question has it. */
function bestOf(pair: readonly SeatInput[], { middle, question }: RunningAsk): number {
  const room = roomFor(middle, 1);
  answerOne(pair, middle, question, room, 0);
  const best = room.values[columnsOf(middle.length).bestPosition]![0]!;
  return Number.isFinite(best) ? best : question.position;
}

/** With so much added to each setting; an amplitude never falls below nothing. */
export function withSettings(running: Running, settings: readonly Setting[], by: readonly number[]): Running {
  return settings.reduce((before, setting, i) => withSetting(before, setting, by[i]!), running);
}

function withSetting(running: Running, setting: Setting, by: number): Running {
  const { run, oil, pose } = running;
  switch (setting.of) {
    case 'speed':
      return { ...running, run: { ...run, omega: run.omega + by } };
    case 'temperature': {
      const ambient = running.ambient + by;
      return { ...running, ambient, run: { ...run, viscosity: run.viscosity.map(() => oil.viscosity(ambient)) } };
    }
    case 'position':
      return { ...running, position: running.position + by, pose: { ...pose, z: pose.z + by } };
    case 'lobeAmplitude': {
      const { part } = setting;
      const lobed = (surface: Surface): Surface => ({
        ...surface,
        lobes: (surface.lobes ?? []).map((lobe, k) =>
          k === setting.lobe ? { ...lobe, amplitude: Math.max(0, lobe.amplitude + by) } : lobe,
        ),
      });
      const seats = running.seats.map(({ parts, ...seat }, i) =>
        i === setting.seat ? { ...seat, ...rigidSeat({ ...parts, [part]: lobed(parts[part]) }) } : { ...seat, parts },
      );
      return { ...running, seats };
    }
  }
}

export interface RunBlock {
  /** number of its first draw */
  from: number;
  draws: RunDrawn[];
}

export interface RunSpread {
  count: number;
  mean: number;
  sd: number;
  p05: number;
  p50: number;
  p95: number;
}

export interface RunningOdds {
  /** that are counted, and that are not */
  draws: number;
  unsettled: number;
  noShape: number;
  ends: Record<'runs' | 'shut' | 'seizes' | 'standing', Chance>;
  /** the film that is needed is there from cold to warm: by seat, and in all of them */
  parted: { each: Chance[]; all: Chance };
  /** of all that are counted: it runs no hotter than oil lasts; it does not whirl, warm; all three together */
  cool: Chance;
  calm: Chance;
  well: Chance;
  /** over those that run; null where none does: m by seat, °C, W, N */
  films: (RunSpread | null)[];
  hottest: RunSpread | null;
  power: RunSpread | null;
  stop: RunSpread | null;
}

/** Blocks in any order. */
export function runningOf({ running, sampler, middle }: RunningAsk, blocks: readonly RunBlock[]): RunningOdds {
  const draws = blocks.toSorted((a, b) => a.from - b.from).flatMap((block) => block.draws);
  const is = (...ends: RunEnd[]) => draws.filter(({ end }) => ends.includes(end));
  const counted = is('runs', 'shut', 'seizes', 'standing');
  const runs = is('runs');
  const most = Math.min(counted.length, sampler.effective ?? Number.POSITIVE_INFINITY);
  const chance = (of: (drawn: RunDrawn) => boolean) =>
    chanceOf(counted.length === 0 ? 0 : (counted.filter(of).length / counted.length) * most, most);
  const parts = ({ end, films }: RunDrawn, i: number) => end === 'runs' && films[i]! >= running.needed;
  const partsAll = (drawn: RunDrawn) => middle.every((_, i) => parts(drawn, i));
  const cool = ({ end, hottest }: RunDrawn) => end === 'runs' && hottest <= OIL_LASTS;
  const ending = (end: RunEnd) => chance((drawn) => drawn.end === end);
  const spread = (of: (drawn: RunDrawn) => number) => runSpreadOf(runs.map(of));
  return {
    draws: counted.length,
    unsettled: is('unsettled').length,
    noShape: is('noShape').length,
    ends: {
      runs: ending('runs'),
      shut: ending('shut'),
      seizes: ending('seizes'),
      standing: ending('standing'),
    },
    parted: { each: middle.map((_, i) => chance((drawn) => parts(drawn, i))), all: chance(partsAll) },
    cool: chance(cool),
    calm: chance((drawn) => drawn.calm),
    well: chance((drawn) => partsAll(drawn) && cool(drawn) && drawn.calm),
    films: middle.map((_, i) => spread(({ films }) => films[i]!)),
    hottest: spread(({ hottest }) => hottest),
    power: spread(({ power }) => power),
    stop: spread(({ stop }) => stop),
  };
}

/** Null of nothing. */
export function runSpreadOf(values: readonly number[]): RunSpread | null {
  const count = values.length;
  if (count === 0) return null;
  const sorted = Float64Array.from(values).sort();
  const mean = values.reduce((sum, x) => sum + x, 0) / count;
  const square = values.reduce((sum, x) => sum + (x - mean) ** 2, 0);
  const at = (share: number) => {
    const place = share * (count - 1);
    const below = sorted[Math.floor(place)]!;
    return below + (place - Math.floor(place)) * (sorted[Math.ceil(place)]! - below);
  };
  return {
    count,
    mean,
    sd: count < 2 ? 0 : Math.sqrt(square / (count - 1)),
    p05: at(0.05),
    p50: at(0.5),
    p95: at(0.95),
  };
}

interface GridError {
  /** draws that run on both grids, and that end otherwise on the fine one */
  checked: number;
  otherwise: number;
  /** m of the least film of a seat, K of the hottest: the mean, and what 19 in 20 are nearer than */
  film: { bias: number; error: number };
  hottest: { bias: number; error: number };
}

/** What the small grid costs, of the same draws on both. */
export function gridError(small: readonly RunDrawn[], fine: readonly RunDrawn[]): GridError {
  const both = small.flatMap((drawn, k) =>
    drawn.end === 'runs' && fine[k]!.end === 'runs' ? [[drawn, fine[k]!] as const] : [],
  );
  const told = (off: readonly number[]) => ({
    bias: off.length === 0 ? 0 : off.reduce((sum, x) => sum + x, 0) / off.length,
    error: off.length === 0 ? 0 : 2 * Math.sqrt(off.reduce((sum, x) => sum + x * x, 0) / off.length),
  });
  return {
    checked: both.length,
    otherwise: small.filter(({ end }, k) => end !== fine[k]!.end).length,
    film: told(both.flatMap(([a, b]) => a.films.map((film, i) => film - b.films[i]!))),
    hottest: told(both.map(([a, b]) => a.hottest - b.hottest)),
  };
}

/** The grid of the run itself. */
export const CHECK_GRID: GridSize = WARM;
