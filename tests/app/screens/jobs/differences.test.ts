/** What differs between two versions, in a person's words and units. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { differences } from '../../../../src/app/screens/jobs/differences.ts';
import type { Design } from '../../../../src/design/definition.ts';
import { parseDesign } from '../../../../src/design/parse.ts';
import { lengthExact } from '../../../../src/design/units.ts';

const demo = (file: string): Design => {
  const read = parseDesign(
    readFileSync(new URL(`../../../../assets/designs/${file}.conepair.json`, import.meta.url), 'utf8'),
  );
  if (!read.ok) throw new Error(file);
  return read.design;
};
const notebook = demo('notebook');
const worn = demo('worn-bell-mouth');

test('nothing differs from itself, whatever the order of its seats', () => {
  expect(differences(notebook, structuredClone(notebook), 'metric')).toEqual([]);
  expect(differences(notebook, { ...notebook, seats: [...notebook.seats].reverse() }, 'metric')).toEqual([]);
});

test('a diameter by the name of its seat and part, in mm and in inches, with how much it grew', () => {
  const after = structuredClone(notebook);
  after.seats[1]!.journal.diameter -= 0.0254;
  const { name, journal } = notebook.seats[1]!;
  expect(differences(notebook, after, 'metric')).toEqual([
    {
      where: `${name} journal`,
      what: 'Diameter',
      before: lengthExact(journal.diameter, 'metric'),
      after: `${Number((journal.diameter - 0.0254).toPrecision(12))} mm`,
      by: '−25.40 µm',
    },
  ]);
  expect(differences(notebook, after, 'inch')[0]!.by).toMatch(/^−10(\.0*)? tenths$/);
});

test('a position that was left out is told as that, and by how much it differs from what then holds', () => {
  const { position: _, ...without } = notebook;
  expect(differences(without, { ...without, position: 0.012 }, 'metric')).toMatchObject([
    { where: '', what: 'Position', before: '—', by: '+12.00 µm' },
  ]);
});

test('readings are told by their number and what was read; one more of them as their count', () => {
  const after = structuredClone(notebook);
  const readings = after.readings!;
  const at = readings.findIndex((reading) => 'value' in reading || 'sigma' in reading);
  Object.assign(readings[at]!, { sigma: 0.00777 });
  const [row] = differences(notebook, after, 'metric');
  expect(row).toMatchObject({ where: `reading ${at + 1}`, what: 'Uncertainty', after: '7.77 µm' });
  expect(differences(notebook, { ...notebook, readings: readings.slice(1) }, 'metric')).toMatchObject([
    { what: 'readings', before: `${readings.length} entries`, after: `${readings.length - 1} entries` },
  ]);
});

test('a profile is one line however many of its points differ; a seat or section that is new is told once', () => {
  const after = structuredClone(worn);
  const seat = after.seats.find(({ bush }) => bush.profile)!;
  seat.bush.profile = seat.bush.profile!.map(([z, d]) => [z, d + 0.001]);
  expect(differences(worn, after, 'metric')).toMatchObject([{ where: `${seat.name} bush`, what: 'profile' }]);
  const more = { ...worn, seats: [...worn.seats, { ...worn.seats[0]!, name: 'rear' }], run: { speed: 900 } } as Design;
  expect(
    differences({ ...worn, run: undefined as never }, more, 'metric').map(({ what, before }) => [what, before]),
  ).toEqual([
    ['seat rear', '—'],
    ['run', '—'],
  ]);
});
