const numbers = [
  'One',
  'Two',
  'Three',
  'Four',
  'Five',
  'Six',
  'Seven',
  'Eight',
  'Nine',
  'Ten',
  'Eleven',
  'Twelve',
  'Thirteen',
  'Fourteen',
  'Fifteen',
  'Sixteen',
  'Seventeen',
  'Eighteen',
  'Nineteen',
] as const;

/**
 * A confidence (0 to 1) in words that open a sentence: "Nine in ten", "Even chance", "Seventeen in twenty".
 * What is no whole number of twentieths is said in hundredths, so that it is never rounded up.
 */
export function confidenceWords(confidence: number): string {
  const hundredths = Math.floor(confidence * 100 + 1e-9);
  if (hundredths === 50) return 'Even chance';
  if (hundredths % 10 === 0) return `${numbers[hundredths / 10 - 1]} in ten`;
  if (hundredths % 5 === 0) return `${numbers[hundredths / 5 - 1]} in twenty`;
  return `${hundredths} in a hundred`;
}

/** How many of the twenty equally likely openings make it, in words that close a sentence. */
export function ofTwentyWords(count: number, of: number): string {
  if (count === 0) return `none of ${of} makes it`;
  if (count === of) return `all ${of} make it`;
  return `${count} of ${of} ${count === 1 ? 'makes' : 'make'} it`;
}
