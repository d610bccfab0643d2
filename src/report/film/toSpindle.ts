/**
 * From the design's `run` to the engine: seats with lobes and grooves, load, oil, bodies that warm. What a design
 * leaves out has the default of its field.
 */
import type { Design, Part, Seat, Surface } from '../../design/definition.ts';
import { defaultAt } from '../../design/place.ts';
import type { FilmSeat } from '../../engine/film/films.ts';
import type { Groove } from '../../engine/film/grooves.ts';
import { cylinderRotor, type Rotor } from '../../engine/film/whirl.ts';
import type { ThermalBody } from '../../engine/heat/warmFilm.ts';
import { coldRun, MOST_EFFORT, type Running } from '../../engine/run/running.ts';
import { type Five, loadAt, type Pose } from '../../engine/spindle/pose.ts';
import { rigidSeat } from '../../engine/spindle/rigid.ts';
import { metres, pascals, radians, radPerSecond, squareMetres, toSeat } from '../convert.ts';
import { neededFilm, ROUGHNESS } from './neededFilm.ts';
import { toOil } from './oils.ts';

export type Run = NonNullable<Design['run']>;

export const AMBIENT = defaultAt('run.ambient');
const DURATION = defaultAt('run.heat.duration');
type GivenBody = NonNullable<NonNullable<Run['heat']>[Part]>;
const asItIs = (value: number) => value;
/** What every number of a body is in the engine's units: another one has its line here, or does not compile. */
const BODY = {
  mass: asItIs,
  specificHeat: asItIs,
  area: squareMetres,
  cooling: asItIs,
  expansion: asItIs,
  anchor: metres,
} as const satisfies Record<keyof ThermalBody | keyof GivenBody, (value: number) => number>;

export const toFilmSeats = (design: Design): FilmSeat[] =>
  design.seats.map((seat) => toFilmSeat(seat, design.run?.supply ?? []));

function toFilmSeat(seat: Seat, supply: NonNullable<Run['supply']>): FilmSeat {
  return {
    ...rigidSeat(toSeat(seat)),
    grooves: supply.filter((groove) => groove.seat === seat.name).map((groove) => toGroove(groove, seat.bush)),
  };
}

/** A groove's stations as places along the bush line: u = z·cos a + r·sin a. */
function toGroove({ angle, from, to, width, pressure }: NonNullable<Run['supply']>[number], bush: Surface): Groove {
  const a = radians(bush.halfAngle);
  const along = (station: number) =>
    metres(station) * Math.cos(a) + metres(bush.diameter / 2 + (station - bush.station) * Math.tan(a)) * Math.sin(a);
  return { angle: radians(angle), from: along(from), to: along(to), width: metres(width), pressure: pascals(pressure) };
}

/** The pose held by hand; without `z` the journal stands at the design's position. */
function toPose({ run, position }: Design): Pose {
  const { x = 0, y = 0, z = position ?? 0, tiltX = 0, tiltY = 0 } = run?.pose ?? {};
  return { x: metres(x), y: metres(y), z: metres(z), tiltX, tiltY };
}

/** All loads together about the bush datum; null where a pose is held instead. */
function toLoad({ load, loads }: Run): Five | null {
  if (load === undefined && loads === undefined) return null;
  const total: Five = [0, 0, 0, 0, 0];
  for (const { x = 0, y = 0, z = 0, station = 0 } of [...(load ? [load] : []), ...(loads ?? [])]) {
    const one = loadAt(x, y, z, metres(station));
    for (let i = 0; i < 5; i++) total[i]! += one[i]!;
  }
  return total;
}

function toBody({ heat }: Run, part: Part): ThermalBody {
  const of = (key: keyof typeof BODY) => BODY[key](heat?.[part]?.[key] ?? defaultAt(`run.heat.${part}.${key}`));
  const [mass, specificHeat, area] = [of('mass'), of('specificHeat'), of('area')];
  return { mass, specificHeat, area, cooling: of('cooling'), expansion: of('expansion'), anchor: of('anchor') };
}

export function toRunning(design: Design & { run: Run }, most = MOST_EFFORT): Running {
  const { run } = design;
  const [seats, load, oil, ambient] = [toFilmSeats(design), toLoad(run), toOil(run.oil), run.ambient ?? AMBIENT];
  const rough = (part: Part) => metres(run.roughness?.[part] ?? ROUGHNESS[part]);
  return {
    seats,
    load,
    pose: toPose(design),
    position: metres(design.position ?? 0),
    adjusted: design.adjuster !== undefined,
    run: coldRun(seats, load, radPerSecond(run.speed), oil.viscosity(ambient), most.pose),
    oil,
    journal: toBody(run, 'journal'),
    bush: toBody(run, 'bush'),
    rotor: toRotor(design),
    ambient,
    duration: run.heat?.duration ?? DURATION,
    roughness: { journal: rough('journal'), bush: rough('bush') },
    needed: metres(neededFilm(run)),
    nose: metres(noseStation(design)),
    most,
  };
}

/** mm: where the load acts, if beyond the seats; else the nose end of the journal. */
export const noseStation = ({ seats, run }: Design & { run: Run }): number =>
  Math.max(...seats.map((seat) => seat.journal.to), run.load?.station ?? Number.NEGATIVE_INFINITY);

/** The rotor for whirl: a cylinder of the journal's mass over all journal seats, of their mean radius. */
function toRotor(design: Design & { run: Run }): Rotor {
  const journals = design.seats.map((seat) => seat.journal);
  const from = Math.min(...journals.map((j) => j.from));
  const to = Math.max(...journals.map((j) => j.to));
  const radius = journals.reduce((sum, j) => sum + j.diameter / 2, 0) / journals.length;
  return cylinderRotor(toBody(design.run, 'journal').mass, metres(from), metres(to), metres(radius));
}
