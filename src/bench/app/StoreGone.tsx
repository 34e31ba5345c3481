import { Button } from 'react-aria-components';
import { Message } from '../parts/Message.tsx';

/** In place of the bench where this page is older than what this browser keeps. Nothing is lost. */
export function StoreGone({ why }: { why: 'newer' | 'left' }) {
  return (
    <main className="page">
      <h1>Pinlight</h1>
      <Message kind="caution">
        {why === 'newer'
          ? 'Your patterns were last used with a newer Pinlight than this page. They are safe. Load the page anew to get it.'
          : 'Pinlight was opened anew in another page. Everything up to your last step is saved. Load this page anew to go on here.'}
      </Message>
      <Button className="button main" onPress={() => location.reload()}>
        Load the page anew
      </Button>
    </main>
  );
}
