/**
 * What a drawing office would dimension on one part of the pair: every seat's length, its diameter at its
 * station, its half angle and taper, and the length overall. Figures are the design's; places are those drawn,
 * so a dimension line is as long as its figure but for the gaps drawn larger.
 */

import { isAssumed } from '../../design/assumed.ts';
import type { Design, Part, Surface } from '../../design/definition.ts';
import type { Millimetres } from '../../design/dimension.ts';
import { type AngleWay, angleSaid, lengthText, type System, TENTH } from '../../design/units.ts';
import { metres, radians } from '../../report/convert.ts';
import { type Lengths, SAME_LENGTH } from '../state/typedLengths.ts';
import type { Drawn, Point } from './drawn.ts';

export interface LengthDimension {
  /** of what is dimensioned */
  name: string;
  low: Point;
  high: Point;
  text: string;
  overall: boolean;
  /** whether nobody has measured or typed it */
  assumed: boolean;
}

export interface DiameterDimension {
  /** of what is dimensioned */
  name: string;
  at: Point;
  /** which end of the view it is set out at */
  side: 'rear' | 'nose';
  text: string;
  /** with the station at which it holds */
  full: string;
  assumed: boolean;
}

export interface AngleDimension {
  /** of what is dimensioned */
  name: string;
  /** small end of the line */
  apex: Point;
  /** 1: widens toward the nose */
  toward: 1 | -1;
  /** rad, above 0 */
  halfAngle: number;
  /** m, along the line */
  slant: number;
  text: string;
  assumed: boolean;
}

export interface Dimensions {
  lengths: LengthDimension[];
  diameters: DiameterDimension[];
  /** one a seat; null where it is straight */
  angles: (AngleDimension | null)[];
}

/** Finer than this (mm) no figure on the drawing is told: a tenth of a micrometre, a tenth of a tenth. */
const FINEST: Record<System, number> = { metric: 1e-4, inch: TENTH / 10 };

/** A length as it stands on a drawing: without its unit, which the drawing names once. */
const figure = (mm: Millimetres, system: System) =>
  lengthText(Math.round(mm / FINEST[system]) * FINEST[system], system).replace(/ .*$/, '');

/** What the dashes about a figure mean. */
export const ASSUMED = 'assumed, never measured';

/** Whether any of it is assumed. */
export const isAnyAssumed = ({ lengths, diameters, angles }: Dimensions): boolean =>
  [...lengths, ...diameters, ...angles].some((dimension) => dimension?.assumed);

/** `way`: how the person says angles · `typed`: lengths of journals, by seat and the word length. */
export function dimensionsOf(
  design: Design,
  drawn: Drawn,
  part: Part,
  system: System,
  way: AngleWay = 'half',
  typed: Lengths = {},
): Dimensions {
  const seats = design.seats.map((seat, i) => ({ name: seat.name, surface: seat[part], chain: drawn.seats[i]![part] }));
  const ends = seats.flatMap(({ chain }) => [chain[0]!, chain[chain.length - 1]!]);
  const rear = ends.reduce((least, end) => (end[0] < least[0] ? end : least));
  const nose = ends.reduce((most, end) => (end[0] > most[0] ? end : most));
  const from = Math.min(...seats.map(({ surface }) => surface.from));
  const to = Math.max(...seats.map(({ surface }) => surface.to));
  const guessed = (seat: number, ...keys: (keyof Surface)[]) =>
    keys.some((key) => isAssumed(design, `seats[${seat}].${part}.${key}`));
  // Typed before it is known where the seat stands, a length is known though its ends are not.
  const isTyped = (name: string, length: number) =>
    part === 'journal' && Math.abs((typed[`${name} length`] ?? Number.NaN) - length) < SAME_LENGTH;
  const lengths = seats.map(({ name, surface, chain }, i) => ({
    name,
    low: chain[0]!,
    high: chain[chain.length - 1]!,
    text: figure(surface.to - surface.from, system),
    overall: false,
    assumed: guessed(i, 'from', 'to') && !isTyped(name, surface.to - surface.from),
  }));
  const isGuessedEnd = (key: 'from' | 'to', end: number) =>
    seats.some(({ surface }, i) => surface[key] === end && guessed(i, key));
  return {
    lengths:
      seats.length > 1
        ? [
            ...lengths,
            {
              name: '',
              low: rear,
              high: nose,
              text: figure(to - from, system),
              overall: true,
              assumed: isGuessedEnd('from', from) || isGuessedEnd('to', to),
            },
          ]
        : lengths.map((length) => ({ ...length, overall: true })),
    diameters: seats.map(({ name, surface, chain }, i) => {
      const at = drawnAt(surface, chain);
      const text = `⌀${figure(surface.diameter, system)}`;
      return {
        name,
        at,
        side: at[0] < (rear[0] + nose[0]) / 2 ? 'rear' : 'nose',
        text,
        full: `${text} at ${figure(surface.station, system)}`,
        assumed: guessed(i, 'diameter'),
      };
    }),
    angles: seats.map(({ name, surface, chain }, i) => {
      const angle = angleOf(name, surface, chain, way);
      return angle && { ...angle, assumed: guessed(i, 'halfAngle') };
    }),
  };
}

/**
 * Where the design's diameter is drawn: on the drawn line or its straight continuation; a measured line's own is the
 * straight one it departs from.
 */
function drawnAt(surface: Surface, chain: readonly Point[]): Point {
  if (surface.profile) return [metres(surface.station), metres(surface.diameter) / 2];
  const [z, r] = chain[0]!;
  const along = metres(surface.station - surface.from);
  return [z + along, r + along * slopeOf(chain)];
}

function slopeOf(chain: readonly Point[]): number {
  const [z0, r0] = chain[0]!;
  const [z1, r1] = chain[chain.length - 1]!;
  return (r1 - r0) / (z1 - z0);
}

function angleOf(
  name: string,
  { halfAngle, from, to }: Surface,
  chain: readonly Point[],
  way: AngleWay,
): Omit<AngleDimension, 'assumed'> | null {
  if (halfAngle === 0) return null;
  const angle = Math.abs(radians(halfAngle));
  const toward = halfAngle > 0 ? 1 : -1;
  return {
    name,
    apex: toward > 0 ? chain[0]! : chain[chain.length - 1]!,
    toward,
    halfAngle: angle,
    slant: metres(to - from) / Math.cos(angle),
    text: angleSaid(Math.abs(halfAngle), way),
  };
}
