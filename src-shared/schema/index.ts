export * from './zod.ts';
export * from './fault.ts';
export * from './fields.ts';
export * from './plain.ts';
