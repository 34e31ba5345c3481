import { type ReactNode, useId, useState } from 'react';
import { Button } from 'react-aria-components';
import './fold.css';

/** More of something, behind a button that says what. */
export function Fold({
  label,
  children,
  begins = 'folded',
}: {
  readonly label: string;
  readonly children: ReactNode;
  readonly begins?: 'folded' | 'open';
}) {
  const [open, setOpen] = useState(begins === 'open');
  const id = useId();
  return (
    <div className="fold">
      <Button
        className="button fold-button"
        aria-expanded={open}
        {...(open && { 'aria-controls': id })}
        onPress={() => setOpen(!open)}
      >
        <span aria-hidden="true">{open ? '−' : '+'}</span> {label}
      </Button>
      {open && (
        <div id={id} className="fold-inside">
          {children}
        </div>
      )}
    </div>
  );
}
