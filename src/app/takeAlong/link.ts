/**
 * A whole design in a link: its JSON deflated (RFC 1951) with WORDS as what went before it, in base64url, behind
 * `#job=`; the units of the screen behind `&units=`, how angles are said behind `&angles=`,
 * and another screen than Fit behind `&screen=`. Nothing of it is sent
 * anywhere: what stands behind the # of an address stays in the browser.
 */
import { deflateSync, Inflate, strFromU8, strToU8 } from 'fflate';
import type { Design } from '../../design/definition.ts';
import { parseDesign } from '../../design/parse.ts';
import { ANGLE_WAYS, type AngleWay, type System } from '../../design/units.ts';
import type { Validation } from '../../design/validate.ts';

const KEY = '#job=';
const UNITS = 'units';
const ANGLES = 'angles';
const SCREEN = 'screen';
/** Characters of a link; and bytes that one may unfold to. */
export const LONGEST_LINK = 32_000;
const MOST_BYTES = 2_000_000;

/**
 * What designs are mostly made of; what is used most stands last. Links that were given away are read with these very
 * words: another set needs another key.
 */
const WORDS = strToU8(
  '"nearest":"straightness","sineRise","twoPoint","standOff","overRolls","ballDepth","diameter","shake","roll":,"ball":,' +
    '"face":,"bar":,"stack":,"travel":,"indicator":,"direction":,"after":,"priors":[{"readings":[{"kind":"odds":{"draws":' +
    '"seed":"spread":[{"of":"halfAngle","shape":"rectangular""roughness":{"heat":{"ambient":20,"supply":[{"angle":90,' +
    '"width":2,"pressure":0}],"pose":{"load":{"x":0,"y":0,"z":0,"tiltX":0,"tiltY":0},"run":{"speed":,"oil":{"grade":10,' +
    '"index":95,"density":0.86,"viscosity":0.0"cut":{"machine":{"division":,"trials":[{"taken":[{"normal":,"blue":[{' +
    '"prints":true},"faces":[{"prefer":{"aim":"tolerance"},"reach":{"allow":[{"cleanup":0.005,"limit":0.05}],"print":{' +
    '"thickness":0.002},"friction":0.12,"play":{"free":["x","y","tiltX","tiltY"]},"adjuster":{"pitch":0.75},' +
    '"position":0.02,"lobes":[{"count":3,"amplitude":0.000,"phase":90}]"profile":[["sigma":0.001,"value":,"part":"bush",' +
    '"part":"journal","seat":"shallow","seat":"steep",{"conepair":1,"title":"","notes":"","seats":[{"name":"rear",' +
    '{"name":"steep",{"name":"shallow","journal":{"halfAngle":45,"diameter":24,"station":0,"from":-26,"to":0},"bush":{' +
    '"halfAngle":3,"diameter":22.006,"station":0,"from":-25,"to":-0.5},"film":{"target":0.0025,"tolerance":0.0005}},',
);

/** Any text, folded as the design of a link is; and unfolded again, null where it was cut off or altered. */
export const packedText = (text: string): string => toText(deflateSync(strToU8(text), { level: 9, dictionary: WORDS }));
export function unpackedText(packed: string): string | null {
  const bytes = packed.length <= LONGEST_LINK ? toBytes(packed) : null;
  return bytes && inflated(bytes);
}

/** The link that carries the design; null where it would be too long. `page`: the address without its #. */
export function linkOf(design: Design, system: System, way: AngleWay, page: string): string | null {
  const packed = packedText(JSON.stringify(design));
  const link = `${page}${KEY}${packed}&${UNITS}=${system}&${ANGLES}=${way}`;
  return link.length <= LONGEST_LINK ? link : null;
}

/** The same link, opened large for a projector. */
export const shownBy = (link: string) => `${link}&${SCREEN}=show`;

/** The screen a link opens on. */
export const screenOfLink = (hash: string): 'fit' | 'show' => (said(hash, SCREEN) === 'show' ? 'show' : 'fit');

/** The address of a page, without what stands behind its #. */
export const pageOf = ({ origin, pathname }: Pick<Location, 'origin' | 'pathname'>): string => `${origin}${pathname}`;

/** Whether an address is found on this device alone. */
export const isOwnDevice = (page: string): boolean =>
  /^(file:|https?:\/\/(localhost|127\.\d+\.\d+\.\d+|\[::1\])(:|\/|$))/.test(page);

/** The units a link names; null of one that was given away before links did. */
export function systemOfLink(hash: string): System | null {
  const named = said(hash, UNITS);
  return named === 'metric' || named === 'inch' ? named : null;
}

/** How a link says angles; null as above. */
export const wayOfLink = (hash: string): AngleWay | null =>
  ANGLE_WAYS.find((way) => way === said(hash, ANGLES)) ?? null;

/** What stands behind a name after the design; read from a bounded piece, whatever the link is. */
const said = (hash: string, name: string): string | undefined =>
  hash
    .slice(0, LONGEST_LINK)
    .split('&')
    .slice(1)
    .find((part) => part.startsWith(`${name}=`))
    ?.slice(name.length + 1);

/** The design of a link's fragment, or what is wrong with it. */
export function designOfLink(hash: string): Validation {
  const refused = (message: string): Validation => ({ ok: false, errors: [{ path: '', message }] });
  if (hash.length > LONGEST_LINK)
    return refused(`the link has ${hash.length} characters; at most ${LONGEST_LINK} are read`);
  const text = unpackedText(hash.slice(KEY.length).split('&')[0]!);
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
  const inflate = new Inflate({ dictionary: WORDS }, (piece, last) => {
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
