/** The built page on a server of its own. */
import { join } from 'node:path';
import { type PreviewServer, preview } from 'vite';
import { inject } from 'vitest';

export const top = join(import.meta.dirname, '../..');

/** `port` 0: any that is free. */
export const served = (outDir = inject('built'), port = 0): Promise<PreviewServer> =>
  preview({
    configFile: join(top, 'vite.config.ts'),
    logLevel: 'silent',
    build: { outDir },
    preview: { port, strictPort: port !== 0 },
  });

export const addressOf = (server: PreviewServer) => server.resolvedUrls!.local[0]!;
