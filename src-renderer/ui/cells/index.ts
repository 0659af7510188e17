export * from './viewport.ts';
export * from './changed.ts';
export * from './lines.ts';
export * from './picture.ts';
export * from './bitmap.ts';
export * from './draw-cells.ts';
export * from './stage.ts';
export * from './gestures.ts';
