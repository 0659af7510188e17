export * from './built-page.ts';
export * from './policy.ts';
