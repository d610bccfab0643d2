/**
 * How a person writes quantities: files hold mm and degrees, screens show inch or metric, and what is typed
 * may carry its own unit.
 * Over 300 lines and left whole: how a number is typed and told, unit by unit.
 *
 * 1 in = 25.4 mm exactly. A tenth is 0.0001 in, a thou 0.001 in.
 * @source ISO31-1 (the inch); YardAndPound; practice (tenth, thou)
 */
import { type Degrees, degrees as inDegrees, type Millimetres, radians } from './dimension.ts';

export type System = 'metric' | 'inch';

export const INCH = 25.4;
/** mm */
export const THOU = INCH / 1000;
export const TENTH = 0.00254;

/** mm to one unit; the names a person may type after a number. */
const LENGTH_UNITS: Record<string, number> = {
  mm: 1,
  um: 0.001,
  µm: 0.001,
  μm: 0.001,
  micron: 0.001,
  microns: 0.001,
  nm: 1e-6,
  cm: 10,
  m: 1000,
  in: INCH,
  inch: INCH,
  inches: INCH,
  '"': INCH,
  thou: THOU,
  tenth: TENTH,
  tenths: TENTH,
};

export type Typed = { ok: true; value: number } | { ok: false; message: string };

/** Characters a person types for one number; more is pasted by mistake, and not looked into. */
const LONGEST_TYPED = 80;

/**
 * What was typed, its spaces single ones, or why not. The patterns below take time linear in it: no two parts of them
 * take the same signs.
 */
export function plainTyped(text: string): { ok: true; text: string } | { ok: false; message: string } {
  if (text.length > LONGEST_TYPED)
    return { ok: false, message: `found "${text.slice(0, 20)}…" of ${text.length} characters; type one number` };
  return { ok: true, text: text.trim().replace(/\s+/g, ' ') };
}

const NUMBER = /^([+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:e[+-]?\d+)?) ?(.*)$/i;

/** As inch sizes are written: 11/16, 1 1/32. */
const FRACTION = /^([+-]?)(?:(\d+)[ -])?(\d+)\/(\d+) ?(in|inch|inches|")?$/i;

/** A length in mm from what was typed; `bare` is the size in mm of the unit meant by a number alone. */
export function typedLength(text: string, bare: number): Typed {
  const plain = plainTyped(text);
  if (!plain.ok) return plain;
  const fraction = FRACTION.exec(plain.text);
  if (fraction && Number(fraction[4]) > 0) {
    const [, sign, whole = 0, over, under, unit] = fraction;
    return {
      ok: true,
      value: Number(`${sign}1`) * (Number(whole) + Number(over) / Number(under)) * (unit === undefined ? bare : INCH),
    };
  }
  const match = NUMBER.exec(plain.text);
  if (!match)
    return { ok: false, message: `found "${text}"; type a number, with a unit if you like (mm, µm, in, thou, tenths)` };
  const unit = match[2]!.toLowerCase();
  const number = Number(match[1]!.replace(',', '.'));
  if (unit === 'tpi')
    return number > 0 ? { ok: true, value: INCH / number } : { ok: false, message: 'threads per inch must be above 0' };
  const size = unit === '' ? bare : LENGTH_UNITS[unit];
  if (size === undefined)
    return {
      ok: false,
      message: `unit "${match[2]}" is not known here; use mm, µm, in, thou or tenths (tpi for a thread)`,
    };
  return { ok: true, value: number * size };
}

/** A number taken whole: what follows it is no digit, so that it cannot be parted in two. */
const WHOLE = String.raw`((?:\d+(?:\.\d*)?|\.\d+)(?![\d.]))`;
const RATIO = new RegExp(`^([+-]?)${WHOLE} ?(?::|\\/|in) ?${WHOLE}$`);
/** Tapers per foot are written with fractions too: 3/4 in/ft. */
const PER_FOOT =
  /^([+-]?)(?:((?:\d+(?:\.\d*)?|\.\d+)(?![\d/.]))|(?:(\d+)[ -])?(\d+)\/(\d+)) ?(?:in\/ft|ipf|tpf|["″]\/ft|(?:(?:in|inch|inches|["″])\.? )?per (?:ft|foot))\.?$/;
