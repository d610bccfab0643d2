/**
 * npm run -s solve -- [--only fit] [--seconds 300] FILE…      (- reads standard input)
 *
 * One line of JSON a file on standard output; on standard error one line for each file that could not be solved. Each
 * is solved in a thread beside this one, so that a design that takes too long, or a fault of the program, costs its own
 * line only.
 */
import { once } from 'node:events';
import type { Worker } from 'node:worker_threads';
import type { SectionName } from '../report/report.ts';
import { readBytes } from './readBytes.ts';
import type { Answered, Asked } from './solver.ts';
import { threadOf } from './thread.ts';

/** What each section is, and when a report has it; in the order of the report. */
const SECTIONS: Record<SectionName, string> = {
  fit: 'which seat touches first, the film of every seat here, how far to move (always)',
  play: 'how the spindle sits, its shake and end play, where it sticks (with "play")',
  print: 'what marking blue would show (with "print")',
  film: 'the running oil film: pose, forces, friction, warming (with "run")',
  measure: 'the shape of the parts from the readings of the bench (with "readings")',
  cut: 'what to take off which surface, how, and when to stop (with "cut")',
  odds: 'how likely the pair works, of many drawn as they may be (with "odds")',
  belief: 'both parts as they most likely are, and how sure that is (with "readings", "priors" or trials)',
};
const SECTION_NAMES = Object.keys(SECTIONS) as SectionName[];

/** s; the work within each section is bounded by count besides, and takes a minute at most. */
const SECONDS = 300;
const MOST_SECONDS = 1_000_000;

const USAGE = `usage: npm run -s solve -- [--only ${SECTION_NAMES.join(',')}] [--seconds ${SECONDS}] FILE…   (- reads standard input)`;

const HELP = `${USAGE}

Solves designs (*.conepair.json): one line of JSON a file on standard output; its shape is assets/report.schema.json.
A file that is no valid design gets a line with its errors, and the others are still solved; so does one that is given up.

  --only NAMES  only these sections of the report, parted by commas:
${SECTION_NAMES.map((name) => `    ${name.padEnd(8)} ${SECTIONS[name]}`).join('\n')}
  --seconds N   a design that takes longer is given up; ${SECONDS} when left out
  -h, --help    this text

Exit status: 0 every file was solved; 1 a file is not a valid design, or was given up; 2 not called as above.
`;

interface Call {
  files: string[];
  only: readonly SectionName[];
  seconds: number;
}

function readCall(args: readonly string[]): Call | string {
  const call: Call = { files: [], only: SECTION_NAMES, seconds: SECONDS };
  for (let i = 0; i < args.length; i++) {
    const [, option, own] = /^(--\w+)(?:=(.*))?$/s.exec(args[i]!) ?? [];
    const value = () => own ?? args[++i];
    if (option === '--only') {
      const names = value()?.split(',') ?? [];
      const wrong = names.find((name) => !(SECTION_NAMES as string[]).includes(name));
      if (names.length === 0 || wrong !== undefined)
        return `--only takes ${SECTION_NAMES.join(', ')}; found ${wrong === undefined ? 'nothing' : `"${wrong}"`}`;
      call.only = names as SectionName[];
    } else if (option === '--seconds') {
      const seconds = value();
      call.seconds = Number(seconds);
      if (!seconds || !(call.seconds > 0 && call.seconds <= MOST_SECONDS))
        return `--seconds takes a number of seconds above 0; found ${seconds ? `"${seconds}"` : 'nothing'}`;
    } else if (args[i]!.startsWith('-') && args[i] !== '-') return `unknown option ${args[i]}`;
    else call.files.push(args[i]!);
  }
  return call.files.length === 0 ? 'no file named' : call;
}

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
  const timer = setTimeout(() => late.abort(), 1000 * seconds);
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
