/**
 * The rest of a screen, in named parts that open: each closed one is a line that tells its result, and above them all
 * stands a list to jump by. Printed, all stand open.
 */
import { type ReactNode, useEffect, useLayoutEffect, useRef } from 'react';
import { useStore } from 'zustand';
import './parts.css';
import { isOpen, opened, placeOf, setAllOpen, setOpen } from './openParts.ts';

export interface PartEntry {
  /** in the address */
  id: string;
  title: string;
  /** in the list to jump by, where the title is long */
  short?: string;
  /** its result in a few words, while it is shut */
  told?: ReactNode;
  /** whether it stands open before anybody has opened or shut it */
  open?: boolean;
  /** drawn only while it is open */
  whenOpen?: boolean;
  children: ReactNode;
}

interface Props {
  /** the screen they belong to, as it is in the address */
  screen: string;
  /** null: there is nothing of it now */
  parts: readonly (PartEntry | null)[];
  /** beside the list to jump by */
  also?: ReactNode;
}

export function Parts({ screen, parts, also }: Props) {
  const shown = parts.filter((part) => part !== null);
  const all = useStore(opened, (state) => shown.every(({ id, open }) => isOpen(state, placeOf(screen, id), open)));
  const box = useRef<HTMLDivElement>(null);
  useAddress(screen);
  usePrinted(box);
  return (
    <div className="parts" ref={box}>
      <nav className="jump" aria-label="Parts of this screen">
        {shown.map(({ id, title, short }) => {
          const place = placeOf(screen, id);
          return (
            <a
              key={id}
              href={`#${place}`}
              onClick={(event) => {
                event.preventDefault();
                window.history.replaceState(null, '', `#${place}`);
                reveal(place);
              }}
            >
              {short ?? title}
            </a>
          );
        })}
        {also}
        <button type="button" onClick={() => setAllOpen(!all)}>
          {all ? 'Close all' : 'Open all'}
        </button>
      </nav>
      {shown.map((part) => (
        <Part key={part.id} place={placeOf(screen, part.id)} {...part} />
      ))}
    </div>
  );
}

function Part({ place, title, told, open: first = false, whenOpen = false, children }: PartEntry & { place: string }) {
  const open = useStore(opened, (state) => isOpen(state, place, first));
  return (
    <details
      className="part"
      id={place}
      open={open}
      onToggle={(event) => setOpen(place, event.currentTarget.open, first)}
    >
      <summary>
        <h2>{title}</h2>
        {told && <span className="told-shut">{told}</span>}
      </summary>
      {(open || !whenOpen) && children}
    </details>
  );
}

/** Opens a part and brings it to the top, with the focus on its line. */
export function reveal(place: string): void {
  setOpen(place, true, false);
  requestAnimationFrame(() => {
    const part = document.getElementById(place);
    part?.scrollIntoView({ block: 'start' });
    if (part) clearOfWhatStays(part);
    part?.querySelector<HTMLElement>('summary')?.focus({ preventScroll: true });
  });
}

/** A picture that stays at the top, however high it is, does not stand over what is brought there. */
function clearOfWhatStays(part: Element): void {
  const stays = [...document.querySelectorAll('.run-pictures, figure.picture')].filter(
    (one) => getComputedStyle(one).position === 'sticky',
  );
  const under =
    part.getBoundingClientRect().top - Math.max(0, ...stays.map((one) => one.getBoundingClientRect().bottom));
  if (under < 0) window.scrollBy(0, under);
}

/** A part that the address names is opened, also where it is named later. */
function useAddress(screen: string): void {
  useEffect(() => {
    const look = () => {
      const place = window.location.hash.slice(1);
      if (place.startsWith(placeOf(screen, ''))) reveal(place);
    };
    look();
    window.addEventListener('hashchange', look);
    return () => window.removeEventListener('hashchange', look);
  }, [screen]);
}

/** Paper opens nothing by itself. */
function usePrinted(box: { current: HTMLElement | null }): void {
  useLayoutEffect(() => {
    let shut: HTMLDetailsElement[] = [];
    const before = () => {
      shut = [...(box.current?.querySelectorAll<HTMLDetailsElement>('details.part:not([open])') ?? [])];
      for (const part of shut) part.open = true;
    };
    const after = () => {
      for (const part of shut) part.open = false;
      shut = [];
    };
    window.addEventListener('beforeprint', before);
    window.addEventListener('afterprint', after);
    return () => {
      window.removeEventListener('beforeprint', before);
      window.removeEventListener('afterprint', after);
    };
  }, [box]);
}
