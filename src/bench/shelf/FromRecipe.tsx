/** The way to a new pattern from nothing but figures. */
export function FromRecipe() {
  return (
    <a className="button" href="#/recipes">
      From a recipe
    </a>
  );
}
