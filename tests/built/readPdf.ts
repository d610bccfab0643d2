/**
 * Reads back what Chromium wrote as a PDF: pages with their size and every run of text where it is drawn, and whether
 * every font is within the file. Knows no more of the format than that writer uses: objects in plain, content deflated,
 * text shown by Tj with hexadecimal strings, fonts with a ToUnicode map.
 * @source ISO32000-1
 */
import { inflateSync } from 'node:zlib';

export interface PdfText {
  text: string;
  /** points from the left and from the top of the page, where the run begins */
  x: number;
  y: number;
  /** points from the left: where its last letter begins */
  end: number;
  /** points: size of the lettering as drawn */
  size: number;
}

export interface PdfPage {
  /** points */
  width: number;
  height: number;
  texts: PdfText[];
}

export interface Pdf {
  pages: PdfPage[];
  fonts: { name: string; embedded: boolean }[];
}

type Matrix = readonly [number, number, number, number, number, number];

/** First this one, then the other. */
const then = ([a, b, c, d, e, f]: Matrix, [A, B, C, D, E, F]: Matrix): Matrix => [
  a * A + b * C,
  a * B + b * D,
  c * A + d * C,
  c * B + d * D,
  e * A + f * C + E,
  e * B + f * D + F,
];

export function readPdf(bytes: Buffer): Pdf {
  const text = bytes.toString('latin1');
  const objects = new Map<number, { dictionary: string; stream: () => string }>();
  for (const match of text.matchAll(/(?:^|\n)(\d+) 0 obj\n([\s\S]*?)endobj/g)) {
    const body = match[2]!;
    const at = body.indexOf('stream\n');
    const dictionary = at < 0 ? body : body.slice(0, at);
    const raw = () => Buffer.from(body.slice(at + 7, body.lastIndexOf('endstream')), 'latin1');
    objects.set(Number(match[1]), {
      dictionary,
      stream: () =>
        (dictionary.includes('/FlateDecode') ? inflateSync(raw(), { finishFlush: 2 }) : raw()).toString('latin1'),
    });
  }
  const reference = (dictionary: string, key: string) =>
    objects.get(Number(new RegExp(`/${key} (\\d+) 0 R`).exec(dictionary)?.[1]));
  const pages = [...objects.values()].filter(({ dictionary }) => /\/Type \/Page\n/.test(dictionary));
  const used = new Set<string>();
  const read = pages.map(({ dictionary }): PdfPage => {
    const [, , width, height] = /\/MediaBox \[([^\]]*)\]/.exec(dictionary)![1]!.trim().split(/\s+/).map(Number) as [
      number,
      number,
      number,
      number,
    ];
    const fonts = new Map<string, Map<string, string>>();
    for (const [, name, id] of (/\/Font <<([\s\S]*?)>>/.exec(dictionary)?.[1] ?? '').matchAll(/\/(\w+) (\d+) 0 R/g)) {
      const font = objects.get(Number(id))!.dictionary;
      used.add(font);
      fonts.set(name!, unicodeOf(reference(font, 'ToUnicode')?.stream() ?? ''));
    }
    return { width, height, texts: textsOf(reference(dictionary, 'Contents')!.stream(), fonts, height) };
  });
  const fonts = [...used].map((font) => {
    // A composite font has its descriptor one further on; a Type 3 font is drawn by the file itself.
    const descendant = /\/DescendantFonts \[(\d+) 0 R/.exec(font)?.[1];
    const own = descendant ? objects.get(Number(descendant))!.dictionary : font;
    return {
      name: /\/BaseFont \/(\S+)/.exec(font)?.[1] ?? 'Type 3',
      embedded:
        /\/Subtype \/Type3/.test(font) || /\/FontFile[23]? /.test(reference(own, 'FontDescriptor')?.dictionary ?? ''),
    };
  });
  return { pages: read, fonts };
}

/** Codes to characters. */
function unicodeOf(map: string): Map<string, string> {
  const known = new Map<string, string>();
  const character = (hex: string) =>
    String.fromCharCode(...(hex.match(/.{4}/g) ?? []).map((unit) => Number.parseInt(unit, 16)));
  for (const [, block] of map.matchAll(/beginbfchar([\s\S]*?)endbfchar/g))
    for (const [, code, to] of block!.matchAll(/<(\w+)> <(\w+)>/g)) known.set(code!.toUpperCase(), character(to!));
  for (const [, block] of map.matchAll(/beginbfrange([\s\S]*?)endbfrange/g)) {
    for (const [, from, to, first] of block!.matchAll(/<(\w+)> <(\w+)> <(\w+)>/g)) {
      for (let code = Number.parseInt(from!, 16); code <= Number.parseInt(to!, 16); code++) {
        known.set(
          code.toString(16).toUpperCase().padStart(from!.length, '0'),
          String.fromCharCode(Number.parseInt(first!, 16) + code - Number.parseInt(from!, 16)),
        );
      }
    }
  }
  return known;
}

function textsOf(content: string, fonts: ReadonlyMap<string, ReadonlyMap<string, string>>, height: number): PdfText[] {
  const texts: PdfText[] = [];
  const stack: Matrix[] = [];
  let graphics: Matrix = [1, 0, 0, 1, 0, 0];
  let line: Matrix = graphics;
  let font: ReadonlyMap<string, string> = new Map();
  let size = 0;
  let operands: string[] = [];
  let run: PdfText | null = null;
  for (const [token] of content.matchAll(/<[0-9A-Fa-f]*>|\/?[^\s<>[\]()]+/g)) {
    if (/^[/<\d.+-]/.test(token)) {
      operands.push(token);
      continue;
    }
    const numbers = operands.map(Number);
    if (token === 'q') stack.push(graphics);
    else if (token === 'Q') graphics = stack.pop()!;
    else if (token === 'cm') graphics = then(numbers as unknown as Matrix, graphics);
    else if (token === 'BT') {
      line = [1, 0, 0, 1, 0, 0];
      run = null;
    } else if (token === 'Tm') line = numbers as unknown as Matrix;
    else if (token === 'Td') line = then([1, 0, 0, 1, numbers[0]!, numbers[1]!], line);
    else if (token === 'Tf') {
      font = fonts.get(operands[0]!.slice(1)) ?? new Map();
      size = numbers[1]!;
    } else if (token === 'Tj') {
      const code = operands[0]!.slice(1, -1).toUpperCase();
      const length = [...font.keys()][0]?.length ?? 4;
      const characters = (code.match(new RegExp(`.{${length}}`, 'g')) ?? [])
        .map((c) => font.get(c) ?? '\ufffd')
        .join('');
      const at = then(line, graphics);
      if (run) {
        run.text += characters;
        run.end = at[4];
      } else {
        run = { text: characters, x: at[4], y: height - at[5], end: at[4], size: size * Math.hypot(at[0], at[1]) };
        texts.push(run);
      }
    }
    operands = [];
  }
  return texts;
}
