import type { PictureTrouble } from '#jobs/picture/picture.ts';
import type { CheckTrouble } from '#jobs/trouble.ts';
import { BENCH } from '#jobs/words/door.ts';
import { lightTroubleInWords } from '#jobs/words/light.ts';
import { pictureTroubleInWords } from '#jobs/words/picture.ts';
import { Message } from '../../parts/Message.tsx';

/** Why a photo says nothing of the card, and what to do. */
export function CheckTroubleMessage({ trouble }: { readonly trouble: PictureTrouble | CheckTrouble }) {
  const words = isOfLight(trouble) ? lightTroubleInWords(trouble, BENCH) : pictureTroubleInWords(trouble);
  return <Message kind="trouble">{words}</Message>;
}

const isOfLight = (trouble: PictureTrouble | CheckTrouble): trouble is CheckTrouble =>
  trouble.kind.startsWith('light-');
