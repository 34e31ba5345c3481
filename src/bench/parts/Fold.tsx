import { type ReactNode, useId, useState } from 'react';
import { Button } from 'react-aria-components';
import './fold.css';

/** More of something, behind a button that says what. */
export function Fold({ label, children }: { readonly label: string; readonly children: ReactNode }) {
  const [open, setOpen] = useState(false);
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
