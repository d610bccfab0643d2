/**
 * Where a text stops being JSON (RFC 8259): engines word it differently, and some tell no place. One pass, and no
 * deeper than a list of what is open, however deep it is nested.
 */
interface JsonFault {
  /** the first character that does not go on; the length of the text where it only ends too early */
  at: number;
  /** brackets still open there */
  open: number;
}

type Wanted = 'value' | 'valueOrEnd' | 'key' | 'keyOrEnd' | 'colon' | 'commaOrEnd' | 'nothing';

const SPACE = ' \t\n\r';
const WORDS = ['true', 'false', 'null'];
const CLOSING: Record<string, string> = { '{': '}', '[': ']' };

/** Null where the text is JSON. */
export function jsonFault(text: string): JsonFault | null {
  const open: string[] = [];
  let wanted: Wanted = 'value';
  let at = 0;
  for (;;) {
    while (at < text.length && SPACE.includes(text[at]!)) at++;
    if (at >= text.length) return wanted === 'nothing' ? null : { at: text.length, open: open.length };
    const sign = text[at]!;
    const inner = open[open.length - 1];
    const fault = { at, open: open.length };
    const after = (): Wanted => (open.length === 0 ? 'nothing' : 'commaOrEnd');
    if (
      (wanted === 'commaOrEnd' || wanted === 'keyOrEnd' || wanted === 'valueOrEnd') &&
      inner !== undefined &&
      sign === CLOSING[inner]
    ) {
      open.pop();
      at++;
      wanted = after();
    } else if (wanted === 'commaOrEnd' && sign === ',') {
      at++;
      wanted = inner === '{' ? 'key' : 'value';
    } else if (wanted === 'colon' && sign === ':') {
      at++;
      wanted = 'value';
    } else if (wanted === 'key' || wanted === 'keyOrEnd') {
      if (sign !== '"') return fault;
      const end = endOfString(text, at);
      if (typeof end !== 'number') return { ...fault, at: end.at };
      at = end;
      wanted = 'colon';
    } else if ((wanted === 'value' || wanted === 'valueOrEnd') && (sign === '{' || sign === '[')) {
      open.push(sign);
      at++;
      wanted = sign === '{' ? 'keyOrEnd' : 'valueOrEnd';
    } else if (wanted === 'value' || wanted === 'valueOrEnd') {
      const end = endOfScalar(text, at);
      if (typeof end !== 'number') return { ...fault, at: end.at };
      at = end;
      wanted = after();
    } else return fault;
  }
}

type End = number | { at: number };

function endOfScalar(text: string, at: number): End {
  if (text[at] === '"') return endOfString(text, at);
  if (text[at] === '-' || isDigit(text[at])) return endOfNumber(text, at);
  for (const word of WORDS) {
    if (text[at] !== word[0]) continue;
    for (let k = 1; k < word.length; k++) if (text[at + k] !== word[k]) return { at: at + k };
    return at + word.length;
  }
  return { at };
}

/** Past the closing quote. */
function endOfString(text: string, from: number): End {
  for (let at = from + 1; at < text.length; at++) {
    const sign = text[at]!;
    if (sign === '"') return at + 1;
    if (sign < ' ') return { at };
    if (sign !== '\\') continue;
    at++;
    if (at >= text.length) break;
    if (text[at] === 'u') {
      for (let k = 1; k <= 4; k++) if (!isHex(text[at + k])) return { at: Math.min(text.length, at + k) };
      at += 4;
    } else if (!'"\\/bfnrt'.includes(text[at]!)) return { at };
  }
  return { at: text.length };
}

/** Past the last digit of -1.5e+3. */
function endOfNumber(text: string, from: number): End {
  let at = text[from] === '-' ? from + 1 : from;
  const digits = () => {
    const first = at;
    while (isDigit(text[at])) at++;
    return at > first;
  };
  if (text[at] === '0') at++;
  else if (!digits()) return { at };
  if (text[at] === '.') {
    at++;
    if (!digits()) return { at };
  }
  if (text[at] === 'e' || text[at] === 'E') {
    at++;
    if (text[at] === '+' || text[at] === '-') at++;
    if (!digits()) return { at };
  }
  return at;
}

const isDigit = (sign: string | undefined) => sign !== undefined && sign >= '0' && sign <= '9';
const isHex = (sign: string | undefined) => sign !== undefined && '0123456789abcdefABCDEF'.includes(sign);
