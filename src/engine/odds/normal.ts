/**
 * The standard normal variable below which a share u of all lies, 0 < u < 1: what makes an even draw a normal one.
 *
 *   |u - ½| ≤ 0.425    x = q·A(r)/B(r)              q = u - ½, r = 0.425² - q²
 *   beyond             x = ±C(r - 1.6)/D(r - 1.6)    r = √(-ln min(u, 1 - u)) ≤ 5;  ±E(r - 5)/F(r - 5) above
 *
 * Relative error about 1e-16: rational functions of degree 7 without iteration, ten times as fast as the general one of
 * belief/distributions.ts.
 * @source Wichura1988 PPND16
 */
export function standardNormal(u: number): number {
  const q = u - 0.5;
  if (Math.abs(q) <= 0.425) {
    const r = 0.180625 - q * q;
    return (
      (q *
        (((((((2509.0809287301227 * r + 33430.57558358813) * r + 67265.7709270087) * r + 45921.95393154987) * r +
          13731.69376550946) *
          r +
          1971.5909503065513) *
          r +
          133.14166789178438) *
          r +
          3.3871328727963665)) /
      (((((((5226.495278852854 * r + 28729.085735721943) * r + 39307.89580009271) * r + 21213.794301586597) * r +
        5394.196021424751) *
        r +
        687.1870074920579) *
        r +
        42.31333070160091) *
        r +
        1)
    );
  }
  const r = Math.sqrt(-Math.log(q < 0 ? u : 1 - u));
  const x = r <= 5 ? tail(r - 1.6) : farTail(r - 5);
  return q < 0 ? -x : x;
}

function tail(r: number): number {
  return (
    (((((((0.0007745450142783414 * r + 0.022723844989269184) * r + 0.2417807251774506) * r + 1.2704582524523684) * r +
      3.6478483247632045) *
      r +
      5.769497221460691) *
      r +
      4.630337846156546) *
      r +
      1.4234371107496835) /
    (((((((1.0507500716444169e-9 * r + 0.0005475938084995345) * r + 0.015198666563616457) * r + 0.14810397642748008) *
      r +
      0.6897673349851) *
      r +
      1.6763848301838038) *
      r +
      2.053191626637759) *
      r +
      1)
  );
}

function farTail(r: number): number {
  return (
    (((((((2.0103343992922881e-7 * r + 2.7115555687434876e-5) * r + 0.0012426609473880784) * r + 0.026532189526576124) *
      r +
      0.29656057182850487) *
      r +
      1.7848265399172913) *
      r +
      5.463784911164114) *
      r +
      6.657904643501103) /
    (((((((2.0442631033899397e-15 * r + 1.421511758316446e-7) * r + 1.8463183175100548e-5) * r +
      0.0007868691311456133) *
      r +
      0.014875361290850615) *
      r +
      0.1369298809227358) *
      r +
      0.599832206555888) *
      r +
      1)
  );
}

/** Of a column. */
export function normalsOf(u: Float64Array, into: Float64Array): void {
  for (let k = 0; k < into.length; k++) into[k] = standardNormal(u[k]!);
}
