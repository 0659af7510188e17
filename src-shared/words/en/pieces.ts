/** The pieces of a project: their strip, and how they are called elsewhere. */
export const pieces = {
  /** `Skerry, sleeve`. */
  named: (parts: readonly string[]): string => parts.join(', '),
};
