/**
 * One seat unrolled: round the bush along the page, its length up the page from the rear to the nose; pressure or film
 * as colour.
 */
import { ticks } from 'd3-array';
import { scaleLinear } from 'd3-scale';
import { useEffect, useMemo, useRef } from 'react';
import type { Design } from '../../../design/definition.ts';
import { measureText } from '../../../design/measures.ts';
import { fineText, lengthUnit, placeText, type System } from '../../../design/units.ts';
import { metres } from '../../../report/convert.ts';
import type { SeatFields } from '../../../report/film/fields.ts';
import type { Rgb } from '../../pictures/colourScale.ts';
import { CLASS_TEXT, classOf } from '../../pictures/filmClass.ts';
import { textWidth } from '../../pictures/textWidth.ts';
import { useMedia } from '../../pictures/useMedia.ts';
import { useSize } from '../../pictures/useSize.ts';
import { contour, type Piece } from './contours.ts';
import { paintFilm } from './filmMap.ts';
import { heldAgainst } from './runningFilm.ts';
import { extremeOf, groovesOf, type Place, stationsOf } from './seatMarks.ts';

export type Layer = 'pressure' | 'film';

interface Props {
  seat: SeatFields;
  index: number;
  design: Design;
  layer: Layer;
  /** the colour of a value of the layer */
  colour(value: number): Rgb;
  /** values at which lines of equal value are drawn */
  levels: readonly number[];
  system: System;
}

const MARGIN = { left: 52, right: 14, top: 8, bottom: 24 };
/** px: on a phone both maps of a pair and what the hand moves are to be on one screen. */
const HEIGHTS = { phone: 96, else: 210 };
const ANGLES = [0, 90, 180, 270, 360];

export function SeatMap({ seat, index, design, layer, colour, levels, system }: Props) {
  const box = useRef<HTMLElement>(null);
  const height = useMedia('(max-width: 599px)') ? HEIGHTS.phone : HEIGHTS.else;
  const { width } = useSize(box, { width: 600, height });
  const canvas = useRef<HTMLCanvasElement>(null);
  const plot = {
    width: Math.max(100, width - MARGIN.left - MARGIN.right),
    height: height - MARGIN.top - MARGIN.bottom,
  };
  const ends = stationsOf(seat);
  const x = scaleLinear([0, 360], [MARGIN.left, MARGIN.left + plot.width]);
  const y = scaleLinear([ends.from, ends.to], [height - MARGIN.bottom, MARGIN.top]);
  const values = layer === 'pressure' ? seat.pressure : seat.film;
  const dark = useMedia('(prefers-color-scheme: dark)');
  const ratio = Math.min(2, window.devicePixelRatio || 1);
  useEffect(() => {
    const context = canvas.current?.getContext('2d', { willReadFrequently: true });
    if (!context) return;
    if (layer === 'film') paintFilm(context, seat, heldAgainst(design, seat.name), ratio, dark);
    else paint(context, seat, values, colour);
  });
  const unit = lengthUnit(system);
  const touches = classOf(metres(seat.leastFilm), null) === 'touch';
  const leastText = touches ? CLASS_TEXT.touch : fineText(seat.leastFilm, system);
  const peak = extremeOf(seat.pressure, seat, 'greatest');
  const least = extremeOf(seat.film, seat, 'least');
  const said = `${seat.name} seat unrolled: ${layer === 'pressure' ? `greatest pressure ${measureText('pressure', peak.value, system)} at ${peak.angle.toFixed(0)}°, station ${placeText(peak.station, system)}; ` : ''}least film ${leastText} at ${seat.leastAngle.toFixed(0)}°`;
  return (
    <figure className={`seat-map seat-${index % 4}`} ref={box}>
      <figcaption>
        <strong>{seat.name}</strong>
        <span>
          {seat.peakPressure > 0 && (
            <>
              <Sign d={CROSS} /> peak {measureText('pressure', seat.peakPressure, system)} ·{' '}
            </>
          )}
          <Sign d={RING} /> {touches ? leastText : `least film ${leastText}`}
        </span>
      </figcaption>
      <div style={{ height }}>
        <canvas
          ref={canvas}
          width={Math.round(plot.width * ratio)}
          height={Math.round(plot.height * ratio)}
          style={{ left: MARGIN.left, top: MARGIN.top, width: plot.width, height: plot.height }}
        />
        <svg width={width} height={height} role="img" aria-label={said}>
          <Contours seat={seat} values={values} levels={levels} x={x} y={y} />
          <rect x={MARGIN.left} y={MARGIN.top} width={plot.width} height={plot.height} className="frame" />
          {ANGLES.map((angle) => (
            <g key={angle}>
              <path d={`M${x(angle)} ${height - MARGIN.bottom}v4`} className="frame" />
              <text x={x(angle)} y={height - 5} textAnchor={angle === 360 ? 'end' : 'middle'}>
                {angle}°
              </text>
            </g>
          ))}
          {ticks(ends.from / unit.size, ends.to / unit.size, 4).map((t) => (
            <g key={t}>
              <path d={`M${MARGIN.left} ${y(t * unit.size)}h-4`} className="frame" />
              <text x={MARGIN.left - 7} y={y(t * unit.size) + 4} textAnchor="end">
                {`${t}`.replace('-', '−')}
              </text>
            </g>
          ))}
          <text x={6} y={height - 5}>
            {unit.name}
          </text>
          <Grooves design={design} seat={seat} x={x} y={y} system={system} />
          {peak.value > 0 && (
            <Mark
              at={peak}
              kind="peak"
              text={`${measureText('pressure', peak.value, system)}`}
              x={x}
              y={y}
              width={width}
              height={height}
            />
          )}
          <Mark at={least} kind="least" text={leastText} touches={touches} x={x} y={y} width={width} height={height} />
        </svg>
      </div>
    </figure>
  );
}

