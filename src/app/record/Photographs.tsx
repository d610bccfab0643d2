/** Photographs in the record: taken in, shown, saved. They stay on the device with the job. */
import { useEffect, useRef, useState } from 'react';
import type { Photograph } from '../../jobs/photographs.ts';
import type { Particulars } from '../../report/record/story.ts';
import { sizeText } from '../sizeText.ts';
import { offer } from '../state/files.ts';
import type { Work } from '../state/store.ts';
import { bare } from './entered.ts';
import { withRecorded } from './entries.ts';
import { scaledDown } from './picture.ts';

/** One photograph of the record. */
export function Shown({ work, name, about }: { work: Work; name: string; about: string }) {
  const [found, setFound] = useState<{ photograph: Photograph; url: string } | null | 'none'>(null);
  useEffect(() => {
    let url: string | null = null;
    let gone = false;
    void (work.keeper?.shelf.photographs.get(name) ?? Promise.resolve(null))
      .catch(() => null)
      .then((photograph) => {
        if (gone) return;
        if (!photograph) return setFound('none');
        url = URL.createObjectURL(photograph.blob);
        setFound({ photograph, url });
      });
    return () => {
      gone = true;
      if (url) URL.revokeObjectURL(url);
    };
  }, [work, name]);
  if (found === null) return <p className="fine">The photograph is being fetched.</p>;
  if (found === 'none') return <p className="fine">This photograph is not on this device.</p>;
  const { photograph, url } = found;
  const { width, height, blob } = photograph;
  return (
    <figure className="photograph">
      <img src={url} width={width} height={height} alt={about === '' ? 'Photograph without a note' : about} />
      <figcaption>
        {width} × {height}, {sizeText(blob.size)}{' '}
        <button type="button" onClick={() => offer(`photograph-${name}.jpg`, blob, 'image/jpeg')}>
          Save the picture
        </button>
      </figcaption>
    </figure>
  );
}

/** Takes a photograph in with what stands on the form of a note; what cannot be taken in is said. */
export function AddPhotograph({
  work,
  note,
  told,
  done,
  refuse,
}: {
  work: Work;
  note: string;
  told: Particulars;
  done(): void;
  refuse(why: string): void;
}) {
  const picker = useRef<HTMLInputElement>(null);
  const [busy, setBusy] = useState(false);
  const { keeper } = work;
  if (!keeper) return null;
  const take = async (file: File): Promise<string | null> => {
    if (!work.mayWrite()) return 'This job is open in another window; take it over here first.';
    const scaled = await scaledDown(file);
    if (!scaled) return `“${file.name}” is no picture that this browser can read.`;
    const name = keeper.device.newName();
    try {
      await keeper.shelf.photographs.put(name, { ...scaled, made: keeper.device.now() });
    } catch {
      return 'There is no room on this device for the photograph; the job itself is kept.';
    }
    const entry = { photograph: name, ...bare({ ...told, note }) };
    return work.change((d) => withRecorded(d, entry))[0]?.message ?? null;
  };
  const pick = async (input: HTMLInputElement) => {
    const file = input.files?.[0];
    if (!file) return;
    setBusy(true);
    const refused = await take(file);
    setBusy(false);
    input.value = '';
    if (refused === null) done();
    else refuse(refused);
  };
  return (
    <>
      <button type="button" disabled={busy} onClick={() => picker.current?.click()}>
        {busy ? 'Being taken in' : 'Add a photograph…'}
      </button>
      <input
        ref={picker}
        type="file"
        accept="image/*"
        hidden
        aria-label="A photograph"
        onChange={(event) => void pick(event.target)}
      />
    </>
  );
}
