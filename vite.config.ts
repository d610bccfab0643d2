import react from '@vitejs/plugin-react';
import { playwright } from '@vitest/browser-playwright';
import { VitePWA } from 'vite-plugin-pwa';
import { defineConfig, type Plugin } from 'vitest/config';

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

/** Tests that put something of their own in the place of a module or of a global, and so share none with others. */
const ALONE = ['tests/app/inAngles.test.tsx', 'tests/app/inUnits.test.tsx', 'tests/regressions/slowNotebook.test.ts'];

/**
 * What the built page may load: what stands beside it, and nothing else. Of styles written into the page only an empty
 * sheet, told by its hash: leva makes one, and fills it by script, which is allowed.
 */
const POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "worker-src 'self'",
  "style-src 'self' 'sha256-47DEQpj8HBSa+/TImW+5JCeuQeRkm5NMpJWZG3hSuFU='",
  "img-src 'self' data: blob:",
  "connect-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
].join('; ');

const policy: Plugin = {
  name: 'policy',
  apply: 'build',
  transformIndexHtml: () => [
    { tag: 'meta', attrs: { 'http-equiv': 'Content-Security-Policy', content: POLICY }, injectTo: 'head-prepend' },
  ],
};

/** The page after one visit without a network: all of it is kept, and a newer one is taken when asked for. */
const offline = VitePWA({
  registerType: 'prompt',
  injectRegister: null,
  manifest: {
    name: 'Conepair',
    short_name: 'Conepair',
    description: 'For the person who makes or rebuilds a small lathe spindle in a double-cone plain bearing',
    display: 'standalone',
    start_url: './',
    scope: './',
    background_color: '#f4efe4',
    theme_color: '#f4efe4',
    icons: [
      { src: 'icon.svg', sizes: 'any', type: 'image/svg+xml' },
      { src: 'icon-512.png', sizes: '512x512', type: 'image/png', purpose: 'any maskable' },
    ],
  },
  workbox: {
    globPatterns: ['**/*.{js,css,html,svg,png,webmanifest}'],
    cleanupOutdatedCaches: true,
    maximumFileSizeToCacheInBytes: 8_000_000,
  },
});

export default defineConfig({
  root: `${top}/src`,
  publicDir: `${top}/assets/served`,
  cacheDir: `${top}/node_modules/.vite`,
  base: './',
  plugins: [react(), policy, offline],
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
      'jsep',
      'pure-rand/distribution/uniformFloat64',
      'pure-rand/distribution/uniformInt',
      'pure-rand/generator/mersenne',
      'axe-core',
    ],
  },
  worker: { format: 'es' },
  build: {
    outDir: `${top}/dist`,
    emptyOutDir: true,
    target: 'es2022',
    chunkSizeWarningLimit: 1500,
    // A browser without it loads each module when it is asked for.
    modulePreload: { polyfill: false },
    // What the first picture needs in one file: forty small ones pack worse.
    rolldownOptions: { output: { codeSplitting: { groups: [{ name: 'first', tags: ['$initial'] }] } } },
  },
  test: {
    tags: [
      {
        name: 'long',
        description:
          'Everything by everything, many draws, what is seldom broken: npm run test:long, and before a merge.',
      },
    ],
    projects: [
      {
        extends: true,
        root: top,
        // Some start the command line; on a busy machine that takes seconds.
        test: {
          name: 'unit',
          environment: 'node',
          include: ['tests/**/*.test.{ts,tsx}'],
          exclude: ['tests/browser/**', 'tests/built/**', ...ALONE],
          testTimeout: 60_000,
          // Nothing runs beside them, so no processor need be left free.
          maxWorkers: '100%',
          // Nothing in the source keeps a state of its own (tests/structure.test.ts), so files share what is loaded.
          isolate: false,
          sequence: { groupOrder: 0 },
        },
      },
      {
        extends: true,
        root: top,
        test: {
          name: 'alone',
          environment: 'node',
          include: ALONE,
          testTimeout: 60_000,
          maxWorkers: '100%',
          sequence: { groupOrder: 0 },
        },
      },
      {
        extends: true,
        root: top,
        // The page as a person gets it, built once.
        test: {
          name: 'built',
          environment: 'node',
          include: ['tests/built/**/*.test.ts'],
          globalSetup: ['tests/built/buildOnce.ts'],
          testTimeout: 60_000,
          maxWorkers: '100%',
          sequence: { groupOrder: 1 },
        },
      },
      {
        extends: true,
        root: top,
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.{ts,tsx}'],
          testTimeout: 60_000,
          // After the others: a page starved by solvers beside it is no test of the page.
          sequence: { groupOrder: 2 },
          // Two pages at once: much of a test is waiting.
          maxWorkers: 2,
          // On a machine that is not ours something else may starve a page; a fault of the page fails twice.
          retry: process.env.CI ? 1 : 0,
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
