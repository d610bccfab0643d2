/** A sentence with its trade words marked; one that is tapped, or pressed by key, opens its meaning below it. */
import { type KeyboardEvent, useCallback, useEffect, useId, useLayoutEffect, useMemo, useRef, useState } from 'react';
import { createPortal } from 'react-dom';
import type { Entry } from './entries.ts';
import { piecesOf } from './find.ts';
import './glossary.css';

interface Open {
  entry: Entry;
  word: HTMLElement;
}

/** Of another sentence it is open no longer. */
interface OpenIn extends Open {
  sentence: string;
}

export default function Words({ children }: { children: string }) {
  const pieces = useMemo(() => piecesOf(children), [children]);
  const [opened, setOpen] = useState<OpenIn | null>(null);
  const open = opened?.sentence === children ? opened : null;
  const close = useCallback(() => setOpen(null), []);
  const id = useId();
  return (
    <>
      {pieces.map((piece) => {
        if (typeof piece === 'string') return piece;
        const { entry, text } = piece;
        const isOpen = open?.entry === entry;
        const toggle = (word: HTMLElement) => setOpen(isOpen ? null : { entry, word, sentence: children });
        const onKeyDown = (event: KeyboardEvent<HTMLElement>) => {
          if (event.key !== 'Enter' && event.key !== ' ') return;
          event.preventDefault();
          toggle(event.currentTarget);
        };
        return (
          <span
            key={entry.word}
            className="word"
            role="button"
            tabIndex={0}
            aria-expanded={isOpen}
            aria-controls={isOpen ? id : undefined}
            onClick={(event) => toggle(event.currentTarget)}
            onKeyDown={onKeyDown}
          >
            {text}
          </span>
        );
      })}
      {open && <Meaning id={id} entry={open.entry} word={open.word} close={close} />}
    </>
  );
}

/** px from the word, and from the edges of the page. */
const GAP = 6;
const EDGE = 8;

/** Stands below its word, or above where there is no room; goes with Escape, a tap elsewhere, or the word. */
function Meaning({ id, entry, word, close }: Open & { id: string; close(): void }) {
  const box = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    const { style, offsetWidth, offsetHeight } = box.current!;
    const at = word.getBoundingClientRect();
    const page = document.documentElement;
    const left = Math.max(EDGE, Math.min(at.left, page.clientWidth - offsetWidth - EDGE));
    const below = at.bottom + GAP + offsetHeight <= page.clientHeight || at.top < offsetHeight + GAP;
    style.left = `${left + window.scrollX}px`;
    style.top = `${(below ? at.bottom + GAP : at.top - GAP - offsetHeight) + window.scrollY}px`;
  }, [word]);
  useEffect(() => {
    const onKey = (event: globalThis.KeyboardEvent) => {
      if (event.key !== 'Escape') return;
      event.stopPropagation();
      if (box.current?.contains(document.activeElement)) word.focus();
      close();
    };
    const onPointer = ({ target }: PointerEvent) => {
      if (target instanceof Node && !box.current?.contains(target) && !word.contains(target)) close();
    };
    window.addEventListener('keydown', onKey, true);
    window.addEventListener('pointerdown', onPointer, true);
    return () => {
      window.removeEventListener('keydown', onKey, true);
      window.removeEventListener('pointerdown', onPointer, true);
    };
  }, [word, close]);
  return createPortal(
    <div ref={box} id={id} className="meaning" role="status">
      <strong>{entry.word}</strong> {entry.meaning}{' '}
      {/* biome-ignore lint/a11y/useValidAnchor: it goes to a page, and what it stands in is shut */}
      <a href="#words" onClick={close}>
        All words
      </a>
    </div>,
    document.querySelector('main') ?? document.body,
  );
}
