import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseAst } from 'vite';
import { expect, test } from 'vitest';

const top = fileURLToPath(new URL('../', import.meta.url));
const git = (...args: string[]) =>
  execFileSync('git', args, { cwd: top, encoding: 'utf8' })
    .split('\0')
    .filter((file) => file !== '');
const tracked = git('ls-files', '-z');
/** Files not yet committed too, so that a slip shows before the commit; not those deleted. */
const gone = new Set(git('ls-files', '-z', '--deleted'));
const files = [...new Set([...tracked, ...git('ls-files', '-z', '--others', '--exclude-standard')])].filter(
  (file) => !gone.has(file),
);
const sources = files.filter((file) => /^src\/.*\.(tsx?|mjs)$/.test(file));

/** Lowest first: a layer may import itself and those before it; src/cli, at the edge, may import any. */
const LAYERS = ['design', 'engine', 'report', 'lessons', 'jobs', 'worker', 'app'];
const rank = (file: string) => LAYERS.indexOf(file.split('/')[1] ?? '');

/** Comments and the words in them are no code. */
const codeOf = (file: string) =>
  readFileSync(join(top, file), 'utf8').replace(/\/\*[\s\S]*?\*\/|(?<=^|\s)\/\/.*$/gm, '');
const importsOf = (code: string) =>
  [...code.matchAll(/(?:\bfrom\s*|\bimport\s*\(?\s*|\bnew URL\(\s*)['"]([^'"]+)['"]/g)].map((m) => m[1]!);

test('imports run one way: app, worker, jobs, lessons, report, engine, design', () => {
  const wrong = sources.flatMap((file) =>
    importsOf(codeOf(file))
      .filter((name) => name.startsWith('.'))
      .map((name) => normalize(join(dirname(file), name)))
      .filter((target) => rank(file) >= 0 && (rank(target) > rank(file) || target.startsWith('src/cli/')))
      .map((target) => `${file} imports ${target}`),
  );
  expect(sources.length).toBeGreaterThan(5);
  expect(wrong).toEqual([]);
});

test('screens meet the report only', () => {
  const wrong = sources
    .filter((file) => /^src\/(app|worker|jobs)\//.test(file))
    .flatMap((file) =>
      importsOf(codeOf(file))
        .filter((name) => /(^|\/)engine\//.test(name))
        .map(
          (name) =>
            `${file} imports ${name}: what the engine answers comes worded, in the units of the file, from src/report; what a hand that drags needs within a frame stands in src/report/inFrame.ts`,
        ),
    );
  expect(wrong).toEqual([]);
});

test('design, engine, report and lessons know no screen', () => {
  const wrong = sources
    .filter((file) => rank(file) >= 0 && rank(file) < LAYERS.indexOf('jobs'))
    .flatMap((file) => {
      const code = codeOf(file);
      const packages = importsOf(code).filter(
        (name) =>
          /^(react|react-dom|three|leva|zustand|zundo|d3-[a-z]+|@react-three\/[a-z]+)(\/|$)/.test(name) ||
          name.startsWith('node:'),
      );
      const globals = [
        ...code
          .replace(/(['"`])(?:\\.|(?!\1)[^\\])*\1/g, "''")
          .matchAll(/(?<![.\w])(window|document|navigator|localStorage)\s*[.[(]/g),
      ].map((m) => m[1]!);
      return [...packages, ...globals].map((name) => `${file} uses ${name}`);
    });
  expect(wrong).toEqual([]);
});

test('the engine solves: the report asks engine/run, and a verdict is handed its sections', () => {
  const reports = sources.filter((file) => file.startsWith('src/report/'));
  const solving =
    /engine\/(algebra\/\w+|film\/(equilibrium|descent|positionSearch|stiffness)|heat\/(warmFilm|warmUp)|play\/(push|nearest|polish))\.ts$/;
  const solves = reports.flatMap((file) =>
    [...codeOf(file).matchAll(/^import (?!type )(\{[^}]*\}) from '([^']+)'/gm)]
      .filter(([, names, from]) => solving.test(from!) && /[{,] *(?!type )\w/.test(names!))
      .map(
        ([, , from]) => `${file} imports ${from}: what is solved belongs to src/engine/run, in SI and without words`,
      ),
  );
  const computes = reports
    .filter((file) => /verdict\.ts$/i.test(file))
    .flatMap((file) =>
      [...codeOf(file).matchAll(/\b(?:fit|play|print|film|measure|cut)Section\b/g)].map(
        ([name]) =>
          `${file} uses ${name}: a verdict words what it is handed, so that no screen computes a section twice`,
      ),
    );
  expect([...solves, ...computes]).toEqual([]);
});

test('the top level holds only what belongs there', () => {
  const allowed = new Set([
    'README.md',
    'DEVELOPERS.md',
    'package.json',
    'package-lock.json',
    'tsconfig.json',
    'vite.config.ts',
    'src',
    'tests',
    'assets',
  ]);
  const names = new Set(tracked.map((file) => file.split('/')[0]!));
  expect([...names].filter((name) => !name.startsWith('.') && !allowed.has(name))).toEqual([]);
});

test('the lock file names no registry', () => {
  const { packages } = JSON.parse(readFileSync(join(top, 'package-lock.json'), 'utf8')) as {
    packages: Record<string, { resolved?: string }>;
  };
  expect(Object.entries(packages).flatMap(([place, { resolved }]) => (resolved === undefined ? [] : [place]))).toEqual(
    [],
  );
  expect(readFileSync(join(top, 'package-lock.json'), 'utf8')).not.toMatch(/"https?:\/\/[^"]*\.tgz"/);
});

test('comments keep within 120 columns, which the formatter sees to in code', () => {
  const kept = files.filter((file) => /^(src|tests)\/.*\.tsx?$/.test(file));
  // A word to the linter stands on one line.
  const isLong = (line: string) =>
    line.length > 120 && /^\s*(\/\*\*|\*|\/\/) /.test(line) && !line.includes('biome-ignore');
  const long = kept.flatMap((file) =>
    readFileSync(join(top, file), 'utf8')
      .split('\n')
      .flatMap((line, i) => (isLong(line) ? [`${file}:${i + 1} is ${line.length} long`] : [])),
  );
  expect(long).toEqual([]);
});

/** A thousand or a thousandth, their powers, and what turns degrees or a minute's turns into radians. */
const isFactor = (value: number) =>
  value === 30 || value === 180 || [3, 6, 9].some((power) => value === 10 ** power || value === 1 / 10 ** power);

type Node = Record<string, unknown> & { type: string };

/** Every node of the tree of a file's syntax, with the text it stands for: names, texts and comments are no code. */
const nodesOf = (file: string): { node: Node; text: string }[] => {
  const code = readFileSync(join(top, file), 'utf8');
  const found: { node: Node; text: string }[] = [];
  const walk = (value: unknown): void => {
    if (typeof value !== 'object' || value === null) return;
    if (!Array.isArray(value) && 'type' in value) {
      const node = value as Node;
      found.push({ node, text: code.slice(node.start as number, node.end as number) });
    }
    Object.values(value).forEach(walk);
  };
  walk(parseAst(code, { lang: file.endsWith('x') ? 'tsx' : 'ts' }));
  return found;
};

/** Products and quotients with such a number; only files that have one are looked into. */
const rawFactors = (file: string): string[] =>
  (/\b(30|180|1_?000(_000){0,2}|1e-?[369]|0\.(0{2}|0{5}|0{8})1)\b/.test(codeOf(file)) ? nodesOf(file) : []).flatMap(
    ({ node, text }) =>
      node.type === 'BinaryExpression' &&
      (node.operator === '*' || node.operator === '/') &&
      [node.left, node.right].some((side) => {
        const { type, value } = side as Node;
        return type === 'Literal' && typeof value === 'number' && isFactor(value);
      })
        ? [text]
        : [],
  );

/** What one unit is in another, and how a person types and reads them. */
const UNITS = ['src/design/dimension.ts', 'src/design/units.ts'];

test('what turns one unit into another stands once', () => {
  expect(rawFactors(UNITS[0]!).length).toBeGreaterThan(10);
  const wrong = sources
    .filter((file) => !UNITS.includes(file))
    .flatMap((file) =>
      rawFactors(file).map(
        (what) =>
          `${file}: ${what}: what turns one unit into another stands once, with its name, in src/design/dimension.ts; a number that is no unit gets a name of its own`,
      ),
    );
  expect(wrong).toEqual([]);
});

/** Selectors of a style sheet that stand in no other rule, those in a media query with them. */
function outerSelectors(css: string): string[] {
  const found: string[] = [];
  const within: boolean[] = [];
  let text = '';
  for (const character of css.replace(/\/\*[\s\S]*?\*\//g, '')) {
    if (character === '{') {
      const isRule = !/^\s*@(media|container)/.test(text);
      if (isRule && !within.includes(true))
        found.push(...text.split(/,(?![^(]*\))/).map((selector) => selector.trim()));
      within.push(isRule);
    } else if (character === '}') within.pop();
    text = /[{};]/.test(character) ? '' : text + character;
  }
  return found;
}

/** Sheets of a piece that several screens show: what all that is in them begins with. */
const PIECES: Record<string, RegExp> = {
  'fit/lenses.css': /^\.lens(es)?\b/,
  'fit/print.css': /^\.(prints?|rear-end|angles)\b/,
  'measure/setUp.css': /^\.set-up\b/,
  'new/newJob.css': /^\.new-job$/,
};

test('the sheet of a screen styles that screen alone: a sheet stays once it is loaded', () => {
  const sheets = files.filter((file) => /^src\/app\/screens\/.*\.css$/.test(file));
  expect(sheets.length).toBeGreaterThan(8);
  const wrong = sheets.flatMap((file) => {
    const [, folder, rest] = /screens\/(\w+)\/(.*)$/.exec(file)!;
    const own = PIECES[`${folder}/${rest}`] ?? new RegExp(`^\\.at-${folder}$`);
    return outerSelectors(readFileSync(join(top, file), 'utf8'))
      .filter((selector) => !own.test(selector) && !/^(:root|\.app):has\(\.|^@keyframes/.test(selector))
      .map((selector) => `${file}: ${selector}: would style other screens once this one was visited`);
  });
  expect(wrong).toEqual([]);
});

test('a test that puts something in the place of a module or a global shares none with others', () => {
  const replacing = files.filter(
    (file) =>
      /^tests\/(?!browser\/|built\/).*\.test\.tsx?$/.test(file) &&
      /\bvi\s*\.(?:mock|doMock|stubGlobal|stubEnv)\(|\bglobalThis(?:\.\w+| as [^)]*\)\.\w+)\s*=[^=>]/.test(
        codeOf(file),
      ),
  );
  const alone = /const ALONE = \[([\s\S]*?)\]/.exec(readFileSync(join(top, 'vite.config.ts'), 'utf8'))![1]!;
  expect(replacing.length).toBeGreaterThan(2);
  expect(replacing.filter((file) => !alone.includes(`'${file}'`))).toEqual([]);
});

test('colours of the solid pictures come from the tokens', () => {
  const solid = sources.filter(
    (file) => /^src\/app\/pictures\/(solid\/|Scene|Stage|Straightened)/.test(file) || /\/RunScene\.tsx$/.test(file),
  );
  expect(solid.length).toBeGreaterThan(10);
  const wrong = solid.filter((file) => /['"`]#[0-9a-f]{3,8}['"`]|\b0x[0-9a-f]{6}\b/i.test(codeOf(file)));
  expect(wrong.map((file) => `${file}: a colour of its own: colours stand in src/app/frame/tokens.css`)).toEqual([]);
});

test('the inch stands once', () => {
  const wrong = sources.filter(
    (file) => /\b(25\.4|0\.0?254)(?!\d)/.test(codeOf(file)) && file !== 'src/design/units.ts',
  );
  expect(codeOf('src/design/units.ts')).toContain('INCH = 25.4');
  expect(wrong.map((file) => `${file} says an inch: INCH stands in src/design/units.ts`)).toEqual([]);
});

test('what is exported is asked for somewhere', () => {
  const words = new Map(
    files.filter((file) => /\.(tsx?|mjs)$/.test(file)).map((file) => [file, new Set(codeOf(file).match(/\w+/g))]),
  );
  const exported = /^export (?:abstract )?(?:class|const|let|function\*?|async function) (\w+)/gm;
  const wrong = sources.flatMap((file) =>
    [...codeOf(file).matchAll(exported)]
      .filter(([, name]) => ![...words].some(([other, has]) => other !== file && has.has(name!)))
      .map(([, name]) => `${file}: ${name} is exported, and nobody asks for it`),
  );
  expect(wrong).toEqual([]);
});

test('a name that the engine exports stands in one file of it', () => {
  const declared = /^export (?:abstract )?(?:type|interface|class|const|let|function\*?|async function) (\w+)/gm;
  const places = new Map<string, string[]>();
  for (const file of sources.filter((name) => name.startsWith('src/engine/')))
    for (const [, name] of codeOf(file).matchAll(declared)) places.set(name!, [...(places.get(name!) ?? []), file]);
  expect(places.size).toBeGreaterThan(100);
  const twice = [...places]
    .filter(([, found]) => found.length > 1)
    .map(
      ([name, found]) =>
        `${name} in ${found.join(' and ')}: a word means one thing; share one, or name each by its field`,
    );
  expect(twice).toEqual([]);
});

test('a file that a comment names is there', () => {
  const missing = files
    .filter((file) => /^(src|tests)\/.*\.(tsx?|css)$/.test(file) || /^[A-Z]+\.md$/.test(file))
    .flatMap((file) => {
      const text = readFileSync(join(top, file), 'utf8');
      const said = file.endsWith('.md') ? [text] : (text.match(/\/\*[\s\S]*?\*\/|(?<=^|\s)\/\/.*$/gm) ?? []);
      return said
        .flatMap((words) => words.match(/[\w/.]*\w\.tsx?\b/g) ?? [])
        .map((name) => name.replace(/^[./]+/, ''))
        .filter((name) => !files.some((other) => other === name || other.endsWith(`/${name}`)))
        .map((name) => `${file} tells of ${name}, which is not there`);
    });
  expect(missing).toEqual([]);
});

/** What a file may keep for all who use it, and why it cannot stand with one of them. */
const KEPT: Record<string, string> = {
  'src/app/pictures/canDraw.ts': 'asking takes a second, and the answer is of the machine',
  'src/app/pictures/textWidth.ts': 'one canvas to measure on, of the page',
  'src/app/state/useSolved.ts': 'a module that is loaded, once',
  'src/app/glossary/Explained.tsx': 'a module that is loaded, once',
  'src/app/state/runningOdds.ts': 'who uses the one crew',
  'src/engine/belief/draws.ts':
    'a sequence that follows from its seed alone; made anew it takes longer than a key press',
  'src/cli/solve.ts': 'the one thread of the process',
};

test('types are told, and nothing changes at the top of a module without a reason', () => {
  const typed = sources
    .filter((file) => /\bany\b/.test(codeOf(file)) && !file.endsWith('.mjs'))
    .filter((file) => nodesOf(file).some(({ node }) => node.type === 'TSAnyKeyword'))
    .map((file) => `${file}: any: say what it is, or unknown and look`);
  const changing = sources
    .filter((file) => /^(export )?let /m.test(codeOf(file)) && !(file in KEPT))
    .map((file) => `${file}: what changes belongs to whoever uses it; if it cannot, say why in KEPT of this test`);
  expect([...typed, ...changing]).toEqual([]);
});

/** First line and length of what a file declares as function, by its indentation. */
const functionsOf = (lines: readonly string[]) =>
  lines.flatMap((line, i) => {
    const [, indent] = /^(\s*)(?:export )?(?:async )?(?:function\b|const \w+ = .*=> \{$)/.exec(line) ?? [];
    if (indent === undefined) return [];
    const end = lines.findIndex((other, k) => k > i && new RegExp(`^${indent}\\}[;)]?;?$`).test(other));
    return end < 0 ? [] : [{ at: i, size: end - i + 1 }];
  });

test('files over 300 lines and functions over 60 say why they are left whole', () => {
  const looked = sources.filter((file) => /^src\/(design|engine|report|lessons)\//.test(file));
  let functions = 0;
  const long = looked.flatMap((file) => {
    const lines = readFileSync(join(top, file), 'utf8').trimEnd().split('\n');
    const found = functionsOf(lines);
    functions += found.length;
    const says = (from: number, to: number, size: number) =>
      lines.slice(Math.max(0, from), to).some((line) => line.includes(`Over ${size} lines and left whole: `));
    return [
      ...(lines.length > 300 && !says(0, 12, 300) ? [`${file} has ${lines.length} lines`] : []),
      ...found
        .filter(({ at, size }) => size > 60 && !says(at - 6, at, 60))
        .map(({ at, size }) => `${file}:${at + 1} a function of ${size} lines`),
    ].map((what) => `${what}: take a second idea out, or say above “Over … lines and left whole: why”`);
  });
  expect(functions).toBeGreaterThan(500);
  expect(long).toEqual([]);
});
