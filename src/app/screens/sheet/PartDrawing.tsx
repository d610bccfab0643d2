/**
 * One part as a drawing office would send it to the machine: true to shape, every cone with its diameter in a gauge
 * plane, the plane's place from the datum as an exact dimension in a frame, its angle, and tolerances (the practice of
 * ISO 3040 and ASME Y14.5, from memory). What is dimensioned is drawn strong, what is cut heavy, the rest of the part
 * thin.
 */
import { useId } from 'react';
import type { Design, Part } from '../../../design/definition.ts';
import type { AngleWay, System } from '../../../design/units.ts';
import { linesOf } from '../../../report/inFrame.ts';
import type { TolerancedSurface } from '../../../report/sheet/tolerancedSurfaces.ts';
import { drawnPair } from '../../pictures/drawn.ts';
import { inMm, type PointInMm, sectionFrame } from '../../pictures/sectionFrame.ts';
import { fitted, textWidth } from '../../pictures/textWidth.ts';
import { useAngles } from '../../state/angles.ts';
import { angleToleranceText, coneText, hasSymbol } from './coneTexts.ts';
import { ConeNote, Diameter, Stations } from './Dimensions.tsx';
import { diameterLines, endText, exactText } from './figures.ts';
import { AXIS, BODY, FONT, HEAVY, lettering, OUTLINE, PER_MM, SMALL, THIN, WIDTH } from './ink.ts';
import { type NoteToTell, type PartLayout, type PartShape, partLayout, type StationToTell } from './partLayout.ts';

interface Props {
  /** the parts as they shall be */
  design: Design;
  part: Part;
  surfaces: readonly TolerancedSurface[];
  system: System;
  /** mm of paper */
  height: number;
}

/** The foot, in which the legend stands, a line of it, and the room of the part's name before the first. */
const FOOT = 22;
const LINE = 15;
const NAME = 70;
const HATCH = 9;
/** Parts of more seats are lettered: their figures stand in the table. */
export const NOTED = 4;
const LETTERS = 'ABCDEFGH';

/** What a surface is called on the drawing and in the table: its own name, or a letter where there are many. */
export const letterOf = (design: Design, seat: string) =>
  design.seats.length > NOTED ? LETTERS[design.seats.findIndex(({ name }) => name === seat)]! : null;

export function PartDrawing({ design, part, surfaces, system, height }: Props) {
  const id = useId();
  const tall = height * PER_MM;
  const way = useAngles();
  const own = surfaces.filter((surface) => surface.part === part);
  const drawn = drawnPair(linesOf(design), 0, 1);
  const { shape, outline } = shapeOf(drawn, part);
  const lines = drawn.seats.map((seat) => inMm(seat[part]));
  const told = tellOf(design, own, lines, shape, { system, way });
  const isTaper = told.notes.some(({ cone }) => cone.startsWith('('));
  const layoutFor = (foot: number) => partLayout(shape, told, { width: WIDTH, height: tall - foot }, textWidth);
  const legendFor = (of: PartLayout) => legendLines(legendOf(own, of, shape, system, isTaper));
  // A second line of the legend takes room from the drawing, which is to another scale then.
  const alone = layoutFor(FOOT);
  const layout = legendFor(alone).length > 1 ? layoutFor(FOOT + LINE) : alone;
  const legend = legendFor(layout);
  return (
    <svg viewBox={`0 0 ${WIDTH} ${tall}`} fontFamily={FONT} role="img" aria-label={`Drawing of the ${part}`}>
      <title>{`${design.title ?? 'untitled'}: ${part}`}</title>
      <rect width={WIDTH} height={tall} fill="#fff" />
      {part === 'bush' && (
        <pattern
          id={`${id}hatch`}
          width={HATCH}
          height={HATCH}
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <path {...THIN} d={`M${HATCH / 2} 0V${HATCH}`} />
        </pattern>
      )}
      {SIDES.map((side) => (
        <path
          key={side}
          {...BODY}
          fill={part === 'bush' ? `url(#${id}hatch)` : 'none'}
          d={pathOf(outline, layout, side, part === 'bush')}
        />
      ))}
      <path
        {...BODY}
        d={edges(
          [...(part === 'journal' ? [outline[0]!, outline[outline.length - 1]!] : []), ...lines.flatMap(endsOf)],
          layout,
        )}
      />
      {lines.map((line, i) =>
        SIDES.map((side) => (
          <path
            key={`${design.seats[i]!.name} ${side}`}
            {...(own[i]!.cut === null ? OUTLINE : HEAVY)}
            d={pathOf(line, layout, side, false)}
          />
        )),
      )}
      <path {...AXIS} d={`M${layout.x(shape.left) - 8} ${layout.y(0, 1)}H${layout.x(shape.right) + 8}`} />
      <Stations layout={layout} width={textWidth} />
      {layout.rear.map((placed) => (
        <Diameter key={placed.line} placed={placed} outward={-1} width={textWidth} />
      ))}
      {layout.nose.map((placed) => (
        <Diameter key={placed.line} placed={placed} outward={1} width={textWidth} />
      ))}
      {layout.notes.map((note, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: drawn anew as a whole
        <ConeNote key={i} note={note} layout={layout} width={textWidth} />
      ))}
      <text {...lettering(SMALL)} x={6} y={tall - 6 - LINE * (legend.length - 1)}>
        <tspan fontWeight={700}>{part === 'journal' ? 'Journal' : 'Bush'}</tspan>{' '}
        {legend.map((line, i) => (
          <tspan key={line} {...(i > 0 && { x: 6, dy: LINE })}>
            {fitted(line, SMALL, WIDTH - (i > 0 ? 12 : NAME))}
          </tspan>
        ))}
      </text>
    </svg>
  );
}

