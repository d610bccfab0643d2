/** How solve is called, and what it says of that. */
import type { SectionName } from '../report/report.ts';

/** What each section is, and when a report has it; in the order of the report. */
const SECTIONS: Record<SectionName, string> = {
  fit: 'which seat touches first, the film of every seat here, how far to move (always)',
  play: 'how the spindle sits, its shake and end play, where it sticks (with "play")',
  print: 'what marking blue would show (with "print")',
  film: 'the running oil film: pose, forces, friction, warming (with "run")',
  measure: 'the shape of the parts from the readings of the bench (with "readings")',
  cut: 'what to take off which surface, how, and when to stop (with "cut")',
  odds: 'how likely the pair works, of many drawn as they may be (with "odds"); pairs that are run ("odds.running") take\n             some minutes for 500 on a slow machine: fewer by "odds.running.draws"',
  belief: 'both parts as they most likely are, and how sure that is (with "readings", "priors" or trials)',
};
const SECTION_NAMES = Object.keys(SECTIONS) as SectionName[];

/** s; the work within each section is bounded by count besides, and takes a minute or two at most. */
const SECONDS = 300;
const MOST_SECONDS = 1_000_000;

export const USAGE = `usage: npm run -s solve -- [--only ${SECTION_NAMES.join(',')}] [--seconds ${SECONDS}] FILE…   (- reads standard input)`;

export const HELP = `${USAGE}

Solves designs (*.conepair.json): one line of JSON a file on standard output; its shape is assets/report.schema.json.
A file that is no valid design gets a line with its errors, and the others are still solved; so does one that is given up.

  --only NAMES  only these sections of the report, parted by commas:
${SECTION_NAMES.map((name) => `    ${name.padEnd(8)} ${SECTIONS[name]}`).join('\n')}
  --seconds N   a design that takes longer is given up; ${SECONDS} when left out
  -h, --help    this text

Exit status: 0 every file was solved; 1 a file is not a valid design, or was given up; 2 not called as above.
`;

export interface Call {
  files: string[];
  only: readonly SectionName[];
  seconds: number;
}

/** The call, or what is wrong with it. */
export function readCall(args: readonly string[]): Call | string {
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
