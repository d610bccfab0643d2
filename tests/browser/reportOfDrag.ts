/** What a drag asks of the report, for the drag benchmark to time in the browser: the fit of a design and its words. */
import { DEMOS } from '../../src/app/state/demos.ts';
import { fitSection } from '../../src/report/fit/section.ts';
import { fitVerdict } from '../../src/report/fit/verdict.ts';

/** ms of each of `count` drag events on the first demo. */
export function times(count: number): number[] {
  const { design } = DEMOS[0]!;
  return Array.from({ length: count }, (_, i) => {
    const moved = { ...design, position: 0.02 * Math.sin(i / 9) };
    const begun = performance.now();
    fitVerdict(moved, fitSection(moved), 'metric');
    return performance.now() - begun;
  });
}
