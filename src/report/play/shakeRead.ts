/** A shake felt on the bench read back to where the journal stands, in the units of the file. */

import type { Design } from '../../design/definition.ts';
import type { Millimetres } from '../../design/dimension.ts';
import { leastFilm } from '../../engine/contact/film.ts';
import { filmFromShake } from '../../engine/play/filmFromShake.ts';
import { endPlay } from '../../engine/play/shake.ts';
import type { Spindle } from '../../engine/spindle/rigid.ts';
import { metres, millimetres } from '../convert.ts';
import { indicatorOf, toSpindle } from './toPlay.ts';

export type ShakeRead =
  /** positions and least films, mm */
  | { status: 'solved'; answers: { position: Millimetres; films: (number | null)[] }[] }
  | { status: 'less'; least: number }
  | { status: 'more'; greatest: number }
  | { status: 'undecided' };

/** A shake (mm) that no shop indicator shows: it is nothing, and the spindle stands against a stop. */
const STILL = 1e-5;
/** How far (mm) from the stop a position is looked for where there is no other stop. */
const REACH = 1;

/** @param shake total indicator travel in x at the indicator of the design, mm */
export function shakeRead(design: Design, shake: number): ShakeRead {
  const spindle = toSpindle(design);
  const { rear, nose } = endPlay(spindle, metres(design.position ?? 0));
  const back = rear.status === 'solved' ? rear.pose.z : null;
  const front = nose.status === 'solved' ? nose.pose.z : null;
  if (back === null && front === null) return { status: 'undecided' };
  const found = filmFromShake(
    spindle,
    { station: metres(indicatorOf(design)), direction: 0 },
    metres(shake),
    back ?? front! - metres(REACH),
    front ?? back! + metres(REACH),
  );
  switch (found.status) {
    case 'solved':
      return {
        status: 'solved',
        answers: found.answers.map(({ position, films }) => ({
          position: millimetres(position),
          films: films.map((film) => (film === null ? null : millimetres(film))),
        })),
      };
    case 'less':
      if (millimetres(found.least) - shake < STILL)
        return { status: 'solved', answers: againstStops(spindle, [back, front]) };
      return { status: 'less', least: millimetres(found.least) };
    case 'more':
      return { status: 'more', greatest: millimetres(found.greatest) };
    case 'undecided':
      return found;
  }
}

/** The stops there are, and the films against them. */
const againstStops = (spindle: Spindle, stops: readonly (number | null)[]) =>
  stops.flatMap((stop) => {
    if (stop === null) return [];
    const films = spindle.seats.map(({ gap }) => leastFilm(gap, stop));
    return [{ position: millimetres(stop), films: films.map((film) => (film === null ? null : millimetres(film))) }];
  });
