/**
 * Colour scales along a curve in OKLab (B. Ottosson, 2020) at even steps of length, so that equal steps of what is
 * shown look equal; a scale that darkens all the way reads in black and white too.
 */
import { radians } from '../../report/convert.ts';

/** sRGB, each 0 to 1. */
export type Rgb = readonly [red: number, green: number, blue: number];
export type Lab = readonly [lightness: number, a: number, b: number];

const STEPS = 64;

/** Lightness 0 to 1, chroma, hue in degrees. */
export function polar(lightness: number, chroma: number, hue: number): Lab {
  const angle = radians(hue);
  return [lightness, chroma * Math.cos(angle), chroma * Math.sin(angle)];
}

/** The colour of a share (0 to 1, held within) along the quadratic Bézier curve of three colours. */
export function colourScale(curve: readonly [Lab, Lab, Lab]): (share: number) => Rgb {
  const table = evenTable(curve);
  return (share) => {
    const at = Math.min(1, Math.max(0, share)) * STEPS;
    const k = Math.min(STEPS - 1, Math.floor(at));
    return srgb(mixed(table[k]!, table[k + 1]!, at - k));
  };
}

function mixed(from: Lab, to: Lab, t: number): Lab {
  return [from[0] + (to[0] - from[0]) * t, from[1] + (to[1] - from[1]) * t, from[2] + (to[2] - from[2]) * t];
}

/** Points of the curve at even steps along it. */
function evenTable(curve: readonly [Lab, Lab, Lab]): Lab[] {
  const fine = Array.from({ length: 1025 }, (_, i) =>
    mixed(mixed(curve[0], curve[1], i / 1024), mixed(curve[1], curve[2], i / 1024), i / 1024),
  );
  const length = [0];
  for (let i = 1; i < fine.length; i++)
    length.push(length[i - 1]! + Math.hypot(...fine[i]!.map((part, k) => part - fine[i - 1]![k]!)));
  const whole = length[length.length - 1]!;
  return Array.from({ length: STEPS + 1 }, (_, step) => {
    const wanted = (whole * step) / STEPS;
    const i = Math.max(
      1,
      length.findIndex((reached) => reached >= wanted - 1e-12),
    );
    return mixed(fine[i - 1]!, fine[i]!, (wanted - length[i - 1]!) / (length[i]! - length[i - 1]!));
  });
}

const codedPart = (part: number) =>
  Math.min(1, Math.max(0, part <= 0.0031308 ? part * 12.92 : 1.055 * part ** (1 / 2.4) - 0.055));

/** OKLab to sRGB; the published matrices. */
export function srgb([lightness, a, b]: Lab): Rgb {
  const l = (lightness + 0.3963377774 * a + 0.2158037573 * b) ** 3;
  const m = (lightness - 0.1055613458 * a - 0.0638541728 * b) ** 3;
  const s = (lightness - 0.0894841775 * a - 1.291485548 * b) ** 3;
  return [
    codedPart(4.0767416621 * l - 3.3077115913 * m + 0.2309699292 * s),
    codedPart(-1.2684380046 * l + 2.6097574011 * m - 0.3413193965 * s),
    codedPart(-0.0041960863 * l - 0.7034186147 * m + 1.707614701 * s),
  ];
}