const SIDES = [1, -1] as const;
const endsOf = (line: readonly PointInMm[]): PointInMm[] => [line[0]!, line[line.length - 1]!];

/** The part's outline (mm) and the room it takes; the other part is not drawn. */
function shapeOf(drawn: ReturnType<typeof drawnPair>, part: Part): { shape: PartShape; outline: readonly PointInMm[] } {
  const frame = sectionFrame(drawn);
  const outline = part === 'journal' ? frame.journal.above : frame.bush.above;
  const [left, right] = part === 'journal' ? [frame.journalLeft, frame.journalRight] : [frame.rear, frame.nose];
  return { shape: { left, right, outer: Math.max(...outline.map(([, r]) => r)) }, outline };
}

/** Everything that is told: ends and gauge planes from the datum, diameters, cones. */
function tellOf(
  design: Design,
  own: readonly TolerancedSurface[],
  lines: readonly (readonly PointInMm[])[],
  shape: PartShape,
  { system, way }: { system: System; way: AngleWay },
) {
  const stations = new Map<string, StationToTell>();
  const add = (station: StationToTell) => {
    const there = stations.get(station.text);
    stations.set(station.text, {
      ...station,
      exact: station.exact || there?.exact === true,
      assumed: station.assumed === true || there?.assumed === true,
    });
  };
  own.forEach(({ from, to, assumed }, i) => {
    add({ z: from, r: lines[i]![0]![1], text: endText(from, system), exact: false, assumed: assumed.from });
    add({ z: to, r: lines[i]!.at(-1)![1], text: endText(to, system), exact: false, assumed: assumed.to });
  });
  own.forEach(({ gaugePlane, diameter }) => {
    add({ z: gaugePlane, r: diameter / 2, text: exactText(gaugePlane, system), exact: true });
  });
  if (shape.left <= 0 && shape.right >= 0) add({ z: 0, r: 0, text: '0', exact: false });
  const lettered = own.length > NOTED;
  return {
    stations: [...stations.values()],
    diameters: lettered
      ? []
      : own.map(({ gaugePlane, diameter, diameterTolerance, assumed }) => ({
          z: gaugePlane,
          r: diameter / 2,
          assumed: assumed.diameter,
          lines: diameterLines(diameter, diameterTolerance, system),
        })),
    notes: own.map((surface, i): NoteToTell => {
      const [first, last] = endsOf(lines[i]!) as [PointInMm, PointInMm];
      const at = { z: (first[0] + last[0]) / 2, r: (first[1] + last[1]) / 2 };
      const letter = letterOf(design, surface.seat);
      const widens = surface.halfAngle < 0 ? -1 : 1;
      return letter === null
        ? {
            name: surface.seat,
            cone: coneText(surface, system, way),
            hasSymbol: hasSymbol(surface, way),
            widens,
            angle: angleToleranceText(surface, system, way),
            assumed: surface.assumed.halfAngle,
            ...at,
          }
        : { name: letter, cone: '', hasSymbol: false, widens, angle: '', ...at };
    }),
  };
}

const isAnyAssumed = ({ assumed }: TolerancedSurface) => Object.values(assumed).some(Boolean);

const scaleText = (scale: number) => (scale >= 1 ? `${scale.toFixed(1)}:1` : `1:${(1 / scale).toFixed(1)}`);

/** In one line where it fits, else in two. */
function legendLines(entries: readonly string[]): string[] {
  const whole = entries.join(SEPARATED);
  if (textWidth(whole, SMALL) <= WIDTH - NAME) return [whole];
  let first = entries.length - 1;
  while (first > 1 && textWidth(entries.slice(0, first).join(SEPARATED), SMALL) > WIDTH - NAME) first--;
  return [entries.slice(0, first).join(SEPARATED), entries.slice(first).join(SEPARATED)];
}

const SEPARATED = ' · ';

function legendOf(
  own: readonly TolerancedSurface[],
  layout: PartLayout,
  shape: PartShape,
  system: System,
  isTaper: boolean,
): string[] {
  return [
    system === 'inch' ? 'in inches' : 'in mm',
    `about ${scaleText(layout.scale / PER_MM)}`,
    shape.left <= 0 && shape.right >= 0 ? 'ring: datum' : 'datum off the drawing',
    'nose right',
    'framed: gauge plane',
    ...(own.some(isAnyAssumed) ? ['in dashes: assumed'] : []),
    ...(own.some(({ cut }) => cut !== null) ? ['heavy: cut'] : []),
    'thin: not dimensioned',
    ...(isTaper ? ['in brackets: follows from the angle'] : []),
  ];
}

function pathOf(points: readonly PointInMm[], { x, y }: PartLayout, side: 1 | -1, closed: boolean): string {
  return `M${points.map(([z, r]) => `${x(z).toFixed(2)} ${y(r, side).toFixed(2)}`).join('L')}${closed ? 'Z' : ''}`;
}

/** The edges that are seen where a line bends: from one side of the axis to the other. */
const edges = (places: readonly PointInMm[], { x, y }: PartLayout) =>
  places.map(([z, r]) => `M${x(z).toFixed(2)} ${y(r, 1).toFixed(2)}V${y(r, -1).toFixed(2)}`).join('');
