import type { Progress } from '#base/progress.ts';
import type { PaperSize } from '#base/units/paper.ts';
import type { CalibrationLengths } from '#paper/calibrate/factors.ts';
import type { PrinterProfile } from '#paper/calibrate/profile.ts';
import type { PrinterReadings } from './make/calibrate.ts';
import type { CutRequest } from './make/cut.ts';
import type { PrintRequest } from './make/print.ts';

/** The jobs of the stage Make. Letters and PDF are large: they are loaded by those that need them alone. */
export const makeJobs = {
  testSheet: async (paper: PaperSize, printer: PrinterProfile | null, _progress: Progress) =>
    (await import('./make/test-sheet.ts')).testSheetPdf(paper, printer),
  calibrationSheet: async (
    paper: PaperSize,
    use: PrinterProfile['use'],
    printer: PrinterProfile | null,
    _progress: Progress,
  ) => (await import('./make/calibrate.ts')).calibrationPdf(paper, use, printer),
  measurePrinter: async (readings: PrinterReadings, _progress: Progress) =>
    (await import('./make/calibrate.ts')).measuredPrinter(readings),
  provePrinter: async (printer: PrinterProfile, measured: CalibrationLengths, _progress: Progress) =>
    (await import('./make/calibrate.ts')).provedPrinter(printer, measured),
  planSheets: async (request: PrintRequest, _progress: Progress) =>
    (await import('./make/print.ts')).planSheetsOf(request),
  print: async (request: PrintRequest, progress: Progress) =>
    (await import('./make/print.ts')).printPdf(request, progress),
  cut: async (request: CutRequest, _progress: Progress) => (await import('./make/cut.ts')).cutFiles(request),
};
