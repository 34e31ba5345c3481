const DIGITS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';

/** RFC 4648, section 4. The core knows neither the browser's btoa nor Node's Buffer. */
export function base64(bytes: Uint8Array): string {
  const parts: string[] = [];
  for (let at = 0; at < bytes.length; at += 3) {
    const left = bytes.length - at;
    const three = (bytes[at]! << 16) | ((bytes[at + 1] ?? 0) << 8) | (bytes[at + 2] ?? 0);
    const digit = (shift: number): string => DIGITS[(three >> shift) & 63]!;
    parts.push(digit(18) + digit(12) + (left > 1 ? digit(6) : '=') + (left > 2 ? digit(0) : '='));
  }
  return parts.join('');
}
