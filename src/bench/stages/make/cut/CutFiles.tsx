import { useState } from 'react';
import { Button } from 'react-aria-components';
import { cutTroubleInWords } from '#jobs/words/cut.ts';
import { usePattern } from '../../../document/use-design.ts';
import { Message } from '../../../parts/Message.tsx';
import { Working } from '../../../parts/Working.tsx';
import { usePaper } from '../../../store/printers.ts';
import { useWatched } from '../../../watched/use-watched.ts';
import { useJob } from '../../../worker/use-job.ts';
import { Step } from '../Step.tsx';
import { TroubleMessage } from '../Trouble.tsx';
import { Cautions, cautionsRead } from './Cautions.tsx';
import { CutNotes } from './CutNotes.tsx';
import { type CutChoices, cutWishOf, namedAtFields, usualCut } from './cut-choices.ts';
import { FileChoice } from './FileChoice.tsx';
import { ForMachine } from './ForMachine.tsx';
import { HolesAndBed } from './HolesAndBed.tsx';
import { MoreInFile } from './MoreInFile.tsx';
import { SaveCutFiles } from './SaveCutFiles.tsx';

const KINDS = { dxf: 'DXF', svg: 'SVG', gcode: 'G-code' } as const;

/** Files for lasers, drills and plotters: the cautions first, the true measurements before anything is saved. */
export function CutFiles() {
  const pattern = usePattern();
  const read = useWatched(cautionsRead);
  const [choices, setChoices] = useState(usualCut);
  const [paper, setPaper] = usePaper();
  const [job, cut] = useJob('cut');
  const [of, setOf] = useState<readonly [typeof pattern, CutChoices] | null>(null);
  const change = (part: Partial<CutChoices>) => setChoices((before) => ({ ...before, ...part }));
  const make = () => {
    setOf([pattern, choices]);
    void cut({ pattern, wish: cutWishOf(choices, paper ?? null) });
  };
  // What was made of other choices is not what these would make.
  const fresh = of?.[0] === pattern && of[1] === choices;
  const made = fresh && job.at === 'done' ? job.made : null;
  const needsPaper = choices.printFirst && !paper;
  const needsKerf = choices.shop === 'does-not' && choices.kerf === null;
  return (
    <>
      <Step number={1} title="Before the first cut">
        <Cautions read={read} />
      </Step>
      {read && (
        <>
          <Step number={2} title="The file">
            <FileChoice choices={choices} change={change} />
            <HolesAndBed choices={choices} change={change} />
            <MoreInFile choices={choices} change={change} paper={paper ?? null} onPaper={setPaper} />
            <ForMachine choices={choices} change={change} />
          </Step>
          <Step number={3} title="Make it, and measure it">
            {job.at === 'work' ? (
              <Working words="Finding the way from hole to hole" share={job.share} onCancel={job.cancel} />
            ) : (
              <Button className="button main" onPress={make} isDisabled={needsPaper || needsKerf}>
                Make the {KINDS[choices.format]} file
              </Button>
            )}
            {needsKerf && <p>Type how wide the kerf is first.</p>}
            {needsPaper && <p>Choose the paper for the sheet to print first.</p>}
            {made?.ok && (
              <>
                <CutNotes pattern={pattern} notes={made.value.notes} />
                <SaveCutFiles made={made.value} choices={choices} />
              </>
            )}
            {made && !made.ok && (
              <TroubleMessage trouble={made.trouble} words={cutTroubleInWords(made.trouble, namedAtFields)} />
            )}
            {job.at === 'broken' && <Message kind="trouble">{job.why}</Message>}
          </Step>
        </>
      )}
    </>
  );
}
