/** What a part of the tests came to. */

export interface Failure {
  /** The part and the test, as one finds them: `e2e/sheet.spec.ts › writes all files`. */
  readonly name: string;
  /** Pictures of the page where it failed, as paths from the project's folder. */
  readonly pictures: readonly string[];
}

export interface Result {
  readonly passed: number;
  readonly failures: readonly Failure[];
  readonly skipped: number;
}

export const failed = (name: string): Result => ({ passed: 0, failures: [{ name, pictures: [] }], skipped: 0 });

export function sumOf(results: readonly Result[]): Result {
  return {
    passed: results.reduce((sum, { passed }) => sum + passed, 0),
    failures: results.flatMap(({ failures }) => failures),
    skipped: results.reduce((sum, { skipped }) => sum + skipped, 0),
  };
}

/** The counts in one line: `12 passed, 1 failed, 3 skipped`. */
export function countLine({ passed, failures, skipped }: Result): string {
  return `${passed} passed, ${failures.length} failed, ${skipped} skipped`;
}

/** What failed, each with where its picture is; one line a failure, however often it failed. */
export function failureLines(failures: readonly Failure[]): string[] {
  const byName = new Map<string, Failure[]>();
  for (const failure of failures) byName.set(failure.name, [...(byName.get(failure.name) ?? []), failure]);
  return [...byName].flatMap(([name, times]) => [
    `  ${name}${times.length > 1 ? ` (${times.length} times)` : ''}`,
    ...times.flatMap(({ pictures }) => pictures.map((picture) => `    picture: ${picture}`)),
  ]);
}
