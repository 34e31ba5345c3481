import { FileButton } from '../parts/FileButton.tsx';
import { FromPaper } from './FromPaper.tsx';
import { FromRecipe } from './FromRecipe.tsx';

/** The ways to a pattern on the shelf. Whoever is here for the first time is told what each of them is. */
export function Beginnings({ take, told }: { readonly take: (file: File) => void; readonly told: boolean }) {
  const ways = [
    {
      way: <FromPaper take={take} />,
      words: 'You have a pattern on paper: a scan or a photo of it is enough.',
    },
    {
      way: <FromRecipe />,
      words: 'You want a new one: choose a kind of lace, and a few figures draft it.',
    },
    {
      way: <FileButton words="Open a file" take={take} />,
      words: 'You have a file that Pinlight saved.',
    },
    {
      way: (
        <a className="button" href="#/example">
          Open the example
        </a>
      ),
      words: 'You want to look round first: a finished edging that you may change as you like.',
    },
  ];
  return (
    <div className={told ? 'beginnings told' : 'beginnings'}>
      {ways.map(({ way, words }) => (
        <div key={words} className="beginning">
          {way}
          {told && <p>{words}</p>}
        </div>
      ))}
    </div>
  );
}
