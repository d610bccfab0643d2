/**
 * What a print looks like, in a few numbers: how much of the surface is blue, where along it there is none, on
 * which side it lies, in how many patches; and the one word for it.
 *
 * Areas are those of the surface, dA ∝ r along equal steps of its line and of the angle. Thirds are by place along
 * the line, the small end first. A side is the mean direction of the blue: Σ dA·(cos φ, sin φ)/Σ dA over what is
 * blue, 0 for an even ring and 1 for a single line.
 * The word is for the part of the surface that the other one reaches: what lies beyond it can take no blue.
 */
import type { Metres } from '../../design/dimension.ts';
import type { PrintMap } from './print.ts';

/**
 * whole: blue all over where the parts overlap · smallEnd, largeEnd, bothEnds, band: bare elsewhere along the line ·
 * lobes: patches all round · oneSide: only on one side · crossed: on opposite sides at the two ends, as a tilted
 * journal bears · uneven: bare in places, but nowhere all round · none: no blue
 */
type PrintWord =
  | 'whole'
  | 'smallEnd'
  | 'largeEnd'
  | 'bothEnds'
  | 'band'
  | 'lobes'
  | 'oneSide'
  | 'crossed'
  | 'uneven'
  | 'none';

/** Something of each end of a line and of what lies between. */
export interface Along {
  small: number;
  middle: number;
  large: number;
}

export interface PrintShape {
  word: PrintWord;
  /** share of the surface that is blue, and of its thirds from the small end */
  covered: number;
  thirds: [number, number, number];
  /** share of the surface that the other part reaches, and of that share what is blue */
  overlap: number;
  coveredOverlap: number;
  /** shares of the overlapping length that are bare all round: from each end inward, and the longest stretch between */
  bare: Along;
  /** film (m), mean round, at the ends of the overlap and half way; null where nothing overlaps */
  films: Along | null;
  /** stations (m) between which anything is blue; null where nothing is */
  from: number | null;
  to: number | null;
  /** separate patches round the part, all stations taken together; 0 for a closed ring or nothing */
  patches: number;
  /** mean direction of the blue (rad), and how one-sided it is, 0 to 1 */
  side: number;
  oneSided: number;
}

/** One ring of the surface: what of it is blue, what the other part reaches, its mean film. */
interface Row {
  blue: number;
  reached: number;
  film: Metres;
}

export function printShape(map: PrintMap, thickness: Metres, smallEndFirst: boolean): PrintShape {
  const { columns, film, radii, stations } = map;
  const rows = stations.length;
  const third = [0, 0, 0];
  const thirdArea = [0, 0, 0];
  const round = new Float64Array(columns);
  const halves = [new Float64Array(columns), new Float64Array(columns)] as const;
  const rings: Row[] = [];
  let [blue, reached, area] = [0, 0, 0];
  for (let row = 0; row < rows; row++) {
    const part = Math.min(2, Math.floor((3 * (smallEndFirst ? row : rows - 1 - row)) / rows));
    const weight = radii[row]! * (row === 0 || row === rows - 1 ? 0.5 : 1);
    const ring: Row = { blue: 0, reached: 0, film: 0 };
    for (let c = 0; c < columns; c++) {
      const here = film[row * columns + c]!;
      if (here === Number.POSITIVE_INFINITY) continue;
      ring.reached++;
      ring.film += here;
      if (!(here <= thickness)) continue;
      ring.blue++;
      round[c]! += weight;
      halves[smallEndFirst === 2 * row < rows ? 0 : 1][c]! += weight;
    }
    area += weight * columns;
    reached += weight * ring.reached;
    blue += weight * ring.blue;
    thirdArea[part]! += weight * columns;
    third[part]! += weight * ring.blue;
    rings.push({ ...ring, film: ring.film / ring.reached });
  }
  const [first, last] = [rings.findIndex((ring) => ring.blue > 0), rings.findLastIndex((ring) => ring.blue > 0)];
  const { side, oneSided } = sideOf(round);
  const along = rings.filter((ring) => ring.reached > 0);
  if (!smallEndFirst) along.reverse();
  const shape = {
    covered: blue / area,
    thirds: third.map((value, i) => value / thirdArea[i]!) as [number, number, number],
    overlap: reached / area,
    coveredOverlap: reached === 0 ? 0 : blue / reached,
    bare: bareAlong(along),
    films:
      along.length === 0
        ? null
        : { small: along[0]!.film, middle: along[along.length >> 1]!.film, large: along[along.length - 1]!.film },
    from: first < 0 ? null : stations[first]!,
    to: last < 0 ? null : stations[last]!,
    patches: patchesOf(round),
    side,
    oneSided,
  };
  const [small, large] = [sideOf(halves[0]), sideOf(halves[1])];
  return {
    word: wordFor(shape, { small: small.oneSided, large: large.oneSided, opposed: -Math.cos(small.side - large.side) }),
    ...shape,
  };
}

/** Stretches of the overlap without any blue; the whole of it counts for neither end. */
function bareAlong(along: readonly Row[]): Along {
  const [first, last] = [along.findIndex((ring) => ring.blue > 0), along.findLastIndex((ring) => ring.blue > 0)];
  if (first < 0) return { small: 0, middle: 1, large: 0 };
  let [run, longest] = [0, 0];
  for (let i = first; i <= last; i++) {
    run = along[i]!.blue === 0 ? run + 1 : 0;
    longest = Math.max(longest, run);
  }
  return {
    small: first / along.length,
    middle: longest / along.length,
    large: (along.length - 1 - last) / along.length,
  };
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

/**
 * Blue over this share of the overlap is all of it; a bare stretch shorter than what is left is none.
 * @source practice
 */
const WHOLE = 0.97;
/** From here on the blue lies on one side. */
const ONE_SIDED = 0.6;

function wordFor(
  { coveredOverlap, bare, patches, oneSided }: Omit<PrintShape, 'word'>,
  halves: { small: number; large: number; opposed: number },
): PrintWord {
  if (coveredOverlap === 0) return 'none';
  if (coveredOverlap >= WHOLE) return 'whole';
  if (halves.small > ONE_SIDED && halves.large > ONE_SIDED && halves.opposed > ONE_SIDED) return 'crossed';
  if (patches > 0 && oneSided > ONE_SIDED) return 'oneSide';
  if (patches > 1) return 'lobes';
  const [small, middle, large] = [bare.small, bare.middle, bare.large].map((share) => share > 1 - WHOLE);
  if (small && large) return 'band';
  if (large) return 'smallEnd';
  if (small) return 'largeEnd';
  return middle ? 'bothEnds' : 'uneven';
}
