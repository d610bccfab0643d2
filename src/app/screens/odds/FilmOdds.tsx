/** Every film as it may turn out, over the band in which it is wanted. */
import { ticks } from 'd3-array';
import { scaleLinear } from 'd3-scale';
import { useId, useState } from 'react';
import type { Design } from '../../../design/definition.ts';
import { fineText, fineUnit, type System, sidedText } from '../../../design/units.ts';
import { metres } from '../../../report/convert.ts';
import type { StateReport } from '../../../report/odds/definition.ts';
import type { Counted, Pictures } from '../../../report/odds/pictures.ts';
import { timesText } from '../../../report/odds/times.ts';
import { hundredthText } from '../../../report/odds/words.ts';
import { AcrossAxis, ChartFigure, usePlot } from '../../charts/Axes.tsx';
import { FilmPatterns, FilmShape } from '../../pictures/FilmPaint.tsx';
import { classOf } from '../../pictures/filmClass.ts';
import { MetalMarks, WantedMarks } from '../../pictures/sceneLegend.tsx';

interface Props {
  design: Design;
  state: StateReport;
  films: Pictures['films'];
  /** whether the plan of Cut is off them, and whether it is the plan that says where the journal stands */
  cut: boolean;
  byPlan: boolean;
  /** a film as Cut or Fit tells it there; empty where neither does */
  told(name: string): string;
  system: System;
}

type At = 'best' | 'set';

export function FilmOdds({ design, state, films, cut, byPlan, told: toldThere, system }: Props) {
  const [at, setAt] = useState<At>(state.best.position ? 'best' : 'set');
  const inBand = at === 'best' ? state.best.inBand : state.inBand;
  const told = at === 'best' ? state.best.films : state.films;
  return (
    <section className="film-odds" aria-label="Films as they may turn out">
      <label className="which">
        <span>Films with the journal</span>
        <select value={at} onChange={(event) => setAt(event.target.value as At)}>
          <option value="best">where each pair runs best</option>
          <option value="set">
            {byPlan ? 'where Cut sets it' : 'where it stands on Fit'}, {sidedText(state.position, system)}
          </option>
        </select>
      </label>
      <FilmLegend />
      <p className="fine">{cut ? 'With the plan of Cut taken off.' : 'As the parts are now, nothing more off.'}</p>
      {design.seats.map(({ name, film }, seat) => {
        const counted = films[seat]![at];
        const spread = told[name];
        const share = `${film ? 'within its tolerance' : 'clear'} ${timesText(inBand[name]!)}`;
        const pressed = spread && spread.p05 < 0 ? ' (below nought: pressed in)' : '';
        // One film has one ± on every screen.
        const there = at === 'set' ? toldThere(name) : '';
        const about = there === '' ? '' : `; most likely ${there}, 19 times in 20`;
        const size = spread
          ? `${about}; 9 times in 10 ${fineText(spread.p05, system)} to ${fineText(spread.p95, system)}${pressed}`
          : '';
        return (
          <div key={name} className={`film-odd seat-${seat % 4}`}>
            <h3>
              {name}: {share}
            </h3>
            {counted ? (
              <Distribution
                label={`The ${name} film as it may turn out, over the band wanted: ${share}`}
                name={name}
                counted={counted}
                band={film && [film.target - (film.tolerance ?? 0), film.target + (film.tolerance ?? 0)]}
                system={system}
              />
            ) : (
              <p className="fine">Most pairs have no such film: the surfaces do not stand over each other there.</p>
            )}
            <p className="fine">
              {film
                ? `Wanted ${fineText(film.target, system)} ± ${fineText(film.tolerance ?? 0, system)}`
                : 'No film wanted'}
              {size}.{counted && beyondText(counted)}
            </p>
          </div>
        );
      })}
    </section>
  );
}

function FilmLegend() {
  return (
    <div className="stage-legend">
      <WantedMarks />
      <MetalMarks />
    </div>
  );
}

