/**
 * One part as a drawing office would send it to the machine: true to shape, every cone with its diameter in a gauge
 * plane, the plane's place from the datum as an exact dimension in a frame, its rate of taper or included angle, and
 * tolerances (the practice of ISO 3040, from memory). Surfaces that are to be cut are drawn heavy.
 */
import { useId } from 'react';
import type { Design, Part } from '../../design/definition.ts';
import { angleText, fineText, lengthText, type System } from '../../design/units.ts';
import { seatLines } from '../../engine/contact/fit.ts';
import type { TolerancedSurface } from '../../report/sheet/tolerancedSurfaces.ts';
import { metres, toSeats } from '../../report/toEngine.ts';
import { errorText } from '../cut/angleTexts.ts';
import { type Dimensions, dimensionsOf } from '../picture/dimensions.ts';
import { drawnPair, type Point } from '../picture/drawn.ts';
import { type SectionFrame, sectionFrame } from '../picture/sectionFrame.ts';
import { dimensionsOnScreen, NOTE, onScreen, type Placing } from '../picture/sectionLayout.ts';
import { placedNotes, SECOND } from '../picture/sectionNotes.ts';
import { fitted, textWidth } from '../picture/textWidth.ts';
import { Diameter, Length, TaperSymbol } from './Dimensions.tsx';
import { drawingPlacing } from './drawingPlacing.ts';
import { AXIS, FONT, HEAVY, lettering, OUTLINE, PER_MM, THIN, WIDTH } from './ink.ts';

interface Props {
  /** the parts as they shall be */
  design: Design;
  part: Part;
  surfaces: readonly TolerancedSurface[];
  system: System;
  /** mm of paper */
  height: number;
}

/** The foot, in which the legend stands: two lines. */
const FOOT = 40;
const HATCH = 9;
const measures = { width: textWidth };
/** Above this half angle (degrees) a cone is told by its included angle rather than its taper. */
const STEEP = 20;

/** To a tenth of a micrometre, a hundredth of a tenth. */
const figure = (mm: number, system: System) => lengthText(Number(mm.toFixed(system === 'metric' ? 4 : 5)), system).replace(/ .*$/, '');

/** A tolerance as it stands behind its dimension. */
export const toleranceText = (mm: number | null, system: System) => (mm === null ? '' : ` ±${lengthText(Number(mm.toPrecision(2)), system).replace(/ .*$/, '')}`);

