/** What is said of the hard case: before a cut goes through it, and first. */
import type { Millimetres } from '../../design/dimension.ts';
import { fineText, lengthText, type System } from '../../design/units.ts';
import type { Verdict } from '../fit/verdict.ts';
import type { CutReport } from './definition.ts';
import { listed } from './listed.ts';

type Case = NonNullable<CutReport['case']>[number];

/** mm, below which a depth is told finely. */
const FINE = 0.1;
export const caseText = (mm: Millimetres, system: System) =>
  Math.abs(mm) < FINE ? fineText(mm, system) : lengthText(Number(mm.toFixed(3)), system);

const of = (all: CutReport['case'], status: Case['status']) => (all ?? []).filter((one) => one.status === status);

const throughText = ({ seat, part, left, planned }: Case, system: System) =>
  `the ${seat} ${part} (${caseText(planned, system)} to come off, ${caseText(left, system)} of case left)`;

/** Surfaces whose case a step would cut through; empty where none does. */
export function throughSentence(cut: Pick<CutReport, 'case'>, system: System): string {
  const through = of(cut.case, 'through');
  if (through.length === 0) return '';
  return `This would cut through the hard case of ${listed(through.map((one) => throughText(one, system)))}.`;
}

/** What else there is to say of it. */
function caseSentences(cut: Pick<CutReport, 'case'>, system: System): string[] {
  const gone = of(cut.case, 'gone').map(({ seat, part }) => `the ${seat} ${part}`);
  const unsure = of(cut.case, 'doubtful').map(
    ({ seat, part, after }) => `the ${seat} ${part} (${caseText(after, system)} would be left)`,
  );
  return [
    ...(gone.length > 0
      ? [`By the cuts written down the hard case of ${listed(gone)} is gone already: it runs on soft metal.`]
      : []),
    ...(unsure.length > 0
      ? [`It goes so near the end of the hard case of ${listed(unsure)} that it may go through: gauge what comes off.`]
      : []),
  ];
}

/** The same verdict with the case first where it would be cut through, and never praise where it may be. */
export function withCase<V extends Verdict>(verdict: V, cut: Pick<CutReport, 'case'>, system: System): V {
  const through = throughSentence(cut, system);
  const sentences = caseSentences(cut, system);
  if (through !== '')
    return {
      ...verdict,
      tone: 'stop',
      headline: through,
      sentences: [
        'Spare that surface, take less of it, or harden it anew.',
        verdict.headline,
        ...sentences,
        ...verdict.sentences,
      ],
    };
  if (sentences.length === 0) return verdict;
  return {
    ...verdict,
    tone: verdict.tone === 'good' ? 'mend' : verdict.tone,
    sentences: [...sentences, ...verdict.sentences],
  };
}
