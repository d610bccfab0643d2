/** The filled head of a dimension's arrow. Pixels. */
import { ARROW } from './dimensionRows.ts';

/** Half its width. */
const BARB = 2.6;

/** With its point at (x, y), the shaft coming from the direction (dx, dy), a unit vector. */
export function arrowHead(x: number, y: number, dx: number, dy: number): string {
  const [bx, by] = [x + ARROW * dx, y + ARROW * dy];
  return `M${n(x)} ${n(y)}L${n(bx - BARB * dy)} ${n(by + BARB * dx)}L${n(bx + BARB * dy)} ${n(by - BARB * dx)}Z`;
}

const n = (value: number) => value.toFixed(2);
