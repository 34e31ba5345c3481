import { Button } from 'react-aria-components';
import { usePattern } from '../document/use-design.ts';
import { Message } from '../parts/Message.tsx';
import type { StageId } from '../stages/stage.ts';

/** The stages at which pins come to be, and one that says by itself that there are none. */
const WITHOUT: readonly StageId[] = ['paper', 'draft', 'pins', 'prick'];

/** At a stage that works on pins, where there are none yet: what to do first. */
export function NoPins({
  stage,
  onGo,
}: {
  readonly stage: StageId;
  readonly onGo: (stage: StageId) => void;
}) {
  const { pins, paper } = usePattern();
  if (pins.length > 0 || WITHOUT.includes(stage)) return null;
  return (
    <Message kind="caution">
      <p>This pattern has no pins yet, and this stage works on pins.</p>
      <Button className="button" onPress={() => onGo(paper ? 'paper' : 'pins')}>
        {paper ? 'Find the pins at Paper' : 'Add pins at Pins'}
      </Button>
    </Message>
  );
}
