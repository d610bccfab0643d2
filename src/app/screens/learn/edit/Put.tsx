/** What is put into the design: a place of it, and the formula of what stands there. */
import type { Design } from '../../../../design/definition.ts';
import { TOLD_AS } from '../../../../lessons/definition.ts';
import { placeWords } from '../../../../lessons/offered.ts';
import { useEditing } from './editing.ts';
import { ChoiceField, FormulaField } from './fields.tsx';

const AS_WORDS: Partial<Record<(typeof TOLD_AS)[number], string>> = {
  fine: 'µm or tenths',
  length: 'mm or inches',
  sided: 'a place along the axis',
  angle: 'a half angle',
  turn: 'a part of a turn',
  count: 'a whole number',
  number: 'a plain number',
  share: 'so many in 100',
};
export const AS = TOLD_AS.map((as) => [as, AS_WORDS[as] ?? as] as const);

/** A place of the design at which a number stands, in words where there are any. */
export function PlaceField({ path, label }: { path: string; label: string }) {
  const { places, lesson } = useEditing();
  const seats = (lesson.design as Partial<Design>).seats ?? [];
  const worded = places.map((one) => [one, placeWords({ seats }, one)] as const);
  // Those that have words first: they are what is mostly moved.
  const options = [
    ...worded.flatMap(([one, words]) => (words === null ? [] : [[one, words] as const])),
    ...worded.flatMap(([one, words]) => (words === null ? [[one, one] as const] : [])),
  ];
  return <ChoiceField path={path} label={label} options={options} />;
}

export function Put({ path }: { path: string }) {
  return (
    <>
      <PlaceField path={`${path}.path`} label="Place of the design" />
      <FormulaField path={`${path}.is`} label="What stands there (mm, degrees)" />
    </>
  );
}
