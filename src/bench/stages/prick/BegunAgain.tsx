import { Button } from 'react-aria-components';
import { Message } from '../../parts/Message.tsx';

/** After the guide was begun again: a way back to where it was, until it is dismissed. */
export function BegunAgain({
  onBack,
  onDismiss,
}: {
  readonly onBack: () => void;
  readonly onDismiss: () => void;
}) {
  return (
    <Message kind="note" onDismiss={onDismiss}>
      <p>The ticks are gone, and the guide stands at the first step.</p>
      <Button className="button" onPress={onBack}>
        Bring the ticks back
      </Button>
    </Message>
  );
}