export function PartDrawing({ design, part, surfaces, system, height }: Props) {
  const id = useId();
  const tall = height * PER_MM;
  const own = surfaces.filter((surface) => surface.part === part);
  const drawn = drawnPair(toSeats(design).map(seatLines), 0, 1);
  const whole = sectionFrame(drawn);
  // The other part is not drawn: room is made for this one alone.
  const frame: SectionFrame =
    part === 'bush'
      ? { ...whole, left: whole.rear, right: whole.nose, journalLeft: whole.rear, journalRight: whole.nose }
      : { ...whole, left: whole.journalLeft, right: whole.journalRight, outer: Math.max(...whole.journal.above.map(([, r]) => r)) };
  const dimensions = conesOf(design, drawn, part, own, system);
  const size = { width: WIDTH, height: tall - FOOT };
  const at = drawingPlacing(frame, dimensions, size, measures);
  const { lengths, rear, nose } = dimensionsOnScreen(frame, dimensions, at, size, measures);
  const outline = part === 'journal' ? frame.journal.above : frame.bush.above;
  const legend = `in ${system === 'inch' ? 'inches' : 'mm'} · about ${scaleText(at.scale / PER_MM)}, not to be scaled off · framed: exact place of the gauge plane${own.some(({ cut }) => cut !== null) ? ' · heavy: to be cut' : ''}`;
  return (
    <svg viewBox={`0 0 ${WIDTH} ${tall}`} fontFamily={FONT} role="img" aria-label={`Drawing of the ${part}`}>
      <rect width={WIDTH} height={tall} fill="#fff" />
      {part === 'bush' && (
        <pattern id={`${id}hatch`} width={HATCH} height={HATCH} patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path {...THIN} strokeWidth={1} d={`M${HATCH / 2} 0V${HATCH}`} />
        </pattern>
      )}
      {([1, -1] as const).map((side) => (
        <path key={side} {...OUTLINE} fill={part === 'bush' ? `url(#${id}hatch)` : 'none'} d={pathOf(outline, at, side, part === 'bush')} />
      ))}
      <path {...OUTLINE} d={edges([...(part === 'journal' ? [outline[0]!, outline[outline.length - 1]!] : []), ...drawn.seats.flatMap((seat) => endsOf(inMm(seat[part])))], at)} />
      {design.seats.map(({ name }, i) => own.find(({ seat }) => seat === name)?.cut != null && ([1, -1] as const).map((side) => <path key={`${name} ${side}`} {...HEAVY} d={pathOf(inMm(drawn.seats[i]![part]), at, side, false)} />))}
      <path {...AXIS} d={`M${onScreen(at, [metres(frame.journalLeft), 0], 1).x - 8} ${at.middle.y}H${onScreen(at, [metres(frame.journalRight), 0], 1).x + 8}`} />
      {lengths.map((span) => (
        <Length key={span.name} span={span} exact={span.name.startsWith('gauge plane')} />
      ))}
      {rear.map((span) => (
        <Diameter key={span.name} span={span} outward={-1} />
      ))}
      {nose.map((span) => (
        <Diameter key={span.name} span={span} outward={1} />
      ))}
      <Datum at={at} frame={frame} />
      <Cones surfaces={own} drawn={drawn.seats.map((seat) => seat[part])} at={at} width={WIDTH} />
      {[`${design.title ?? 'untitled'}: ${part}`, legend].map((line, i) => (
        <text key={line} {...lettering(SECOND)} x={6} y={tall - 24 + 16 * i}>
          {fitted(line, SECOND, WIDTH - 12)}
        </text>
      ))}
    </svg>
  );
}

const scaleText = (scale: number) => (scale >= 1 ? `${scale.toFixed(1)}:1` : `1:${(1 / scale).toFixed(1)}`);

const inMm = (points: readonly Point[]): Point[] => points.map(([z, r]) => [z * 1000, r * 1000]);

function pathOf(points: readonly Point[], at: Placing, side: 1 | -1, closed: boolean): string {
  const places = points.map(([z, r]) => onScreen(at, [metres(z), metres(r)], side));
  return `M${places.map(({ x, y }) => `${x.toFixed(2)} ${y.toFixed(2)}`).join('L')}${closed ? 'Z' : ''}`;
}

const endsOf = (chain: readonly Point[]): Point[] => [chain[0]!, chain[chain.length - 1]!];

/** The edges that are seen where a line bends: from one side of the axis to the other. */
function edges(places: readonly Point[], at: Placing): string {
  return places
    .map(([z, r]) => {
      const [up, down] = [onScreen(at, [metres(z), metres(r)], 1), onScreen(at, [metres(z), metres(r)], -1)];
      return `M${up.x.toFixed(2)} ${up.y.toFixed(2)}V${down.y.toFixed(2)}`;
    })
    .join('');
}

/** The dimensions of the section with a drawing's figures: tolerances, and gauge planes from the datum. */
function conesOf(design: Design, drawn: ReturnType<typeof drawnPair>, part: Part, surfaces: readonly TolerancedSurface[], system: System): Dimensions {
  const { lengths } = dimensionsOf(design, drawn, part, system);
  const place = (z: number, chain: readonly Point[]): Point => {
    const [[z0, r0], [z1, r1]] = [chain[0]!, chain[chain.length - 1]!];
    return [metres(z), r0 + ((r1 - r0) * (metres(z) - z0)) / (z1 - z0)];
  };
  const middle = (Math.min(...surfaces.map(({ from }) => from)) + Math.max(...surfaces.map(({ to }) => to))) / 2;
  return {
    lengths: [
      ...lengths,
      ...surfaces.flatMap(({ seat, gaugePlane }, i) => {
        if (Math.abs(gaugePlane) < 1e-9) return [];
        const at = place(gaugePlane, drawn.seats[i]![part]);
        const datum: Point = [0, at[1]];
        const [low, high] = gaugePlane < 0 ? [at, datum] : [datum, at];
        return [{ name: `gauge plane ${seat}`, low, high, text: figure(Math.abs(gaugePlane), system), overall: true }];
      }),
    ],
    diameters: surfaces.map(({ seat, gaugePlane, diameter, diameterTolerance }, i) => {
      const text = `⌀${figure(diameter, system)}${toleranceText(diameterTolerance, system)}`;
      return { name: seat, at: place(gaugePlane, drawn.seats[i]![part]), side: gaugePlane < middle ? 'rear' : 'nose', text, full: text };
    }),
    angles: surfaces.map(() => null),
  };
}

