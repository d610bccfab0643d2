/** Whether a trial can be written down: something must have been read, and these parts must be able to read so. */
import type { Design } from '../../design/definition.ts';
import { COVER, fineText, type System, sidedText } from '../../design/units.ts';
import { trialsOf, type Updated } from '../../engine/cutting/trial.ts';
import { millimetres } from '../convert.ts';
import { touchText } from './asExpected.ts';
import { type CauseReport, causesSection } from './causes.ts';
import { causeSentences } from './causeWords.ts';
import { doubtOf } from './doubt.ts';
import { expectedTouch } from './expectedAtTrial.ts';
import { listed } from './listed.ts';
import { closedCount, openTrials } from './openTrials.ts';
import { type Cut, toPlanInput, toTrials } from './toCut.ts';

type Trial = NonNullable<Cut['trials']>[number];

/** What is believed after one more trial; null where it or one before cannot be taken in. */
function believedAfter(design: Design, earlier: readonly Trial[], trial: Trial): Updated | null {
  const { cut } = design;
  if (!cut) return null;
  const trials = [...earlier, trial];
  const results = trialsOf(toPlanInput(design, cut), toTrials(design, { ...cut, trials }), doubtOf(design).before);
  const last = results[results.length - 1];
  return results.length === openTrials({ trials }).length && last?.status === 'updated' ? last : null;
}

/** Why a trial cannot be written down after some others; null where it can. */
export function refusedTrial(design: Design, earlier: readonly Trial[], trial: Trial, system: System): string | null {
  const { cut } = design;
  const { standOff, shake, blue = [] } = trial;
  const metal = [...(trial.taken ?? []), ...(trial.faces ?? [])];
  if (!cut) return 'Nothing may be cut yet.';
  // Metal off is told by itself too: what is left is then less, and less sure.
  if (!standOff && !shake && blue.length === 0 && metal.length === 0)
    return 'Nothing was read or taken: type a stand-off or a shake, say what the blue showed, or what came off.';
  if (blue.length === design.seats.length && blue.every(({ prints }) => !prints))
    return 'Something touches first, so some seat must print: look again, or leave a seat as not looked at.';
  if (believedAfter(design, earlier, { taken: [], faces: [] }) === null)
    return 'An earlier trial cannot have come from these parts: correct it or strike it out first.';
  const results = trialsOf(
    toPlanInput(design, cut),
    toTrials(design, { ...cut, trials: [...earlier, trial] }),
    doubtOf(design).before,
  );
  const last = results[results.length - 1]!;
  if (last.status === 'updated') return null;
  if (last.status === 'noModel')
    return 'At that position these parts press into each other, so no shake can be read there: check where the journal stood.';
  return contradictionText(design, earlier, trial, system);
}

function contradictionText(design: Design, earlier: readonly Trial[], trial: Trial, system: System): string {
  const { standOff, shake, blue } = trial;
  const expected = expectedTouch({ ...design, cut: { ...design.cut!, trials: [...earlier, trial] } });
  const { taken = [], faces = [] } = trial;
  const alone = (told: Pick<Trial, 'standOff' | 'shake'>) =>
    believedAfter(design, earlier, { taken, faces, ...told }) === null;
  const ends = endsOf(design, earlier, trial, system);
  if (standOff && expected && alone({ standOff }))
    return `These parts should touch first ${touchText(expected, system)}, not ${sidedText(standOff.value, system)}. ${ends}`;
  if (shake && alone({ shake }))
    return `These parts cannot shake by ${fineText(shake.value, system)} with the journal held ${sidedText(shake.position ?? design.position ?? 0, system)}: was it held there? ${ends}`;
  return `${blue ? 'What the blue shows and what was read' : 'What was read'} cannot all have come from these parts. ${ends}`;
}

/** What would make all agree, with its odds; where nothing told would, where to look. */
function endsOf(design: Design, earlier: readonly Trial[], trial: Trial, system: System): string {
  const causes = refusedFor(design, earlier, trial);
  const told = causeSentences(causes, system).join(' ');
  // Metal that did not come off as typed is neither a slip of the pen nor other parts.
  if (causes[0]?.what === 'taken' || causes[0]?.what === 'faces') return told;
  const { before, from } = doubtOf(design);
  const doubt = Math.sqrt(Math.max(...before.mean.map((_, i) => before.covariance[i]![i]!)));
  const suspects = suspectsOf(design, earlier, trial);
  const look = `Look for grit, a burr or a slip of the pen${suspects.length === 0 ? '' : ` here, or in ${listed(suspects)}, without which this would go`}.`;
  return `${told === '' ? look : `${told} Look for grit and burrs too.`} If it is so indeed, the parts differ from the design by more than was thought possible, ${fineText(COVER * millimetres(doubt), system)} of film either way (19 in 20): ${from.includes('readings') ? '' : 'raise “Doubt” among the preferences of what may be cut, or '}measure again.`;
}

/** What may be behind it that a trial does not go with those before, the most likely first. */
export function refusedFor({ cut, ...design }: Design, earlier: readonly Trial[], trial: Trial): CauseReport[] {
  if (!cut) return [];
  const tried = { ...cut, trials: [...earlier, trial] };
  return causesSection({ ...design, cut: tried }, tried);
}

const READ = { standOff: 'stand-off', shake: 'shake', blue: 'blue' } as const;

/** Earlier readings, each of which left out would let this trial be taken. */
function suspectsOf(design: Design, earlier: readonly Trial[], trial: Trial): string[] {
  const closed = closedCount({ trials: [...earlier] });
  return earlier.slice(closed).flatMap((before, k) =>
    (['standOff', 'shake', 'blue'] as const).flatMap((what) => {
      if (before[what] === undefined) return [];
      const { [what]: _, ...others } = before;
      const rest = earlier.map((one, i) => (i === closed + k ? others : one));
      return believedAfter(design, rest, trial) === null ? [] : [`the ${READ[what]} of trial ${closed + k + 1}`];
    }),
  );
}
