/** From the text of a design file to a design, or to where and why it is none. */
import { jsonFault } from './jsonFault.ts';
import { type Validation, validateDesign } from './validate.ts';

/**
 * Characters: several times the greatest design there can be (profiles of 20,000 points all round). More is not even
 * looked into.
 */
const LONGEST_TEXT = 32_000_000;
/** Characters of what stands in the file, and of what the reader of JSON said, in a message. */
const LONGEST_FOUND = 24;
const LONGEST_REASON = 100;

/** Validates the text of a design file. */
export function parseDesign(text: string): Validation {
  if (text.length > LONGEST_TEXT)
    return refused(`the file has ${text.length} characters; a design has ${LONGEST_TEXT} at most`);
  let raw: unknown;
  try {
    raw = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch (error) {
    return refused(notJson(text, error as Error));
  }
  return validateDesign(raw);
}

const refused = (message: string): Validation => ({ ok: false, errors: [{ path: '', message }] });

function notJson(text: string, error: Error): string {
  if (text.trim() === '') return 'the file is empty; a design file is JSON and starts with {"conepair": 1, …}';
  const fault = jsonFault(text.replace(/^\uFEFF/, ' '));
  // Sound, and yet not read: nested deeper than any design.
  if (fault === null) return `not read (${error.message.slice(0, LONGEST_REASON)})`;
  const { line, column } = placeIn(text, fault.at);
  // Nothing of it is as in a design: it is another kind of file.
  if (text.slice(0, fault.at).trim() === '')
    return `not JSON: line ${line}, column ${column}: it begins with "${printed(text.trim().slice(0, 16))}", and a design begins with {. Choose a file that this program saved: its name ends in .conepair.json`;
  if (fault.open === 0 && text.slice(fault.at).trim() !== '')
    return `not JSON: line ${line}, column ${column}: something follows after the end of the design; take out what stands there`;
  if (text.slice(fault.at).trim() === '')
    return `not JSON: the file ends at line ${line}, column ${column}, before the design does${fault.open === 0 ? '' : ` (${fault.open} brackets are open)`}; what follows is missing`;
  const found = text.slice(fault.at, fault.at + LONGEST_FOUND).split('\n')[0]!;
  return `not JSON: line ${line}, column ${column}: found ${found === '' ? 'the end of the line' : `"${found}"`}; look for a missing comma, quote or bracket just before it`;
}

/** Signs that cannot be shown as points. */
const printed = (text: string) => text.replace(/[^\p{L}\p{N}\p{P}\p{S} ]/gu, '·');

function placeIn(text: string, at: number): { line: number; column: number } {
  let [line, start] = [1, 0];
  for (let end = text.indexOf('\n'); end >= 0 && end < at; end = text.indexOf('\n', start))
    [line, start] = [line + 1, end + 1];
  return { line, column: at - start + 1 };
}