const FRACTION_ALONE = /^\s*[+-]?(?:\d+[ -])?\d+\/\d+\s*$/;
const SEXAGESIMAL = new RegExp(
  `^([+-]?)${WHOLE} ?(?:°|deg|d)?(?: ?${WHOLE} ?(?:'|′|min)| ${WHOLE})?(?: ?${WHOLE} ?(?:"|″|sec)| ${WHOLE})?(?: ?(incl\\.?|included|half)(?: angle)?)?$`,
);

/**
 * A half angle in degrees from what was typed: degrees (`3`, `3°`, `3° 30'`, `3 half`), an included angle (`6 incl`),
 * a taper ratio on diameter (`1:20`, `1/20`, `1 in 20`), or a taper per foot on diameter (`0.6 in/ft`,
 * `3/4 in/ft`).
 *   taper on diameter = 2·tan(half angle)
 */
export function typedHalfAngle(text: string): Typed {
  const plain = plainTyped(text);
  if (!plain.ok) return plain;
  const typed = plain.text.toLowerCase().replaceAll(',', '.');
  const ratio = RATIO.exec(typed);
  if (ratio && Number(ratio[3]) > 0)
    return { ok: true, value: Number(`${ratio[1]}1`) * halfAngleOfTaper(Number(ratio[2]) / Number(ratio[3])) };
  const foot = PER_FOOT.exec(typed);
  if (foot && Number(foot[5] ?? 1) > 0) {
    const [, sign, number, whole = 0, over = 0, under = 1] = foot;
    const inches = number === undefined ? Number(whole) + Number(over) / Number(under) : Number(number);
    return { ok: true, value: halfAngleOfTaper((Number(`${sign}1`) * inches) / 12) };
  }
  const sexagesimal = SEXAGESIMAL.exec(typed);
  if (sexagesimal) {
    const [, sign, whole, marked, minutes, markedSeconds, seconds, said] = sexagesimal;
    const degrees = Number(whole) + Number(marked ?? minutes ?? 0) / 60 + Number(markedSeconds ?? seconds ?? 0) / 3600;
    return { ok: true, value: (sign === '-' ? -1 : 1) * (said?.startsWith('incl') ? degrees / 2 : degrees) };
  }
  return { ok: false, message: `found "${text}"; type degrees (3, 3° 30'), "6 incl", 1:20, 0.6 in/ft or 3/4 in/ft` };
}

/** Half angle (degrees) of a taper on diameter: atan(taper/2). */
export const halfAngleOfTaper = (taper: number) => inDegrees(Math.atan(taper / 2));
/** Taper on diameter of a half angle (degrees): 2·tan a. */
export const taperOfHalfAngle = (degrees: Degrees) => 2 * Math.tan(radians(degrees));

/** Without a minus before a rounded nought, and with a real minus sign. */
function digits(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return (Number(text) === 0 ? text.replace('-', '') : text).replace('-', '−');
}

/** Without the noughts at the end beyond the least number of decimals. */
export function trimmed(text: string, least: number): string {
  const [whole, decimals = ''] = text.split('.');
  const kept = decimals.replace(/0+$/, '').padEnd(least, '0');
  return kept === '' ? whole! : `${whole}.${kept}`;
}

/** From here on (mm) a move is told as a length: 1 mm, or ten thou. */
const LARGE = { metric: 1, inch: INCH / 100 };

/** A film, deviation or small move (mm) in µm or tenths; a large one as a length. */
export function fineText(mm: Millimetres, system: System): string {
  return Math.abs(mm) >= LARGE[system] ? lengthText(mm, system) : fineOnly(mm, system);
}
const fineOnly = (mm: Millimetres, system: System) =>
  system === 'metric'
    ? `${digits(mm * 1000, Math.abs(mm) < 0.1 ? 2 : 1)} µm`
    : `${digits(mm / TENTH, Math.abs(mm) < 0.1 ? 2 : 1)} tenths`;
