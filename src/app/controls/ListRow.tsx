/** A measured line, or lobes, of a surface: typed, or pasted from a table, an entry a line. */
import { useStore } from 'zustand';
import type { Surface } from '../../design/definition.ts';
import { valueAt } from '../../design/place.ts';
import { inSystem } from '../../design/quantity.ts';
import { fineUnit, lengthUnit } from '../../design/units.ts';
import { leave, typeAt, useHeldText } from '../state/draft.ts';
import { useWork } from './context.ts';
import { Labelled } from './Labelled.tsx';
import { lobesText, profileText, readLobes, readProfile } from './lists.ts';
import { TypedField } from './TypedField.tsx';

export interface ListControl {
  kind: 'profile' | 'lobes';
  path: string;
}

const LISTS = {
  profile: {
    title: 'Line as measured',
    about: (unit: string, fine: string) =>
      `Each line of text a station (${unit}) and how far metal stands proud there (${fine}), parted by a semicolon or a tab, as two columns of a table are pasted; straight between. Empty: a straight line. Measure makes it from straightness readings`,
    like: (unit: string, fine: string) => `station ${unit}; proud ${fine}`,
    beside: undefined,
  },
  lobes: {
    title: 'Lobes',
    about: (_: string, fine: string) =>
      `Each line of text how many lobes around, their amplitude (${fine}) and the angle of a crest (degrees), parted by semicolons or tabs. Empty: round`,
    like: (_: string, fine: string) => `count; amplitude ${fine}; angle °`,
    beside: 'Lobes count in seat and play, blue and running; the films of the fit are those of the mean line.',
  },
};

export function ListRow({ kind, path }: ListControl) {
  const work = useWork();
  const system = useStore(work.store, (state) => state.system);
  const list = useStore(work.store, (state) => valueAt(state.design, path));
  const held = useHeldText(work, path);
  const shown =
    list === undefined
      ? ''
      : kind === 'profile'
        ? profileText(list as NonNullable<Surface['profile']>, system)
        : lobesText(list as NonNullable<Surface['lobes']>, system);
  const take = (text: string) => {
    const read = kind === 'profile' ? readProfile(text, system) : readLobes(text, system);
    if (!read.ok) typeAt(work, path, { text, why: inSystem(read.message, system) });
    else typeAt(work, path, { text, put: { value: read.value.length === 0 ? undefined : read.value } });
    return null;
  };
  const { title, about, like, beside } = LISTS[kind];
  const units = [lengthUnit(system).name, fineUnit(system).name] as const;
  return (
    <Labelled title={title} about={about(...units)}>
      {(id) => (
        <div data-path={path}>
          <TypedField
            id={id}
            shown={shown}
            about={`${about(...units)}.`}
            instead={like(...units)}
            beside={shown === '' ? undefined : beside}
            lines={Math.min(6, Math.max(2, shown.split('\n').length))}
            take={take}
            held={held}
            leave={() => leave(work, path)}
          />
        </div>
      )}
    </Labelled>
  );
}
