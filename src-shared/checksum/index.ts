export { crc32 } from './crc32.ts';
