const whole = new Intl.NumberFormat('en', { maximumFractionDigits: 0 });

/** How many times larger something is drawn. */
export const timesText = (factor: number) => `×${whole.format(factor)}`;
