import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { Pin } from '#pattern/pattern.ts';
import { usePattern } from '../../document/use-design.ts';
import { usePlaces } from '../../parts/use-places.ts';

const PAGE = 50;

/** All pins as a table, a page at a time, for whoever would rather read than look. */
export function PinTable({
  pins,
  chosen,
  onChoose,
}: {
  readonly pins: readonly Pin[];
  readonly chosen: string | null;
  readonly onChoose: (pin: Pin) => void;
}) {
  const shown = usePlaces(usePattern().unit);
  const [open, setOpen] = useState(false);
  const [page, setPage] = useState(0);
  const pages = Math.max(1, Math.ceil(pins.length / PAGE));
  const first = Math.min(page, pages - 1) * PAGE;
  return (
    <section>
      <Button className="button" aria-expanded={open} onPress={() => setOpen(!open)}>
        {open ? 'Put the table away' : 'Show the pins as a table'}
      </Button>
      {open && (
        <>
          <table className="table">
            <caption>
              Pins {first + 1} to {Math.min(first + PAGE, pins.length)} of {pins.length}
            </caption>
            <thead>
              <tr>
                <th scope="col">Pin</th>
                <th scope="col">Across</th>
                <th scope="col">Down</th>
                <th scope="col">Size</th>
              </tr>
            </thead>
            <tbody>
              {pins.slice(first, first + PAGE).map((pin, index) => (
                <tr key={pin.id} aria-current={pin.id === chosen || undefined}>
                  <th scope="row">
                    <Button className="button quiet" onPress={() => onChoose(pin)}>
                      {first + index + 1}
                    </Button>
                  </th>
                  <td>{shown(pin.x)}</td>
                  <td>{shown(pin.y)}</td>
                  <td>{pin.diameter === undefined ? '' : shown(pin.diameter)}</td>
                </tr>
              ))}
            </tbody>
          </table>
          <div className="buttons" data-steps>
            <Button className="button" isDisabled={first === 0} onPress={() => setPage(first / PAGE - 1)}>
              Before
            </Button>
            <Button
              className="button"
              isDisabled={first + PAGE >= pins.length}
              onPress={() => setPage(first / PAGE + 1)}
            >
              After
            </Button>
          </div>
        </>
      )}
    </section>
  );
}
