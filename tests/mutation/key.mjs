import { relative } from 'node:path';

/** Names a mutant the same in every process and every run: place and replacement. */
export function keyOf({ fileName, location: { start, end }, replacement }) {
  return `${relative(process.cwd(), fileName)}:${start.line}:${start.column}-${end.line}:${end.column} ${replacement}`;
}