/** What only touches, and what is beyond the chart. */
function beyondText({ below, above, touching }: Counted): string {
  const touches = touching > 0.005 ? ` Touches ${hundredthText(touching)}.` : '';
  const told = [
    ...(below > 0.005 ? [`${hundredthText(below)} thinner`] : []),
    ...(above > 0.005 ? [`${hundredthText(above)} thicker`] : []),
  ];
  return told.length === 0 ? touches : `${touches} Beyond the ends of this chart: ${told.join(', ')}.`;
}

const MARGIN = { left: 10, right: 10, top: 8, bottom: 40 };

interface DistributionProps {
  label: string;
  name: string;
  counted: Counted;
  /** mm: where it is to lie; above nothing where left out */
  band: readonly [least: number, most: number] | undefined;
  system: System;
}

/** px: how wide the bar of those that touch stands */
const TOUCHING = 8;

/** A film as it may turn out, counted in even steps; those that touch stand apart, on nought. */
export function Distribution({ label, name, counted, band, system }: DistributionProps) {
  const { from, step: wide, shares, touching } = counted;
  const { box, width, height, plot } = usePlot(MARGIN, { width: 420, height: 134 });
  const id = useId();
  const unit = fineUnit(system);
  const [least, most] = band ?? [0, Number.POSITIVE_INFINITY];
  const ends = [from, from + wide * shares.length, ...[least, most].filter(Number.isFinite), ...(touching ? [0] : [])];
  const [low, high] = [Math.min(...ends), Math.max(...ends)];
  const wanted = band ? { target: metres((least + most) / 2), tolerance: metres((most - least) / 2) } : null;
  const pad = 0.06 * (high - low);
  const x = scaleLinear([low - pad, high + pad], [plot.left, plot.right]);
  const y = scaleLinear([0, Math.max(...shares, touching)], [plot.bottom, plot.top]);
  const [bandLow, bandHigh] = [Math.max(plot.left, x(least)), Math.min(plot.right, x(Math.min(most, high + pad)))];
  const bar = (left: number, across: number, share: number) =>
    `${left},${y(share)} ${left + across},${y(share)} ${left + across},${plot.bottom} ${left},${plot.bottom}`;
  return (
    <ChartFigure
      box={box}
      className="distribution"
      size={{ width, height }}
      label={touching > 0 ? `${label}; touches ${hundredthText(touching)}` : label}
      curves={() => ({
        across: `least film, ${unit.name}`,
        up: 'share of the pairs',
        lines: [
          { name, points: shares.map((share, i) => [(from + wide * (i + 0.5)) / unit.size, share] as const) },
          ...(touching > 0 ? [{ name: `${name}, touching`, points: [[0, touching] as const] }] : []),
        ],
      })}
    >
      <FilmPatterns id={id} />
      <rect
        x={bandLow}
        width={Math.max(2, bandHigh - bandLow)}
        y={plot.top - 6}
        height={plot.bottom - plot.top + 6}
        className="wanted-band"
      />
      {shares.map((share, i) => {
        const middle = from + wide * (i + 0.5);
        const left = x(from + wide * i);
        const points = bar(left, Math.max(1, x(from + wide * (i + 1)) - left - 0.5), share);
        return (
          <g key={middle} className="counted">
            <FilmShape points={points} kind={classOf(metres(middle), wanted)} id={id} />
          </g>
        );
      })}
      {touching > 0 && (
        <g className="counted">
          <FilmShape points={bar(x(0) - TOUCHING / 2, TOUCHING, touching)} kind="touch" id={id} />
        </g>
      )}
      <g className="grid">
        <path d={`M${plot.left} ${plot.bottom}H${plot.right}`} className="zero" />
      </g>
      <AcrossAxis
        plot={plot}
        at={x}
        ticks={ticks(x.domain()[0]! / unit.size, x.domain()[1]! / unit.size, width < 380 ? 4 : 6)}
        unit={unit.size}
        marked
      />
      <text x={plot.right} y={height - 5} textAnchor="end">
        {`least film, ${unit.name}`}
      </text>
    </ChartFigure>
  );
}
