/** What is put into the design: a place of it, and the formula of what stands there. */
import { TOLD_AS } from '../../../../lessons/definition.ts';
import { useEditing } from './editing.ts';
import { ChoiceField, FormulaField } from './fields.tsx';

const AS_WORDS: Partial<Record<(typeof TOLD_AS)[number], string>> = {
  fine: 'µm or tenths',
  reckoned: 'µm, five figures',
  length: 'mm or inches',
  sided: 'a place along the axis',
  angle: 'a half angle',
  turn: 'a part of a turn',
  count: 'a whole number',
  number: 'a plain number',
  ratio: 'a ratio',
  share: 'so many in 100',
};
export const AS = TOLD_AS.map((as) => [as, AS_WORDS[as] ?? as] as const);

/** A place of the design at which a number stands, in words. */
export function PlaceField({ path, label }: { path: string; label: string }) {
  const { places } = useEditing();
  return <ChoiceField path={path} label={label} options={places} />;
}

export function Put({ path }: { path: string }) {
  return (
    <>
      <PlaceField path={`${path}.path`} label="Place of the design" />
      <FormulaField path={`${path}.is`} label="What stands there (mm, degrees)" />
    </>
  );
}
