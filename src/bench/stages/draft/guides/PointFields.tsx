import { Button } from 'react-aria-components';
import type { Point } from '#base/geometry/point.ts';
import type { GuidePoint } from '#craft/draft/guides/guide.ts';
import { ArrowSteps } from '../../../parts/ArrowSteps.tsx';
import { LengthField } from '../../../parts/LengthField.tsx';
import { Switch } from '../../../parts/Switch.tsx';
import { NUDGES } from './guide-tool.ts';

/** The chosen guiding point: its place as figures, small steps, and what else can be done with it. */
export function PointFields({
  title,
  point,
  canBeSharp,
  hasToStay,
  canAddBehind,
  onMove,
  onSharp,
  onAddBehind,
  onRemove,
}: {
  readonly title: string;
  readonly point: GuidePoint;
  readonly canBeSharp: boolean;
  /** Whether it has to stay. */
  readonly hasToStay: boolean;
  readonly canAddBehind: boolean;
  readonly onMove: (place: Point) => void;
  readonly onSharp: (sharp: boolean) => void;
  readonly onAddBehind: () => void;
  readonly onRemove: () => void;
}) {
  const { x, y, isSharp } = point;
  return (
    <section className="offer" aria-label="The chosen point">
      <h3>{title}</h3>
      <div className="pair">
        <LengthField label="Across" value={x} any onChange={(to) => onMove({ x: to, y })} />
        <LengthField label="Down" value={y} any onChange={(to) => onMove({ x, y: to })} />
      </div>
      {NUDGES.map((step) => (
        <ArrowSteps
          key={step}
          label={`Move by ${step} mm`}
          by={`${step} mm`}
          look="buttons nudges"
          onStep={(across, down) => onMove({ x: x + across * step, y: y + down * step })}
        >
          <span aria-hidden="true">{step} mm</span>
        </ArrowSteps>
      ))}
      {canBeSharp && (
        <Switch
          words="The outline turns a corner here"
          label="The outline turns a corner here"
          on={isSharp}
          onChange={onSharp}
        />
      )}
      <div className="buttons">
        {canAddBehind && (
          <Button className="button" onPress={onAddBehind}>
            Add a point behind it
          </Button>
        )}
        {!hasToStay && (
          <Button className="button danger" onPress={onRemove}>
            Remove this point
          </Button>
        )}
      </div>
    </section>
  );
}
