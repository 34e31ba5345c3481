import { useDesignState } from '../../document/use-design.ts';
import { Message } from '../../parts/Message.tsx';
import { RecipePanel } from './RecipePanel.tsx';
import './draft.css';

/** Draft: the figures that a pattern was made from, changed while the sheet shows what comes of it. */
export function Panel() {
  const { pattern } = useDesignState();
  const { recipe } = pattern;
  if (recipe) return <RecipePanel pattern={{ ...pattern, recipe }} />;
  return (
    <Message kind="note">
      <p>
        This pattern keeps no recipe: it was traced, drawn by hand or arranged since it was drafted. So there
        are no figures to change here. Go on with the next stages, or begin another from a recipe.
      </p>
      <a className="button" href="#/recipes">
        From a recipe
      </a>
    </Message>
  );
}
