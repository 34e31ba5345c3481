import { Button } from 'react-aria-components';
import type { Pin } from '#pattern/pattern.ts';
import { usePattern } from '../../document/use-design.ts';
import { PageSteps, usePages } from '../../parts/Pages.tsx';
import { Revealed } from '../../parts/Revealed.tsx';
import { usePlaces } from '../../parts/use-places.ts';

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
  const pages = usePages(pins);
  const { first, last } = pages;
  return (
    <section>
      <Revealed show="Show the pins as a table" putAway="Put the table away">
        {() => (
          <>
            <table className="table">
              <caption>
                Pins {first + 1} to {last} of {pins.length}
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
                {pages.shown.map((pin, index) => (
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
            <PageSteps pages={pages} />
          </>
        )}
      </Revealed>
    </section>
  );
}
