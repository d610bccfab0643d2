/** Which named parts of the screens stand open: kept while the page lives. */
import { createStore } from 'zustand/vanilla';

interface Opened {
  /** what a part is that nobody has opened or shut since */
  all: boolean;
  /** by screen and part */
  parts: Readonly<Record<string, boolean>>;
}

export const opened = createStore<Opened>(() => ({ all: false, parts: {} }));

/** The place of a part in the address, without the #. */
export const placeOf = (screen: string, part: string) => `${screen.toLowerCase()}/${part}`;

/** `first`: whether the part stands open by itself. */
export const isOpen = ({ all, parts }: Opened, place: string, first = false) => parts[place] ?? (all || first);

export function setOpen(place: string, open: boolean, first: boolean): void {
  const state = opened.getState();
  if (isOpen(state, place, first) !== open) opened.setState({ parts: { ...state.parts, [place]: open } });
}

/** Every part of every screen, until one is opened or shut by itself. */
export const setAllOpen = (all: boolean) => opened.setState({ all, parts: {} });
