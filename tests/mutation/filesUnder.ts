import { readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';

/** The files named and those in the folders named that end so, in order; declarations are not source. */
export function filesUnder(places: readonly string[], endings: readonly string[]): string[] {
  const found = places.flatMap((place) => {
    const entry = statSync(place, { throwIfNoEntry: false });
    if (entry === undefined) return [];
    return entry.isDirectory()
      ? readdirSync(place, { recursive: true, encoding: 'utf8' }).map((name) => join(place, name))
      : [place];
  });
  return [...new Set(found)]
    .filter((file) => endings.some((ending) => file.endsWith(ending)) && !file.endsWith('.d.ts'))
    .sort();
}
