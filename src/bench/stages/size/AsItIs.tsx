import type { Sizing } from '#jobs/size/size.ts';
import { NEEDLE_CAUTION } from '#jobs/words/caution.ts';
import { basisInWords, measuresInWords, pinLines, wantedInWords } from '#jobs/words/size.ts';
import { Fold } from '../../parts/Fold.tsx';

/** What suits the pattern as it is: thread, pins and needle. */
export function AsItIs({ sizing }: { readonly sizing: Sizing }) {
  const measures = measuresInWords(sizing.before);
  const wanted = wantedInWords(sizing);
  const [pins, ...more] = pinLines(sizing);
  return (
    <section className="stack" aria-label="What suits it as it is">
      <h3>What suits it as it is</h3>
      {measures && <p>{measures}</p>}
      {wanted ? (
        <p>
          <strong>Thread:</strong> {wanted}
        </p>
      ) : (
        <p>
          The pattern does not say how far its footside pins stand apart. Type it below, and the thread that
          suits is told.
        </p>
      )}
      {pins && <p>{pins}</p>}
      {pins && (
        <Fold label="Needle, and what this rests on">
          {[...more, NEEDLE_CAUTION, `${basisInWords(sizing)}.`].map((line) => (
            <p key={line}>{line}</p>
          ))}
        </Fold>
      )}
    </section>
  );
}
