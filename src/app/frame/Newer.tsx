/**
 * The page for use without a network: kept whole on the device after the first visit. A newer one is taken when the
 * person asks for it, and never under work that is kept nowhere. Loaded after the first picture (App.tsx), which it
 * must not hold up.
 */
import { useEffect, useState } from 'react';
import { saveFile } from '../state/files.ts';
import type { Work } from '../state/store.ts';

type Take = () => Promise<void>;

export default function Newer({ work }: { work: Work }) {
  const [take, setTake] = useState<Take | null>(null);
  const [unkept, setUnkept] = useState(false);
  useEffect(() => {
    let gone = false;
    void registered(
      () => gone,
      (found) => setTake(() => found),
    );
    return () => {
      gone = true;
    };
  }, []);
  if (!take) return null;
  const press = () => (work.unkept() ? setUnkept(true) : void take());
  return (
    <section aria-label="Newer program" className="keeping">
      <div role="status">
        <p>
          {unkept
            ? 'Your work is not kept on this device: save it as a file first, then take the newer program.'
            : 'A newer version of this program is here. Taking it loads the page again; your work stays.'}
        </p>
        <p className="buttons">
          {unkept && (
            <button type="button" onClick={() => saveFile(work)}>
              Save as a file
            </button>
          )}
          <button type="button" onClick={unkept ? () => void take() : press}>
            {unkept ? 'It is saved: take the newer one' : 'Take it now'}
          </button>
          <button type="button" onClick={() => setTake(null)}>
            Later
          </button>
        </p>
      </div>
    </section>
  );
}

/** Asks the browser to keep the page. */
async function registered(isGone: () => boolean, hear: (take: Take) => void): Promise<void> {
  if (!('serviceWorker' in navigator)) return;
  try {
    const { registerSW } = await import('virtual:pwa-register');
    if (isGone()) return;
    const take = registerSW({ immediate: true, onNeedRefresh: () => isGone() || hear(() => take(true)) });
  } catch {
    // Without it the page works as it did, while there is a network.
  }
}
