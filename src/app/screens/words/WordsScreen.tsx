/** The whole glossary, to read through or to look a word up in. */
import { useState } from 'react';
import { type Entry, GLOSSARY } from '../../glossary/entries.ts';
import '../../glossary/glossary.css';

const isAsked = ({ word, forms = [] }: Entry, asked: string) =>
  [word, ...forms].some((form) => form.toLowerCase().includes(asked));

export default function WordsScreen() {
  const [typed, setTyped] = useState('');
  const asked = typed.trim().toLowerCase();
  const chapters = GLOSSARY.map(({ title, entries }) => ({
    title,
    entries: asked === '' ? entries : entries.filter((entry) => isAsked(entry, asked)),
  })).filter(({ entries }) => entries.length > 0);
  return (
    <article className="words">
      <h2>The words of the trade</h2>
      <p>On every screen a word with dots below it tells its meaning when it is tapped, or chosen by Tab and Enter.</p>
      <p>
        <label>
          Look for a word <input type="search" value={typed} onChange={(event) => setTyped(event.target.value)} />
        </label>
      </p>
      {chapters.length === 0 && <p role="status">No word here has “{typed.trim()}” in it.</p>}
      {chapters.map(({ title, entries }) => (
        <section key={title} aria-label={title}>
          <h3>{title}</h3>
          <dl>
            {entries.map(({ word, meaning }) => (
              <div className="term" key={word}>
                <dt>{word}</dt>
                <dd>{meaning}</dd>
              </div>
            ))}
          </dl>
        </section>
      ))}
    </article>
  );
}
