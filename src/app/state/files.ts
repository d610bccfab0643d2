/** Design files in and out of the page. */
import { decodedText } from '../../design/decodedText.ts';
import { fileText, isFileOfJobs, nameOf } from '../../jobs/record.ts';
import type { Work } from './store.ts';

export { nameOf };

/** What a browser offers that lets a page write to a file the person chose. */
interface Pickers {
  showOpenFilePicker?(options: object): Promise<FileSystemFileHandle[]>;
  showSaveFilePicker?(options: object): Promise<FileSystemFileHandle>;
}
const pickers = () => window as unknown as Pickers;
const KIND = {
  id: 'designs',
  types: [{ description: 'Design', accept: { 'application/json': ['.json'] as const } }],
};

/** The file each job was opened from or saved to, while the page is open: by the name of the job. */
const files = new WeakMap<Work, Map<string, FileSystemFileHandle>>();
const filesOf = (work: Work): Map<string, FileSystemFileHandle> => {
  const known = files.get(work) ?? new Map<string, FileSystemFileHandle>();
  files.set(work, known);
  return known;
};

/**
 * Opens a file that was picked or dropped: a design, or several jobs. A bad one is refused whole and the work stays.
 * `handle`: what it can be saved back to.
 */
export async function openFile(work: Work, file: File | undefined, handle?: FileSystemFileHandle): Promise<void> {
  if (!file) return;
  let text: string;
  try {
    text = decodedText(new Uint8Array(await file.arrayBuffer()));
  } catch {
    return work.open(file.name, {
      ok: false,
      errors: [
        {
          path: '',
          message: 'it could not be read from the device; it may have been moved or taken away since it was chosen',
        },
      ],
    });
  }
  if (isFileOfJobs(text)) return openJobs(work, file.name, text);
  const { parseDesign } = await import('../../design/parse.ts');
  work.open(file.name, parseDesign(text));
  if (handle && !work.store.getState().refused) filesOf(work).set(work.store.getState().piece, handle);
}

async function openJobs(work: Work, name: string, text: string): Promise<void> {
  const { readJobs, takeIn } = await import('../../jobs/many.ts');
  const read = readJobs(text);
  if (!read.ok) return work.open(name, read);
  if (!work.keeper) return;
  await takeIn(work.keeper, read.jobs);
  const away = read.jobs.filter((job) => job.away).length;
  work.store.setState(({ notices }) => ({
    notices: [...notices.filter(({ what }) => what !== 'taken'), { what: 'taken', count: read.jobs.length, away }],
    refused: read.errors.length > 0 ? { file: name, errors: read.errors, others: read.jobs.length } : null,
  }));
  window.location.hash = '#jobs';
}

/** Whether the browser lets a file be chosen that can be saved back to. */
export const canPick = (): boolean => typeof pickers().showOpenFilePicker === 'function';

/** Lets the person choose a file, and opens it; nothing happens where they think better of it. */
export async function pickFile(work: Work): Promise<boolean> {
  try {
    const [handle] = await pickers().showOpenFilePicker!(KIND);
    await openFile(work, await handle?.getFile(), handle);
    return handle !== undefined;
  } catch (error) {
    if ((error as Error).name === 'AbortError') return false;
    throw error;
  }
}

/** A file that was dropped, with what it can be saved back to where the browser tells. */
export async function openDropped(work: Work, dropped: DataTransfer | null): Promise<void> {
  const file = dropped?.files[0];
  const [item] = [...(dropped?.items ?? [])] as (DataTransferItem & {
    getAsFileSystemHandle?(): Promise<FileSystemHandle | null>;
  })[];
  // Asked for at once: what was dropped is gone after this turn.
  const handle = await item?.getAsFileSystemHandle?.().catch(() => null);
  await openFile(work, file, handle?.kind === 'file' ? (handle as FileSystemFileHandle) : undefined);
}

/**
 * Saves the design: back to its file where the browser allows it, else to one the person names, else as a download.
 * @returns whether it was saved
 */
export async function saveFile(work: Work): Promise<boolean> {
  const { design, piece } = work.store.getState();
  const name = `${nameOf(design.title ?? 'design')}.conepair.json`;
  const text = fileText(design);
  const { showSaveFilePicker: choose } = pickers();
  if (typeof choose === 'function') {
    try {
      const handle = filesOf(work).get(piece) ?? (await choose.call(window, { ...KIND, suggestedName: name }));
      const file = await handle.createWritable();
      await file.write(text);
      await file.close();
      filesOf(work).set(piece, handle);
      work.fileSaved();
      return true;
    } catch (error) {
      if ((error as Error).name === 'AbortError') return false;
      // Moved, forbidden, or full: what can always be had is a download.
      filesOf(work).delete(piece);
    }
  }
  offer(name, text, 'application/json');
  work.fileSaved();
  return true;
}

/** Offers something to the person as a file to keep. */
export function offer(file: string, content: BlobPart, type: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([content], { type }));
  link.download = file;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 1000);
}