/** A position by the side of the datum it lies on. */
export const sidedText = (mm: Millimetres, system: System) =>
  mm === 0 ? 'at the datum' : `${fineText(Math.abs(mm), system)} ${mm < 0 ? 'rearward' : 'noseward'} of the datum`;
/**
 * The same in a field that is edited: to a tenth of a nanometre, so that nothing that counts is lost by retyping it.
 */
export const fineExact = (mm: Millimetres, system: System) =>
  system === 'metric' ? `${trimmed(digits(mm * 1000, 4), 2)} µm` : `${trimmed(digits(mm / TENTH, 4), 2)} tenths`;
/** A length (mm) in mm or inches. */
export const lengthText = (mm: Millimetres, system: System) =>
  system === 'metric' ? `${trimmed(digits(mm, 5), 3)} mm` : `${trimmed(digits(mm / INCH, 6), 4)} in`;
/**
 * What a gauge reads: to 0.1 µm or ten millionths of an inch, always with the same digits, so that readings compare.
 */
export const readingText = (mm: Millimetres, system: System) =>
  system === 'metric' ? `${digits(mm, 4)} mm` : `${digits(mm / INCH, 5)} in`;
/** A length in a field that is edited, to a nanometre or two. */
export const lengthExact = (mm: Millimetres, system: System) =>
  system === 'metric' ? `${trimmed(digits(mm, 6), 3)} mm` : `${trimmed(digits(mm / INCH, 7), 4)} in`;
/** A place or size that is only told, to a micrometre or so: 0.001 mm, a tenth. */
export const placeText = (mm: Millimetres, system: System) =>
  system === 'metric' ? lengthText(Number(mm.toFixed(3)), system) : `${trimmed(digits(mm / INCH, 4), 3)} in`;
/** An angle in a field that is edited: 1e-6° moves a line of 100 mm by two nanometres. */
export const angleExact = (degrees: Degrees) => `${trimmed(digits(degrees, 6), 1)}°`;
export const angleText = (degrees: Degrees) => `${digits(degrees, 4).replace(/0{1,3}$/, '')}°`;
/**
 * An error of an angle (degrees): seconds, minutes or degrees of arc, with the digits that count; never told as nothing
 * when it is not.
 */
export function angleErrorText(degrees: Degrees): string {
  const seconds = Math.abs(degrees) * 3600;
  if (seconds === 0) return '0″';
  if (seconds < 0.01) return 'less than 0.01″';
  if (seconds < 100) return `${digits(seconds, seconds < 10 ? 2 : 1)}″`;
  return seconds < 3600 ? `${digits(seconds / 60, seconds < 600 ? 2 : 1)}′` : angleText(Math.abs(degrees));
}
/** Half width in standard uncertainties of what holds 19 times in 20, of a normal spread. */
export const COVER = 1.96;

/**
 * A figure and how far it may be off 19 times in 20 (mm), from its standard uncertainty, both to the digits that this
 * leaves: 76.5 ± 4.2 µm.
 */
export const plusMinusText = (mm: Millimetres, sigma: Millimetres, system: System): string =>
  `${digits(mm / fineUnit(system).size, doubtDecimals(sigma, system))} ${doubtText(sigma, system)}`;

/** Of their distance: as far from the middle of its limits they are told, one side 1.6 times as long as the other. */
const LOPSIDED = 0.115;

/** Of what a ± reaches. */
const ELSEWHERE = 0.3;

export const isLopsided = (mm: Millimetres, [low, high]: readonly [Millimetres, Millimetres]): boolean =>
  Math.abs(mm - (low + high) / 2) > LOPSIDED * (high - low);

/**
 * The same; where one side of the limits of 19 times in 20 (mm) is longer by far, or they keep to one side of nought
 * and a ± would not, with these: 77 (1 to 190) µm.
 */
