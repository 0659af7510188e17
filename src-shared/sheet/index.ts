export * from './model.ts';
export * from './paper.ts';
export * from './tones.ts';
export * from './rich.ts';
export * from './placement-sheet.ts';
export { sheetToSvg } from './svg.ts';
export * from './chart.ts';
export { FONT_FAMILY } from './font/metrics.ts';
