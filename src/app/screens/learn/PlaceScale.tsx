/**
 * Where the spindle is to stand, as a mark on the scale of the dial gauge: drawn along it or moved by arrow keys,
 * before anything moves. The picture stands still beside it: moved with the mark it would show where metal meets metal.
 */
import { ticks } from 'd3-array';
import { scaleLinear } from 'd3-scale';
import { useRef } from 'react';
import { fineText, fineUnit } from '../../../design/units.ts';
import type { DealtQuestion } from '../../../lessons/deal.ts';
import { type Speech, told } from '../../../lessons/template.ts';
import { keepsTouch } from '../../pictures/useDrag.ts';
import { useHandle } from '../../pictures/useMove.ts';
import { useSize } from '../../pictures/useSize.ts';
import { reachOfPlace } from './markScale.ts';

interface Props {
  label: string;
  dealt: DealtQuestion;
  /** mm; null: not marked yet */
  at: number | null;
  put(at: number): void;
  speech: Speech;
}

const HEIGHT = 74;
const BASE = 40;
const EDGE = 16;
/** mm, and how many of it Shift makes of one press */
const PRESS = 0.001;
const TEN = 10;

export function PlaceScale({ label, dealt, at, put, speech }: Props) {
  const box = useRef<HTMLDivElement>(null);
  const { width } = useSize(box, { width: 420, height: HEIGHT });
  const far = reachOfPlace(dealt);
  const { size, name } = fineUnit(speech.system);
  const x = scaleLinear([-far, far], [EDGE, width - EDGE]);
  const stands = dealt.from.position ?? 0;
  const mark = at ?? stands;
  const bounded = (place: number) => Math.min(far, Math.max(-far, Number(place.toFixed(5))));
  const move = useHandle({
    at: { x: mark, y: 0 },
    to: (place) => put(bounded(place)),
    perPixel: () => (2 * far) / (width - 2 * EDGE),
    step: PRESS,
    times: TEN,
  });
  const shown = x(bounded(mark));
  return (
    <div className="place-scale" ref={box}>
      <svg width={width} height={HEIGHT} role="group" aria-label={`${label}, on the scale of the dial gauge`}>
        <path d={`M${EDGE} ${BASE}H${width - EDGE}`} />
        {ticks(-far / size, far / size, Math.max(2, Math.round(width / 110))).map((tick) => (
          <g key={tick}>
            <path d={`M${x(tick * size)} ${BASE - 5}v10`} />
            <text x={x(tick * size)} y={BASE + 20} textAnchor="middle">
              {Math.abs(tick)}
            </text>
          </g>
        ))}
        <text x={4} y={HEIGHT - 1}>
          toward the rear
        </text>
        <text x={width / 2} y={HEIGHT - 1} textAnchor="middle">
          {name}
        </text>
        <text x={width - 4} y={HEIGHT - 1} textAnchor="end">
          toward the nose
        </text>
        <path className="stands" d={`M${x(stands)} ${BASE - 22}v16m-4 -6l4 6l4 -6`} />
        <text x={x(stands)} y={14} textAnchor={stands > far / 2 ? 'end' : stands < -far / 2 ? 'start' : 'middle'}>
          stands now
        </text>
        <g
          {...move.handlers}
          ref={keepsTouch}
          className={`place-mark ${at === null ? 'unset' : ''}`}
          role="slider"
          tabIndex={0}
          aria-label={label}
          aria-valuemin={Math.round(-far / PRESS)}
          aria-valuemax={Math.round(far / PRESS)}
          aria-valuenow={Number((mark / PRESS).toFixed(2))}
          aria-valuetext={
            at === null ? `not marked yet; it stands at ${fineText(stands, speech.system)}` : told(at, 'sided', speech)
          }
          onKeyDown={move.onKeyDown}
        >
          <rect className="grip" x={shown - 24} y={BASE - 24} width={48} height={48} />
          <circle cx={shown} cy={BASE} r={9} className="handle" />
        </g>
      </svg>
    </div>
  );
}
