import { Button } from 'react-aria-components';
import { readPreset } from '#jobs/cut/preset.ts';
import type { CuttingPreset } from '#paper/cut/preset.ts';
import { ReadFile } from '../ReadFile.tsx';

/** The file in which a shop's wishes are kept, where there is one. */
export function PresetChoice({
  preset,
  onChange,
}: {
  readonly preset: CuttingPreset | null;
  readonly onChange: (preset: CuttingPreset | null) => void;
}) {
  if (!preset) return <ReadFile words="Open a preset of your shop" read={readPreset} onRead={onChange} />;
  return (
    <div className="row">
      <p className="fill">
        Preset: <strong>{preset.name}</strong>
      </p>
      <Button className="button" onPress={() => onChange(null)}>
        Without it
      </Button>
    </div>
  );
}
