/** The answer first: whether the lesson goes, and what is in the way; a press leads to the field. */
import { useState } from 'react';
import { sentence } from './fields.tsx';
import type { LessonFaults } from './useFaults.ts';

export function Standing({ found: { errors, tried, doubts } }: { found: LessonFaults }) {
  const shown = errors.length > 0 ? errors.length : doubts.length;
  const given = tried?.filter(({ fault }) => fault === null).length ?? 0;
  return (
    <section
      className={`verdict ${errors.length > 0 ? 'stop' : tried && doubts.length === 0 ? 'good' : ''}`}
      aria-live="polite"
    >
      <h2>
        {errors.length > 0
          ? `${errors.length} ${errors.length === 1 ? 'thing is' : 'things are'} in the way.`
          : tried
            ? doubts.length > 0
              ? `The lesson goes, but it contradicts itself in ${doubts.length} ${doubts.length === 1 ? 'place' : 'places'}.`
              : 'The lesson goes.'
            : 'Its numbers are being tried.'}
      </h2>
      {(errors.length > 0 ? errors : doubts).slice(0, MOST_SHOWN).map(({ path, message }) => (
        <p key={`${path} ${message}`}>
          {path !== '' && (
            <button type="button" className="to-field" onClick={() => leadTo(path)}>
              {placeText(path)}
            </button>
          )}{' '}
          {sentence(message)}
        </p>
      ))}
      {shown > MOST_SHOWN && <p>And {shown - MOST_SHOWN} more, each at its field.</p>}
      {errors.length === 0 && tried && given < tried.length && (
        <p>
          A learner gets other numbers each time. Of the first {tried.length} sets of numbers {given} are given; the
          others are passed over, and why stands at the field that rules them out.
        </p>
      )}
    </section>
  );
}

/**
 * In sight wherever one writes: how much is in the way, and a press that leads to the next of it, so that nobody has to
 * go back to the head of the page to find out.
 */
export function NextFault({ found: { errors } }: { found: LessonFaults }) {
  const [at, setAt] = useState(0);
  if (errors.length === 0) return null;
  const { path, message } = errors[at % errors.length]!;
  return (
    <button
      type="button"
      className="next-fault"
      onClick={() => {
        leadTo(path);
        setAt((at % errors.length) + 1);
      }}
    >
      {errors.length} in the way. {placeText(path)}: {message}
    </button>
  );
}

const MOST_SHOWN = 6;

/** What the fields of the editor are called, by the end of their path. */
const FIELDS: readonly (readonly [RegExp, string])[] = [
  [/mistakes\[\d+\]\.is$/, 'the answer it gives'],
  [/mistakes\[\d+\]\.to$/, 'up to'],
  [/mistakes\[\d+\]\.when$/, 'only where'],
  [/saw\.(other\[\d+\]\.)?options\[\d+\]\.is$/, 'where it was so'],
  [/saw\.(other\[\d+\]\.)?ask$/, 'how what was seen is asked'],
  [/\.onPaper$/, 'the same on paper'],
  [/(release|set|where|try)\[\d+\]\.is$/, 'what stands there'],
  [/(release|set|where|try)\[\d+\]\.path$/, 'place of the design'],
  [/answer\.right$/, 'what is right'],
  [/answer\.within$/, 'how far off is still right'],
  [/answer\.label$/, 'what stands before the answer'],
  [/answer$/, 'the answer'],
  [/\.ask$/, 'how it is asked'],
  [/\.saw$/, 'what may have been seen'],
  [/\.because$/, 'why it is so'],
  [/\.says$/, 'what was done'],
  [/mistakes\[\d+\]\.cost$/, 'what it costs in metal'],
  [/\.cost$/, 'what any wrong number costs'],
  [/view\.notes\[\d+\]\.text$/, 'what is written at the seat'],
  [/\.view\.layer/, 'the layer of oil'],
  [/\.view\.spread/, 'the heap'],
  [/\.chart\.at$/, 'the chart, where it is asked'],
  [/\.chart/, 'the chart'],
  [/\.view$/, 'the picture'],
  [/\.text$/, 'text'],
  [/\.key$/, 'name in formulas'],
  [/\.name$/, 'name'],
  [/^about$/, 'what is learnt'],
  [/^carry$/, 'what to carry away'],
];
const PARTS: Record<string, string> = {
  questions: 'Question',
  mistakes: 'slip',
  options: 'choice',
  numbers: 'Number',
  where: 'Place',
  keep: 'Condition',
  release: 'change',
  try: 'what the answer changes',
  notes: 'note',
  set: 'change before',
  help: 'help',
  other: 'another thing to ask',
  story: 'Story',
};

/** questions[0].mistakes[1].is: “Question 1, slip 2, the answer it gives”. */
export function placeText(path: string): string {
  const parts = [...path.matchAll(/(\w+)\[(\d+)\]/g)].map(([, name, i]) =>
    name === 'options' && path.includes('.saw.') ? `seen ${Number(i) + 1}` : `${PARTS[name!] ?? name} ${Number(i) + 1}`,
  );
  const field = FIELDS.find(([ends]) => ends.test(path))?.[1];
  const last = path.endsWith(']') || field ? '' : (path.split('.').at(-1) ?? '');
  const all = [...parts, field ?? last].filter((text) => text !== '');
  const said = all.join(', ');
  return `${said.charAt(0).toUpperCase()}${said.slice(1)}`;
}

/** Opens what it lies in and puts the cursor there; of a part without a field, what holds it. */
function leadTo(path: string): void {
  for (let at = path; at !== ''; at = at.replace(/(\.\w+|\[\d+\]|^\w+)$/, '')) {
    const field = document.querySelector<HTMLElement>(`.editor [data-path="${at}"]`);
    if (!field) continue;
    for (let part = field.parentElement; part; part = part.parentElement)
      if (part instanceof HTMLDetailsElement) part.open = true;
    field.scrollIntoView({ block: 'center' });
    field.querySelector<HTMLElement>('input, textarea, select')?.focus({ preventScroll: true });
    return;
  }
}
