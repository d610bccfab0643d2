const whole = new Intl.NumberFormat('en', { maximumFractionDigits: 0 });

/** How many times larger something is drawn. */
export const timesText = (factor: number) => `×${whole.format(factor)}`;

/** A factor that has just changed by itself (useScale.ts) with what it was. */
export const changeText = (factor: number, before: number | null | undefined) =>
  `${before ? `${timesText(before)} → ` : ''}${timesText(factor)}`;
