/** A rule for the printed page while the Sheet is shown; by script, since the page may hold no style of its own. */
import { useLayoutEffect } from 'react';

export function usePageRule(rule: string): void {
  useLayoutEffect(() => {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(rule);
    document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
    return () => {
      document.adoptedStyleSheets = document.adoptedStyleSheets.filter((one) => one !== sheet);
    };
  }, [rule]);
}
