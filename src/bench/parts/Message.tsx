import type { ReactNode } from 'react';
import { Button } from 'react-aria-components';

export interface MessageProps {
  readonly kind: 'trouble' | 'caution' | 'good' | 'note';
  readonly children: ReactNode;
  /** Stays until the cause is gone where there is no way to dismiss it. */
  readonly onDismiss?: () => void;
}

const SIGNS = { trouble: '✕', caution: '!', good: '✓', note: 'i' } as const;

/** Something to know: said aloud by screen readers, told apart by sign as well as colour, and never gone by itself. */
export function Message({ kind, children, onDismiss }: MessageProps) {
  return (
    <div className={`message ${kind}`} role={kind === 'trouble' ? 'alert' : 'status'}>
      <span className="sign" aria-hidden="true">
        {SIGNS[kind]}
      </span>
      <div>{children}</div>
      {onDismiss && (
        <Button className="button quiet" onPress={onDismiss}>
          Understood
        </Button>
      )}
    </div>
  );
}
