import { Worker } from 'node:worker_threads';

/** A thread that runs a TypeScript module: it does not take over from its parent how such are read. */
export const threadOf = (module: URL): Worker =>
  new Worker(
    `import('tsx/esm/api').then(({ register }) => { register(); return import(${JSON.stringify(module.href)}); });`,
    { eval: true },
  );
