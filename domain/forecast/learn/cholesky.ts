/**
 * The lower triangle L with L L' = `matrix` (symmetric, row by row, `size` by `size`), by Cholesky's method as in any
 * text on numerical linear algebra. A factor without doubt of its own (or with less than rounding leaves) gets a
 * column of zeros.
 */
export function cholesky(matrix: readonly number[], size: number): Float64Array {
  const lower = new Float64Array(size * size);
  for (let j = 0; j < size; j++) {
    let rest = matrix[j * size + j]!;
    for (let k = 0; k < j; k++) rest -= lower[j * size + k]! ** 2;
    if (rest <= 1e-14) continue;
    const root = Math.sqrt(rest);
    lower[j * size + j] = root;
    for (let i = j + 1; i < size; i++) {
      let value = matrix[i * size + j]!;
      for (let k = 0; k < j; k++) value -= lower[i * size + k]! * lower[j * size + k]!;
      lower[i * size + j] = value / root;
    }
  }
  return lower;
}
