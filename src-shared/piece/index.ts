export * from './gauge.ts';
export * from './shape.ts';
export * from './sections.ts';
export * from './schedule.ts';
