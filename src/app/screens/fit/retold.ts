/** What Fit says first once trials tell of the parts: which pair it is of, how sure that is, or that it is withheld. */
import type { Design } from '../../../design/definition.ts';
import { COVER } from '../../../design/units.ts';
import { filmTold } from '../../../report/belief/filmTold.ts';
import { behindTrial, WITHHELD_NOW, type Withheld } from '../../../report/cut/withheld.ts';
import { fitOf } from '../../../report/fit/fitOf.ts';
import { standsNow } from '../../../report/fit/now.ts';
import { ofPair, type Stands } from '../../state/usePairTold.ts';
import { type Lines, type Room, roomOf, type Told } from './fitLines.ts';

export interface Retold {
  lines(plain: Lines, of: Told): Lines;
  /** of either pair, so that nothing moves where the other is chosen */
  room(of: Told): Room;
}

/** The drawn pair, and the believed where there is one. */
interface Pairs {
  drawn: Design['seats'];
  believed: Design['seats'] | null;
}

export function retoldBy(stands: Stands, withheld: Withheld | null, pairs: Pairs, slip = ''): Retold {
  const lines = (plain: Lines, of: Told): Lines => {
    if (withheld) {
      const { tone, headline, sentences } = behindTrial(
        { tone: plain.tone, headline: '', sentences: [] },
        withheld,
        false,
        slip,
      );
      const drawn = ofPair('drawn', plain.now);
      // Figures of before do not stand first.
      if (withheld === 'working')
        return { ...plain, tone, now: WITHHELD_NOW.working, why: `Until then ${drawn.replace(/^A/, 'a')}`, rest: '' };
      return { ...plain, tone, now: drawn, why: headline, rest: sentences.join(' ') };
    }
    return stands === 'believed' ? asBelieved(plain, of) : { ...plain, now: ofPair(stands, plain.now) };
  };
  return {
    lines,
    room: (of) => {
      const believed = pairs.believed && !withheld ? [roomOfPair('believed', pairs.believed, of)] : [];
      const rooms = [roomOfPair(believed.length > 0 ? 'drawn' : stands, pairs.drawn, of), ...believed];
      const longest = (line: keyof Room) => rooms.map((room) => room[line]).sort((a, b) => b.length - a.length)[0]!;
      return { now: longest('now'), next: longest('next'), why: longest('why') };
    },
  };

  function roomOfPair(which: Stands, seats: Design['seats'], of: Told): Room {
    const design = { ...of.design, seats };
    return roomOf({ ...of, design, fit: fitOf(design), retold: retoldBy(which, withheld, pairs, slip) });
  }
}

/** Every film with its doubt; praised only where that is no greater than the tolerances. */
function asBelieved(plain: Lines, { design, fit, system, holding, belief }: Told): Lines {
  const text = (name: string) => filmTold(belief, fit, name, system)?.text;
  const now = ofPair('believed', standsNow(design, fit, system, holding, text));
  const unsure = design.seats.some(({ name, film }) => {
    const { off, sd = 0 } = belief?.films[name] ?? {};
    return film?.tolerance !== undefined && COVER * (off ?? sd) > film.tolerance;
  });
  return unsure && plain.tone === 'good'
    ? { ...plain, tone: 'mend', now, rest: `The films are known less well than their tolerances. ${plain.rest}`.trim() }
    : { ...plain, now };
}
