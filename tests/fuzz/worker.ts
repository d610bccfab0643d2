/** Tries what it is sent, and says what is broken. */
import { parentPort } from 'node:worker_threads';
import { decodedText } from '../../src/design/decodedText.ts';
import type { Design } from '../../src/design/definition.ts';
import { parseDesign } from '../../src/design/parse.ts';
import { tried, triedErrors, triedRaw } from './tried.ts';

function triedBytes(bytes: number[]): string[] {
  const result = parseDesign(decodedText(Uint8Array.from(bytes)));
  return result.ok ? tried(result.design) : triedErrors(result.errors);
}

parentPort!.on('message', ({ kind, value }: { kind: string; value: unknown }) => {
  parentPort!.postMessage(
    kind === 'design'
      ? tried(value as Design)
      : kind === 'damaged'
        ? triedRaw(value)
        : triedBytes((value as { text: number[] }).text),
  );
});
