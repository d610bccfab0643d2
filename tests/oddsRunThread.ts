/** Runs the spindles of the pieces it is sent, of one design (oddsRun.bench.ts). */
import { parentPort } from 'node:worker_threads';
import type { Design } from '../src/design/definition.ts';
import type { Piece } from '../src/report/odds/pieces.ts';
import { askedOf, runnerOf } from '../src/report/odds/running.ts';

let run: ReturnType<typeof runnerOf> | null = null;
parentPort!.on('message', ({ design, piece }: { design: Design; piece: Piece }) => {
  run ??= runnerOf(askedOf(design)!);
  parentPort!.postMessage(run(piece));
});
