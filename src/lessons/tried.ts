/**
 * What was answered, carried out: the design that the learner's own number makes, and the engine's report of it, by
 * which its cost is told. A question whose answer is not an act has none of it.
 */
import type { Design } from '../design/definition.ts';
import { type AskedName, asking } from './asked.ts';
import { type DealtQuestion, putInto, sectionsIn } from './deal.ts';
import type { Question } from './definition.ts';
import { formulaOf, type Scope } from './formula.ts';
import { layerOf } from './pictured.ts';
import { holesOf } from './template.ts';

export interface Tried {
  design: Design;
  /** its report, under the name by which a cost asks for it */
  report: Scope;
  /** mm: the layer that is drawn, as it would be */
  layer: number | null;
}

type Asked = Pick<Question, 'answer' | 'try' | 'cost' | 'view' | 'mistakes'>;

/** Null where there is nothing to carry out, or where the answer makes no design at all. `also`: sections to be had. */
export function triedBy(
  question: Asked,
  { from, scope }: Pick<DealtQuestion, 'from' | 'scope'>,
  answer: number | string,
  also: readonly AskedName[] = [],
): Tried | null {
  const { answer: asked } = question;
  const puts = question.try ?? (asked.kind === 'move' ? [{ path: 'position', is: 'answer' }] : null);
  if (!puts) return null;
  const made = putInto(from, puts, { ...scope, answer }, 'try');
  if (!made.ok) return null;
  const formulas = [
    ...[question.cost ?? '', ...question.mistakes.map(({ cost }) => cost)].flatMap((text) =>
      holesOf(text).map(({ formula }) => formula),
    ),
    // What is drawn of the state let go is drawn of this one too.
    ...(question.view.layer ? [question.view.layer.to.replaceAll(/\bafter\./g, 'tried.')] : []),
  ].flatMap((text) => {
    const read = formulaOf(text);
    return read.ok ? [read.value] : [];
  });
  const report = asking()(made.value, [...new Set([...sectionsIn(formulas, 'tried'), ...also])]);
  const layer = layerOf(question, { ...scope, after: report });
  return { design: made.value, report, layer: layer?.ok ? layer.value.to : null };
}
