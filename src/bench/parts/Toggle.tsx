import { Switch } from 'react-aria-components';

/** On or off, at once. */
export function Toggle({
  label,
  on,
  onChange,
}: {
  readonly label: string;
  readonly on: boolean;
  readonly onChange: (on: boolean) => void;
}) {
  return (
    <Switch className="toggle" isSelected={on} onChange={onChange}>
      <span className="toggle-track" aria-hidden="true" />
      {label}
    </Switch>
  );
}
