/** What can be wrong with a piece: its shape, its sections, its gauge, and where something stands on it. */
import type { Region, SectionName } from './position-model.ts';

export interface PieceProblems {
  'motif-taller-than-section': { rows: number; section: Region; available: number };
  /** `plain` rows are asked for between it and the `edge`, and only `left` are left beside it. */
  'motif-leaves-section': { rows: number; section: Region; plain: number; left: number; edge: 'lower' | 'upper' };
  'all-over-taller-than-section': { rows: number; section: Region; available: number };
  /** `plain` rows are asked for between it and the `edge`, and no more than `left` can be. */
  'all-over-leaves-section': { section: Region; plain: number; left: number; edge: 'lower' | 'upper' };
  'section-missing': { section: SectionName };
  'hem-longer-than-piece': { hem: number; rows: number };
  'sections-longer-than-piece': {
    hem: number;
    parts: readonly { readonly name: string; readonly rows: number }[];
    rows: number;
  };
  'shaping-impossible': { changes: number; rows: number };
  'shaping-outside-piece': { row: number; rows: number };
  /** `taken`: stitches to be taken away on `row`, of the `before` that there are. */
  'shaping-leaves-nothing': { row: number; taken: number; before: number };
  'shaping-too-wide': { row: number; needles: number; most: number };
  /** `count` stitches or rows that measure `mm`, and what they make in 10 cm. */
  'gauge-absurd': {
    of: 'stitches' | 'rows';
    count: number;
    mm: number;
    inTenCm: number;
    least: number;
    most: number;
  };
  'steps-line-unclear': { line: string };
  /** A line that takes stitches out of the middle, as a neck does: each side would then be a part of its own. */
  'steps-line-divides': { line: string };
  'steps-row-is-cast-on': { row: number };
  'steps-row-twice': { row: number };
  'steps-edge-twice': { row: number; side: 'left' | 'right' };
}
