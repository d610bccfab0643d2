/** Design files in and out of the page. */
import { fileText } from '../design/fileText.ts';
import { parseDesign } from '../design/validate.ts';
import type { Work } from './store.ts';

/** Opens a file that was picked or dropped; a bad one is refused whole and the work stays. */
export async function openFile(work: Work, file: File | undefined): Promise<void> {
  if (file) work.open(file.name, parseDesign(fileText(new Uint8Array(await file.arrayBuffer()))));
}

/** Saves the design under its title. */
export function saveFile(work: Work): void {
  const { design } = work.store.getState();
  offer(`${nameOf(design.title ?? 'design')}.conepair.json`, `${JSON.stringify(design, null, 2)}\n`, 'application/json');
}

/** Offers a text to the person as a file to keep. */
export function offer(file: string, text: string, type: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([text], { type }));
  link.download = file;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 1000);
}

/** A title as a file's name. */
const nameOf = (title: string) =>
  title
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '') || 'design';
