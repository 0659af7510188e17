/** CRC-32 as ISO/IEC 15948, annex D, has it (polynomial 0xEDB88320, reflected). */

const TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let crc = byte;
  for (let bit = 0; bit < 8; bit++) crc = crc & 1 ? 0xedb88320 ^ (crc >>> 1) : crc >>> 1;
  return crc;
});

/** The checksum of `bytes`, from 0 to 2³² − 1. It finds slips, and nothing that somebody means to hide. */
export function crc32(bytes: Uint8Array): number {
  let crc = 0xffffffff;
  for (let at = 0; at < bytes.length; at++) {
    crc = (TABLE[(crc ^ (bytes[at] as number)) & 255] as number) ^ (crc >>> 8);
  }
  return (crc ^ 0xffffffff) >>> 0;
}
