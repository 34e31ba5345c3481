/** A file dropped where nobody takes it would be shown in place of the bench: it is not. */
export function catchStrayDrops(): void {
  addEventListener('dragover', (event) => {
    event.preventDefault();
    if (event.dataTransfer) event.dataTransfer.dropEffect = 'none';
  });
  addEventListener('drop', (event) => event.preventDefault());
}
