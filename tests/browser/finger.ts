/** A finger as the browser itself takes it: it may scroll the page by it, as it does in a hand. */
import { cdp } from 'vitest/browser';
import { frame } from './page.tsx';

interface Devices {
  send(
    method: 'Input.dispatchTouchEvent',
    event: { type: string; touchPoints: { x: number; y: number }[] },
  ): Promise<void>;
}

/** Where the page with the test stands in the window that the devices know. */
function within() {
  const { left, top, width } = window.frameElement!.getBoundingClientRect();
  return { left, top, scale: width / window.innerWidth };
}

export async function finger(type: 'touchStart' | 'touchMove' | 'touchEnd', at: { x: number; y: number } | null) {
  const { left, top, scale } = within();
  const touchPoints = at ? [{ x: left + scale * at.x, y: top + scale * at.y }] : [];
  await (cdp() as unknown as Devices).send('Input.dispatchTouchEvent', { type, touchPoints });
  await frame();
}

export const middle = ({ left, top, width, height }: DOMRect) => ({ x: left + width / 2, y: top + height / 2 });

/** What ended the drags of an element. */
export function endsOf(element: Element): string[] {
  const ended: string[] = [];
  for (const name of ['pointerup', 'pointercancel']) element.addEventListener(name, () => ended.push(name));
  return ended;
}
