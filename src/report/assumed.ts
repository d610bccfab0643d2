/** What a verdict says of sizes that nobody has read or drawn: it is no better than they are, and never praise. */
import type { Design, Part } from '../design/definition.ts';
import { isTried } from './cut/openTrials.ts';
import { listed } from './listed.ts';
import { placeName } from './placeName.ts';

interface Verdict {
  tone: 'good' | 'mend' | 'stop' | 'plain';
  headline: string;
  sentences: string[];
}

/** More than these are counted, not named. */
const NAMED = 4;

/** Sections of the design that a verdict goes by. */
type Scope = 'seats' | 'run' | 'cut';

/** Places of what is assumed in these sections. */
export const assumedIn = ({ assumed = [] }: Design, scopes: readonly Scope[]): string[] =>
  assumed.filter((path) => scopes.some((scope) => path.startsWith(scope)));

/** The same verdict, with what of it is assumed. */
export function asAssumed<V extends Verdict>(verdict: V, design: Design, scopes: readonly Scope[]): V {
  const all = assumedIn(design, scopes);
  // Of the lines it is the trials that tell, with what these leave in doubt.
  const places = isTried(design) ? all.filter((path) => !LINES.test(path)) : all;
  if (places.length === 0) return verdict;
  return {
    ...verdict,
    tone: verdict.tone === 'good' ? 'mend' : verdict.tone,
    sentences: [assumedSentence(design, places, scopes), ...verdict.sentences],
  };
}

const OF: Record<Scope, string> = { seats: 'of the seats', run: 'of the run', cut: 'of the cut' };

/** Counted by section, so that one screen's count is told from another's. */
export function assumedCount(design: Design, scopes: readonly Scope[]): string {
  return listed(
    scopes.flatMap((scope) => {
      const count = assumedIn(design, [scope]).length;
      return count === 0 ? [] : [`${count} ${count === 1 ? 'number' : 'numbers'} ${OF[scope]}`];
    }),
  );
}

function assumedSentence(design: Design, places: readonly string[], scopes: readonly Scope[]): string {
  return `Assumed, never measured: ${namesOf(design, places, scopes)}, marked in the controls; type or measure ${places.length === 1 ? 'it' : 'them'} before you trust this.`;
}

const namesOf = (design: Design, places: readonly string[], scopes: readonly Scope[]): string =>
  places.length <= NAMED ? listed(places.map((path) => placeName(design, path))) : assumedCount(design, scopes);

/** A surface whose line nobody has read or drawn. */
interface Unread {
  seat: string;
  part: Part;
  /** how much of it is read that is not taken over into the design yet: its line cannot be told from a part */
  noted: 'nothing' | 'part' | 'all';
  /** what of it is assumed */
  guessed: readonly Told[];
}

/** What tells a line. */
const TOLD = { diameter: 'diameter', halfAngle: 'angle', station: 'place' };
const LINES = /(diameter|halfAngle|station)$/;
type Told = keyof typeof TOLD;
const WHOLE = Object.keys(TOLD) as Told[];

/**
 * Surfaces that a fit, and a plan to cut, would lean on without anybody's having read or drawn them: their diameter,
 * half angle, and where they stand along the axis if moving the journal closes them. (Ends bound a film, and are left
 * to be told with the rest.)
 */
export function unreadSurfaces({ seats, assumed = [], readings = [] }: Design): Unread[] {
  if (assumed.length === 0) return [];
  const guessed = new Set(assumed);
  return seats.flatMap((seat, i) =>
    (['journal', 'bush'] as const).flatMap((part): Unread[] => {
      const straight = seat[part].halfAngle === 0;
      const assumedOf = WHOLE.filter(
        (key) => !(straight && key === 'station') && guessed.has(`seats[${i}].${part}.${key}`),
      );
      if (assumedOf.length === 0) return [];
      const places = readings.flatMap((one) => {
        if (!('seat' in one) || one.seat !== seat.name || one.part !== part || one.kind === 'straightness') return [];
        const { value: _, sigma: __, after: ___, ...setUp } = one;
        return [JSON.stringify(setUp)];
      });
      const [read, wanted] = [new Set(places).size, straight ? 1 : 2];
      const noted = read === 0 ? 'nothing' : read < wanted ? 'part' : 'all';
      return [{ seat: seat.name, part, noted, guessed: assumedOf }];
    }),
  );
}

