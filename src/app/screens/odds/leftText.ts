const SECOND = 1000;

/** What is left of a run of pairs, by how long what is done took (ms). */
export function leftText(done: number, count: number, took: number): string {
  if (done === 0 || count === 0) return 'The first answer comes in some seconds.';
  const seconds = ((took / SECOND) * (count - done)) / done;
  return seconds < 90
    ? `About ${Math.max(1, Math.round(seconds))} s left.`
    : `About ${Math.round(seconds / 60)} min left.`;
}
