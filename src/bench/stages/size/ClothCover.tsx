import { useEffect, useRef } from 'react';
import type { Thread } from '#craft/size/thread.ts';
import type { Sizing } from '#jobs/size/size.ts';
import { clothPictures } from '#jobs/threads/cloth.ts';
import { drawOnCanvas } from '#paper/canvas/draw.ts';
import { type Cloth, clothPicture, enlargement } from '#paper/sheet/size/cloth-picture.ts';
import { Fold } from '../../parts/Fold.tsx';
import { SHEET_LETTERS } from '../../sheet/screen-letters.ts';

/** Width of a picture before it is fitted to the screen, mm: as many threads are seen as on paper. */
const WIDE = 50;

/** How the cloth stitch will cover with a thread: open, just right and full. */
export function ClothCover({
  thread,
  spacing,
  sizing,
}: {
  readonly thread: Thread;
  readonly spacing: number;
  readonly sizing: Sizing;
}) {
  return (
    <Fold label="How the cloth stitch will cover">
      <Cloths thread={thread} spacing={spacing} sizing={sizing} />
    </Fold>
  );
}

function Cloths({ thread, spacing, sizing }: Parameters<typeof ClothCover>[0]) {
  const { patches } = clothPictures(thread, spacing, sizing);
  const times = enlargement(
    patches.map(({ cloth }) => cloth),
    WIDE,
  );
  return (
    <>
      <ul className="cloths">
        {patches.map(({ title, cloth, words }) => (
          <li key={title}>
            <Patch cloth={cloth} times={times} />
            <strong>{title}</strong>
            {words.map((line) => (
              <span key={line}>{line}</span>
            ))}
          </li>
        ))}
      </ul>
      <p>It is drawn from geometry: threads as round as they measure. Worked lace draws together a little.</p>
    </>
  );
}

/** One density. Decoration: the words beside it say what it is. */
function Patch({ cloth, times }: { readonly cloth: Cloth; readonly times: number }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const { current } = canvas;
    const brush = current?.getContext('2d', { alpha: false });
    if (!current || !brush) return;
    const side = Math.round(current.clientWidth * devicePixelRatio);
    current.width = side;
    current.height = side;
    brush.fillStyle = '#ffffff';
    brush.fillRect(0, 0, side, side);
    brush.scale(side / WIDE, side / WIDE);
    const box = { left: 0, top: 0, right: WIDE, bottom: WIDE };
    const options = { leastLine: WIDE / side / 2, fontFamily: SHEET_LETTERS };
    drawOnCanvas(clothPicture(cloth, box, times), brush, options);
  }, [cloth, times]);
  return (
    <span aria-hidden="true">
      <canvas ref={canvas} className="cloth" />
    </span>
  );
}
