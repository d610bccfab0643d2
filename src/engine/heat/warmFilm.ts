/**
 * The spindle on its films with journal and bush at given temperatures: what warms, and by how much.
 *
 *   oil in a seat        T = (T_j + T_b)/2 + (P - E)/(12 C),   E = ρ c Q (T - T_in)
 *   into the journal     (P - E)/2 + C (T_b - T_j)             into the bush     (P - E)/2 - C (T_b - T_j)
 *
 * P shear power (W) · E what the oil running out takes with it, Q its flow (m³/s), entering at the room's temperature ·
 * C = k ∫ dA/h heat conducted across the film (W/K). The first line is the mean of the temperature across a film heated
 * evenly between two walls. The viscosity of each seat is that at its T; the films include the parts' growth. One
 * temperature a seat: mixing round the seat and the oil's own heat capacity (a fraction of a gram) are left out.
 * @source derived (conduction with even heating, closed form)
 */
import { type Effort, isSpent } from '../film/effort.ts';
import type { Near } from '../film/equilibrium.ts';
import { type Grids, placesFor, type SpindleRun, type Sum } from '../film/films.ts';
import type { Oil } from '../film/oil.ts';
import type { SeatFilm } from '../film/seatFilm.ts';
import { type Stand, stand } from '../film/stand.ts';
import { columnStep, rowStep } from '../film/unrolled.ts';
import type { Pose } from '../spindle/pose.ts';
import { filmGrowth } from './filmGrowth.ts';

/** W/(m·K) and J/(kg·K) of mineral oil. @source Handbooks (0.12 to 0.15 and 1700 to 2100) */
const CONDUCTIVITY = 0.14;
const SPECIFIC_HEAT = 1900;

export interface ThermalBody {
  /** kg */
  mass: number;
  /** J/(kg·K) */
  specificHeat: number;
  /** m² */
  area: number;
  /** W/(m²·K) */
  cooling: number;
  /** 1/K */
  expansion: number;
  /** m */
  anchor: number;
}

export interface Warming {
  grids: Grids;
  /** a grid to come from when nothing close by is known */
  coarse?: Grids;
  stand: Stand;
  /** rad/s */
  omega: number;
  oil: Oil;
  journal: ThermalBody;
  bush: ThermalBody;
  /** °C */
  ambient: number;
  /** m of cold film added to each seat: what other clearances would do */
  extra?: readonly number[];
  /** how much work may be done; left out: as much as it takes */
  effort?: Effort;
}

export interface WarmFilm {
  /** °C */
  journal: number;
  bush: number;
  /** °C and Pa·s of each seat's oil, m that growth adds to its film */
  oil: number[];
  run: SpindleRun;
  pose: Pose;
  seats: SeatFilm[];
  total: Sum;
  /** N along z that a stop takes */
  stop: number;
  /** W: into the parts, carried off by oil, and C of all seats (W/K) */
  heat: { journal: number; bush: number; oil: number; across: number };
  near: Near;
}

export type WarmVerdict =
  | ({ status: 'solved' } & WarmFilm)
  /** the parts have grown together, or no film carries the load any more */
  | { status: 'contact'; seat: number; journal: number; bush: number }
  | { status: 'notConverged' | 'givenUp'; journal: number; bush: number };

/** K, between two looks at the oil's temperature */
const SETTLED = 0.02;

/** m that growth (and `extra`) adds to each seat's film at these temperatures (°C). */
export function growths(
  { grids, journal: j, bush: b, ambient, extra }: Warming,
  journal: number,
  bush: number,
): number[] {
  const strain = (part: ThermalBody, celsius: number) => ({
    strain: part.expansion * (celsius - ambient),
    anchor: part.anchor,
  });
  return grids.seats.map(({ gap }, i) => (extra?.[i] ?? 0) + filmGrowth(gap, strain(b, bush), strain(j, journal)));
}

