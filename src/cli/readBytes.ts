import { closeSync, openSync, readSync } from 'node:fs';

const PIECE = 1 << 20;
/** Bytes: beyond any design, in any encoding (validate.ts has the bound on its characters). */
const MEGABYTE = 1_000_000;
const MOST = 130 * MEGABYTE;

const UNREADABLE: Record<string, string> = {
  ENOENT: 'there is no such file',
  EISDIR: 'it is a folder; name the files in it',
  EACCES: 'this user may not read it',
};

/** All bytes of a file (- standard input), or why not. Of what has no end no more is read than a design could hold. */
export function readBytes(file: string): Uint8Array | string {
  let handle: number | null = null;
  try {
    handle = file === '-' ? 0 : openSync(file, 'r');
    return allOf(handle);
  } catch (error) {
    return UNREADABLE[(error as NodeJS.ErrnoException).code ?? ''] ?? (error as Error).message;
  } finally {
    if (handle !== null && handle !== 0) closeSync(handle);
  }
}

function allOf(handle: number): Uint8Array | string {
  const pieces: Uint8Array[] = [];
  for (let size = 0; size <= MOST; ) {
    const piece = new Uint8Array(PIECE);
    const count = readPiece(handle, piece);
    if (count === 0) return Buffer.concat(pieces);
    pieces.push(piece.subarray(0, count));
    size += count;
  }
  return `it has more than ${MOST / MEGABYTE} MB, and no design is so long`;
}

function readPiece(handle: number, piece: Uint8Array): number {
  for (;;) {
    try {
      return readSync(handle, piece, 0, piece.length, null);
    } catch (error) {
      const { code } = error as NodeJS.ErrnoException;
      if (code === 'EOF') return 0;
      // Nothing has come down the pipe yet.
      if (code !== 'EAGAIN') throw error;
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 20);
    }
  }
}
