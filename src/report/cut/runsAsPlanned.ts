/** How the parts will run as a plan leaves them: told where it speaks against cutting to that plan. */
import type { Design } from '../../design/definition.ts';
import type { System } from '../../design/units.ts';
import type { FilmReport } from '../film/definition.ts';
import type { Stretch } from '../film/limits.ts';
import { filmVerdict } from '../film/verdict.ts';
import type { Verdict } from '../fit/verdict.ts';

const WAYS_OUT =
  'Ways out: films that it can run on, other oil, more area on the steep seat, a pocket or a thrust stop; try them on Run before metal is cut.';

/**
 * Null where the spindle runs on oil everywhere.
 * @param made the parts as the plan leaves them, at the position of the plan
 * @param cuts whether the plan takes metal off
 */
export function runsAsPlanned(made: Design, film: FilmReport, cuts: boolean, system: System): Verdict | null {
  const { tone, headline, sentences } = filmVerdict(made, film, system);
  if (tone === 'good') return null;
  const told = headline.charAt(0).toLowerCase() + headline.slice(1);
  if (tone === 'stop')
    return {
      tone,
      headline: `${cuts ? 'Do not cut to this plan yet. ' : ''}With these films it must not run: ${told}`,
      sentences: [WAYS_OUT, ...sentences],
    };
  return { tone, headline: `With these films ${told}`, sentences };
}

/** degrees: no axial move to speak of closes a seat so straight */
const STRAIGHT = 0.01;
/** mm: films are told and typed to a hundredth of a micrometre */
const ROUND = 1e-5;

/**
 * How much film (mm) to add to every seat so that it runs, from what was found to work: not at the very edge of it but
 * inside by the greatest tolerance of a film, or in the middle where there is less room. 0 where it runs as it is, null
 * where nothing looked at works.
 */
export function filmToAdd(design: Design, works: Stretch | null): number | null {
  if (works === null) return null;
  if (works.from <= 0 && works.to >= 0) return 0;
  const inside = Math.min(
    Math.max(...design.seats.map(({ film }) => film?.tolerance ?? 0)),
    (works.to - works.from) / 2,
  );
  return Math.round((works.from > 0 ? works.from + inside : works.to - inside) / ROUND) * ROUND;
}

/** How it runs where nothing speaks against it: the thinnest film, and what published guidance asks for. */
export function runsWellText(made: Design, film: FilmReport, system: System): string {
  const { headline, sentences } = filmVerdict(made, film, system);
  return [
    'With these films, as Run reckons it:',
    headline.charAt(0).toLowerCase() + headline.slice(1),
    ...sentences.filter((sentence) => /^(Warm|Published)/.test(sentence)),
  ].join(' ');
}

/**
 * The design with the films wanted so much greater (mm), of every seat that a plan can change: a straight seat of which
 * no surface may be cut stays as it is.
 */
export function withFilmsAdded(design: Design, more: number): Design {
  const isFixed = ({ name, bush }: Design['seats'][number]) =>
    Math.abs(bush.halfAngle) < STRAIGHT && !design.cut?.allow.some(({ seat }) => seat === name);
  return {
    ...design,
    seats: design.seats.map((seat) =>
      seat.film && !isFixed(seat)
        ? { ...seat, film: { ...seat.film, target: Number((seat.film.target + more).toFixed(9)) } }
        : seat,
    ),
  };
}
