/** Where the axis stands aside of where it was, in words: no side by its sign. mm */
import { fineText, type System } from '../../design/units.ts';

export const upText = (y: number, system: System) => `${fineText(Math.abs(y), system)} ${y < 0 ? 'down' : 'up'}`;

export const asideText = (x: number, y: number, system: System) =>
  `${fineText(Math.abs(x), system)} to the ${x < 0 ? 'left' : 'right'}, ${upText(y, system)}`;
