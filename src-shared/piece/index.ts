export * from './gauge.ts';
export * from './length.ts';
export * from './shape.ts';
export * from './steps.ts';
export * from './reshape.ts';
export * from './sections.ts';
export * from './schedule.ts';
export * from './tube.ts';
