/** Degrees between ground and footside as people type them, '52,5' or '52.5°': more than 0 and less than 90, else null. */
export function readGroundAngle(text: string): number | null {
  if (!/^\d+([.,]\d+)?\s*°?$/.test(text.trim())) return null;
  const degrees = Number.parseFloat(text.replace(',', '.'));
  return degrees > 0 && degrees < 90 ? degrees : null;
}
