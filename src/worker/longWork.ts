/** Long work that comes point by point: told as it comes, and stopped between two points. */

export type Ended<R> = { status: 'done'; result: R } | { status: 'cancelled' };

/**
 * What the outside gives: somewhere to tell points, a look at whether to stop, and a pause in which a stop can arrive.
 */
interface Outside<P> {
  tell: (point: P) => void;
  stopped: () => boolean;
  breathe: () => Promise<void>;
}

/** Drives a generator to its end, or until it is stopped. */
export async function drive<P, R>(work: Generator<P, R>, { tell, stopped, breathe }: Outside<P>): Promise<Ended<R>> {
  for (;;) {
    if (stopped()) {
      work.return(undefined as R);
      return { status: 'cancelled' };
    }
    const next = work.next();
    if (next.done) return { status: 'done', result: next.value };
    tell(next.value);
    await breathe();
  }
}
