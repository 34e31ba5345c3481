import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';

/** SHA-256 (FIPS 180-4) of some bytes, as 64 of 0-9 and a-f. */
export const sha256Hex = (bytes: Uint8Array): string => bytesToHex(sha256(bytes));
