/** One film as a layer between bush and journal: no section shows it, since the spindle stands aside under its load. */
import { ticks } from 'd3-array';
import { useId } from 'react';
import { fineUnit } from '../../../design/units.ts';
import { type Speech, told } from '../../../lessons/template.ts';

const WIDTH = 420;
const HEIGHT = 190;
const METAL = 40;
const RULER = 46;
/** Room that does not tell which way it goes. */
const TWICE = 2;
const ROOM = 1.1;

interface Props {
  title: string;
  /** mm: before, once let go, and as it is on the way */
  ends: { from: number; to: number };
  now: number;
  speech: Speech;
}

export function Layer({ title, ends, now, speech }: Props) {
  const id = useId();
  const { size, name } = fineUnit(speech.system);
  const deepest = Math.max(TWICE * ends.from, ROOM * ends.to);
  const perMm = (HEIGHT - 2 * METAL) / deepest;
  const [top, right] = [METAL, WIDTH - RULER];
  const y = (film: number) => top + film * perMm;
  return (
    <figure className="layer">
      <figcaption>
        {title}: <strong>{told(now, 'fine', speech)}</strong>
      </figcaption>
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={`${title}, drawn as a layer of oil`}>
        <clipPath id={id}>
          <rect width={right} height={HEIGHT} />
        </clipPath>
        <g clipPath={`url(#${id})`}>
          <rect className="bush" width={right} height={top} />
          <rect className="oil" y={top} width={right} height={Math.max(0, now) * perMm} />
          <rect className="journal" y={y(now)} width={right} height={HEIGHT} />
          <path className="was" d={`M0 ${y(ends.from)}H${right}`} />
        </g>
        <text x={10} y={26}>
          bush
        </text>
        <text x={10} y={HEIGHT - 12}>
          journal
        </text>
        {ticks(0, deepest / size, 4).map((tick) => (
          <g key={tick}>
            <path className="tick" d={`M${right} ${y(tick * size)}h7`} />
            <text x={right + 10} y={y(tick * size) + 4}>
              {tick}
            </text>
          </g>
        ))}
        <text x={right + 6} y={22}>
          {name}
        </text>
      </svg>
    </figure>
  );
}
