/**
 * How many times as many draws a test takes as every day: 1, and more in the long run (`npm run test:draws`), where the
 * numbers are those that the README claims.
 */
export const LONG = Number(process.env.LONG ?? 1);