/** The station from which everything is told. */
function Datum({ at, frame }: { at: Placing; frame: SectionFrame }) {
  const { x } = onScreen(at, [0, 0], 1);
  const top = at.middle.y - frame.outer * at.scale - 12;
  return (
    <g>
      <path {...THIN} strokeDasharray="2 3" d={`M${x.toFixed(2)} ${top.toFixed(2)}V${(at.middle.y + 8).toFixed(2)}`} />
      <text {...lettering(SECOND)} x={x + 3} y={top + 9}>
        0
      </text>
    </g>
  );
}

/** Taper or included angle of every cone, on a leader to its line. */
function Cones({ surfaces, drawn, at, width }: { surfaces: readonly TolerancedSurface[]; drawn: readonly (readonly Point[])[]; at: Placing; width: number }) {
  const notes = placedNotes(
    surfaces.map((surface, i) => {
      const chain = drawn[i]!;
      const [first, last] = [chain[0]!, chain[chain.length - 1]!];
      return { name: surface.seat, film: `${hasSymbol(surface) ? '      ' : ''}${coneText(surface)}`, taper: `half angle ${angleToleranceText(surface)}`, at: onScreen(at, [(first[0] + last[0]) / 2, (first[1] + last[1]) / 2], 1) };
    }),
    at,
    { width, height: 0 },
    textWidth,
  );
  return notes.map(({ name, lines, x, at: seat }) => {
    const surface = surfaces.find((s) => s.seat === name)!;
    const half = textWidth(lines[0], NOTE) / 2;
    const symbol = x - half + textWidth(`${name} `, NOTE) + 2;
    return (
      <g key={name}>
        <path {...THIN} d={`M${x.toFixed(1)} ${at.notesEnd + 2}L${seat.x.toFixed(1)} ${seat.y.toFixed(1)}`} />
        <circle cx={seat.x} cy={seat.y} r={2} fill="#000" />
        <text {...lettering(NOTE)} x={x - half} y={NOTE + 6} style={{ whiteSpace: 'pre' }}>
          {lines[0]}
        </text>
        {hasSymbol(surface) && <TaperSymbol x={symbol} y={NOTE + 1} widens={surface.halfAngle > 0 ? 1 : -1} />}
        <text {...lettering(SECOND)} x={x} y={NOTE + 23} textAnchor="middle">
          {lines[1]}
        </text>
      </g>
    );
  });
}

const hasSymbol = ({ halfAngle, taper }: TolerancedSurface) => taper !== null && Math.abs(halfAngle) <= STEEP;

/** A slender cone by its rate of taper, a steep one by its included angle. */
export function coneText({ halfAngle, taper }: TolerancedSurface): string {
  if (taper === null) return 'straight';
  return Math.abs(halfAngle) > STEEP ? `${angleText(2 * Math.abs(halfAngle))} included` : `1:${taper.toFixed(4)}`;
}

export const angleToleranceText = ({ halfAngle, halfAngleTolerance }: TolerancedSurface) => `${angleText(Math.abs(halfAngle))}${halfAngleTolerance === null ? '' : ` ±${errorText(halfAngleTolerance)}`}`;

export const cutText = ({ cut }: TolerancedSurface, system: System) => (cut === null ? 'as it is' : `${fineText(Math.abs(cut), system)} ${cut < 0 ? 'less' : 'more'}`);
