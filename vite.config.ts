import react from '@vitejs/plugin-react';
import { playwright } from '@vitest/browser-playwright';
import { defineConfig } from 'vitest/config';

/** Debian's Chromium; WebGL in software, so that a machine without a graphics card draws the scene too. */
export const CHROMIUM = {
  executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
  args: [
    '--no-sandbox',
    '--use-gl=angle',
    '--use-angle=swiftshader',
    '--enable-unsafe-swiftshader',
    '--disable-background-networking',
    '--disable-component-update',
    '--disable-sync',
    '--no-first-run',
  ],
};

const top = import.meta.dirname;

export default defineConfig({
  root: `${top}/src`,
  publicDir: false,
  cacheDir: `${top}/node_modules/.vite`,
  base: './',
  plugins: [react()],
  resolve: { dedupe: ['react', 'react-dom', 'three'] },
  // Named here because the scene is loaded lazily: found late, they would be bundled with a second React.
  optimizeDeps: {
    include: [
      'react',
      'react-dom',
      'react-dom/client',
      'react/jsx-dev-runtime',
      'three',
      '@react-three/fiber',
      '@react-three/drei',
      'leva',
      'leva/plugin',
      'zustand',
      'zustand/vanilla',
      'idb',
      'zod/mini',
      'd3-array',
      'd3-scale',
      'comlink',
      'jstat',
      'ml-matrix',
      'papaparse',
      'pure-rand/distribution/uniformFloat64',
      'pure-rand/generator/mersenne',
      'axe-core',
    ],
  },
  worker: { format: 'es' },
  build: { outDir: `${top}/dist`, emptyOutDir: true, target: 'es2022', chunkSizeWarningLimit: 1500 },
  test: {
    projects: [
      {
        extends: true,
        root: top,
        // Some start the command line; on a busy machine that takes seconds.
        test: {
          name: 'unit',
          environment: 'node',
          include: ['tests/**/*.test.{ts,tsx}'],
          exclude: ['tests/browser/**'],
          testTimeout: 60_000,
        },
      },
      {
        extends: true,
        root: top,
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.{ts,tsx}'],
          testTimeout: 60_000,
          // The first look at a page waits for what loads when asked for.
          expect: { poll: { timeout: 15_000 } },
          browser: {
            enabled: true,
            headless: true,
            provider: playwright({ launchOptions: CHROMIUM }),
            instances: [{ browser: 'chromium' }],
            screenshotFailures: false,
          },
        },
      },
    ],
  },
});
