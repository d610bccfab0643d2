/** What Fit says first: three lines and what opens below them; and the room these take wherever the journal goes. */
import type { Design } from '../../../design/definition.ts';
import type { AngleWay, System } from '../../../design/units.ts';
import { asAssumed, measuredFirst, partsAre } from '../../../report/assumed.ts';
import type { BeliefReport } from '../../../report/belief/definition.ts';
import { behindOthers, othersSentence } from '../../../report/belief/filmTold.ts';
import { behindReadings } from '../../../report/belief/notAsRead.ts';
import { offHeadline } from '../../../report/fit/agreement.ts';
import type { FitReport } from '../../../report/fit/definition.ts';
import { fitOf } from '../../../report/fit/fitOf.ts';
import { besidesNow, nextLine, standsNow } from '../../../report/fit/now.ts';
import { fitVerdict } from '../../../report/fit/verdict.ts';
import { landmarks, reachOf } from '../../pictures/journalMove.ts';
import { pullText } from '../../pictures/SectionPull.tsx';
import type { Retold } from './retold.ts';

export interface Told {
  design: Design;
  fit: FitReport;
  system: System;
  way: AngleWay;
  /** seats that hold the nose pulled aside; null: it is let go */
  holding: readonly string[] | null;
  belief: BeliefReport | null;
  /** what more is to be said of them, or instead, once trials tell of the parts */
  retold?: Retold | undefined;
}

export interface Lines {
  tone: 'good' | 'mend' | 'stop' | 'plain';
  now: string;
  next: string;
  why: string;
  rest: string;
}

export type Room = Pick<Lines, 'now' | 'next' | 'why'>;

/** `heard`: for who hears it, what is so now of every seat. */
export function fitLines(of: Told): Lines & { heard: string } {
  const { design, fit, system, way, holding, belief, retold } = of;
  const plain = fitVerdict(design, fit, system, way);
  const measured = measuredFirst(asAssumed(plain, design, ['seats']), design, 'mend');
  const others = belief?.notAsRead ? '' : othersSentence(belief, fit, system);
  const { tone, headline, sentences } = behindOthers(behindReadings(measured, belief?.notAsRead), others);
  const bare = headline === plain.headline;
  // What nobody has read, or was read otherwise, is so on paper alone.
  const paper = bare ? '' : partsAre(design) === 'assumed' ? 'As assumed: ' : 'As drawn: ';
  // The first line tells what is so here; of the pair the relation is left.
  const told = bare && plain.onlyNow && design.seats.some(({ film }) => film);
  const lines = {
    tone,
    now: `${paper}${standsNow(design, fit, system, holding)}`,
    next: holding ? pullText(system) : nextLine(fit, system),
    why: told ? offHeadline(design, fit, system) : headline,
    rest: sentences.join(' '),
  };
  const said = retold?.lines(lines, of) ?? lines;
  return { ...said, heard: `${said.now} ${holding ? '' : besidesNow(fit, system)}`.trim() };
}

/** The longest that each line says with the journal anywhere it is moved to by hand, and with its nose pulled. */
export function roomOf(told: Told): Room {
  const { design, fit } = told;
  const marks = landmarks(fit);
  const lines = [...marks, ...reachOf(fit.position, marks)].map((position) => {
    const there = { ...design, position };
    return fitLines({ ...told, design: there, fit: fitOf(there), holding: null });
  });
  lines.push(fitLines({ ...told, holding: design.seats.map(({ name }) => name) }));
  const longest = (of: 'now' | 'next' | 'why') => lines.map((line) => line[of]).sort((a, b) => b.length - a.length)[0]!;
  return { now: longest('now'), next: longest('next'), why: longest('why') };
}
