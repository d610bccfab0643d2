const whole = new Intl.NumberFormat('en', { maximumFractionDigits: 0 });

/** How many times larger something is drawn; `before`: what it was, where it has just changed by itself (useScale.ts). */
export const timesText = (factor: number, before?: number | null): string =>
  `${before ? `${timesText(before)} → ` : ''}×${whole.format(factor)}`;
