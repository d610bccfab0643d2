/** Where the jobs are kept, how much room they take, and whether the browser may throw them away. */
import { useEffect, useState } from 'react';
import { sizeText } from '../../sizeText.ts';
import type { Work } from '../../state/store.ts';

interface Room {
  used: number | null;
  free: number | null;
  /** null: the browser does not say */
  lasting: boolean | null;
}

export function StorageLine({ work }: { work: Work }) {
  const [room, setRoom] = useState<Room | null>(null);
  useEffect(() => {
    let wanted = true;
    const look = () => roomNow().then((now) => wanted && setRoom(now));
    void look();
    const stop = work.onListed(look);
    return () => {
      wanted = false;
      stop();
    };
  }, [work]);
  if (work.keeper?.lasting !== 'device')
    return <p className="fine">Nothing is kept on this device from this page. Save each job as a file.</p>;
  return (
    <p className="fine storage">
      Kept in this browser on this device
      {room?.used != null && `: ${sizeText(room.used)} used`}
      {room?.free != null && ` of ${sizeText(room.free)}`}. {lastingText(room?.lasting ?? null)} A file is safer.
    </p>
  );
}

const lastingText = (lasting: boolean | null) =>
  lasting === true
    ? 'The browser has agreed not to throw it away.'
    : 'The browser may throw it away when room is short, and on some tablets after seven days without a visit unless the page is installed.';

/** What the browser says; it may say nothing, or forbid the question. */
async function roomNow(): Promise<Room> {
  const asked = async <T,>(ask: () => Promise<T> | undefined): Promise<T | null> => {
    try {
      return (await ask()) ?? null;
    } catch {
      return null;
    }
  };
  const [estimate, lasting] = await Promise.all([
    asked(() => navigator.storage?.estimate?.()),
    asked(() => navigator.storage?.persisted?.()),
  ]);
  return { used: estimate?.usage ?? null, free: estimate?.quota ?? null, lasting };
}