/** The films at these temperatures of the parts (°C), starting from a state close by where there is one. */
export function warmFilm(warming: Warming, journal: number, bush: number, last: WarmFilm | null): WarmVerdict {
  const { grids, coarse, oil, omega, effort } = warming;
  const growth = growths(warming, journal, bush);
  const mean = (journal + bush) / 2;
  let temperature = last ? last.oil.map((t) => t + mean - (last.journal + last.bush) / 2) : grids.seats.map(() => mean);
  let near = last?.near;
  const places = 'load' in warming.stand ? placesFor(grids.seats) : undefined;
  for (let look = 0; ; look++) {
    if (isSpent(effort)) return { status: 'givenUp', journal, bush };
    const run: SpindleRun = {
      omega,
      growth,
      viscosity: temperature.map((t) => oil.viscosity(t)),
      ...(places !== undefined && { places }),
      ...(effort && { effort }),
    };
    const stood = stand(grids, warming.stand, run, { ...(coarse && { coarse }), ...(near && { near }) });
    if (stood.status !== 'solved')
      return 'seat' in stood
        ? { status: 'contact', seat: stood.seat, journal, bush }
        : { status: stood.status === 'givenUp' ? 'givenUp' : 'notConverged', journal, bush };
    near = stood;
    const heats = stood.seats.map((seat, i) => seatHeat(warming, seat, i, journal, bush, run.viscosity[i]!));
    const moved = Math.max(...heats.map((heat, i) => Math.abs(heat.oil - temperature[i]!)));
    temperature = heats.map((heat) => heat.oil);
    if (moved < SETTLED || look === 5) {
      const sum = (of: 'journal' | 'bush' | 'carried' | 'across') => heats.reduce((s, one) => s + one[of], 0);
      const heat = { journal: sum('journal'), bush: sum('bush'), oil: sum('carried'), across: sum('across') };
      return {
        status: 'solved',
        journal,
        bush,
        oil: temperature,
        run,
        pose: stood.pose,
        seats: stood.seats,
        total: stood.total,
        stop: stood.stop,
        heat,
        near: stood,
      };
    }
  }
}

function seatHeat(
  { grids, oil, ambient }: Warming,
  seat: SeatFilm,
  index: number,
  journal: number,
  bush: number,
  viscosity: number,
) {
  const across = CONDUCTIVITY * inverseFilm(grids, index);
  const flow = Math.max(0, seat.flow.rear) + Math.max(0, seat.flow.nose);
  const perKelvin = oil.density(ambient) * SPECIFIC_HEAT * flow;
  const mean = (journal + bush) / 2;
  // T and E linear in one another.
  const warmedBy = (power: number) =>
    (mean + (power + perKelvin * ambient) / (12 * across)) / (1 + perKelvin / (12 * across));
  // Shear power goes with the viscosity, and that falls with T: the one T at which both agree, by halving.
  let [low, high] = [Math.min(mean, warmedBy(0)), Math.max(mean, warmedBy(seat.power))];
  for (let i = 0; i < 60 && high - low > 1e-6; i++) {
    const middle = (low + high) / 2;
    if (warmedBy((seat.power * oil.viscosity(middle)) / viscosity) > middle) low = middle;
    else high = middle;
  }
  const temperature = (low + high) / 2;
  const carried = perKelvin * (temperature - ambient);
  const half = (seat.power - carried) / 2;
  const exchange = across * (bush - journal);
  return { oil: temperature, carried, across, journal: half + exchange, bush: half - exchange };
}

/** ∫ dA/h (m). */
function inverseFilm({ spaces }: Grids, index: number): number {
  const { grid, film } = spaces[index]!;
  let sum = 0;
  for (let k = 0; k < film.centre.length; k++) sum += grid.radius[k % grid.rows]! / film.centre[k]!;
  return sum * rowStep(grid) * columnStep(grid);
}

/** W to the room from a part at a temperature (°C). */
export const toRoom = ({ cooling, area }: ThermalBody, celsius: number, ambient: number) =>
  cooling * area * (celsius - ambient);
