/** Film, temperature and power: against time as it warms, and against speed in the steady state. */
import type { Design } from '../../../design/definition.ts';
import { inUnit, unitOf } from '../../../design/measures.ts';
import { fineUnit, type System } from '../../../design/units.ts';
import type { FilmReport } from '../../../report/film/definition.ts';
import type { LimitPoint } from '../../../report/film/limits.ts';
import { neededFilm } from '../../../report/film/neededFilm.ts';
import { AMBIENT } from '../../../report/film/toSpindle.ts';
import { ConditionLegend, stretchesOf } from '../../charts/conditions.tsx';
import { LineChart } from '../../charts/LineChart.tsx';
import { motorLevel, powerColdAndWarm } from './leastFilms.ts';
import { isPosed } from './runEdits.ts';
import type { Sweep } from './useRunWork.ts';

interface Props {
  film: FilmReport;
  design: Design;
  system: System;
}

/** The level that parts the surfaces, in the unit shown. */
const parting = (design: Design, unit: number) => ({ at: neededFilm(design.run!) / unit, text: 'parts the surfaces' });

export function WarmUpCharts({ film, design, system }: Props) {
  const unit = fineUnit(system);
  const { warmUp, steady } = film;
  const degrees = (celsius: number) => inUnit('temperature', celsius, system);
  const last = warmUp[warmUp.length - 1];
  if (!last || warmUp.length < 2) return null;
  const minutes = last.time >= 300;
  const time = (seconds: number) => (minutes ? seconds / 60 : seconds);
  const across = minutes ? 'minutes since the start' : 'seconds since the start';
  const domain = [0, time(last.time)] as const;
  const line = (name: string, style: number, of: (point: FilmReport['warmUp'][number]) => number) => ({
    name,
    style,
    points: warmUp.map((point) => [time(point.time), of(point)] as const),
  });
  return (
    <section aria-label="Warming up">
      <p className="fine">{warmText(film)}</p>
      <div className="run-charts">
        <LineChart
          title="Least film against time"
          across={across}
          up={`least film, ${unit.name}`}
          domain={domain}
          lines={[line('least film', 0, (p) => p.leastFilm / unit.size)]}
          level={parting(design, unit.size)}
        />
        <LineChart
          title="Temperature of journal, bush and oil against time"
          across={across}
          up={`temperature, ${unitOf('temperature', system).name}`}
          domain={domain}
          lowest={Math.floor(degrees(Math.min(warmUp[0]!.journal, warmUp[0]!.bush)))}
          lines={[
            line('journal', 1, (p) => degrees(p.journal)),
            line('bush', 0, (p) => degrees(p.bush)),
            line('oil', 2, (p) => degrees(p.oil)),
          ]}
          level={steady ? { at: degrees(steady.journal), text: 'steady' } : null}
        />
        <LineChart
          title="Friction power against time"
          across={across}
          up="friction, W"
          domain={domain}
          lines={[line('friction', 2, (p) => p.power)]}
        />
      </div>
    </section>
  );
}

function warmText({ warmUpEnd, steady }: FilmReport): string {
  if (warmUpEnd === 'contact') return 'The films close before it is warm: it seizes where the curves end.';
  if (warmUpEnd === 'notConverged') return 'Where the curves end the films could no longer be worked out.';
  return steady
    ? 'Followed as masses warm, oil thins and both parts grow.'
    : 'Followed as masses warm, oil thins and both parts grow; it has no steady state that could be found.';
}

interface SpeedProps {
  sweep: Sweep;
  design: Design;
  system: System;
}

export function SpeedCharts({ sweep, design, system }: SpeedProps) {
  const unit = fineUnit(system);
  const points = sweep.points.map((point) => ({ ...point, at: Math.abs(point.at) })).sort((a, b) => a.at - b.at);
  if (points.length < 2) return null;
  const domain = [points[0]!.at, points[points.length - 1]!.at] as const;
  const line = (name: string, style: number, of: (point: LimitPoint) => number | null) => ({
    name,
    style,
    points: points.map((point) => [point.at, of(point) ?? Number.NaN] as const),
  });
  const common = {
    across: 'rev/min',
    domain,
    log: true,
    now: design.run!.speed === 0 ? null : Math.abs(design.run!.speed),
    stretches: stretchesOf(points, true, sweep.safe ? [Math.abs(sweep.safe.from), Math.abs(sweep.safe.to)] : []),
  };
  return (
    <section aria-label="Against speed">
      <h2>{safeText(sweep)}</h2>
      <p className="fine">
        Each point the steady state after hours at that speed,{' '}
        {isPosed(design.run!) ? 'held as it is, with the oil it has' : 'with the load and the oil as they are'}.
      </p>
      <ConditionLegend points={points} />
      <div className="run-charts">
        <LineChart
          {...common}
          title="Warm least film against speed"
          up={`warm least film, ${unit.name}`}
          lines={[line('least film', 0, (p) => p.leastFilm && p.leastFilm / unit.size)]}
          level={parting(design, unit.size)}
        />
        <LineChart
          {...common}
          title="Temperature of the journal against speed"
          up={`journal, ${unitOf('temperature', system).name}`}
          lowest={Math.floor(inUnit('temperature', design.run!.ambient ?? AMBIENT, system))}
          lines={[line('journal', 0, (p) => p.journal && inUnit('temperature', p.journal, system))]}
        />
        <LineChart
          {...common}
          title="Friction power, cold and warm, against speed"
          up="friction, W"
          lines={powerColdAndWarm(points)}
          level={motorLevel(points)}
        />
      </div>
    </section>
  );
}

const round = (value: number) => Number(value.toPrecision(2));

function safeText({ safe }: Sweep): string {
  if (safe === undefined) return 'Against speed';
  if (safe === null) return 'At no speed looked at does it run safely, cold and warm.';
  const [from, to] = [Math.abs(safe.from), Math.abs(safe.to)].sort((a, b) => a - b) as [number, number];
  const [openBelow, openAbove] =
    Math.abs(safe.from) <= Math.abs(safe.to) ? [safe.openBelow, safe.openAbove] : [safe.openAbove, safe.openBelow];
  if (openBelow && openAbove)
    return `Cold and warm it runs on a full film, calm and not too hot, at every speed looked at, ${round(from)} to ${round(to)} rev/min.`;
  if (openAbove)
    return `Cold and warm it runs on a full film, calm and not too hot, from ${round(from)} rev/min up, as far as was looked.`;
  if (openBelow) return `The greatest safe speed, cold and warm, is ${round(to)} rev/min.`;
  return `Cold and warm it runs on a full film, calm and not too hot, between ${round(from)} and ${round(to)} rev/min.`;
}
