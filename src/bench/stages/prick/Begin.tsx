import { Button } from 'react-aria-components';
import type { HandRoute } from '#jobs/route.ts';
import { NEEDLE_CAUTION } from '#jobs/words/caution.ts';
import { effortInWords } from '#jobs/words/route.ts';
import { Message } from '../../parts/Message.tsx';

/** Before the first hole: what lies ahead, and what to mind. */
export function Begin({ route, onBegin }: { readonly route: HandRoute; readonly onBegin: () => void }) {
  return (
    <>
      <p>{effortInWords(route.effort, route.pace)}</p>
      <p>
        The guide takes you through it step by step: outside edges and curves first, then the motif, last the
        ground along a ruler.
      </p>
      <Message kind="caution">
        {NEEDLE_CAUTION} Hold the needle upright: a slanted one makes an oval hole.
      </Message>
      <Button className="button main" onPress={onBegin}>
        Begin pricking
      </Button>
    </>
  );
}
