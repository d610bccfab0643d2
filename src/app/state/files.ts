/** Design files in and out of the page. */
import { decodedText } from '../../design/decodedText.ts';
import { parseDesign } from '../../design/validate.ts';
import { fileText } from '../../jobs/record.ts';
import type { Work } from './store.ts';

/** Opens a file that was picked or dropped; a bad one is refused whole and the work stays. */
export async function openFile(work: Work, file: File | undefined): Promise<void> {
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
  work.open(file.name, parseDesign(text));
}

/** Saves the design under its title. */
export function saveFile(work: Work): void {
  const { design } = work.store.getState();
  offer(`${nameOf(design.title ?? 'design')}.conepair.json`, fileText(design), 'application/json');
  work.fileSaved();
}

/** Offers something to the person as a file to keep. */
export function offer(file: string, content: BlobPart, type: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([content], { type }));
  link.download = file;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 1000);
}

/** A title as a file's name. */
export const nameOf = (title: string) =>
  title
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '') || 'design';
