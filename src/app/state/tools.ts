/**
 * Which system's tools the shop works with: as the units of the screen, until the person says otherwise. Kept while the
 * page is open.
 */
import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import type { System } from '../../design/units.ts';

/** null: as the units */
export const toolChoice = createStore<{ chosen: System | null }>(() => ({ chosen: null }));

export const useTools = (system: System): System => useStore(toolChoice, (state) => state.chosen) ?? system;
