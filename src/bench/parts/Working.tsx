import { Button, Label, ProgressBar } from 'react-aria-components';

export interface WorkingProps {
  /** What is being done: 'Looking for pins'. */
  readonly words: string;
  /** 0 to 1. */
  readonly share: number;
  readonly onCancel: () => void;
}

/** Long work under way: what, how far, and a way to stop it. */
export function Working({ words, share, onCancel }: WorkingProps) {
  return (
    <div className="working">
      <ProgressBar value={share * 100} className="progress">
        <Label>{words} …</Label>
        <span className="progress-track">
          <progress value={share} max={1} aria-hidden="true" />
        </span>
      </ProgressBar>
      <Button className="button quiet" onPress={onCancel}>
        Stop
      </Button>
    </div>
  );
}