export function doubtedText(
  mm: Millimetres,
  sigma: Millimetres,
  system: System,
  limits: readonly Millimetres[] = [],
): string {
  // The likeliest may lie at the end of what pairs drawn tell, or just beyond. Without limits both sides are no number.
  const [low, high] = [Math.min(limits[0]!, mm), Math.max(limits[1]!, mm)];
  const reach = COVER * sigma;
  // Limits that stand elsewhere than a ± would reach, to either side, are told: what is safe goes by them.
  const elsewhere = Math.max(Math.abs(mm - reach - low), Math.abs(mm + reach - high)) > ELSEWHERE * reach;
  if (!(low > 0 && mm < reach) && !elsewhere && !isLopsided(mm, [low, high])) return plusMinusText(mm, sigma, system);
  const [at, from, to] = [mm, low, high].map((one) =>
    digits(one / fineUnit(system).size, doubtDecimals((high - low) / 4, system)),
  );
  return `${at} (${from} to ${to}) ${fineUnit(system).name}`;
}

/** How far something may be off 19 times in 20 (mm), from its standard uncertainty: ± 4.2 µm. */
export function doubtText(sigma: Millimetres, system: System): string {
  const { size, name } = fineUnit(system);
  const doubt = (COVER * sigma) / size;
  const told = doubt > 0 && doubt < 0.005 ? 'less than 0.01' : digits(doubt, doubtDecimals(sigma, system));
  return `± ${told} ${name}`;
}

function doubtDecimals(sigma: Millimetres, system: System): number {
  const doubt = (COVER * sigma) / fineUnit(system).size;
  return doubt >= 10 ? 0 : doubt >= 1 ? 1 : 2;
}
export const turnText = (turns: number) => `${digits(Math.abs(turns) * 360, Math.abs(turns) * 360 < 10 ? 1 : 0)}°`;

/** A length (mm) that may be more: rounded up to whole millimetres, or tenths of an inch. */
export const atLeastText = (mm: Millimetres, system: System) =>
  system === 'metric' ? `${Math.ceil(mm)} mm` : `${(Math.ceil((10 * mm) / INCH) / 10).toFixed(1)} in`;

/** The size in mm of the unit a bare number means. */
export const fineUnit = (system: System) =>
  system === 'metric' ? { size: 0.001, name: 'µm' } : { size: TENTH, name: 'tenths' };
export const lengthUnit = (system: System) =>
  system === 'metric' ? { size: 1, name: 'mm' } : { size: INCH, name: 'in' };

/** How a person says an angle: half or included, taper on diameter per foot, or 1 in so many. */
export const ANGLE_WAYS = ['half', 'included', 'foot', 'ratio'] as const;
export type AngleWay = (typeof ANGLE_WAYS)[number];

/** Degrees: a cone steeper than this nobody says by its taper. @source practice */
const STEEPEST_TAPER = 15;

/** How a half angle (degrees) is said to a person of this way. */
export const wayOf = (degrees: Degrees, way: AngleWay): AngleWay | 'steep' =>
  Math.abs(degrees) > STEEPEST_TAPER && (way === 'foot' || way === 'ratio') ? 'steep' : way;

/** A half angle (degrees) in a field, as the person says angles. */
export function angleIn(degrees: Degrees, way: AngleWay): string {
  const taper = taperOfHalfAngle(degrees);
  switch (wayOf(degrees, way)) {
    case 'steep':
      return `${angleExact(degrees)} half`;
    case 'half':
      return angleExact(degrees);
    case 'included':
      return `${angleExact(2 * degrees)} incl`;
    case 'foot':
      return `${trimmed(digits(12 * taper, 7), 2)} in/ft`;
    case 'ratio':
      // 1 in so many has no word for straight.
      return taper === 0 ? angleExact(0) : `${taper < 0 ? '−' : ''}1:${trimmed(digits(1 / Math.abs(taper), 7), 0)}`;
  }
}

