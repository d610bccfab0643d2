/** A link too long to be read out: copied by a press, or marked and copied by hand. */
import { useState } from 'react';

export function LinkToCopy({ link }: { link: string }) {
  const [said, setSaid] = useState('');
  const copy = () =>
    navigator.clipboard.writeText(link).then(
      () => setSaid('The link is copied.'),
      () => setSaid('This browser lets nothing be copied: mark the link and copy it by hand.'),
    );
  return (
    <>
      <p className="buttons">
        <button type="button" onClick={() => void copy()}>
          Copy the link
        </button>
        <span role="status">{said}</span>
      </p>
      <textarea
        className="link-to-copy"
        readOnly
        rows={3}
        aria-label="The link"
        value={link}
        onFocus={({ target }) => target.select()}
      />
    </>
  );
}
