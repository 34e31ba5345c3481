import { useState } from 'react';
import { withScale } from '#jobs/trace/paper.ts';
import { chooseScale } from '#jobs/trace/scale.ts';
import { BENCH } from '#jobs/words/door.ts';
import { scaleTroubleInWords } from '#jobs/words/use.ts';
import { useWork } from '../../document/use-design.ts';
import { announce } from '../../parts/announce.ts';
import { Message } from '../../parts/Message.tsx';
import { DotsField } from './DotsField.tsx';

/** The dots an inch as the person knows them: where the picture states none, or states them wrongly. */
export function TypedDots({ dpi }: { readonly dpi: number | null }) {
  const { design } = useWork();
  const [refused, setRefused] = useState<string | null>(null);
  const take = (typed: number) => {
    const scale = chooseScale({ kind: 'none' }, { kind: 'dpi', dpi: typed });
    setRefused(scale.ok ? null : scaleTroubleInWords(scale.trouble, BENCH));
    if (!scale.ok || !('dpi' in scale.value)) return;
    design.become(withScale(design.state().pattern, scale.value), 'Set the size of the paper');
    announce('The paper has its size now. Undo takes it back.');
  };
  return (
    <>
      <DotsField
        label="Dots an inch, as the scanner was set"
        value={dpi}
        onChange={take}
        help="Such as 300 or 600. Leave it as it is where you do not know: a ruler tells."
      />
      {refused && <Message kind="caution">{refused}</Message>}
    </>
  );
}
