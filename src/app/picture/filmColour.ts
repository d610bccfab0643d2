/**
 * The colour of an oil film by its true thickness: from pale straw (nothing) to deep amber (the most), along
 * a curve in OKLab (B. Ottosson, 2020) at even steps of length, so that equal steps of film look equal; it
 * darkens all the way, so that it reads in black and white too. Interference has a colour off the scale.
 */
/** sRGB, each 0 to 1. */
export type Rgb = readonly [red: number, green: number, blue: number];

export const INTERFERENCE: Rgb = [0.85, 0.05, 0.16];
/** Marking blue where two surfaces touch. */
export const touchColour = (dark: boolean): Rgb => (dark ? [0.43, 0.6, 0.96] : [0.114, 0.247, 0.561]);

type Lab = readonly [lightness: number, a: number, b: number];

/** A quadratic Bézier curve in OKLab: straw, amber, brown. */
const CURVE: readonly [Lab, Lab, Lab] = [polar(0.95, 0.05, 95), polar(0.74, 0.2, 75), polar(0.36, 0.09, 50)];
const STEPS = 64;
const TABLE = evenTable();

/** Film and the film of the scale's far end in the same unit; beyond the end the end's colour. */
export function filmColour(film: number, max: number): Rgb {
  if (film < 0) return INTERFERENCE;
  const share = max > 0 ? Math.min(1, film / max) : 0;
  const at = share * STEPS;
  const k = Math.min(STEPS - 1, Math.floor(at));
  return srgb(mixed(TABLE[k]!, TABLE[k + 1]!, at - k));
}

export const cssColour = (colour: Rgb) => `rgb(${colour.map((part) => Math.round(part * 255)).join(', ')})`;

/** Linear light of an sRGB colour (IEC 61966-2-1), as vertex colours are kept. */
export const linear = (colour: Rgb): Rgb => [linearPart(colour[0]), linearPart(colour[1]), linearPart(colour[2])];

/** Relative luminance, 0 to 1 (IEC 61966-2-1 primaries). */
export function luminance(colour: Rgb): number {
  const [red, green, blue] = linear(colour);
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

const linearPart = (part: number) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4);
const codedPart = (part: number) => Math.min(1, Math.max(0, part <= 0.0031308 ? part * 12.92 : 1.055 * part ** (1 / 2.4) - 0.055));

function polar(lightness: number, chroma: number, hue: number): Lab {
  const angle = (hue * Math.PI) / 180;
  return [lightness, chroma * Math.cos(angle), chroma * Math.sin(angle)];
}

function mixed(from: Lab, to: Lab, t: number): Lab {
  return [from[0] + (to[0] - from[0]) * t, from[1] + (to[1] - from[1]) * t, from[2] + (to[2] - from[2]) * t];
}

/** Points of the curve at even steps along it. */
function evenTable(): Lab[] {
  const fine = Array.from({ length: 1025 }, (_, i) => mixed(mixed(CURVE[0], CURVE[1], i / 1024), mixed(CURVE[1], CURVE[2], i / 1024), i / 1024));
  const length = [0];
  for (let i = 1; i < fine.length; i++) length.push(length[i - 1]! + Math.hypot(...fine[i]!.map((part, k) => part - fine[i - 1]![k]!)));
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

/** OKLab to sRGB; the published matrices. */
function srgb([lightness, a, b]: Lab): Rgb {
  const l = (lightness + 0.3963377774 * a + 0.2158037573 * b) ** 3;
  const m = (lightness - 0.1055613458 * a - 0.0638541728 * b) ** 3;
  const s = (lightness - 0.0894841775 * a - 1.291485548 * b) ** 3;
  return [codedPart(4.0767416621 * l - 3.3077115913 * m + 0.2309699292 * s), codedPart(-1.2684380046 * l + 2.6097574011 * m - 0.3413193965 * s), codedPart(-0.0041960863 * l - 0.7034186147 * m + 1.707614701 * s)];
}
