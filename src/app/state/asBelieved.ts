/**
 * The work with the pair as it is believed to stand in place of the one that was drawn: what draws or tells of the pair
 * is handed this one, and all of it then speaks of the same parts. What a hand moves, and what is typed, goes to the
 * design itself.
 */
import type { Design } from '../../design/definition.ts';
import type { State, Work } from './store.ts';

export interface Stands {
  /** the design it was worked out for */
  of: Design;
  seats: Design['seats'];
}

export function asBelieved(work: Work, { of, seats }: Stands): Work {
  const designs = new WeakMap<Design, Design>();
  const own = new WeakMap<Design, Design>();
  const states = new WeakMap<State, State>();
  /** Of other parts nothing is believed yet. */
  const believed = (design: Design): Design => {
    const known = designs.get(design);
    if (known) return known;
    const shown = isOf(of, design) ? { ...design, seats } : design;
    designs.set(design, shown);
    if (shown !== design) own.set(shown, design);
    return shown;
  };
  const shownOf = (state: State): State => {
    const design = believed(state.design);
    if (design === state.design) return state;
    const shown = states.get(state) ?? { ...state, design };
    states.set(state, shown);
    return shown;
  };
  /** What was given from here comes back as what it was. */
  const back = <S extends Partial<State>>(state: S): S => {
    const design = state.design && own.get(state.design);
    return design ? { ...state, design } : state;
  };
  const { store } = work;
  return {
    ...work,
    store: {
      ...store,
      getState: () => shownOf(store.getState()),
      subscribe: (listener) => store.subscribe((now, before) => listener(shownOf(now), shownOf(before))),
      setState: ((change: Partial<State> | ((state: State) => Partial<State>)) =>
        store.setState(
          typeof change === 'function' ? (state) => back(change(shownOf(state))) : back(change),
        )) as typeof store.setState,
    },
    takenHold: () => {
      const from = work.takenHold();
      return from && believed(from);
    },
  };
}

/** Whether a design has the parts and the history of another; undo makes both anew. */
export const isOf = (of: Design, { seats, cut }: Design): boolean => same(of.seats, seats) && same(of.cut, cut);

const same = (a: unknown, b: unknown) => a === b || JSON.stringify(a) === JSON.stringify(b);
