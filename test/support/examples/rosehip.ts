import { seededRandom } from '#base/random.ts';
import { drawPins, edging, jitter, type KnownPattern, omit } from '../patterns/index.ts';
import { renderScan, type Scan } from '../scan/index.ts';

/** The pattern as it was meant. */
export const drafted = (): KnownPattern =>
  edging({ spacing: 5, repeats: 4, length: 8, width: 12, bulge: 1.7, gimp: 0.7 });

/** The pattern behind `examples/rosehip-edging.jpg`, as an unsteady hand pricked it, and the scan of that copy. */
export function rosehip(): { readonly known: KnownPattern; readonly scan: Scan } {
  const random = seededRandom(1887);
  const shaken = jitter(drafted(), 0.15, random);
  const known = omit(
    shaken,
    drawPins(shaken, 3, random, (role) => role === 'ground'),
  );
  const scan = renderScan(
    known,
    {
      dpi: 300,
      page: { width: 148, height: 210 },
      dot: 0.62,
      line: 0.2,
      skew: 0.8,
      scaleX: 1.004,
      scaleY: 0.997,
      title: 'Rosehip edging',
      notes: [
        'Twist twice at the footside. Cloth stitch in the ruled parts,',
        'thick thread round each. Repeat as often as needed.',
      ],
      numbers: 7,
      breaks: 0.06,
      rough: 0.45,
      speckle: 0.4,
      noise: 3,
      shade: 0.08,
      ink: 0.88,
      paper: [240, 233, 216],
    },
    random,
  );
  return { known, scan };
}