/**
 * Whether a plan would lean on what is a guess in part, and no trial assembly told of the pair either: nothing is to be
 * cut by it.
 */
export const isGuess = (design: Design): boolean => !isTried(design) && unreadSurfaces(design).length > 0;

/** What the shapes of a design are: all surfaces measured, none or some of them, or the sizes of one a guess. */
export function partsAre(design: Design): 'measured' | 'drawn' | 'assumed' | 'drawn, in part measured' {
  if (unreadSurfaces(design).length > 0) return 'assumed';
  const read = new Set((design.readings ?? []).map((one) => ('seat' in one ? `${one.seat} ${one.part}` : '')));
  read.delete('');
  return read.size === 0 ? 'drawn' : read.size < 2 * design.seats.length ? 'drawn, in part measured' : 'measured';
}

/**
 * The same verdict, behind what is to be measured first, or typed; `tone`: what it is then at best. Behind asAssumed,
 * which names what is assumed.
 */
export function measuredFirst<V extends Verdict>(verdict: V, design: Design, tone: 'mend' | 'stop'): V {
  return behind(verdict, measureHeadline(design), tone);
}

/** Of a running spindle: it leans on speed, oil and load as much as on the shapes. */
export function knownFirst<V extends Verdict>(verdict: V, design: Design): V {
  return behind(verdict, measureHeadline(design) ?? typeHeadline(design, 'run'), 'mend');
}

function behind<V extends Verdict>(verdict: V, headline: string | null, tone: 'mend' | 'stop'): V {
  if (headline === null) return verdict;
  const [assumed, ...others] = verdict.sentences;
  return {
    ...verdict,
    tone: verdict.tone === 'stop' ? 'stop' : tone,
    headline,
    sentences: [assumed!, `If they are as assumed: ${verdict.headline}`, ...others],
  };
}

/** For whoever cannot. */
const OR_TRY = 'Or assemble it for a trial, which needs no gauge.';

function measureHeadline(design: Design): string | null {
  if (!isGuess(design)) return null;
  const unread = unreadSurfaces(design);
  const seats = design.seats.length;
  const first = unread.filter(({ noted }) => noted === 'nothing');
  const more = unread.filter(({ noted }) => noted === 'part');
  if (first.length === 0 && more.length > 0)
    return `Read ${surfaceNames(more, seats)} at a second place: one reading does not tell a cone. ${OR_TRY}`;
  // What is read already wants taking over and nothing else.
  if (first.length === 0)
    return `Take over first, in Measure, what was read of ${surfaceNames(unread, seats)}: this goes by what is assumed.`;
  const measure = `Measure ${surfaceNames(first, seats)}`;
  // Of some a diameter was typed: that alone tells no line, but it is not nothing either.
  if (first.every(({ guessed }) => guessed.includes('diameter'))) return `${measure}: nobody has. ${OR_TRY}`;
  const open = WHOLE.filter((key) => first.some(({ guessed }) => guessed.includes(key)));
  return `${measure}: of ${listed(open.map((key) => TOLD[key]))} not all is known. ${OR_TRY}`;
}

/** Numbers that no gauge tells: somebody says them. */
function typeHeadline(design: Design, scope: Scope): string | null {
  const places = assumedIn(design, [scope]);
  return places.length === 0 ? null : `Type ${namesOf(design, places, [scope])} first: nobody has.`;
}

/** The shallow and steep bores and the steep journal. */
function surfaceNames(unread: readonly Unread[], seats: number): string {
  const of = (part: Part, one: string) => {
    const names = unread.filter((surface) => surface.part === part).map(({ seat }) => seat);
    if (names.length === 0) return [];
    if (names.length === seats && seats > 1) return [`all ${one}s`];
    return [`the ${listed(names)} ${one}${names.length === 1 ? '' : 's'}`];
  };
  const parts = [...of('bush', 'bore'), ...of('journal', 'journal')];
  return parts.length === 2 && parts.every((part) => part.startsWith('all')) ? 'both parts' : listed(parts);
}
