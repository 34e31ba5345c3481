import { type ReactNode, useId } from 'react';

/** One step of making, with its number. */
export function Step({
  number,
  title,
  children,
}: {
  readonly number: number;
  readonly title: string;
  readonly children: ReactNode;
}) {
  const id = useId();
  return (
    <section className="make-step" aria-labelledby={id}>
      <h3 id={id}>
        {number}. {title}
      </h3>
      {children}
    </section>
  );
}
