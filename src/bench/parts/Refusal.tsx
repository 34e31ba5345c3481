import { useEffect, useRef } from 'react';
import { FieldError } from 'react-aria-components';

/** Why a field does not take what was typed, brought into sight where the field stands at the edge of what scrolls. */
export function Refusal({ words }: { readonly words: string | null }) {
  return <FieldError>{words !== null && <Seen words={words} />}</FieldError>;
}

function Seen({ words }: { readonly words: string }) {
  const place = useRef<HTMLSpanElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: other words may be longer.
  useEffect(() => {
    place.current?.scrollIntoView({ block: 'nearest' });
  }, [words]);
  return <span ref={place}>{words}</span>;
}
