export { serve } from './serve.ts';
export * from './client.ts';
