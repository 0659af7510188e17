export * from './model.ts';
export * from './paper.ts';
export * from './tones.ts';
export * from './placement-sheet.ts';
export { sheetToSvg } from './svg.ts';
export * from './chart.ts';
export * from './csv.ts';
export * from './row-list.ts';
export { FONT_FAMILY } from './font/metrics.ts';
