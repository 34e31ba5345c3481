import { useMemo, useState } from 'react';
import { useDesignState } from '../../document/use-design.ts';
import { Message } from '../../parts/Message.tsx';
import { Arrange } from './arrange/Arrange.tsx';
import { RecipePanel } from './RecipePanel.tsx';
import './draft.css';

/** Draft: the figures that a pattern was made from, changed while the sheet shows what comes of it. */
export function Panel() {
  const { pattern } = useDesignState();
  const { recipe } = pattern;
  // One and the same for as long as the pattern is: what is tried and dragged begins anew with another.
  const drafted = useMemo(() => (recipe ? { ...pattern, recipe } : null), [pattern, recipe]);
  const [isTrying, setTrying] = useState(false);
  return (
    <>
      {drafted ? <RecipePanel pattern={drafted} onTrying={setTrying} /> : <NoRecipe />}
      <Arrange pattern={pattern} isTrying={isTrying} />
    </>
  );
}

/** What to do with a pattern that was not drafted. */
function NoRecipe() {
  return (
    <Message kind="note">
      <p>
        This pattern keeps no recipe: it was traced, drawn by hand or arranged since it was drafted. So there
        are no figures to change here. Arrange it as a whole, go on with the next stages, or begin another
        from a recipe.
      </p>
      <a className="button" href="#/recipes">
        From a recipe
      </a>
    </Message>
  );
}
