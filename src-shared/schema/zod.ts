/**
 * The library that checks what comes from outside, set up; all schemas are made with it.
 *
 * Left to itself it asks, as the first schema is made, whether it may compile
 * code, and a page whose policy forbids that has a violation reported. A module
 * is run before those that import it, so this is said before any schema stands.
 */
import { config } from 'zod/mini';

config({ jitless: true });

export * as z from 'zod/mini';
