/**
 * A whole design in a link: its JSON deflated, in base64url, behind `#job=`. Nothing of it is sent anywhere: what
 * stands behind the # of an address stays in the browser.
 */
import { deflateSync, Inflate, strFromU8, strToU8 } from 'fflate';
import type { Design } from '../../design/definition.ts';
import { parseDesign, type Validation } from '../../design/validate.ts';

const KEY = '#job=';
/** Characters of a link; and bytes that one may unfold to. */
export const LONGEST_LINK = 32_000;
const MOST_BYTES = 2_000_000;

/** The link that carries the design; null where it would be too long. `page`: the address without its #. */
export function linkOf(design: Design, page: string): string | null {
  const link = `${page}${KEY}${toText(deflateSync(strToU8(JSON.stringify(design)), { level: 9 }))}`;
  return link.length <= LONGEST_LINK ? link : null;
}

/** The address of a page, without what stands behind its #. */
export const pageOf = ({ origin, pathname }: Pick<Location, 'origin' | 'pathname'>): string => `${origin}${pathname}`;

/** Whether an address is found on this device alone. */
export const isOwnDevice = (page: string): boolean =>
  /^(file:|https?:\/\/(localhost|127\.\d+\.\d+\.\d+|\[::1\])(:|\/|$))/.test(page);

/** The design of a link's fragment, or what is wrong with it. */
export function designOfLink(hash: string): Validation {
  const refused = (message: string): Validation => ({ ok: false, errors: [{ path: '', message }] });
  if (hash.length > LONGEST_LINK)
    return refused(`the link has ${hash.length} characters; at most ${LONGEST_LINK} are read`);
  const bytes = toBytes(hash.slice(KEY.length));
  const text = bytes && inflated(bytes);
  if (text === null)
    return refused('the link is not whole: it was cut off or altered on the way. Ask for it again, or for the file');
  return parseDesign(text);
}

function toText(bytes: Uint8Array): string {
  let binary = '';
  for (const byte of bytes) binary += String.fromCharCode(byte);
  return btoa(binary).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
}

function toBytes(text: string): Uint8Array | null {
  try {
    return Uint8Array.from(atob(text.replaceAll('-', '+').replaceAll('_', '/')), (char) => char.charCodeAt(0));
  } catch {
    return null;
  }
}

/** Unfolded piece by piece, so that a small link cannot fill the memory. */
function inflated(bytes: Uint8Array): string | null {
  const pieces: Uint8Array[] = [];
  let [size, ended] = [0, false];
  const inflate = new Inflate((piece, last) => {
    size += piece.length;
    if (size > MOST_BYTES) throw new Error('too large');
    pieces.push(piece);
    ended = last;
  });
  const STEP = 1024;
  try {
    for (let at = 0; at < bytes.length; at += STEP)
      inflate.push(bytes.subarray(at, at + STEP), at + STEP >= bytes.length);
  } catch {
    return null;
  }
  if (!ended) return null;
  const whole = new Uint8Array(size);
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return strFromU8(whole);
}
