/** What Run says first: how it runs, of which pair, how sure that is, and why; or that nothing may be said yet. */
import type { Design } from '../../../design/definition.ts';
import { doubtText, fineText, type System } from '../../../design/units.ts';
import { asAssumed, knownFirst } from '../../../report/assumed.ts';
import type { BeliefReport } from '../../../report/belief/definition.ts';
import { behindOthers, othersSentence } from '../../../report/belief/filmTold.ts';
import { behindReadings } from '../../../report/belief/notAsRead.ts';
import { behindTrial, WITHHELD_NOW, type Withheld } from '../../../report/cut/withheld.ts';
import { behindFit, filmsOff } from '../../../report/film/besideFit.ts';
import type { RunFields } from '../../../report/film/fields.ts';
import { liveVerdict } from '../../../report/film/liveVerdict.ts';
import { runsNow, runsNowLive, underNow } from '../../../report/film/now.ts';
import { filmVerdict } from '../../../report/film/verdict.ts';
import { fitOf } from '../../../report/fit/fitOf.ts';
import type { Verdict } from '../../../report/fit/verdict.ts';
import type { RunningReport } from '../../../report/odds/definition.ts';
import { SettleOnCut } from '../../frame/SettleOnCut.tsx';
import { ShortVerdict } from '../../frame/ShortVerdict.tsx';
import type { Work } from '../../state/store.ts';
import { ofPair, type Stands } from '../../state/usePairTold.ts';
import type { Running } from './sweeps.ts';
import type { RunWork } from './useRunWork.ts';

/** The same verdict, behind what nobody has measured or typed of what it goes by. */
const asKnown = (verdict: Verdict, of: Design) => knownFirst(asAssumed(verdict, of, ['seats', 'run']), of);

/** What is so now, said of what is assumed, or drawn otherwise than read, as of that alone. */
function nowOf(now: string, plain: Verdict, told: Verdict, stands: Stands, clash = false): string {
  if (clash) return ofPair('drawn', now);
  if (stands !== 'plain') return ofPair(stands, now);
  return plain.headline === told.headline ? now : `As it stands here: ${now}`;
}

/** How well the thinnest film from cold to warm is known, of pairs that were run. */
function knownTo(sure: RunningReport | null, system: System): string {
  const films = Object.values(sure?.films ?? {}).filter((film) => film !== null);
  if (films.length === 0) return '';
  const thinnest = films.reduce((a, b) => (b.mean < a.mean ? b : a));
  return ` Known to ${doubtText(thinnest.sd, system)}.`;
}

const MORE = 'Why: thrust, warmth, whirl';

/**
 * The verdict of the design; while it is worked out, what the films that follow the hand tell already (`live`, a frame
 * or two behind it).
 */
export function RunVerdict({
  run: { film, of, stage, fault },
  design,
  live,
  belief,
  stands,
  withheld,
  slip,
  sure,
  system,
  work,
}: {
  run: RunWork;
  design: Running;
  live: { fields: RunFields; of: Running } | null;
  belief: BeliefReport | null;
  stands: Stands;
  /** while trials do not go together nothing of the run is praised, or advised */
  withheld: Withheld | null;
  /** what most likely is wrong then */
  slip: string;
  /** how far the running films may be off, once that is known */
  sure: RunningReport | null;
  system: System;
  work: Work;
}) {
  const stale = of !== design;
  // What the run is worked out for is then the drawing and nothing else.
  const clash = belief?.notAsRead === 'contradict';
  // What was worked out before the belief was known is of the drawn pair.
  const pairOf = ({ seats }: Design): Stands =>
    withheld || (stands === 'believed' && seats !== design.seats) ? 'drawn' : stands;
  const othersOf = (of: Design) =>
    belief?.notAsRead || pairOf(of) === 'believed' ? '' : othersSentence(belief, fitOf(of), system);
  if (stale && live !== null) {
    const plain = liveVerdict(live.of, live.fields, system);
    const known = behindOthers(
      behindReadings(asKnown(plain, live.of), clash ? 'contradict' : undefined),
      othersOf(live.of),
    );
    const told = behindTrial(behindFit(known, filmsOff(live.of, system)), withheld, false, slip);
    const later = withheld
      ? told.sentences
      : fault !== null
        ? ['Warm-up, whirl and limits are not known for this.']
        : stage === 'stopped'
          ? ['Stopped: warm-up, whirl and limits are not worked out for this.']
          : known.sentences;
    // Of a film that does the line above says all there is yet.
    const why = told.tone === 'good' ? later[0]! : told.headline;
    return (
      <ShortVerdict
        tone={told.tone}
        now={
          withheld === 'working'
            ? WITHHELD_NOW.working
            : nowOf(runsNowLive(live.fields, system), plain, known, pairOf(live.of), clash)
        }
        why={why}
        rest={later.filter((sentence) => sentence !== why)}
        more={MORE}
        busy
      >
        {withheld && <SettleOnCut why={withheld} />}
      </ShortVerdict>
    );
  }
  if (!film || !of) {
    const [now, why] =
      fault !== null
        ? ['Not known.', 'How it runs is not known.']
        : stage === 'stopped'
          ? ['Stopped.', 'Stopped before the run was worked out.']
          : ['Being worked out.', 'The run is being worked out.'];
    return <ShortVerdict tone="mend" now={now!} why={why!} rest={[]} more={MORE} busy={stage !== 'stopped'} />;
  }
  const plain = filmVerdict(of, film, system);
  const under = { ...plain, headline: underNow(film, system) ?? plain.headline };
  const known = behindOthers(behindReadings(asKnown(under, of), belief?.notAsRead), othersOf(of));
  const told = behindTrial(behindFit(known, filmsOff(of, system)), withheld, false, slip);
  // How sure the least film is stands with it where it is told of what trials say.
  const doubt = stands === 'believed' && !stale ? knownTo(sure, system) : '';
  return (
    <ShortVerdict
      tone={told.tone}
      now={
        withheld === 'working'
          ? WITHHELD_NOW.working
          : nowOf(runsNow(film, system, told === known), under, known, pairOf(of), clash) + doubt
      }
      why={told.headline}
      rest={told.sentences}
      more={MORE}
      busy={stale || withheld === 'working'}
      stale={stale}
      elsewhere={
        <p>
          <a href="#fit/sizes">The films wanted are set on Fit</a>
        </p>
      }
    >
      {withheld && <SettleOnCut why={withheld} />}
      {film.backOff && !stale && !withheld && (
        <p className="buttons">
          <button type="button" onClick={() => work.moveTo(Number(film.backOff!.position.toPrecision(9)))}>
            Set it at {fineText(film.backOff.position, system)}
          </button>
        </p>
      )}
    </ShortVerdict>
  );
}
