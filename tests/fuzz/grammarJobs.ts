/**
 * What comes to the program from anywhere besides a design: files of jobs, kept records, links, tables of readings and
 * pasted lists; whole, with one field another, with a few characters or bytes others, and made of odd pieces.
 */
import fc from 'fast-check';
import { lobesText, profileText } from '../../src/app/controls/lists.ts';
import { linkOf } from '../../src/app/takeAlong/link.ts';
import type { Design } from '../../src/design/definition.ts';
import { fileText, type OpenedJob, recordText } from '../../src/jobs/record.ts';
import { readingsToCsv } from '../../src/report/measure/csv.ts';
import { between, perhaps } from './arbitrary.ts';
import { changedBytes, damaged } from './damage.ts';

export const KINDS = ['jobs', 'record', 'link', 'table', 'profile', 'lobes', 'file'] as const;
export type Kind = (typeof KINDS)[number];

/** One text from somewhere, and the design it would come to. */
export interface Case {
  kind: Kind;
  text: string;
  design: Design;
}

const system = fc.constantFrom('metric' as const, 'inch' as const);
const time = fc.option(fc.integer({ min: 0, max: 4e12 }));

const foundOf = (design: Design): fc.Arbitrary<OpenedJob> =>
  fc.record({
    design: fc.constant(design),
    system,
    factor: between(1, 5000),
    unfinished: fc.dictionary(fc.string({ maxLength: 8 }), fc.jsonValue({ maxDepth: 2 }), { maxKeys: 3 }),
    made: time,
    worked: time,
    first: fc.nat(600),
    at: fc.nat(600),
  });

const versionsOf = (design: Design) =>
  perhaps(
    fc.array(fc.record({ name: fc.string({ maxLength: 250 }), made: fc.nat(), design: fc.constant(design) }), {
      maxLength: 3,
    }),
  );

const jobsOf = (designs: readonly Design[]): fc.Arbitrary<unknown> =>
  fc.record({
    conepairJobs: fc.constantFrom(1, 1, 1, 1, 2, '1', null, [1]),
    jobs: fc.array(
      fc
        .constantFrom(...designs)
        .chain((design) => fc.tuple(foundOf(design), versionsOf(design)))
        .map(([found, versions]) => ({ ...JSON.parse(recordText(found)), ...(versions && { versions }) })),
      { maxLength: 3 },
    ),
  });

/** Characters that mean something somewhere. */
const ODD = [
  '"',
  "'",
  ',',
  ';',
  '\t',
  '\n',
  '\r',
  '\u0000',
  '<b>',
  '=1+1',
  '−',
  '-',
  '1e999',
  '0x1',
  'NaN',
  '\uFEFF',
  '&units=',
  '#',
  '%',
  '😀',
];
const piece = fc.oneof(fc.constantFrom(...ODD), fc.string({ maxLength: 6 }), fc.constantFrom('x'.repeat(3_000)));

/** A text with pieces put in, taken out or cut off. */
const garbled = (text: string): fc.Arbitrary<string> =>
  fc
    .tuple(fc.array(fc.tuple(between(0, 1), fc.nat(6), piece), { maxLength: 4 }), perhaps(between(0, 1)))
    .map(([edits, end]) => {
      let now = text;
      for (const [share, out, put] of edits) {
        const at = Math.floor(share * now.length);
        now = `${now.slice(0, at)}${put}${now.slice(at + out)}`;
      }
      return end === undefined ? now : now.slice(0, Math.floor(end * now.length));
    });

const WORDS = [
  'kind',
  'seat',
  'part',
  'value',
  'value (mm)',
  'sigma [in]',
  'station',
  'after',
  'note',
  'diameter',
  'standOff',
  'ballDepth',
  'journal',
  'bush',
  '22',
  '0,001',
  '2 tenths',
  '7/8 in',
  '1:20',
  '0.0002 in',
  '-3',
];
/** Tables and lists of nothing but pieces. */
const pieces = fc
  .array(fc.oneof(fc.constantFrom(...WORDS, ...ODD), fc.constantFrom(',', ';', '\t', '\n')), { maxLength: 60 })
  .map((all) => all.join(''));

const PAGE = 'https://shop.example/';
const hashOf = (design: unknown, units: 'metric' | 'inch') => {
  const link = linkOf(design as Design, units, 'half', PAGE) ?? `${PAGE}#job=`;
  return link.slice(link.indexOf('#'));
};

/** The whole text of each kind. */
function whole(kind: Kind, design: Design, designs: readonly Design[]): fc.Arbitrary<string> {
  const surfaces = design.seats.flatMap(({ journal, bush }) => [journal, bush]);
  switch (kind) {
    case 'jobs':
      return jobsOf(designs).map((raw) => JSON.stringify(raw));
    case 'record':
      return foundOf(design).map(recordText);
    case 'link':
      return system.map((units) => hashOf(design, units));
    case 'table':
      return system.map((units) => readingsToCsv(design.readings ?? [], units));
    case 'profile':
      return fc.constant(surfaces.map(({ profile }) => profileText(profile ?? [], 'metric')).join('\n'));
    case 'lobes':
      return fc.constant(surfaces.map(({ lobes }) => lobesText(lobes ?? [], 'inch')).join('\n'));
    case 'file':
      return fc.constant(fileText(design));
  }
}

/** With one field another, where there are fields; otherwise of odd pieces. */
function withFault(kind: Kind, design: Design, designs: readonly Design[]): fc.Arbitrary<string> {
  switch (kind) {
    case 'jobs':
      return damaged(jobsOf(designs)).map((raw) => JSON.stringify(raw) ?? '');
    case 'record':
      return damaged(foundOf(design).map((found) => JSON.parse(recordText(found)))).map(
        (raw) => JSON.stringify(raw) ?? '',
      );
    case 'link':
      return fc.tuple(damaged(fc.constant(design)), system).map(([raw, units]) => hashOf(raw ?? null, units));
    case 'file':
      return damaged(fc.constant(design)).map((raw) => JSON.stringify(raw) ?? '');
    default:
      return pieces;
  }
}

const decoder = new TextDecoder();
const inBytes = (text: string) => changedBytes(new TextEncoder().encode(text)).map((bytes) => decoder.decode(bytes));

/** Cases about a few designs, which are dear to make. */
export const caseOf = (designs: readonly Design[]): fc.Arbitrary<Case> =>
  fc
    .tuple(fc.constantFrom(...KINDS), fc.constantFrom(...designs))
    .chain(([kind, design]) =>
      fc
        .oneof(
          whole(kind, design, designs),
          { weight: 2, arbitrary: withFault(kind, design, designs) },
          { weight: 2, arbitrary: whole(kind, design, designs).chain(garbled) },
          whole(kind, design, designs).chain(inBytes),
        )
        .map((text) => ({ kind, text, design })),
    );
