/** The conditions a running spindle can be in, as areas of the charts: told apart without colour as well. */
import './conditions.css';
import { useId } from 'react';
import type { Condition, LimitPoint } from '../../report/film/limits.ts';

const TEXT: Record<Condition, string> = {
  works: 'works',
  seizes: 'metal touches: it seizes, or no film carries it',
  thin: 'film too thin to part the surfaces',
  loose: 'loose: it whirls',
  hot: 'hotter than its oil lasts',
  drags: 'too much drag cold for a small lathe’s motor',
  notConverged: 'no steady state found: as a rule it warms until it seizes',
};

/** Where the film is needed before anything has warmed too. */
const FROM_COLD: Partial<Record<Condition, string>> = {
  thin: 'film too thin to part the surfaces, cold or warm',
};

/** Of the conditions that occur; `cold`: the film is needed from the start. */
export function ConditionLegend({ points, cold = false }: { points: readonly LimitPoint[]; cold?: boolean }) {
  const id = useId();
  const kinds = (Object.keys(TEXT) as Condition[]).filter((kind) => points.some(({ condition }) => condition === kind));
  return (
    <p className="condition-legend">
      {kinds.map((kind) => (
        <span key={kind}>
          <svg width="30" height="18" aria-hidden="true" className={`condition ${kind}`}>
            <Hatches id={`${id}${kind}-`} />
            <rect width="30" height="18" className="ground" />
            <rect width="30" height="18" fill={`url(#${id}${kind}-${kind})`} className="pattern" />
          </svg>
          {(cold && FROM_COLD[kind]) || TEXT[kind]}
        </span>
      ))}
    </p>
  );
}

/** Patterns under `id` and the name of the condition. */
export function Hatches({ id }: { id: string }) {
  return (
    <defs>
      {(
        [
          ['seizes', 45],
          ['loose', -45],
          ['hot', 0],
          ['drags', 20],
          ['notConverged', 90],
        ] as const
      ).map(([kind, turn]) => (
        <pattern
          key={kind}
          id={`${id}${kind}`}
          width={8}
          height={8}
          patternUnits="userSpaceOnUse"
          patternTransform={`rotate(${turn})`}
        >
          <path d="M0 0V8" className="hatch-line" />
        </pattern>
      ))}
      <pattern id={`${id}thin`} width={7} height={7} patternUnits="userSpaceOnUse">
        <circle cx={2} cy={2} r={1} className="hatch-dot" />
      </pattern>
      <pattern id={`${id}works`} width={8} height={8} patternUnits="userSpaceOnUse" />
    </defs>
  );
}

/**
 * Stretches of one condition, meeting where what works is known to end (`ends`, in the points' own measure), else half
 * way between two points.
 */
export function stretchesOf(points: readonly LimitPoint[], log: boolean, ends: readonly number[]) {
  const middle = (a: number, b: number) =>
    ends.find((end) => end > Math.min(a, b) && end < Math.max(a, b)) ?? (log ? Math.sqrt(a * b) : (a + b) / 2);
  return points.map((point, i) => ({
    from: i === 0 ? point.at : middle(points[i - 1]!.at, point.at),
    to: i === points.length - 1 ? point.at : middle(point.at, points[i + 1]!.at),
    kind: point.condition,
  }));
}
