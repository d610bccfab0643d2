/** The thread that solves: from the bytes of a file to its report. */
import { parentPort } from 'node:worker_threads';
import { decodedText } from '../design/decodedText.ts';
import { parseDesign } from '../design/parse.ts';
import type { Report } from '../report/definition.ts';
import { type SectionName, solve } from '../report/report.ts';

export interface Asked {
  file: string;
  bytes: Uint8Array;
  only: readonly SectionName[];
}

export interface Answered {
  /** the report as a line of JSON */
  line: string;
  errors: number;
}

function reportOf({ file, bytes, only }: Asked): Report {
  const result = parseDesign(decodedText(bytes));
  return result.ok ? solve(result.design, file, only) : { conepair: 1, file, errors: result.errors };
}

parentPort!.on('message', (asked: Asked) => {
  const report = reportOf(asked);
  parentPort!.postMessage({ line: JSON.stringify(report), errors: report.errors?.length ?? 0 } satisfies Answered);
});
