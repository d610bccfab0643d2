/** What is used of jstat (MIT), which brings no types. */
declare module 'jstat' {
  interface Distribution {
    cdf(x: number, ...parameters: number[]): number;
    inv(p: number, ...parameters: number[]): number;
  }
  const jStat: { chisquare: Distribution; normal: Distribution; studentt: Distribution };
  export default jStat;
}
