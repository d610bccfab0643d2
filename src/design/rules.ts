/**
 * Rules of a design that span several fields. They run on whatever was read, however broken, so that one
 * look at a bad file shows every error at once: each rule looks only at fields that have the right type.
 */
import type { Design } from './definition.ts';
import { radians } from './dimension.ts';
import { defaultAt, pathOf, quantityIfAt, stepsOf, valueAt } from './place.ts';
import { recordRules } from './recordRules.ts';

export interface DesignError {
  /** Where in the file: `seats[0].journal.from`; empty for the file as a whole. */
  path: string;
  /** What was found there and what is allowed. */
  message: string;
}

type Loose = Record<string, unknown>;
type Say = (path: string, message: string) => void;

const object = (x: unknown): Loose => (typeof x === 'object' && x !== null && !Array.isArray(x) ? (x as Loose) : {});
const list = (x: unknown): unknown[] => (Array.isArray(x) ? x : []);
const number = (x: unknown): number => (typeof x === 'number' ? x : Number.NaN);
const tangent = (degrees: number) => Math.tan(radians(degrees));

/** A name in quotes, as much of it as helps. */
const shown = (name: string | undefined) =>
  name === undefined ? 'nothing' : name.length > 40 ? `"${name.slice(0, 39)}…"` : `"${name}"`;
const word = (x: unknown): string | undefined => (typeof x === 'string' ? x : undefined);
const words = ({ seat, part }: Loose) => ({ seat: word(seat), part: word(part) });

/** The steepest a profile may run: far beyond any wear, and what keeps a line a function of place. */
const STEEPEST_PROFILE = 0.5;
/** The greatest difference between the half angles of one seat. */
const WIDEST_MISMATCH = 30;

/** mm: less would be rounding of the numbers, not metal. */
const SHORTEST = 1e-6;
const NEAREST = 1e-9;

function surfaceRules(surface: Loose, part: 'journal' | 'bush', path: string, say: Say): void {
  const from = number(surface.from);
  const to = number(surface.to);
  if (from >= to) say(`${path}.to`, `found ${to} mm, which is not noseward of where it begins, from (${from} mm)`);
  else if (to - from < SHORTEST)
    say(
      `${path}.to`,
      `found ${to} mm, which is less than ${SHORTEST} mm noseward of where it begins, from (${from} mm); no surface is so short`,
    );

  const profile = list(surface.profile).filter(
    (point): point is [number, number] =>
      Array.isArray(point) && typeof point[0] === 'number' && typeof point[1] === 'number',
  );
  for (let i = 1; i < profile.length; i++) {
    const [[z0, d0], [z1, d1]] = [profile[i - 1]!, profile[i]!];
    if (z1 - z0 < NEAREST)
      say(
        `${path}.profile[${i}]`,
        `station ${z1} does not lie noseward of the one before it (${z0}); stations must rise${z1 > z0 ? `, by ${NEAREST} mm at least` : ''}`,
      );
    else if (Math.abs(d1 - d0) > STEEPEST_PROFILE * (z1 - z0))
      say(
        `${path}.profile[${i}]`,
        `the deviation changes by ${+(d1 - d0).toPrecision(6)} mm over ${+(z1 - z0).toPrecision(6)} mm; a profile may not be steeper than 1 in ${1 / STEEPEST_PROFILE}`,
      );
  }

  const lobes = list(surface.lobes).reduce<number>((sum, lobe) => sum + (number(object(lobe).amplitude) || 0), 0);
  const slope = tangent(number(surface.halfAngle));
  const cosine = Math.cos(radians(number(surface.halfAngle)));
  let least = Number.POSITIVE_INFINITY;
  let where = from;
  const look = (z: number, proud: number) => {
    const radius =
      number(surface.diameter) / 2 +
      (z - number(surface.station)) * slope +
      (part === 'journal' ? proud : -proud) / cosine -
      lobes / cosine;
    if (radius < least) [least, where] = [radius, z];
  };
  for (const end of [from, to]) look(end, levelInterpolation(profile, end));
  for (const [z, proud] of profile) if (z > from && z < to) look(z, proud);
  if (least <= 0)
    say(
      path,
      `the radius is ${+least.toPrecision(6)} mm at station ${where}; it must be above 0 along the whole surface (check diameter, station and half angle)`,
    );
}

