/**
 * Jobs kept and work lost where the page is cut short: 50 times (or `--count`) at random moments while a job is being
 * edited, by turns the renderer crashed and the whole browser killed. Prints jobs kept of jobs tried and the worst work
 * lost in seconds. Needs a build:
 *   npx vite build && node --import tsx tests/browser/killBench.ts
 */

import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xorshift128plus } from 'pure-rand/generator/xorshift128plus';
import { preview } from 'vite';
import { type Killed, killOnce } from './killing.ts';

const option = (name: string, otherwise: number) => {
  const at = process.argv.indexOf(`--${name}`);
  return at < 0 ? otherwise : Number(process.argv[at + 1]);
};
const count = option('count', 50);
const seed = option('seed', 1);

const say = (line: string) => process.stdout.write(`${line}\n`);
const server = await preview({ logLevel: 'silent', preview: { port: 0, open: false } });
const address = server.resolvedUrls!.local[0]!;
try {
  const generator = xorshift128plus(seed);
  const all: Killed[] = [];
  for (let i = 0; i < count; i++) {
    const way = i % 2 === 0 ? 'crash' : 'kill';
    const one = await killOnce(address, way, () => uniformFloat64(generator), 2000);
    all.push(one);
    if (!one.kept || !one.whole) say(`${i} (${way}): ${JSON.stringify(one)}`);
  }
  const lost = all.map((one) => one.lost).sort((a, b) => a - b);
  if (count > 0)
    say(
      `cut short ${count} times (seed ${seed}): ${all.filter(({ kept }) => kept).length} jobs kept of ${count}, ` +
        `${all.filter(({ whole }) => whole).length} in a state that was asked for; ` +
        `work lost: worst ${lost[lost.length - 1]!.toFixed(2)} s, median ${lost[Math.floor(count / 2)]!.toFixed(2)} s`,
    );
} finally {
  await server.close();
}
