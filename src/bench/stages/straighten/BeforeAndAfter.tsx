import { Button } from 'react-aria-components';
import { Choice } from '../../parts/Choice.tsx';
import { Fold } from '../../parts/Fold.tsx';
import { ShareSlider } from '../../parts/ShareSlider.tsx';

/** How a proposal is looked at. */
export interface BeforeAfterView {
  /** 0 as it was, 1 straightened. */
  readonly share: number;
  /** How many times longer than they are the moves are drawn. */
  readonly longer: number;
  /** How strongly the paper shows, 0 to 1. */
  readonly paper: number;
}

export const usualView: BeforeAfterView = { share: 0, longer: 1, paper: 0 };

/** From as it was to straightened, and how the moves are shown. */
export function BeforeAndAfter({
  view,
  onChange,
  paper,
}: {
  readonly view: BeforeAfterView;
  readonly onChange: (view: BeforeAfterView) => void;
  /** Whether there is a picture of the paper. */
  readonly paper: boolean;
}) {
  return (
    <>
      <div>
        <ShareSlider
          label="How far straightened"
          value={view.share}
          onChange={(share) => onChange({ ...view, share })}
        />
        <div className="buttons ends">
          <Button className="button" onPress={() => onChange({ ...view, share: 0 })}>
            As it was
          </Button>
          <Button className="button" onPress={() => onChange({ ...view, share: 1 })}>
            Straightened
          </Button>
        </div>
      </div>
      <Fold label="How it is shown">
        <Choice
          label="Moves are drawn as lines"
          value={String(view.longer)}
          onChange={(longer) => onChange({ ...view, longer: Number(longer) })}
          choices={[
            { value: '1', words: 'as long as they are', help: 'to be seen when you are close' },
            { value: '5', words: '5 times as long' },
            { value: '20', words: '20 times as long' },
          ]}
        />
        {paper && (
          <ShareSlider
            label="Paper under the pins"
            value={view.paper}
            onChange={(share) => onChange({ ...view, paper: share })}
          />
        )}
      </Fold>
    </>
  );
}
