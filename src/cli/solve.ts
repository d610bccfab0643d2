/**
 * npm run -s solve -- [--only fit] FILE…      (- reads standard input)
 *
 * One line of JSON a file on standard output; on standard error one line for each file that could not be solved.
 * Exit status: 0 every file solved, 1 a file is not a valid design, 2 misuse.
 */
import { readFileSync } from 'node:fs';
import { parseDesign } from '../design/validate.ts';
import type { Report } from '../report/definition.ts';
import { SECTION_NAMES, type SectionName, solve } from '../report/report.ts';

const USAGE = `usage: npm run -s solve -- [--only ${SECTION_NAMES.join(',')}] FILE…   (- reads standard input)`;

/** What each section is, and when a report has it. */
const SECTIONS: Record<SectionName, string> = {
  fit: 'which seat touches first, the film of every seat here, how far to move (always)',
  play: 'how the spindle sits, its shake and end play, where it sticks (with "play")',
  print: 'what marking blue would show (with "print")',
  film: 'the running oil film: pose, forces, friction, warming (with "run")',
  measure: 'the shape of the parts from the readings of the bench (with "readings")',
  cut: 'what to take off which surface, how, and when to stop (with "cut")',
};

const HELP = `${USAGE}

Solves designs (*.conepair.json): one line of JSON a file on standard output; its shape is assets/report.schema.json.
A file that is no valid design gets a line with its errors, and the others are still solved.

  --only NAMES  only these sections of the report, parted by commas:
${SECTION_NAMES.map((name) => `    ${name.padEnd(8)} ${SECTIONS[name]}`).join('\n')}
  -h, --help    this text

Exit status: 0 every file was solved; 1 a file is not a valid design; 2 not called as above.
`;

const UNREADABLE: Record<string, string> = { ENOENT: 'there is no such file', EISDIR: 'it is a folder; name the files in it', EACCES: 'this user may not read it' };

interface Call {
  files: string[];
  only: readonly SectionName[];
}

function readCall(args: readonly string[]): Call | string {
  const files: string[] = [];
  let only: readonly SectionName[] = SECTION_NAMES;
  for (let i = 0; i < args.length; i++) {
    const arg = args[i]!;
    if (arg === '--only' || arg.startsWith('--only=')) {
      const names = (arg === '--only' ? args[++i] : arg.slice('--only='.length))?.split(',') ?? [];
      const wrong = names.find((name) => !(SECTION_NAMES as string[]).includes(name));
      if (names.length === 0 || wrong !== undefined) return `--only takes ${SECTION_NAMES.join(', ')}; found ${wrong === undefined ? 'nothing' : `"${wrong}"`}`;
      only = names as SectionName[];
    } else if (arg.startsWith('-') && arg !== '-') return `unknown option ${arg}`;
    else files.push(arg);
  }
  return files.length === 0 ? 'no file named' : { files, only };
}

function solveFile(file: string, only: readonly SectionName[]): Report {
  let text: string;
  try {
    text = readFileSync(file === '-' ? 0 : file, 'utf8');
  } catch (error) {
    return { conepair: 1, file, errors: [{ path: '', message: `cannot be read: ${UNREADABLE[(error as NodeJS.ErrnoException).code ?? ''] ?? (error as Error).message}` }] };
  }
  const result = parseDesign(text);
  return result.ok ? solve(result.design, file, only) : { conepair: 1, file, errors: result.errors };
}

const args = process.argv.slice(2);
const call = readCall(args);
if (args.includes('--help') || args.includes('-h')) {
  process.stdout.write(HELP);
} else if (typeof call === 'string') {
  process.stderr.write(`conepair: ${call}\n${USAGE}\n`);
  process.exitCode = 2;
} else {
  for (const file of call.files) {
    const report = solveFile(file, call.only);
    process.stdout.write(`${JSON.stringify(report)}\n`);
    const errors = report.errors?.length ?? 0;
    if (errors > 0) process.stderr.write(`${file}: ${errors} ${errors === 1 ? 'error' : 'errors'}, see its line\n`);
    if (report.errors) process.exitCode = 1;
  }
}
