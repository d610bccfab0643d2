/** The words of screens, verdicts and hints, as they stand in the source: text between tags, and strings. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const top = fileURLToPath(new URL('../../../src/', import.meta.url));

/** The glossary itself, and the page that shows it, prove nothing. */
const OWN = /app\/glossary\/|screens\/words\//;

const filesUnder = (folder: string): string[] =>
  readdirSync(`${top}${folder}`, { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.tsx?$/.test(name))
    .map((name) => `${folder}/${name}`)
    .filter((name) => !OWN.test(name));

function textsOf(file: string): string[] {
  const code = readFileSync(`${top}${file}`, 'utf8')
    .replace(/\/\*[\s\S]*?\*\/|(?<=^|\s)\/\/.*$/gm, '')
    .replace(/^import .*$/gm, '')
    .replace(/\$\{[^}]*\}/g, ' ');
  const strings = [...code.matchAll(/'((?:[^'\\\n]|\\.)*)'|`([^`]*)`|>([^<>{}=;]+)</g)];
  return strings.map(([, quoted, template, between]) => (quoted ?? template ?? between)!.replace(/\s+/g, ' '));
}

/** Of code a string is one word in small letters, or in camels: of a sentence it has a blank or a capital. */
const isSaid = (text: string) => / /.test(text.trim()) || /^[A-Z]/.test(text.trim());

export const wordsOfScreens = (): string[] =>
  ['app', 'report', 'design', 'lessons']
    .filter((folder) => existsSync(`${top}${folder}`))
    .flatMap(filesUnder)
    .flatMap(textsOf)
    .filter(isSaid);
