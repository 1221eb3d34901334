// Coefficients of the rational approximations, lowest power first (Wichura, Algorithm AS 241, PPND16, Applied
// Statistics 37(3), 1988; from memory, held to the normal curve by a test).
const middle = [
  [
    3.3871328727963665, 133.14166789178438, 1971.5909503065513, 13731.69376550946,
    45921.95393154987, 67265.7709270087, 33430.57558358813, 2509.0809287301227,
  ],
  [
    1, 42.31333070160091, 687.1870074920579, 5394.196021424751, 21213.794301586597,
    39307.89580009271, 28729.085735721943, 5226.495278852854,
  ],
] as const;
const near = [
  [
    1.4234371107496835, 4.630337846156546, 5.769497221460691, 3.6478483247632045,
    1.2704582524523684, 0.2417807251774506, 0.022723844989269184, 0.0007745450142783414,
  ],
  [
    1, 2.053191626637759, 1.6763848301838038, 0.6897673349851, 0.14810397642748008,
    0.015198666563616457, 0.0005475938084995345, 1.0507500716444169e-9,
  ],
] as const;
const far = [
  [
    6.657904643501103, 5.463784911164114, 1.7848265399172913, 0.29656057182850487,
    0.026532189526576124, 0.0012426609473880784, 0.000027115555687434876, 2.0103343992922881e-7,
  ],
  [
    1, 0.599832206555888, 0.1369298809227358, 0.014875361290850615, 0.0007868691311456133,
    0.000018463183175100548, 1.421511758316446e-7, 2.0442631033899397e-15,
  ],
] as const;

type Rational = readonly [readonly number[], readonly number[]];

function ratio([above, below]: Rational, x: number): number {
  let top = 0;
  let bottom = 0;
  for (let k = above.length - 1; k >= 0; k--) {
    top = top * x + above[k]!;
    bottom = bottom * x + below[k]!;
  }
  return top / bottom;
}

/**
 * The z that a share `p` (strictly between 0 and 1) of the standard normal curve stays below.
 * Source: Wichura, Algorithm AS 241, Applied Statistics 37(3), 1988: about 16 digits.
 */
export function normalQuantile(p: number): number {
  const q = p - 0.5;
  if (Math.abs(q) <= 0.425) return q * ratio(middle, 0.180625 - q * q);
  const r = Math.sqrt(-Math.log(q < 0 ? p : 1 - p));
  const z = r <= 5 ? ratio(near, r - 1.6) : ratio(far, r - 5);
  return q < 0 ? -z : z;
}
