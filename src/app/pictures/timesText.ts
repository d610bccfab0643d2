const whole = new Intl.NumberFormat('en', { maximumFractionDigits: 0 });

/** How many times larger something is drawn; `before`: what it was, where that has just changed by itself. */
export const timesText = (factor: number, before?: number | null): string =>
  `${before ? `${timesText(before)} → ` : ''}×${whole.format(factor)}`;
