import { PrintSheets } from './print/PrintSheets.tsx';

/** Make: sheets to prick by. */
export function Panel() {
  return <PrintSheets />;
}
