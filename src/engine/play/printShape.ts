/**
 * What a print looks like, in a few numbers: how much of the surface is blue, at which end, on which side, in
 * how many patches; and the one word for it.
 *
 * Areas are those of the surface, dA ∝ r along equal steps of its line and of the angle. Thirds are by place along
 * the line, the small end first. A side is the mean direction of the blue: Σ dA·(cos φ, sin φ)/Σ dA over what is
 * blue, 0 for an even ring and 1 for a single line.
 */
import type { PrintMap } from './print.ts';

/**
 * whole: blue all along · smallEnd, largeEnd, bothEnds, band: a ring there · lobes: patches all round · oneSide:
 * only on one side · crossed: on opposite sides at the two ends, as a tilted journal bears · none: no blue
 */
export type PrintWord = 'whole' | 'smallEnd' | 'largeEnd' | 'bothEnds' | 'band' | 'lobes' | 'oneSide' | 'crossed' | 'none';

export interface PrintShape {
  word: PrintWord;
  /** share of the surface that is blue, and of its thirds from the small end */
  covered: number;
  thirds: [number, number, number];
  /** stations (m) between which anything is blue; null where nothing is */
  from: number | null;
  to: number | null;
  /** separate patches round the part, all stations taken together; 0 for a closed ring or nothing */
  patches: number;
  /** mean direction of the blue (rad), and how one-sided it is, 0 to 1 */
  side: number;
  oneSided: number;
}

export function printShape(map: PrintMap, thickness: number, smallEndFirst: boolean): PrintShape {
  const { columns, film, radii, stations } = map;
  const rows = stations.length;
  const third = [0, 0, 0];
  const thirdArea = [0, 0, 0];
  const round = new Float64Array(columns);
  const halves = [new Float64Array(columns), new Float64Array(columns)] as const;
  let blue = 0;
  let area = 0;
  let first = -1;
  let last = -1;
  for (let row = 0; row < rows; row++) {
    const part = Math.min(2, Math.floor((3 * (smallEndFirst ? row : rows - 1 - row)) / rows));
    const weight = radii[row]! * (row === 0 || row === rows - 1 ? 0.5 : 1);
    for (let c = 0; c < columns; c++) {
      area += weight;
      thirdArea[part]! += weight;
      if (!(film[row * columns + c]! <= thickness)) continue;
      blue += weight;
      third[part]! += weight;
      round[c]! += weight;
      halves[smallEndFirst === 2 * row < rows ? 0 : 1][c]! += weight;
      if (first < 0) first = row;
      last = row;
    }
  }
  const { side, oneSided } = sideOf(round);
  const shape = {
    covered: blue / area,
    thirds: third.map((value, i) => value / thirdArea[i]!) as [number, number, number],
    from: first < 0 ? null : stations[first]!,
    to: last < 0 ? null : stations[last]!,
    patches: patchesOf(round),
    side,
    oneSided,
  };
  const [small, large] = [sideOf(halves[0]), sideOf(halves[1])];
  return { word: wordFor(shape, { small: small.oneSided, large: large.oneSided, opposed: -Math.cos(small.side - large.side) }), ...shape };
}

function sideOf(round: Float64Array): { side: number; oneSided: number } {
  let [sum, x, y] = [0, 0, 0];
  round.forEach((weight, c) => {
    const angle = (2 * Math.PI * c) / round.length;
    sum += weight;
    x += weight * Math.cos(angle);
    y += weight * Math.sin(angle);
  });
  const oneSided = sum === 0 ? 0 : Math.hypot(x, y) / sum;
  return { side: oneSided < 1e-9 ? 0 : (Math.atan2(y, x) + 2 * Math.PI) % (2 * Math.PI), oneSided };
}

/** Runs of blue columns round the part; a run that closes on itself is no patch. */
function patchesOf(round: Float64Array): number {
  let starts = 0;
  round.forEach((weight, c) => {
    if (weight > 0 && round[(c + round.length - 1) % round.length] === 0) starts++;
  });
  return starts;
}

/** Blue over more than this share is the whole surface; a third with less than this of the fullest has next to none. Common practice, no source. */
const WHOLE = 0.8;
const SLIGHT = 0.25;
/** From here on the blue lies on one side. */
const ONE_SIDED = 0.6;

function wordFor({ covered, thirds, patches, oneSided }: Omit<PrintShape, 'word'>, halves: { small: number; large: number; opposed: number }): PrintWord {
  if (covered === 0) return 'none';
  if (covered > WHOLE) return 'whole';
  if (halves.small > ONE_SIDED && halves.large > ONE_SIDED && halves.opposed > ONE_SIDED) return 'crossed';
  if (patches > 0 && oneSided > ONE_SIDED) return 'oneSide';
  if (patches > 1) return 'lobes';
  const most = Math.max(...thirds);
  const [small, middle, large] = thirds.map((share) => share > SLIGHT * most);
  if (small && large) return middle ? 'whole' : 'bothEnds';
  return small ? 'smallEnd' : large ? 'largeEnd' : 'band';
}
