/** The places of a design at which a number stands: seats[0].bush.diameter. */
export const numbersIn = (of: unknown, within = ''): string[] =>
  typeof of === 'number'
    ? [within]
    : typeof of === 'object' && of !== null
      ? Object.entries(of).flatMap(([key, entry]) =>
          numbersIn(entry, Array.isArray(of) ? `${within}[${key}]` : within === '' ? key : `${within}.${key}`),
        )
      : [];
