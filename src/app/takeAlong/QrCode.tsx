/** A link as a code for a camera; nothing where it is too long to be read well. */
import { encode } from 'uqr';

/** Squares on a side above which a small print is hard to read: version 22 of ISO/IEC 18004. */
const MOST_VERSION = 22;
/** Squares of quiet ground about it (ISO/IEC 18004, from memory). */
const QUIET = 4;

export function codeOf(link: string, most: number = MOST_VERSION): { size: number; path: string } | null {
  try {
    const { data, size } = encode(link, { ecc: 'L', border: QUIET, maxVersion: most });
    const path = data.flatMap((row, y) => row.flatMap((dark, x) => (dark ? [`M${x} ${y}h1v1h-1z`] : []))).join('');
    return { size, path };
  } catch {
    return null;
  }
}

/** @param side of the square, a length of CSS */
export function QrCode({
  link,
  side,
  label = 'Code for a camera: opens this design',
  most = MOST_VERSION,
}: {
  link: string;
  side: string;
  label?: string;
  /** squares it may have, as a version of the standard */
  most?: number;
}) {
  const code = codeOf(link, most);
  return code === null ? null : (
    <svg
      viewBox={`0 0 ${code.size} ${code.size}`}
      style={{ width: side, height: side }}
      className="qr"
      role="img"
      aria-label={label}
      shapeRendering="crispEdges"
    >
      <rect width={code.size} height={code.size} fill="#fff" />
      <path d={code.path} fill="#000" />
    </svg>
  );
}
