import { type ReactNode, useState } from 'react';
import { Button } from 'react-aria-components';

/** Something that not everybody needs, behind a button that shows it and puts it away again. */
export function Revealed({
  show,
  putAway,
  children,
}: {
  /** The button's words while it is away. */
  readonly show: string;
  /** The button's words while it is here. */
  readonly putAway: string;
  /** Made only while it is here, since a long list takes its time. */
  readonly children: () => ReactNode;
}) {
  const [here, setHere] = useState(false);
  return (
    <>
      <Button className="button" aria-expanded={here} onPress={() => setHere(!here)}>
        {here ? putAway : show}
      </Button>
      {here && children()}
    </>
  );
}
