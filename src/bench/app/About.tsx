import { useEffect, useRef } from 'react';
import { Button } from 'react-aria-components';
import type { About as Said } from '#pattern/pattern.ts';
import { useDesignState, useWork } from '../document/use-design.ts';
import { WordsField } from '../parts/WordsField.tsx';

const fields: readonly { readonly name: keyof Said; readonly label: string; readonly help?: string }[] = [
  { name: 'name', label: 'What it is called' },
  { name: 'maker', label: 'Who made it', help: '“unknown” if nobody knows' },
  { name: 'source', label: 'Where it comes from', help: 'a book, a print, a class' },
  { name: 'permission', label: 'What you may do with it', help: '“for my own use”, for example' },
  { name: 'lace', label: 'The kind of lace' },
  { name: 'notes', label: 'Notes' },
];

/** That it was asked what is said of the pattern, and which field is to be written; null for none of them. */
export interface AboutAsked {
  readonly first: keyof Said | null;
}

/** What is said of the pattern: whose it is, and what may be done with it. */
export function About({ asked, onPutAway }: { readonly asked: AboutAsked; readonly onPutAway: () => void }) {
  const { design } = useWork();
  const { pattern, editable } = useDesignState();
  const section = useRef<HTMLElement>(null);
  // It opens at the end of a panel, where it would not be seen by itself.
  useEffect(() => {
    section.current?.scrollIntoView({ block: 'nearest' });
    const at = fields.findIndex(({ name }) => name === asked.first);
    (section.current?.querySelectorAll('input')[at] ?? section.current)?.focus();
  }, [asked]);
  const say = (name: keyof Said, words: string) => {
    const { [name]: _, ...others } = pattern.about;
    const about = words === '' ? others : { ...others, [name]: words };
    design.become({ ...pattern, about }, 'Wrote about the pattern');
  };
  return (
    <section className="offer" aria-label="About this pattern" ref={section} tabIndex={-1}>
      <h3>About this pattern</h3>
      <p>It is kept with the pattern; name, maker, source and permission are printed on every sheet.</p>
      {editable
        ? fields.map(({ name, label, help }) => (
            <WordsField
              key={name}
              label={label}
              value={pattern.about[name] ?? ''}
              onChange={(words) => say(name, words)}
              {...(help && { help })}
            />
          ))
        : fields.map(({ name, label }) => (
            <p key={name}>
              {label}: {pattern.about[name] ?? 'not said'}
            </p>
          ))}
      <Button className="button" onPress={onPutAway}>
        Put it away
      </Button>
    </section>
  );
}
