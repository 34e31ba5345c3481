import { useState } from 'react';
import { Button } from 'react-aria-components';

/** No page of a table is longer: a browser that lays out thousands of rows keeps a person waiting. */
const PAGE = 50;

/** The rows of a long table that are shown at a time. */
export interface Pages<Row> {
  readonly shown: readonly Row[];
  /** How many come before and up to the last of those that are shown. */
  readonly first: number;
  readonly last: number;
  readonly count: number;
  readonly goTo: (page: number) => void;
}

export function usePages<Row>(rows: readonly Row[]): Pages<Row> {
  const [page, setPage] = useState(0);
  const pages = Math.max(1, Math.ceil(rows.length / PAGE));
  const first = Math.min(page, pages - 1) * PAGE;
  const last = Math.min(first + PAGE, rows.length);
  return { shown: rows.slice(first, last), first, last, count: rows.length, goTo: setPage };
}

/** The ways to the page before and the page after. */
export function PageSteps({ pages }: { readonly pages: Pages<unknown> }) {
  const { first, last, count, goTo } = pages;
  return (
    <div className="buttons" data-steps>
      <Button className="button" isDisabled={first === 0} onPress={() => goTo(first / PAGE - 1)}>
        Before
      </Button>
      <Button className="button" isDisabled={last >= count} onPress={() => goTo(first / PAGE + 1)}>
        After
      </Button>
    </div>
  );
}
