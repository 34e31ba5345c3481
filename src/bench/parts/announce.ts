/** Says something to screen readers that the eye sees anyway, such as which pin was moved where. */
export function announce(words: string): void {
  const place = document.getElementById('announced');
  if (!place) return;
  // The same words twice in a row are only said twice where the text changes.
  place.textContent = place.textContent === words ? `${words}\u00a0` : words;
}
