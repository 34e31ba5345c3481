import { Button } from 'react-aria-components';
import { growBox } from '#base/geometry/box.ts';
import type { Finding } from '#craft/look/finding.ts';
import { usePattern } from '../../document/use-design.ts';
import { useSheet } from '../../sheet/handle.ts';
import { useWays } from '../ways.ts';
import { isGap, mendedAt } from './mended-at.ts';

const SEVERITY = { fault: 'Fault', warning: 'Warning', note: 'Note' } as const;

/** One thing to see to. Touched, it is shown on the sheet, with the way to where it is mended; or it leads there at once. */
export function Line({
  finding: { rule, sentence, severity, at, pins: indices },
  chosen,
  onChoose,
}: {
  readonly finding: Finding;
  readonly chosen: boolean;
  readonly onChoose: () => void;
}) {
  const { about, paper, pins } = usePattern();
  const sheet = useSheet();
  const ways = useWays();
  const way = mendedAt(rule);
  const stage = way?.id === 'paper' && !paper ? null : way;
  const pin = isGap(rule) ? undefined : pins[indices[0] ?? -1];
  const place = at ? { at, pin: pin?.id ?? null } : undefined;
  const words = (
    <span>
      <strong>{SEVERITY[severity]}</strong> {sentence}
    </span>
  );
  if (rule === 'no-provenance') {
    return (
      <li className={severity}>
        <Button onPress={() => ways.toAbout(about.maker?.trim() ? 'permission' : 'maker')}>{words}</Button>
      </li>
    );
  }
  const show = () => {
    onChoose();
    if (at) sheet.zoomTo(growBox({ left: at.x, right: at.x, top: at.y, bottom: at.y }, 12));
  };
  return (
    <li className={severity} aria-current={chosen || undefined}>
      {at ? <Button onPress={show}>{words}</Button> : <div className="place">{words}</div>}
      {stage && (chosen || !at) && (
        <Button className="button way-there" onPress={() => ways.toStage(stage.id, place)}>
          Mend it at {stage.title}
        </Button>
      )}
    </li>
  );
}
