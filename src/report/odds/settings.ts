/** Spreads that count while it runs alone: lobes, room, speed, where the journal is set. */
import type { Design } from '../../design/definition.ts';
import { isOfParts, type Spread } from '../../design/oddsDefinition.ts';
import type { Setting } from '../../engine/odds/running.ts';
import { metres, radPerSecond } from '../convert.ts';

/** Each as the engine has it; null where the design carries no such thing. */
function settingOf({ seats }: Design, spread: Spread): Setting | null {
  const { sigma, shape = 'normal' } = spread;
  if ('seat' in spread) {
    const seat = seats.findIndex(({ name }) => name === spread.seat);
    const { part } = spread;
    return spread.of === 'lobeAmplitude' && (seats[seat]?.[part].lobes?.length ?? 0) > 0
      ? { of: spread.of, seat, part, lobe: 0, sigma: metres(sigma), shape }
      : null;
  }
  const of = spread.of;
  return { of, sigma: of === 'speed' ? radPerSecond(sigma) : of === 'position' ? metres(sigma) : sigma, shape };
}

/** Those of the list that are not of the parts: what counts, and places in the list of what the design cannot carry. */
export function settingsOf(design: Design): { settings: Setting[]; notCarried: number[] } {
  const each = (design.odds?.spread ?? []).flatMap((spread, place) =>
    isOfParts(spread) ? [] : [{ place, setting: settingOf(design, spread) }],
  );
  return {
    settings: each.flatMap(({ setting }) => setting ?? []),
    notCarried: each.flatMap(({ setting, place }) => (setting ? [] : [place])),
  };
}