/** A half angle (degrees) where it is told, as the person says angles: to what a drawing needs; never below 0. */
export function angleSaid(degrees: Degrees, way: AngleWay): string {
  const angle = Math.abs(degrees);
  const taper = taperOfHalfAngle(angle);
  if (way === 'included') return `${angleText(2 * angle)} incl`;
  if (way === 'half' || taper === 0) return angleText(angle);
  if (wayOf(angle, way) === 'steep') return `${angleText(angle)} half`;
  // As fine as the ten thousandths of a degree that an angle is told to.
  const decimals = Math.max(0, Math.ceil(-Math.log10(angleOff(angle, 1e-4, way))));
  return way === 'foot'
    ? `${trimmed(digits(12 * taper, decimals), 4)} in/ft`
    : `1:${trimmed(digits(1 / taper, decimals), 0)}`;
}

/**
 * An error, or a tolerance, of a half angle (both in degrees, above 0), in what the person says angles by: to first
 * order the taper on diameter 2·tan a changes by 2·da/cos² a, and 1 in n by da/(2·sin² a).
 */
export function angleOff(halfAngle: Degrees, by: Degrees, way: AngleWay): number {
  const a = radians(halfAngle);
  const da = radians(by);
  const said = wayOf(halfAngle, way);
  if (said !== 'foot' && said !== 'ratio') return said === 'included' ? 2 * by : by;
  return way === 'foot' ? (24 * da) / Math.cos(a) ** 2 : da / (2 * Math.sin(a) ** 2);
}

/** The same told, to the digits that count; of a straight surface, which has no 1 in n, as an angle. */
export function angleOffSaid(halfAngle: Degrees, by: Degrees, way: AngleWay): string {
  const off = angleOff(halfAngle, by, way);
  const said = wayOf(halfAngle, way);
  if (said === 'foot') return `${trimmed(digits(off, 6), 4)} in/ft`;
  if (said === 'ratio' && Number.isFinite(off)) return `${Number(off.toPrecision(2))}`;
  return angleErrorText(said === 'included' ? off : by);
}

/** What an angle is called within a sentence. */
export const ANGLE_WORDS: Record<AngleWay, string> = {
  half: 'half angle',
  included: 'included angle',
  foot: 'taper',
  ratio: 'taper',
};

/** A half angle (degrees) told after that word, which says what it is. */
export const angleFigure = (degrees: Degrees, way: AngleWay): string =>
  way === 'included' ? angleText(2 * Math.abs(degrees)) : angleSaid(degrees, way);

/** The same with that word; what is too steep for a taper is a half angle. */
export function angleNamed(degrees: Degrees, way: AngleWay): string {
  const said = wayOf(degrees, way) === 'steep' ? 'half' : way;
  return `${ANGLE_WORDS[said]} ${angleFigure(degrees, said)}`;
}

/** A half angle from what was typed: a number alone is meant as the person says angles. */
export function typedAngleIn(text: string, way: AngleWay): Typed {
  if (way === 'foot' && FRACTION_ALONE.test(text.slice(0, LONGEST_TYPED))) return typedHalfAngle(`${text} in/ft`);
  const bare = /^\s*([+\-−]?)((?:\d+(?:[.,]\d*)?|[.,]\d+))\s*°?\s*$/.exec(text);
  if (!bare || way === 'half' || text.length > LONGEST_TYPED) return typedHalfAngle(text);
  const [, sign, number] = bare;
  const [before, after] = { included: ['', ' incl'], foot: ['', ' in/ft'], ratio: ['1:', ''] }[way];
  // Nought is straight, however it is said.
  if (way === 'ratio' && Number(number!.replace(',', '.')) === 0) return { ok: true, value: 0 };
  if (way !== 'included' && text.includes('°')) return typedHalfAngle(text);
  const typed = typedHalfAngle(`${sign === '' ? '' : sign === '+' ? '+' : '-'}${before}${number}${after}`);
  if (typed.ok && wayOf(typed.value, way) === 'steep')
    return {
      ok: false,
      message: `found ${number}, steep for a taper: write ${number}° for a half angle, or ${before}${number}${after}`,
    };
  return typed;
}
