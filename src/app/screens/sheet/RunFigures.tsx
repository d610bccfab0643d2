/**
 * How it is to run, for the person who assembles it: speed, oil, load, films cold and warm, where the design says how
 * it runs.
 */

import type { Design } from '../../../design/definition.ts';
import { measureText } from '../../../design/measures.ts';
import { defaultAt } from '../../../design/place.ts';
import { fineText, placeText, type System } from '../../../design/units.ts';
import { millipascalSeconds } from '../../../report/convert.ts';
import type { FilmReport } from '../../../report/film/definition.ts';
import { digits } from '../../../report/film/figures.ts';
import { filmVerdict } from '../../../report/film/verdict.ts';

interface Props {
  /** the parts as they shall be */
  design: Design & { run: NonNullable<Design['run']> };
  /** null while it is being worked out */
  film: FilmReport | null;
  system: System;
}

export function RunFigures({ design, film, system }: Props) {
  return (
    <div className="block run-figures" aria-busy={film === null}>
      <p>
        <strong>Running.</strong> {conditionsText(design, system)}{' '}
        {film === null ? (
          <span className="screen-only">The films are being worked out.</span>
        ) : (
          filmVerdict(design, film, system).headline
        )}
        {film?.seats.some(({ leastFilm, force }) => leastFilm !== null && force !== null) &&
          ` ${filmsText(film, system)}`}
      </p>
    </div>
  );
}

/** Least film of every seat, as it starts and when it no longer warms. */
function filmsText(film: FilmReport, system: System): string {
  const told = (seats: readonly { name: string; leastFilm: number | null }[]) =>
    seats
      .map(({ name, leastFilm }) => `${name} ${leastFilm === null ? 'apart' : fineText(leastFilm, system)}`)
      .join(', ');
  const watts = (power: number | null) => (power === null ? '' : `, friction ${digits(power)} W`);
  const { steady } = film;
  const celsius = (at: number) => measureText('temperature', at, system);
  const warm = steady
    ? ` Warm (journal ${celsius(steady.journal)}, bush ${celsius(steady.bush)}): ${told(steady.seats)}${watts(steady.power)}.`
    : '';
  return `Least film cold (${celsius(film.seats[0]?.temperature ?? defaultAt('run.ambient'))}): ${told(film.seats)}${watts(film.power)}.${warm}`;
}

function conditionsText({ run }: Props['design'], system: System): string {
  const { speed, oil, load, loads = [], ambient = defaultAt('run.ambient') } = run;
  return [
    `${speed ?? 0} rev/min`,
    oilText(oil, system),
    ...(load ? [load, ...loads].map((one) => loadText(one, system)) : ['the axis held by hand']),
    `room ${measureText('temperature', ambient, system)}.`,
  ].join(', ');
}

function oilText(oil: Props['design']['run']['oil'], system: System): string {
  if (oil?.grade !== undefined) return `oil ISO VG ${oil.grade}`;
  if (oil?.measured !== undefined)
    return `oil of ${oil.measured.map(([at, viscosity]) => `${viscosity} mm²/s at ${measureText('temperature', at, system)}`).join(' and ')}`;
  return oil?.viscosity === undefined
    ? 'no oil is named'
    : `oil of ${Number(millipascalSeconds(oil.viscosity).toPrecision(3))} mPa·s`;
}

function loadText(
  { x = 0, y = 0, z = 0, station = 0 }: NonNullable<Props['design']['run']['load']>,
  system: System,
): string {
  const parts: [number, string, string][] = [
    [y, 'up', 'down'],
    [x, 'to the right', 'to the left'],
    [z, 'noseward', 'rearward'],
  ];
  const told = parts
    .filter(([force]) => force !== 0)
    .map(([force, above, below]) => `${measureText('force', Math.abs(force), system)} ${force > 0 ? above : below}`);
  return told.length === 0 ? 'no load' : `load ${told.join(', ')} at station ${placeText(station, system)}`;
}
