export * from './finding.ts';
export { findingsOf } from './findings.ts';
export { gatherFindings, type GatheredFinding } from './gather.ts';
export { changeFor, pieceAfter, type Intent } from './intent.ts';
export * from './coarser-bed.ts';
export * from './panels.ts';
export * from './remedies.ts';
export * from './seam-fits.ts';
