/** Surfaces drawn straight that the readings say are tapered: asked after, never taken over by themselves. */
import type { Design } from '../../design/definition.ts';
import { ANGLE_WORDS, type AngleWay, angleFigure, fineText, type System } from '../../design/units.ts';
import { isTapered } from '../../engine/gauging/taper.ts';
import { radians } from '../convert.ts';
import type { MeasureReport } from './definition.ts';

type Surface = MeasureReport['surfaces'][number];
type Asked = Surface & { tapered: NonNullable<Surface['tapered']> };

/** Surfaces drawn straight that the readings say are not: to be asked after. */
export const tapersAsked = ({ surfaces }: MeasureReport): Asked[] =>
  surfaces.filter((s): s is Asked => s.tapered !== undefined && isTapered(s.tapered));

export function taperSentence(
  design: Design,
  { seat, part, tapered: { halfAngle, significance } }: Asked,
  system: System,
  way: AngleWay,
): string {
  const { from, to } = design.seats.find(({ name }) => name === seat)![part];
  const over = 2 * (to - from) * Math.tan(radians(Math.abs(halfAngle)));
  const odds =
    significance < 1e-6
      ? 'fewer than one case in a million'
      : `one case in ${Number((1 / significance).toPrecision(2)).toLocaleString('en')}`;
  return `The ${seat} ${part} was drawn straight; the readings say ${angleOf(halfAngle, way)}, larger by ${fineText(over, system)} in diameter at its ${halfAngle > 0 ? 'nose' : 'rear'} end. A straight one reads so in ${odds}: take the taper over, or read it again.`;
}

/** A half angle of 3°, an included angle of 6°. */
export const angleOf = (halfAngle: number, way: AngleWay) =>
  `${way === 'included' ? 'an' : 'a'} ${ANGLE_WORDS[way]} of ${angleFigure(halfAngle, way)}`;