function levelInterpolation(points: readonly [number, number][], z: number): number {
  if (points.length === 0) return 0;
  const after = points.findIndex(([station]) => station >= z);
  if (after <= 0) return points[after === 0 ? 0 : points.length - 1]![1];
  const [[z0, d0], [z1, d1]] = [points[after - 1]!, points[after]!];
  return d0 + ((d1 - d0) * (z - z0)) / (z1 - z0);
}

function seatRules(seat: Loose, path: string, say: Say): void {
  for (const part of ['journal', 'bush'] as const) surfaceRules(object(seat[part]), part, `${path}.${part}`, say);
  const [journal, bush] = [number(object(seat.journal).halfAngle), number(object(seat.bush).halfAngle)];
  if (Math.abs(journal - bush) > WIDEST_MISMATCH)
    say(
      `${path}.journal.halfAngle`,
      `found ${journal}, but the bush it runs in has ${bush}; the two may differ by ${WIDEST_MISMATCH} degrees at most`,
    );
}

function namedSeats(entries: unknown, path: string, names: Set<string>, say: Say): void {
  list(entries).forEach((entry, i) => {
    const name = object(entry).seat;
    if (typeof name === 'string' && !names.has(name))
      say(
        `${path}[${i}].seat`,
        `found ${shown(name)}, but no seat has that name; the seats are ${[...names].slice(0, 8).map(shown).join(', ')}`,
      );
  });
}

function oddsRules(odds: Loose, names: Set<string>, say: Say): void {
  namedSeats(odds.spread, 'odds.spread', names, say);
  const told = new Set<string>();
  list(odds.processes).forEach((entry, i) => {
    const { name, spread } = object(entry);
    namedSeats(spread, `odds.processes[${i}].spread`, names, say);
    if (typeof name !== 'string') return;
    if (told.has(name))
      say(`odds.processes[${i}].name`, `found ${shown(name)} a second time; every process needs a name of its own`);
    told.add(name);
  });
}

function runRules(run: Loose, say: Say): void {
  const oil = object(run.oil);
  const known = ['viscosity', 'grade', 'measured'].filter((key) => oil[key] !== undefined);
  if (run.oil !== undefined && known.length === 0)
    say('run.oil', 'found neither a viscosity nor a grade; give one of the two, or two measured points');
  if (known.length > 1)
    say(
      'run.oil',
      `found both a ${known[0]} and ${known[1] === 'measured' ? 'measured points' : `a ${known[1]}`}; give one of the two`,
    );
  const [first, second] = list(oil.measured).map((point) => list(point).map(number));
  if (first && second && (first[0]! - second[0]!) * (first[1]! - second[1]!) >= 0)
    say('run.oil.measured', 'the two points must be at two temperatures, the warmer one the thinner');
  if (run.pose !== undefined && (run.load !== undefined || run.loads !== undefined))
    say('run', 'found both a pose and a load; give the pose to hold it by hand, or the load to have the pose found');
  list(run.supply).forEach((groove, i) => {
    const { from, to } = object(groove);
    if (number(from) >= number(to))
      say(`run.supply[${i}].to`, `found ${to} mm, which is not noseward of where it begins, from (${from} mm)`);
  });
}

/** Lapping is followed in this many small steps at most. */
const MOST_LAP_STEPS = 500;

