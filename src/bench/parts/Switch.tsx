import { Switch as Turned } from 'react-aria-components';
import './switch.css';

/** Something that is so or not: said in words, and seen by where the knob stands. */
export function Switch({
  words,
  label,
  on,
  onChange,
}: {
  readonly words: string;
  /** The words in full, for whoever does not see what stands beside it. */
  readonly label: string;
  readonly on: boolean;
  readonly onChange: (on: boolean) => void;
}) {
  return (
    <Turned className="switch" aria-label={label} isSelected={on} onChange={onChange}>
      <span className="switch-track" aria-hidden="true" />
      {words}
    </Turned>
  );
}
