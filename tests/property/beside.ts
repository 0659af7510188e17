/** Values drawn beside others. */
import fc from 'fast-check';

/**
 * Values of `of`, drawn from a copy of the source of chance: what is drawn
 * after them comes out as if they had not been drawn, so that the projects of
 * a seed stay what they were when a field is added to them.
 */
export function beside<T>(of: fc.Arbitrary<T>): fc.Arbitrary<T> {
  return new Beside(of);
}

class Beside<T> extends fc.Arbitrary<T> {
  constructor(private readonly of: fc.Arbitrary<T>) {
    super();
  }

  generate(random: fc.Random, bias: number | undefined): fc.Value<T> {
    return this.of.generate(random.clone(), bias);
  }

  canShrinkWithoutContext(value: unknown): value is T {
    return this.of.canShrinkWithoutContext(value);
  }

  shrink(value: T, context: unknown): fc.Stream<fc.Value<T>> {
    return this.of.shrink(value, context);
  }
}
