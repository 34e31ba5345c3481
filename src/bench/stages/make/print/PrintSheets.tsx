import { Message } from '../../../parts/Message.tsx';
import { usePaper } from '../../../store/printers.ts';
import { PaperChoice } from './PaperChoice.tsx';
import { TestSheet } from './TestSheet.tsx';

/** Sheets to print and prick by, step by step. */
export function PrintSheets() {
  const [paper, setPaper] = usePaper();
  if (paper === undefined) return null;
  return (
    <>
      <PaperChoice paper={paper} onChange={setPaper} />
      {paper ? (
        <TestSheet paper={paper} printer={null} />
      ) : (
        <Message kind="note">Choose the paper first.</Message>
      )}
    </>
  );
}
