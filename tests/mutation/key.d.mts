export interface Placed {
  fileName: string;
  location: { start: { line: number; column: number }; end: { line: number; column: number } };
  replacement?: string | undefined;
}
export function keyOf(mutant: Placed): string;
