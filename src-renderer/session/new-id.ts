/** Ids for what a person adds: made at random, so that one that went never comes back as another. */

const LETTERS = '0123456789abcdefghijklmnopqrstuvwxyz';
/** 62 bits: among a thousand million ids, two are alike once in ten. */
const LENGTH = 12;

export function newId(): string {
  // 252 is the most that is a multiple of the letters: above it some would come oftener.
  const random = crypto.getRandomValues(new Uint8Array(8 * LENGTH));
  return Array.from(random.filter((byte) => byte < 252).subarray(0, LENGTH), (byte) =>
    LETTERS.charAt(byte % LETTERS.length),
  ).join('');
}
