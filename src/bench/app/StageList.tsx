import { type KeyboardEvent, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import type { Stage } from '../stages/stage.ts';
import { addressOf } from './route.ts';
import { stages } from './stages.ts';

/** The stages of the work, one beside the other; on a phone, behind a button that names the present one. */
export function StageList({ id, now }: { readonly id: string; readonly now: Stage }) {
  const [open, setOpen] = useState(false);
  const button = useRef<HTMLButtonElement>(null);
  const close = () => {
    setOpen(false);
    // What had the focus goes out of sight. Where there is no button to be seen, the focus stays.
    button.current?.focus();
  };
  const hear = (event: KeyboardEvent) => {
    if (event.key === 'Escape' && open) close();
  };
  return (
    <nav
      aria-label="Stages of the work"
      className="stages"
      data-open={open || undefined}
      onKeyDown={hear}
      onBlur={({ currentTarget, relatedTarget }) => {
        if (!currentTarget.contains(relatedTarget)) setOpen(false);
      }}
    >
      <Button
        ref={button}
        className="button stages-open"
        aria-label={`Stage ${stages.indexOf(now) + 1}: ${now.title}. All stages`}
        aria-expanded={open}
        onPress={() => setOpen(!open)}
      >
        Stage {stages.indexOf(now) + 1}: {now.title}
      </Button>
      {/* Takes the focus from a finger, so that the list is not put away before the link is touched. */}
      <ol tabIndex={-1}>
        {stages.map((one) => (
          <li key={one.id}>
            <a
              href={addressOf({ at: 'design', id, stage: one.id })}
              aria-current={one === now ? 'step' : undefined}
              onClick={close}
            >
              {one.title}
            </a>
          </li>
        ))}
      </ol>
    </nav>
  );
}
