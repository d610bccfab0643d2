/**
 * A film as every screen tells it once something is known of the parts. A ± stands with the figure that it is about:
 * the most likely film. Where the drawing has another, to the digits that the ± leaves, that stands as drawn, without
 * any ±, and beside it what trials or readings say. Where it may be off to one side by far more than to the other no ±
 * is told but its limits, as of all that is in doubt (doubtedText of design/units.ts).
 */
import type { Millimetres } from '../../design/dimension.ts';
import { doubtedText, type System } from '../../design/units.ts';
import type { FitReport } from '../fit/definition.ts';
import type { BeliefReport, BelievedFilm } from './definition.ts';

/** Fewer pairs than this tell no spread: what was read at the trials hardly goes together. */
const FEW = 50;

/** Whether anything of it can be believed yet. */
export const isSettled = ({ disagreeing, notAsRead, effective = FEW }: BeliefReport) =>
  disagreeing.length === 0 && notAsRead !== 'trials' && effective >= FEW;

/** mm: the most likely, and how far it may be off that. */
const likelyOf = ({ likely, mean }: BelievedFilm): Millimetres => likely ?? mean;
const offOf = ({ off, sd }: BelievedFilm): Millimetres => off ?? sd;

export interface FilmTold {
  /** the most likely film with its ± */
  text: string;
  /** mm, where the drawing has another */
  drawn: Millimetres | null;
}

type Here = Pick<FitReport, 'position' | 'seats'>;

/** With the journal where it is drawn; null where nothing is known of that film. */
export function filmTold(belief: BeliefReport | null, fit: Here, name: string, system: System): FilmTold | null {
  const film = belief && isSettled(belief) ? belief.films[name] : null;
  const seat = fit.seats.find((one) => one.name === name);
  if (!film || !seat || seat.leastFilm === null) return null;
  // What is believed is told where the journal stood when it was worked out.
  const moved = (fit.position - belief!.position) * (seat.sensitivity ?? 0);
  const told = (mm: Millimetres) => doubtedText(mm, offOf(film), system, [film.low + moved, film.high + moved]);
  const text = told(likelyOf(film) + moved);
  return { text, drawn: text === told(seat.leastFilm) ? null : seat.leastFilm };
}

/** Who says so: pairs are drawn where trials told anything. */
export const sayers = ({ method }: BeliefReport) => (method === 'draws' ? 'trials say' : 'readings say');

/** What is said of films that are drawn otherwise; empty where none is. */
export function othersSentence(belief: BeliefReport | null, fit: Here, system: System): string {
  const told = fit.seats.flatMap(({ name }) => {
    const film = filmTold(belief, fit, name, system);
    return film && film.drawn !== null ? `${name} ${film.text}` : [];
  });
  const who = belief && sayers(belief);
  return told.length === 0 ? '' : `${who!.replace(/^./, (c) => c.toUpperCase())} ${told.join(', ')}, not as drawn.`;
}

interface Verdict {
  tone: 'good' | 'mend' | 'stop' | 'plain';
  headline: string;
  sentences: string[];
}

/** The verdict of what is drawn, behind what is said of other films; never praise then. */
export const behindOthers = <V extends Verdict>(verdict: V, others: string): V =>
  others === ''
    ? verdict
    : {
        ...verdict,
        tone: verdict.tone === 'good' ? 'mend' : verdict.tone,
        headline: others,
        sentences: [`As drawn: ${verdict.headline}`, ...verdict.sentences],
      };
