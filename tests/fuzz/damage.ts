/** Valid designs with one thing wrong: a field that is another or gone, or bytes of the text that are others. */
import fc from 'fast-check';
import type { Design } from '../../src/design/definition.ts';

type Path = (string | number)[];

function pathsOf(value: unknown, path: Path = []): Path[] {
  if (typeof value !== 'object' || value === null) return [path];
  return [
    ...(path.length > 0 ? [path] : []),
    ...Object.entries(value).flatMap(([key, inner]) =>
      pathsOf(inner, [...path, Array.isArray(value) ? Number(key) : key]),
    ),
  ];
}

function changed(value: unknown, [step, ...rest]: Path, change: (old: unknown) => unknown): unknown {
  if (step === undefined) return change(value);
  if (Array.isArray(value))
    return value.flatMap((inner, i) =>
      i === step ? (rest.length === 0 && change(inner) === GONE ? [] : [changed(inner, rest, change)]) : [inner],
    );
  return Object.fromEntries(
    Object.entries(value as object).flatMap(([key, inner]) =>
      key !== step
        ? [[key, inner]]
        : rest.length === 0 && change(inner) === GONE
          ? []
          : [[key, changed(inner, rest, change)]],
    ),
  );
}

const GONE = Symbol('gone');

const odd = fc.constantFrom<(old: unknown) => unknown>(
  () => GONE,
  () => null,
  () => 0,
  () => -1,
  () => 1e308,
  () => 5e-324,
  () => '',
  () => ' ',
  () => 'x'.repeat(50_000),
  () => [],
  () => ({}),
  () => ({ toString: 1 }),
  () => ({ kind: 1, toString: null, valueOf: [] }),
  () => [[[[]]]],
  () => true,
  (old) => [old, old],
  (old) => ({ [String(old).slice(0, 20)]: old }),
  (old) => (typeof old === 'number' ? -old : old),
  (old) => (typeof old === 'number' ? old * 1e6 : old),
  (old) => (typeof old === 'string' ? `${old} ` : old),
);

/** One field of a design made another. Its errors, or what is made of it, must be told. */
export const damaged = (designs: fc.Arbitrary<unknown>): fc.Arbitrary<unknown> =>
  designs.chain((design) =>
    fc.tuple(fc.constantFrom(...pathsOf(design)), odd).map(([path, change]) => changed(design, path, change)),
  );

/** Bytes, a few of them others, or cut short. */
export const changedBytes = (text: Uint8Array): fc.Arbitrary<Uint8Array> =>
  fc
    .tuple(
      fc.array(fc.tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.integer({ min: 0, max: 255 })), {
        maxLength: 4,
      }),
      fc.option(fc.double({ min: 0, max: 1, noNaN: true })),
    )
    .map(([others, end]) => {
      const now = text.slice();
      for (const [place, byte] of others) now[Math.floor(place * (now.length - 1))] = byte;
      return end === null ? now : now.slice(0, Math.floor(end * now.length));
    });

/** The bytes of a design so. */
export const bytes = (designs: fc.Arbitrary<Design>): fc.Arbitrary<Uint8Array> =>
  designs.chain((design) => changedBytes(new TextEncoder().encode(JSON.stringify(design))));
