/**
 * npm run -s solve -- [--only fit] [--seconds 300] FILE…      (- reads standard input)
 *
 * One line of JSON a file on standard output; on standard error one line for each file that could not be solved. Each
 * is solved in a thread beside this one, so that a design that takes too long, or a fault of the program, costs its own
 * line only.
 */
import { once } from 'node:events';
import type { Worker } from 'node:worker_threads';
import { milliseconds } from '../design/dimension.ts';
import { type Call, HELP, readCall, USAGE } from './call.ts';
import { readBytes } from './readBytes.ts';
import type { Answered, Asked } from './solver.ts';
import { threadOf } from './thread.ts';

let thread: Worker | null = null;

async function endThread(): Promise<void> {
  await thread?.terminate();
  thread = null;
}

/** The line of one file, and what standard error says of it (empty where all is well). */
async function lineOf(file: string, { only, seconds }: Call): Promise<{ line: string; said: string }> {
  const failed = (message: string) => JSON.stringify({ conepair: 1, file, errors: [{ path: '', message }] });
  const bytes = readBytes(file);
  if (typeof bytes === 'string') return { line: failed(`cannot be read: ${bytes}`), said: '1 error' };
  thread ??= threadOf(new URL('./solver.ts', import.meta.url));
  const late = new AbortController();
  const timer = setTimeout(() => late.abort(), milliseconds(seconds));
  try {
    thread.postMessage({ file, bytes, only } satisfies Asked);
    const [{ line, errors }] = (await once(thread, 'message', { signal: late.signal })) as [Answered];
    return { line, said: errors === 0 ? '' : `${errors} ${errors === 1 ? 'error' : 'errors'}` };
  } catch (error) {
    await endThread();
    if (late.signal.aborted)
      return {
        line: failed(
          `given up: it takes more than ${seconds} s to solve (--seconds allows more, --only asks for less)`,
        ),
        said: `given up after ${seconds} s`,
      };
    return {
      line: failed(`a fault of the program, please report this design: ${(error as Error).message.slice(0, 200)}`),
      said: 'a fault of the program',
    };
  } finally {
    clearTimeout(timer);
  }
}

const args = process.argv.slice(2);
const call = readCall(args);
// Whoever reads may have read enough (| head -1): nothing is left to say.
process.stdout.on('error', (error: NodeJS.ErrnoException) =>
  process.exit(error.code === 'EPIPE' ? (process.exitCode ?? 0) : 1),
);
if (args.includes('--help') || args.includes('-h')) {
  process.stdout.write(HELP);
} else if (typeof call === 'string') {
  process.stderr.write(`conepair: ${call}\n${USAGE}\n`);
  process.exitCode = 2;
} else {
  for (const file of call.files) {
    const { line, said } = await lineOf(file, call);
    process.stdout.write(`${line}\n`);
    if (said !== '') {
      process.stderr.write(`${file}: ${said}, see its line\n`);
      process.exitCode = 1;
    }
  }
  await endThread();
}