type Scale = (value: number) => number;

/** The field on the canvas, smooth between cells; angle 0 is the middle of column 0. */
function paint(
  context: CanvasRenderingContext2D,
  { rows, columns }: SeatFields,
  values: Float32Array,
  colour: (value: number) => Rgb,
): void {
  const image = new ImageData(columns + 2, rows);
  for (let row = 0; row < rows; row++) {
    for (let column = -1; column <= columns; column++) {
      const rgb = colour(values[((column + columns) % columns) * rows + row]!);
      const at = 4 * ((rows - 1 - row) * (columns + 2) + column + 1);
      for (let k = 0; k < 3; k++) image.data[at + k] = Math.round(255 * rgb[k]!);
      image.data[at + 3] = 255;
    }
  }
  const small = document.createElement('canvas');
  small.width = columns + 2;
  small.height = rows;
  small.getContext('2d', { willReadFrequently: true })!.putImageData(image, 0, 0);
  const { width, height } = context.canvas;
  const cell = width / columns;
  context.imageSmoothingQuality = 'high';
  context.drawImage(small, -1.5 * cell, 0, (columns + 2) * cell, height);
}

function Contours({
  seat,
  values,
  levels,
  x,
  y,
}: {
  seat: SeatFields;
  values: Float32Array;
  levels: readonly number[];
  x: Scale;
  y: Scale;
}) {
  const lines = useMemo(
    () => levels.map((level) => contour(values, seat.rows, seat.columns, level)),
    [values, seat, levels],
  );
  const place = (row: number) => {
    const i = Math.min(seat.rows - 1, Math.floor(row));
    const next = seat.stations[Math.min(seat.rows - 1, i + 1)]!;
    return y(seat.stations[i]! + (next - seat.stations[i]!) * (row - i));
  };
  const point = (column: number, row: number) =>
    `${x((360 * column) / seat.columns).toFixed(1)} ${place(row).toFixed(1)}`;
  const path = (pieces: Piece[]) => pieces.map(([x0, y0, x1, y1]) => `M${point(x0, y0)}L${point(x1, y1)}`).join('');
  return lines.map((pieces, i) => pieces.length > 0 && <path key={levels[i]} d={path(pieces)} className="contour" />);
}

function Grooves({
  design,
  seat,
  x,
  y,
  system,
}: {
  design: Design;
  seat: SeatFields;
  x: Scale;
  y: Scale;
  system: System;
}) {
  const ends = stationsOf(seat);
  return groovesOf(design, seat).map(({ angle, half, from, to, pressure }) => {
    const [top, bottom] = [y(Math.min(to, ends.to)), y(Math.max(from, ends.from))];
    if (bottom <= top) return null;
    // One that crosses 0° is drawn at both ends of the page.
    return [-360, 0, 360].map((turn) => {
      const [left, right] = [Math.max(0, angle - half + turn), Math.min(360, angle + half + turn)];
      if (right <= left) return null;
      return (
        <rect
          key={`${angle} ${from} ${turn}`}
          x={x(left)}
          width={Math.max(2, x(right) - x(left))}
          y={top}
          height={bottom - top}
          className="groove"
        >
          <title>{`groove, ${measureText('pressure', pressure, system)}`}</title>
        </rect>
      );
    });
  });
}

/** A cross at the peak, a ring at the least film, about 0, 0. */
const CROSS = 'M-6 0h12M0 -6v12';
const RING = 'M-6 0a6 6 0 1 0 12 0a6 6 0 1 0 -12 0';

/** The mark as it stands on the map, before what it marks. */
function Sign({ d }: { d: string }) {
  return (
    <svg className="map-sign" viewBox="-7.5 -7.5 15 15" width="13" height="13" aria-hidden="true">
      <path d={d} />
    </svg>
  );
}

/** A cross at the peak, a ring at the least film, each with its value beside it; on a phone it stands over the map. */
function Mark({
  at,
  kind,
  text,
  touches = false,
  x,
  y,
  width,
  height,
}: {
  at: Place;
  kind: 'peak' | 'least';
  text: string;
  /** a ring in the colour of a touch */
  touches?: boolean;
  x: Scale;
  y: Scale;
  width: number;
  height: number;
}) {
  const [px, py] = [x(at.angle), y(at.station)];
  const right = px + 14 + 1.15 * textWidth(text, 13) < width - 4;
  const beside = kind === 'peak' ? py + (py < height / 2 ? 16 : -8) : py + 5;
  // Within the frame, off the figures of the axes.
  const line = Math.min(height - MARGIN.bottom - 5, Math.max(MARGIN.top + 14, beside));
  return (
    <g className={`mark ${kind}${touches ? ' is-touch' : ''}`}>
      <g transform={`translate(${px} ${py})`}>
        <path d={kind === 'peak' ? CROSS : RING} className="halo" />
        <path d={kind === 'peak' ? CROSS : RING} />
      </g>
      {height > HEIGHTS.phone && (
        <text x={right ? px + 9 : px - 9} y={line} textAnchor={right ? 'start' : 'end'}>
          {text}
        </text>
      )}
    </g>
  );
}