function cutRules(cut: Loose, names: Set<string>, say: Say): void {
  const unknown = (name: unknown, path: string) =>
    namedSeats([{ seat: name }], path, names, (_, message) => say(path, message));
  const withinLimit = (entry: Loose, path: string) => {
    if (number(entry.cleanup) > number(entry.limit))
      say(`${path}.cleanup`, `found ${entry.cleanup} mm, which is more than the limit (${entry.limit} mm)`);
  };
  namedSeats(cut.allow, 'cut.allow', names, say);
  const surfaces = new Set<string>();
  list(cut.allow).forEach((entry, i) => {
    const { renew, halfAngle } = object(entry);
    const { seat, part } = words(object(entry));
    withinLimit(object(entry), `cut.allow[${i}]`);
    if (halfAngle !== undefined && renew !== true)
      say(
        `cut.allow[${i}].halfAngle`,
        'found a half angle for a surface that is not renewed; set renew to true, or leave it out',
      );
    const surface = JSON.stringify([seat, part]);
    if (surfaces.has(surface))
      say(
        `cut.allow[${i}]`,
        `found the ${part!.slice(0, 40)} of ${shown(seat)} a second time; name every surface once`,
      );
    if (seat !== undefined && part !== undefined) surfaces.add(surface);
  });
  const faces = new Set<unknown>();
  list(cut.faces).forEach((entry, i) => {
    const { seats, cleanup, add, name: own } = object(entry);
    if (typeof own === 'string' && faces.has(own))
      say(`cut.faces[${i}].name`, `found ${shown(own)} a second time; every face needs a name of its own`);
    faces.add(own);
    withinLimit(object(entry), `cut.faces[${i}]`);
    list(seats).forEach((name, k) => {
      unknown(name, `cut.faces[${i}].seats[${k}]`);
    });
    if (number(cleanup) > 0 && number(add) > 0)
      say(
        `cut.faces[${i}].add`,
        'found both a cleanup and a thickness that may be added; a face that must be cut cannot be made thicker',
      );
  });
  const { from, to } = object(cut.reach);
  if (number(from) > number(to))
    say('cut.reach.to', `found ${to} mm, which is not noseward of the rearmost position, from (${from} mm)`);
  const lap = object(cut.lap);
  const orElse = (key: 'advance' | 'step') => (lap[key] === undefined ? defaultAt(`cut.lap.${key}`) : number(lap[key]));
  const steps = orElse('advance') / orElse('step');
  if (steps > MOST_LAP_STEPS)
    say('cut.lap.step', `makes ${Math.round(steps)} steps of the advance; at most ${MOST_LAP_STEPS} are followed`);
  trialRules(cut.trials, faces, names, say);
}

function trialRules(trials: unknown, faces: ReadonlySet<unknown>, names: Set<string>, say: Say): void {
  list(trials).forEach((trial, i, all) => {
    if (object(trial).inShapes === true && all.slice(0, i).some((earlier) => object(earlier).inShapes !== true))
      say(
        `cut.trials[${i}].inShapes`,
        'found true, but an earlier trial is not in the shapes; metal that came off before it is off them too',
      );
    namedSeats(object(trial).taken, `cut.trials[${i}].taken`, names, say);
    namedSeats(object(trial).blue, `cut.trials[${i}].blue`, names, say);
    list(object(trial).faces).forEach((entry, k) => {
      const { name: own } = object(entry);
      if (typeof own === 'string' && !faces.has(own))
        say(`cut.trials[${i}].faces[${k}].name`, `found ${shown(own)}, but no face has that name`);
    });
  });
}

/** What is assumed must be a number that stands in the design, and be named once. */
function assumedRules(design: Loose, say: Say): void {
  const seen = new Set<string>();
  list(design.assumed).forEach((path, i) => {
    if (typeof path !== 'string') return;
    const of = design as unknown as Design;
    const stands =
      pathOf(stepsOf(path)) === path && typeof valueAt(of, path) === 'number' && quantityIfAt(path, of) !== null;
    if (!stands)
      say(
        `assumed[${i}]`,
        `found ${shown(path)}, but no number of the design stands there; name a place such as seats[0].bush.diameter`,
      );
    else if (seen.has(path)) say(`assumed[${i}]`, `found ${shown(path)} a second time; name every place once`);
    seen.add(path);
  });
}

/** Every breach of the rules that span fields. Never throws. */
export function ruleErrors(raw: unknown): DesignError[] {
  const errors: DesignError[] = [];
  const say: Say = (path, message) => errors.push({ path, message });
  const design = object(raw);
  const names = new Set<string>();
  list(design.seats).forEach((entry, i) => {
    const seat = object(entry);
    if (typeof seat.name === 'string') {
      if (names.has(seat.name))
        say(`seats[${i}].name`, `found ${shown(seat.name)} a second time; every seat needs a name of its own`);
      names.add(seat.name);
    }
    seatRules(seat, `seats[${i}]`, say);
  });
  namedSeats(design.readings, 'readings', names, say);
  recordRules(design, say);
  namedSeats(design.priors, 'priors', names, say);
  oddsRules(object(design.odds), names, say);
  namedSeats(object(design.run).supply, 'run.supply', names, say);
  cutRules(object(design.cut), names, say);
  runRules(object(design.run), say);
  assumedRules(design, say);
  return errors;
}
