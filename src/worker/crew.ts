/** Work in many pieces, shared out among as many workers as there are cores, each taking the next when it is done. */

/** Of workers at most: more would be in each other's way on any machine a shop has. */
const MOST = 8;
export const handsHere = () => Math.min(MOST, Math.max(1, navigator.hardwareConcurrency || 2));

/**
 * `one` does a piece with one hand (0 to `hands` - 1); `done` hears each as it ends, in any order. Ends with the first
 * failure, or once the signal is given.
 */
export async function shareOut<P, R>(
  pieces: readonly P[],
  hands: number,
  one: (piece: P, hand: number) => Promise<R>,
  done: (result: R) => void,
  signal?: AbortSignal,
): Promise<void> {
  let next = 0;
  let failed = false;
  const work = async (hand: number) => {
    while (next < pieces.length && !failed) {
      signal?.throwIfAborted();
      const piece = pieces[next++]!;
      try {
        done(await one(piece, hand));
      } catch (error) {
        failed = true;
        throw error;
      }
    }
  };
  await Promise.all(Array.from({ length: Math.min(hands, pieces.length) }, (_, hand) => work(hand)));
}
