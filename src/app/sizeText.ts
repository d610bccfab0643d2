const [KILO, MEGA, GIGA] = [1e3, 1e6, 1e9];

/** How much room bytes take, to three figures at most. */
export const sizeText = (bytes: number): string =>
  bytes < 999_500
    ? `${Math.max(1, Math.round(bytes / KILO))} kB`
    : bytes < 999_500_000
      ? `${(bytes / MEGA).toFixed(1)} MB`
      : `${(bytes / GIGA).toFixed(1)} GB`;
