/** What the colours of a sheet mean, and what they are on white paper. */

/**
 * `ink` for what is read, `soft` for what stands beside it, `accent` for the
 * one thing to find, `warn` for what can go wrong; `rule` and `hairline` draw
 * lines, `wash` lies behind, `paper` is the sheet itself.
 */
export type Tone = 'ink' | 'soft' | 'accent' | 'warn' | 'rule' | 'hairline' | 'wash' | 'paper';

/** A yarn's own colour, `#rrggbb`. */
export type YarnColour = `#${string}`;

export type Paint = Tone | YarnColour;

const TONES: Readonly<Record<Tone, YarnColour>> = {
  ink: '#1d2330',
  soft: '#5c6472',
  accent: '#2b4a8b',
  warn: '#8a5200',
  rule: '#8b8676',
  hairline: '#d8d3c7',
  wash: '#f6f4ee',
  paper: '#ffffff',
};

/** The colour to print, `#rrggbb`. */
export function colourOf(paint: Paint): string {
  return paint.startsWith('#') ? paint : TONES[paint as Tone];
}

/** A yarn's colour as a paint; the project's schema holds it to `#rrggbb`. */
export function yarnPaint(colour: string): YarnColour {
  return colour as YarnColour;
}
