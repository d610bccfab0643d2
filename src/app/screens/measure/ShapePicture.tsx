/**
 * The fitted lines of one seat over the drawn ones, straightened: along the page the station, up the page the
 * distance square to the bush line as drawn. Bush above, journal below, the film between, each with the band
 * in which it lies 19 times in 20. A surface that nothing was read of has its drawn line alone.
 */
import { useRef } from 'react';
import type { Design } from '../../../design/definition.ts';
import { COVER, type System } from '../../../design/units.ts';
import { metres } from '../../../report/convert.ts';
import { lineOfPart } from '../../../report/inFrame.ts';
import type { MeasureReport } from '../../../report/measure/definition.ts';
import { lineUncertainty } from '../../../report/measure/lineUncertainty.ts';
import { MARGIN, StraightenedAxes, straightenedScales } from '../../pictures/StraightenedFrame.tsx';
import { type Place, straightened } from '../../pictures/straightened.ts';
import { useSize } from '../../pictures/useSize.ts';

interface Props {
  drawn: Design;
  fitted: Design;
  measure: MeasureReport;
  seat: number;
  system: System;
}

const HEIGHT = 250;
/** Of what is shown, free above and below; mm, at least of this. */
const FREE = 0.06;
const LEAST = 0.001;
const PIECES = 24;
/** px above and below every line, for the names of the parts. */
const STRIP = 24;

export function ShapePicture({ drawn, fitted, measure, seat, system }: Props) {
  const box = useRef<HTMLElement>(null);
  const { width } = useSize(box, { width: 600, height: HEIGHT });
  const lines = { drawn: placesOf(drawn, drawn, seat), fitted: placesOf(drawn, fitted, seat) };
  const bands = (['bush', 'journal'] as const).map((part) => ({
    part,
    band: bandOf(fitted, measure, seat, part, lines.fitted[part]),
  }));
  const all = [
    ...lines.drawn.bush,
    ...lines.drawn.journal,
    ...lines.fitted.bush,
    ...lines.fitted.journal,
    ...bands.flatMap(({ band }) => band ?? []),
  ];
  const size = { width, height: HEIGHT };
  const scales = straightenedScales(all, size, FREE, LEAST, STRIP);
  const { path, toEdge } = scales;
  const { name } = drawn.seats[seat]!;
  const read = { bush: isRead(measure, name, 'bush'), journal: isRead(measure, name, 'journal') };
  const unread = (['journal', 'bush'] as const).filter((part) => !read[part]);
  const open = (['journal', 'bush'] as const).filter((part) => read[part] && !isTold(measure, name, part));
  return (
    <figure className="chart shape" ref={box}>
      <svg width={width} height={HEIGHT} role="img" aria-label={`Fitted lines of the ${name} seat over the drawn ones`}>
        <path d={toEdge(lines.fitted.bush, MARGIN.top)} className="metal bush" />
        <path d={toEdge(lines.fitted.journal, HEIGHT - MARGIN.bottom)} className="metal journal" />
        {bands.map(({ part, band }) => band && <path key={part} d={`${path(band)}Z`} className="band" />)}
        {(['bush', 'journal'] as const).map((part) => (
          <g key={part}>
            <path d={path(lines.drawn[part])} className="as-drawn" />
            {read[part] && (
              <path d={path(lines.fitted[part])} className={isTold(measure, name, part) ? 'fitted' : 'fitted open'} />
            )}
          </g>
        ))}
        <StraightenedAxes scales={scales} size={size} title={(unit) => `${unit} from the drawn bush`} system={system} />
        <text x={width - MARGIN.right - 6} y={MARGIN.top + 16} textAnchor="end" className="name">
          {name} bush{read.bush ? '' : ', as drawn'}
        </text>
        <text x={width - MARGIN.right - 6} y={HEIGHT - MARGIN.bottom - 8} textAnchor="end" className="name">
          {name} journal{read.journal ? '' : ', as drawn'}
        </text>
      </svg>
      {unread.length + open.length > 0 && (
        <figcaption>
          {unread.length > 0 &&
            `The ${unread.join(' and the ')} ${unread.length === 1 ? 'stands' : 'stand'} as drawn, not measured.`}
          {open.length > 0 &&
            ` The ${open.join(' and the ')} (thin) ${open.length === 1 ? 'is' : 'are'} not told wholly: what is open is as drawn.`}
        </figcaption>
      )}
    </figure>
  );
}

const isRead = ({ surfaces }: MeasureReport, seat: string, part: 'journal' | 'bush') =>
  surfaces.some((s) => s.seat === seat && s.part === part);

/** Whether half angle and diameter are both told. */
const isTold = ({ surfaces }: MeasureReport, seat: string, part: 'journal' | 'bush') =>
  surfaces.some((s) => s.seat === seat && s.part === part && s.sigma.halfAngle !== null && s.sigma.diameter !== null);

/** Both lines of a seat in the frame of the bush as drawn, the journal at the position of the design. */
function placesOf(drawn: Design, shown: Design, seat: number): { bush: Place[]; journal: Place[] } {
  const frame = lineOfPart(drawn.seats[seat]!.bush, 'bush');
  const position = metres(drawn.position ?? 0);
  return {
    bush: straightened(frame, lineOfPart(shown.seats[seat]!.bush, 'bush'), 0),
    journal: straightened(frame, lineOfPart(shown.seats[seat]!.journal, 'journal'), position),
  };
}

/** The band round a fitted line; null where the readings leave it open. */
function bandOf(
  fitted: Design,
  measure: MeasureReport,
  seat: number,
  part: 'journal' | 'bush',
  line: readonly Place[],
): Place[] | null {
  const { name } = fitted.seats[seat]!;
  const found = measure.surfaces.find((s) => s.seat === name && s.part === part);
  if (!found) return null;
  const surface = fitted.seats[seat]![part];
  const [z0, z1] = [line[0]![0], line[line.length - 1]![0]];
  const edge = (sign: number) =>
    Array.from({ length: PIECES + 1 }, (_, i): Place | null => {
      const t = i / PIECES;
      const sigma = lineUncertainty(surface, found, surface.from + t * (surface.to - surface.from));
      return sigma === null ? null : [z0 + t * (z1 - z0), outAt(line, z0 + t * (z1 - z0)) + sign * COVER * sigma];
    });
  const places = [...edge(1), ...edge(-1).reverse()];
  return places.some((place) => place === null) ? null : (places as Place[]);
}

function outAt(line: readonly Place[], z: number): number {
  let k = 0;
  while (k < line.length - 2 && line[k + 1]![0] < z) k++;
  const [[z0, v0], [z1, v1]] = [line[k]!, line[k + 1]!];
  return v0 + ((v1 - v0) * (z - z0)) / (z1 - z0 || 1);
}
