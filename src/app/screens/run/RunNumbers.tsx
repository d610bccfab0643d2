/** The run in figures: what each seat carries and loses, the whole spindle, and where the heat goes. */

import type { Millimetres } from '../../../design/dimension.ts';
import { figures, type Measure, measureText } from '../../../design/measures.ts';
import { fineText, lengthUnit, placeText, type System } from '../../../design/units.ts';
import { millipascalSeconds } from '../../../report/convert.ts';
import type { FilmReport, SeatOilReport } from '../../../report/film/definition.ts';

const NONE = '—';
type Place = SeatOilReport['peakAt'];

export function RunNumbers({ film, system }: { film: FilmReport; system: System }) {
  const told = (value: number | null, measure: Measure) =>
    value === null ? NONE : measureText(measure, value, system);
  const watts = (value: number | null) => (value === null ? NONE : `${figures(value)} W`);
  const place = (at: Place) => (at === null ? NONE : `${at.angle.toFixed(0)}°, ${stationText(at.station, system)}`);
  const warm = (seat: SeatOilReport) => film.steady?.seats.find(({ name }) => name === seat.name);
  const rows: [name: string, text: (seat: SeatOilReport) => string, sum?: string][] = [
    ['Thrust it carries', (seat) => told(seat.force?.z ?? null, 'force'), told(film.force?.z ?? null, 'force')],
    [
      'Sideways it carries',
      (seat) => told(seat.force && Math.hypot(seat.force.x, seat.force.y), 'force'),
      told(film.force && Math.hypot(film.force.x, film.force.y), 'force'),
    ],
    [
      'Least film, cold',
      (seat) => (seat.leastFilm === null ? NONE : fineText(seat.leastFilm, system)),
      film.leastFilm === null ? NONE : fineText(film.leastFilm, system),
    ],
    ['…where', (seat) => place(seat.leastFilmAt)],
    [
      'Least film, warm',
      (seat) => (warm(seat) ? fineText(warm(seat)!.leastFilm, system) : NONE),
      film.steady ? fineText(film.steady.leastFilm, system) : NONE,
    ],
    ['Growth gives the film', (seat) => (warm(seat) ? fineText(warm(seat)!.growth, system) : NONE)],
    ['Peak pressure', (seat) => told(seat.peakPressure, 'pressure')],
    ['…where', (seat) => place(seat.peakAt)],
    ['Under pressure', (seat) => (seat.wetted === null ? NONE : `${Math.round(100 * seat.wetted)} %`)],
    ['Friction torque', (seat) => told(seat.torque, 'torque'), told(film.torque, 'torque')],
    ['Friction power, cold', (seat) => watts(seat.power), watts(film.power)],
    ['Friction power, warm', (seat) => watts(warm(seat)?.power ?? null), watts(film.steady?.power ?? null)],
    ['Oil out of both ends', (seat) => told(seat.flow, 'flow')],
    [
      'Oil, warm',
      (seat) =>
        warm(seat)
          ? `${measureText('temperature', warm(seat)!.temperature, system)}, ${figures(millipascalSeconds(warm(seat)!.viscosity))} mPa·s`
          : NONE,
    ],
  ];
  return (
    <>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a box that scrolls sideways must be reachable by the keyboard */}
      <section className="table" aria-label="The run in figures" tabIndex={0}>
        <table>
          <thead>
            <tr>
              <th scope="col">Seat</th>
              {film.seats.map(({ name }) => (
                <th key={name} scope="col">
                  {name}
                </th>
              ))}
              <th scope="col">all</th>
            </tr>
          </thead>
          <tbody>
            {rows.map(([name, text, sum], i) => (
              <tr key={rows.slice(0, i).some(([other]) => other === name) ? `${name} ${i}` : name}>
                <th scope="row">{name}</th>
                {film.seats.map((seat) => (
                  <td key={seat.name}>{text(seat)}</td>
                ))}
                <td>{sum ?? ''}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <div className="told">
        <HeatBalance film={film} />
        <Stiffness film={film} system={system} />
      </div>
    </>
  );
}

/** A station near enough to find the place: to a tenth of a millimetre, or a few thou. */
function stationText(mm: Millimetres, system: System): string {
  const unit = lengthUnit(system);
  return `${`${Number((mm / unit.size).toFixed(system === 'metric' ? 1 : 3))}`.replace('-', '−')} ${unit.name}`;
}

/** Where the friction goes, as bars of one length together. */
function HeatBalance({ film }: { film: FilmReport }) {
  if (!film.steady) return null;
  const { heat, power } = film.steady;
  const parts = [
    { name: 'journal to the room', watts: heat.journal, kind: 'journal' },
    { name: 'bush to the room', watts: heat.bush, kind: 'bush' },
    { name: 'carried off by oil', watts: heat.oil, kind: 'oil' },
  ];
  return (
    <section aria-label="Heat balance">
      <h2>Where {figures(power)} W of friction goes, warm</h2>
      <ul className="plain heat">
        {parts.map(({ name, watts, kind }) => (
          <li key={name}>
            <span>{name}</span>
            <span className="bar-room" aria-hidden="true">
              <i
                className={kind}
                style={{ width: `${power > 0 ? Math.min(100, Math.max(0, (100 * watts) / power)) : 0}%` }}
              />
            </span>
            <span>{figures(watts)} W</span>
          </li>
        ))}
      </ul>
    </section>
  );
}

function Stiffness({ film, system }: { film: FilmReport; system: System }) {
  const { nose, whirl } = film;
  if (!nose && !whirl) return null;
  const AXES = ['to the right', 'upward', 'along the axis'];
  return (
    <section aria-label="Stiffness and whirl">
      <h2>Stiffness and whirl</h2>
      {nose && (
        <p>
          At station {placeText(nose.station, system)}, the rest of the spindle free to follow:{' '}
          {nose.stiffness.map((row, i) => `${measureText('stiffness', row[i]!, system)} ${AXES[i]}`).join(', ')}
          {nose.stiffness.length < 3 ? '; along the axis a stop holds it' : ''}.
        </p>
      )}
      {whirl && (
        <p>
          {whirl.stable
            ? `Nudged, it comes back: the slowest motion dies away at ${figures(whirl.decay)}/s`
            : `Nudged, it whirls: the motion grows at ${figures(-whirl.decay)}/s`}
          , at {figures(whirl.ratio)} of the speed of turning.{' '}
          {whirl.threshold === null
            ? 'No speed looked at makes it whirl.'
            : whirl.threshold === 0
              ? 'It whirls at the slowest speed looked at too.'
              : `Cold, whirl sets in at ${Number(whirl.threshold.toPrecision(2))} rev/min.`}{' '}
          Taken with a rotor of {measureText('mass', whirl.mass, system)}.
        </p>
      )}
    </section>
  );
}
