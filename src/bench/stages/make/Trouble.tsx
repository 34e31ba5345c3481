import type { Trouble } from '#jobs/trouble.ts';
import { troubleInWords } from '#jobs/words/trouble.ts';
import { useWork } from '../../document/use-design.ts';
import { Message } from '../../parts/Message.tsx';

/** Why something cannot be made, with the way to where it is put right. */
export function TroubleMessage({ trouble, words }: { readonly trouble: Trouble; readonly words?: string }) {
  const { id } = useWork();
  const noScale = trouble.kind === 'print-scale-unknown' || trouble.kind === 'cut-scale-unknown';
  return (
    <Message kind="trouble">
      <p>{words ?? troubleInWords(trouble)}</p>
      {noScale && (
        <a className="button" href={`#/design/${id}/paper`}>
          To the stage Paper
        </a>
      )}
    </Message>
  );
}
