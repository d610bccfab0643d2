/** Tries what it is sent, and says what is broken. */
import { parentPort } from 'node:worker_threads';
import type { Design } from '../../src/design/definition.ts';
import { parseDesign } from '../../src/design/validate.ts';
import { tried, triedRaw } from './tried.ts';

function triedBytes(bytes: number[]): string[] {
  const result = parseDesign(new TextDecoder().decode(Uint8Array.from(bytes)));
  return result.ok ? tried(result.design) : result.errors.flatMap(({ message }) => (message.length > 300 || message === '' ? [`words: ${message.slice(0, 80)}… of ${message.length}`] : []));
}

parentPort!.on('message', ({ kind, value }: { kind: string; value: unknown }) => {
  parentPort!.postMessage(kind === 'design' ? tried(value as Design) : kind === 'damaged' ? triedRaw(value) : triedBytes((value as { text: number[] }).text));
});
