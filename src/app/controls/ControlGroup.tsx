/** A named group of controls as one leva panel, in the colours of the page. */
import { LevaPanel, useControls, useCreateStore } from 'leva';
import { type FocusEvent, useState } from 'react';
import { type Control, control } from './controls.tsx';

/** leva's colours by what they paint; its own fail the contrast the page keeps. */
const THEME = {
  colors: {
    elevation1: 'var(--sheet)',
    elevation2: 'transparent',
    elevation3: 'var(--sheet)',
    accent1: 'var(--soft)',
    accent2: 'var(--blue)',
    accent3: 'var(--blue)',
    highlight1: 'var(--soft)',
    highlight2: 'var(--ink)',
    highlight3: 'var(--ink)',
    vivid1: 'var(--amber)',
  },
  fonts: { mono: 'var(--font)', sans: 'var(--font)' },
  fontSizes: { root: '15px' },
  sizes: { rootWidth: '100%', controlWidth: '62%', rowHeight: '40px' },
  space: { sm: '0', md: '0', rowGap: '6px', colGap: '8px' },
  shadows: { level1: 'none' },
};

export default function ControlGroup({ title, rows }: { title: string; rows: readonly Control[] }) {
  const store = useCreateStore();
  const key = JSON.stringify(rows);
  useControls(() => Object.fromEntries(rows.map((row, i) => [nameOf(row, i), control(row)])), { store }, [key]);
  const [asked, setAsked] = useState('');
  // What the control with the focus is.
  const onFocus = (event: FocusEvent) => {
    const name = (event.target as HTMLInputElement).labels?.[0];
    setAsked(name?.title ? `${name.textContent}: ${name.title.replace(/\.$/, '')}.` : '');
  };
  return (
    <fieldset className="group" onFocus={onFocus} onBlur={() => setAsked('')}>
      <legend>{title}</legend>
      <LevaPanel store={store} theme={THEME} fill flat titleBar={false} hideCopyButton />
      <p className="asked" aria-hidden="true">
        {asked}
      </p>
    </fieldset>
  );
}

/**
 * leva keeps a row by its name, whatever becomes of it: another row at the same place needs another. A dot would make a
 * folder.
 */
const nameOf = (row: Control, place: number) =>
  `${place} ${row.kind} ${'path' in row ? row.path.replaceAll('.', '/') : ''}`;
