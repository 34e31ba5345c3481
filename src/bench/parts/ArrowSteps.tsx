import type { ReactNode } from 'react';
import { Button, Group } from 'react-aria-components';

const WAYS = [
  ['←', 'left', -1, 0],
  ['→', 'right', 1, 0],
  ['↑', 'up', 0, -1],
  ['↓', 'down', 0, 1],
] as const;

/** Four arrows that move something by one step: for whoever would rather press than drag. */
export function ArrowSteps({
  label,
  by,
  look = 'steps',
  children,
  onStep,
}: {
  readonly label: string;
  /** What is moved by how much, before the way: “0.1 mm” of “0.1 mm left”. */
  readonly by: string;
  readonly look?: string;
  readonly children?: ReactNode;
  /** Told how many steps to the right and down, each 1, 0 or -1. */
  readonly onStep: (across: number, down: number) => void;
}) {
  return (
    <Group className={look} aria-label={label} data-steps>
      {children}
      {WAYS.map(([sign, way, across, down]) => (
        <Button key={way} className="button" aria-label={`${by} ${way}`} onPress={() => onStep(across, down)}>
          {sign}
        </Button>
      ))}
    </Group>
  );
}
