/** What the picture of a question draws beside its design, with the numbers dealt. */
import type { Question } from './definition.ts';
import { type Scope, type Worked, workedNumber } from './formula.ts';

export interface Pictured {
  /** mm: how thick the layer is before and after */
  layer: { from: number; to: number } | null;
  /** mm: how wide each part of the spread varies before and after, and what comes of them; null: not known before */
  spread: { parts: number[]; after: number[]; together: number; was: number | null } | null;
  /** of each triangle: degrees, mm */
  triangles: { angle: number; travel: number }[];
}

/** The same, and where it stands if it failed. */
export const placed = <T>(found: Worked<T>, at: string): Worked<T> => (found.ok || found.at ? found : { ...found, at });

/** `to`: the design once it is let go. */
export function pictured(question: Question, scope: Scope, to: unknown): Worked<Pictured> {
  const layer = layerOf(question, scope);
  if (layer && !layer.ok) return placed(layer, 'view.layer');
  const spread = spreadOf(question, scope, to);
  if (spread && !spread.ok) return placed(spread, 'view.spread');
  const triangles = trianglesOf(question, scope);
  if (!triangles.ok) return triangles;
  return {
    ok: true,
    value: {
      layer: layer?.ok ? layer.value : null,
      spread: spread?.ok ? spread.value : null,
      triangles: triangles.value,
    },
  };
}

export function layerOf(
  { view: { layer } }: Pick<Question, 'view'>,
  scope: Scope,
): Worked<{ from: number; to: number }> | null {
  if (!layer) return null;
  const [from, to] = [workedNumber(layer.from, scope), workedNumber(layer.to, scope)];
  if (!from.ok) return from;
  return to.ok ? { ok: true, value: { from: from.value, to: to.value } } : to;
}

/** What stands in the design is told of the design that is shown: before, and once it is let go. */
function spreadOf({ view: { spread } }: Question, scope: Scope, to: unknown): Worked<Pictured['spread']> | null {
  if (!spread) return null;
  const sds = spread.parts.map(({ sd }) => sd);
  const all = [
    workedNumber(spread.sd, scope),
    ...sds.map((sd) => workedNumber(sd, scope)),
    ...sds.map((sd) => workedNumber(sd, { ...scope, design: to })),
  ];
  const known = spread.was === undefined ? null : workedNumber(spread.was, scope);
  const bad = [...all, ...(known ? [known] : [])].find((one) => !one.ok);
  if (bad && !bad.ok) return bad;
  const [together = 0, ...parts] = all.map((one) => (one.ok ? one.value : 0));
  const was = known?.ok ? known.value : null;
  return { ok: true, value: { parts: parts.slice(0, sds.length), after: parts.slice(sds.length), together, was } };
}

function trianglesOf({ view: { triangles = [] } }: Question, scope: Scope): Worked<Pictured['triangles']> {
  const made: Pictured['triangles'] = [];
  for (const [i, { angle, travel }] of triangles.entries()) {
    const [a, t] = [workedNumber(angle, scope), workedNumber(travel, scope)];
    if (!a.ok) return placed(a, `view.triangles[${i}].angle`);
    if (!t.ok) return placed(t, `view.triangles[${i}].travel`);
    made.push({ angle: a.value, travel: t.value });
  }
  return { ok: true, value: made };
}
