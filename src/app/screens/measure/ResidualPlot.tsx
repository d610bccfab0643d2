/**
 * How far each reading lies from the fitted shape, standardised: over the standard deviation that a residual of its
 * leverage has (definition.ts, `normalised`), so two in three lie within one, nearly all within two. The scale keeps to
 * where readings belong; one that is far out is drawn to the edge with a break in its stem and its figure beside it.
 */
import { ticks } from 'd3-array';
import { scaleLinear } from 'd3-scale';
import { useRef } from 'react';
import { UpAxis } from '../../charts/Axes.tsx';
import { useSize } from '../../pictures/useSize.ts';

interface Props {
  /** in the order of the notebook; null where a reading could not be used */
  normalised: readonly (number | null)[];
  names: readonly string[];
  disagreeing: readonly number[];
}

const LEFT = 34;
const HEIGHT = 210;
/** Standard deviations; no more are drawn to scale. */
const MOST = 5;
/** px that a number of the notebook takes below the chart. */
const NUMBER = 30;

export function ResidualPlot({ normalised, names, disagreeing }: Props) {
  const box = useRef<HTMLElement>(null);
  const { width } = useSize(box, { width: 600, height: HEIGHT });
  const sizes = normalised.map((n) => Math.abs(n ?? 0));
  const most = Math.min(MOST, Math.max(3, ...sizes));
  const off = (n: number) => Math.abs(n) > most;
  const clipped = sizes.some((n) => n > most);
  const [top, bottom] = [clipped ? 34 : 14, HEIGHT - (clipped ? 48 : 28)];
  const y = scaleLinear([-most, most], [bottom, top]);
  const step = (width - LEFT - 12) / Math.max(1, normalised.length);
  const every = Math.max(1, Math.ceil(NUMBER / step));
  const radius = Math.max(2, Math.min(5, step * 0.4));
  const said = normalised.map((n, i) => `${names[i]}: ${n === null ? 'not used' : n.toFixed(1)}`).join('; ');
  return (
    <figure ref={box} className="chart">
      <svg width={width} height={HEIGHT} role="img" aria-label={`Standardised residuals. ${said}`}>
        <rect x={LEFT} width={width - LEFT} y={y(2)} height={y(-2) - y(2)} className="spread wide" />
        <rect x={LEFT} width={width - LEFT} y={y(1)} height={y(-1) - y(1)} className="spread" />
        <UpAxis
          plot={{ left: LEFT, right: width, top, bottom }}
          at={y}
          ticks={ticks(-most, most, 8).filter(Number.isInteger)}
        />
        {normalised.map((n, i) => {
          const x = LEFT + step * (i + 0.5);
          const named = i % every === 0 || disagreeing.includes(i) || (n !== null && off(n));
          return (
            // biome-ignore lint/suspicious/noArrayIndexKey: a reading is known by its place in the notebook
            <g key={i} className={disagreeing.includes(i) ? 'residual off' : 'residual'}>
              {n !== null &&
                (off(n) ? (
                  <FarOut x={x} zero={y(0)} edge={n > 0 ? top : bottom} n={n} right={width} />
                ) : (
                  <path d={`M${x} ${y(0)}V${y(n)}`} />
                ))}
              {n !== null && !off(n) && <circle cx={x} cy={y(n)} r={radius} />}
              {named && (
                <text x={x} y={HEIGHT - 8} textAnchor="middle">
                  {i + 1}
                </text>
              )}
            </g>
          );
        })}
      </svg>
      <figcaption>
        Standardised residuals: how far each reading lies from the fitted shape, over the standard deviation to be
        expected of that. It is less than the reading’s own uncertainty, since each reading draws the shape to itself.
        The numbers are their places in the notebook.
        {clipped && ` The scale ends at ${most}: a broken stem with a figure lies further out than it is drawn.`}
      </figcaption>
    </figure>
  );
}

/** A stem that is broken, an arrow head at the edge of the scale, and how far it really lies. */
function FarOut({ x, zero, edge, n, right }: { x: number; zero: number; edge: number; n: number; right: number }) {
  const out = Math.sign(edge - zero);
  const middle = (zero + edge) / 2;
  const end = x > right - 40;
  return (
    <g className="far-out">
      <path
        d={`M${x} ${zero}V${middle - 4 * out}M${x - 6} ${middle - 2 * out}l12 ${-5 * out}M${x - 6} ${middle + 5 * out}l12 ${-5 * out}M${x} ${middle + 3 * out}V${edge}`}
      />
      <path d={`M${x} ${edge + 6 * out}l-5 ${-8 * out}h10Z`} className="head" />
      <text x={end ? right - 2 : x} y={edge + (out > 0 ? 20 : -10)} textAnchor={end ? 'end' : 'middle'}>
        {`${n < 0 ? '−' : ''}${Math.abs(n) < 100 ? Math.abs(n).toFixed(1) : Math.round(Math.abs(n))}`}
      </text>
    </g>
  );
}
