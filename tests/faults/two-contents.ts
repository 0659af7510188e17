/** Two contents that differ in every line and in length, large enough that a write takes a while. */
export function contentOf(turn: number): Uint8Array {
  const line = turn % 2 === 0 ? '{"turn":"even"}\n' : '{"turn":"odd, and longer"}\n';
  return new TextEncoder().encode(line.repeat(40_000));
}
