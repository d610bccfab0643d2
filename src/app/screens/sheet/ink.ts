/**
 * How the drawings of the Sheet are drawn: presentation attributes only, so that a saved drawing stands alone, in black
 * on white.
 */
import type { SVGAttributes } from 'react';

type Attributes = SVGAttributes<SVGElement>;
type Ink = Pick<Attributes, 'fill' | 'stroke' | 'strokeWidth' | 'strokeLinejoin' | 'strokeLinecap' | 'strokeDasharray'>;

/** Units of the drawings: four to a millimetre of paper. */
export const PER_MM = 4;
/** The width of every drawing: that of the narrower paper within its margins (mm). */
const WIDTH_MM = 186;
export const WIDTH = WIDTH_MM * PER_MM;

export const FONT = "'Source Sans 3', 'Noto Sans', 'DejaVu Sans', Arial, sans-serif";

/** Heights of lettering: 3.5 mm for figures and names, 3 mm for the rest (ISO 3098 series, from memory). */
export const FIGURE = 14;
export const SMALL = 12;

/**
 * Line widths on paper: 0.5 mm for what is dimensioned, 1.2 mm where it is cut, 0.25 mm for the rest of a part, 0.18 mm
 * for all else (ISO 128 series, from memory).
 */
export const OUTLINE: Ink = { fill: 'none', stroke: '#000', strokeWidth: 2, strokeLinejoin: 'round' };
export const HEAVY: Ink = { fill: 'none', stroke: '#000', strokeWidth: 4.8, strokeLinecap: 'butt' };
export const BODY: Ink = { fill: 'none', stroke: '#000', strokeWidth: 1, strokeLinejoin: 'round' };
export const THIN: Ink = { fill: 'none', stroke: '#000', strokeWidth: 0.7 };
export const AXIS: Ink = { ...THIN, strokeDasharray: '14 4 3 4' };
/** About a figure that nobody has measured, which stands slanted. */
export const DASHED: Ink = { ...THIN, strokeDasharray: '4 3' };
export const SLANTED = { fontStyle: 'italic' } as const;
export const HEAD: Ink = { fill: '#000' };

/** Attributes of lettering; what passes behind it is kept off by a white edge. */
export const lettering = (
  fontSize: number,
): Pick<Attributes, 'fontSize' | 'fill' | 'stroke' | 'strokeWidth' | 'paintOrder'> => ({
  fontSize,
  fill: '#000',
  stroke: '#fff',
  strokeWidth: 4,
  paintOrder: 'stroke',
});

/** What tells the seats apart without colour. */
export const DASHES = ['none', '10 4', '2 4', '12 4 2 4', '18 5', '5 5', '14 3 2 3 2 3', '1 6'];
