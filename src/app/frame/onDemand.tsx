/**
 * A part of the screen that is loaded when it is first shown: says while it loads, and when it cannot be, with how to
 * go on.
 */
import { type ComponentType, lazy, Suspense, useState } from 'react';
import { Guard, NotLoaded } from './Guard.tsx';

interface Words {
  /** what the part is, as a sentence begins */
  what: string;
  /** stands where the part will */
  loading?: string;
}

type Load<P> = () => Promise<{ default: ComponentType<P> }>;

export function onDemand<P extends object>(load: Load<P>, { what, loading = 'Loading.' }: Words): ComponentType<P> {
  const made = () =>
    lazy(() =>
      stylesAgain()
        .then(load)
        .catch((reason: unknown) => {
          failedLast = true;
          throw new NotLoaded(reason);
        }),
    );
  let failedLast = false;
  // One for all places it stands in: what is loaded is loaded once.
  let part = made();
  const anew = () => {
    failedLast = false;
    part = made();
  };
  // biome-ignore lint/correctness/noComponentHookFactories: made once for every part, as lazy() is
  return function OnDemand(props: P) {
    const [, redraw] = useState(() => {
      // Come back to, it may be had by now.
      if (failedLast) anew();
      return 0;
    });
    const again = () => {
      anew();
      redraw((times) => times + 1);
    };
    const Part = part;
    return (
      <Guard what={what} again={again}>
        <Suspense fallback={<p className="loading">{loading}</p>}>
          <Part {...props} />
        </Suspense>
      </Guard>
    );
  };
}

/** Style sheets that could not be loaded. Whoever asked for them takes it that they are there, and never asks again. */
const failed = new Set<HTMLLinkElement>();

document.addEventListener(
  'error',
  ({ target }) => {
    if (target instanceof HTMLLinkElement && target.rel === 'stylesheet') failed.add(target);
  },
  true,
);

async function stylesAgain(): Promise<void> {
  const links = [...failed];
  failed.clear();
  await Promise.all(links.map(loadedAnew));
}

function loadedAnew(link: HTMLLinkElement): Promise<void> {
  const another = link.cloneNode() as HTMLLinkElement;
  return new Promise((resolve, reject) => {
    another.addEventListener('load', () => resolve());
    another.addEventListener('error', () => reject(new Error(`${link.href} was not loaded`)));
    link.replaceWith(another);
  });
}
