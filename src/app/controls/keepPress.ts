/**
 * A press that leaves a field is not lost. Leaving a field takes what is typed in it, and what follows from that may
 * move what stands below: between the button going down under the finger and coming up again, so that nothing is
 * pressed. While a field has the focus it is therefore left only as the press arrives, before whatever that does.
 */
import { flushSync } from 'react-dom';

const PRESSED = 'button, summary, a[href], input[type="checkbox"], input[type="radio"]';

/** From the field being entered on; what it returns ends it. */
export function keepPress(field: HTMLElement): () => void {
  const { ownerDocument } = field;
  let pressed: HTMLElement | null = null;
  const down = (event: MouseEvent) => {
    pressed = event.target instanceof Element ? event.target.closest<HTMLElement>(PRESSED) : null;
    // The field keeps the focus until then.
    if (pressed) event.preventDefault();
  };
  const click = (event: MouseEvent) => {
    const isSame = pressed !== null && event.target instanceof Node && pressed.contains(event.target);
    if (isSame) flushSync(() => pressed?.focus({ preventScroll: true }));
    pressed = null;
  };
  ownerDocument.addEventListener('mousedown', down, true);
  ownerDocument.addEventListener('click', click, true);
  return () => {
    ownerDocument.removeEventListener('mousedown', down, true);
    ownerDocument.removeEventListener('click', click, true);
  };
}
