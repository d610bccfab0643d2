/**
 * Arrangements a spindle may have, each with the proportions of a small lathe's headstock to go by while nothing is
 * known (common practice, no source), and where its parts stand in the drawing, which is not to scale.
 */

export interface SeatPlan {
  name: string;
  /** what the seat is called on the drawing */
  title: string;
  /** degrees; below 0 it widens toward the rear; 0 straight */
  halfAngle: number;
  /** mm: at its large end, or at the nose end of a straight one */
  diameter: number;
  /** mm, along the axis */
  length: number;
  /** mm, from its rear end to the nose end of the next seat behind */
  behind?: number;
  /** in the drawing: where it begins and ends, and its radius there */
  x: readonly [number, number];
  r: readonly [number, number];
}

export interface Arrangement {
  id: string;
  title: string;
  /** from the rear to the nose */
  seats: readonly SeatPlan[];
  /** at which end of which seat stations are counted from; `x`: in the drawing, where it is at no end */
  zero: { seat: number; end: 'rear' | 'nose'; x?: number; words: string };
}

const shallow = { name: 'shallow', title: 'shallow cone', halfAngle: 3, diameter: 22, length: 26 };
const steep = { name: 'steep', title: 'steep cone', halfAngle: 45, diameter: 30, length: 3, behind: 1.2 };
const rear = { name: 'rear', title: 'rear bearing', halfAngle: 0, diameter: 18, length: 22 };

export const ARRANGEMENTS: readonly Arrangement[] = [
  {
    id: 'doubleRear',
    title: 'Double cone at the nose, straight bearing behind',
    seats: [
      { ...rear, x: [150, 300], r: [36, 36] },
      { ...shallow, behind: 92, x: [430, 640], r: [42, 54] },
      { ...steep, x: [700, 840], r: [60, 92] },
    ],
    zero: { seat: 1, end: 'nose', words: 'the large end of the shallow cone' },
  },
  {
    id: 'double',
    title: 'Double cone alone',
    seats: [
      { ...shallow, x: [220, 560], r: [38, 54] },
      { ...steep, x: [630, 800], r: [60, 92] },
    ],
    zero: { seat: 0, end: 'nose', words: 'the large end of the shallow cone' },
  },
  {
    id: 'opposed',
    title: 'Two cones opposed',
    seats: [
      {
        name: 'rear',
        title: 'rear cone',
        halfAngle: -22.5,
        diameter: 20.971,
        length: 6,
        x: [180, 350],
        r: [76, 48],
      },
      {
        name: 'front',
        title: 'front cone',
        halfAngle: 45,
        diameter: 32,
        length: 4,
        behind: 60,
        x: [640, 800],
        r: [60, 92],
      },
    ],
    zero: { seat: 1, end: 'rear', words: 'the small end of the front cone' },
  },
  {
    id: 'straight',
    title: 'Straight at both ends',
    seats: [
      { ...rear, x: [180, 370], r: [44, 44] },
      {
        name: 'front',
        title: 'front bearing',
        halfAngle: 0,
        diameter: 22,
        length: 26,
        behind: 80,
        x: [570, 790],
        r: [54, 54],
      },
    ],
    zero: { seat: 1, end: 'nose', words: 'the nose end of the front bearing' },
  },
];
