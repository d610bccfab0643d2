/** How far each reading lies from the fitted shape, in its own uncertainties: two in three within one, nearly all within two. */
import { scaleLinear } from 'd3-scale';
import { useRef } from 'react';
import { useSize } from '../useSize.ts';

interface Props {
  /** in the order of the notebook; null where a reading could not be used */
  normalised: readonly (number | null)[];
  names: readonly string[];
  disagreeing: readonly number[];
}

const LEFT = 34;
const HEIGHT = 190;

export function ResidualPlot({ normalised, names, disagreeing }: Props) {
  const box = useRef<HTMLElement>(null);
  const { width } = useSize(box, { width: 600, height: HEIGHT });
  const most = Math.max(3, ...normalised.map((n) => Math.abs(n ?? 0))) * 1.05;
  const y = scaleLinear([-most, most], [HEIGHT - 26, 12]);
  const step = (width - LEFT - 12) / Math.max(1, normalised.length);
  const said = normalised.map((n, i) => `${names[i]}: ${n === null ? 'not used' : n.toFixed(1)}`).join('; ');
  return (
    <figure ref={box} className="chart">
      <svg width={width} height={HEIGHT} role="img" aria-label={`Residuals in uncertainties. ${said}`}>
        <rect x={LEFT} width={width - LEFT} y={y(2)} height={y(-2) - y(2)} className="spread wide" />
        <rect x={LEFT} width={width - LEFT} y={y(1)} height={y(-1) - y(1)} className="spread" />
        {[-2, -1, 0, 1, 2].map((t) => (
          <g key={t} className="grid">
            <path d={`M${LEFT} ${y(t)}H${width}`} className={t === 0 ? 'zero' : ''} />
            <text x={LEFT - 6} y={y(t) + 4} textAnchor="end">
              {`${t}`.replace('-', '−')}
            </text>
          </g>
        ))}
        {normalised.map((n, i) => {
          const x = LEFT + step * (i + 0.5);
          return (
            // biome-ignore lint/suspicious/noArrayIndexKey: a reading is known by its place in the notebook
            <g key={i} className={disagreeing.includes(i) ? 'residual off' : 'residual'}>
              {n !== null && <path d={`M${x} ${y(0)}V${y(n)}`} />}
              {n !== null && <circle cx={x} cy={y(n)} r={5} />}
              <text x={x} y={HEIGHT - 8} textAnchor="middle">
                {i + 1}
              </text>
            </g>
          );
        })}
      </svg>
      <figcaption>Each reading against the fitted shape, in its own uncertainty; the numbers are their places in the notebook.</figcaption>
    </figure>
  );
}
