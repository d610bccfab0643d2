/** What the page is told of the job that is kept. */
import type { OpenJob } from './shelf.ts';

export type Outcome = 'kept' | 'full' | 'failed';

export interface Hears {
  outcome(outcome: Outcome): void;
  /** Whether this window may write the job at work. */
  held(held: boolean): void;
  /** The job at work is now as another window left it. */
  followed(job: OpenJob): void;
  /** The browser threw away what was kept; the job at work is being kept anew. */
  evicted(): void;
  /** The list of jobs changed. */
  listed(): void;
  /** The job was changed for a while without a file of it; `saved`: when (ms) its newest one was, null: never. */
  remind(saved: number | null): void;
}

export const SILENT: Hears = {
  outcome() {},
  held() {},
  followed() {},
  evicted() {},
  listed() {},
  remind() {},
};
