import { useEffect, useMemo, useState } from 'react';
import { printPlanInWords } from '#jobs/words/print.ts';
import { usePattern, useWork } from '../../../document/use-design.ts';
import { Choice } from '../../../parts/Choice.tsx';
import { Message } from '../../../parts/Message.tsx';
import { PaperChoice } from '../../../parts/PaperChoice.tsx';
import { preferencesNow } from '../../../settings/preferences.ts';
import { usePaper, usePrinters } from '../../../store/printers.ts';
import { useJob } from '../../../worker/use-job.ts';
import { Step } from '../Step.tsx';
import { TroubleMessage } from '../Trouble.tsx';
import { MakePdf } from './MakePdf.tsx';
import { PlannedSheets } from './PlannedSheets.tsx';
import { PrintSettings } from './PrintSettings.tsx';
import { printUnder, requestOf } from './print-choices.ts';
import { RulerCheck } from './RulerCheck.tsx';
import { TestSheet } from './TestSheet.tsx';
import { WayChoice } from './WayChoice.tsx';

/** Sheets to print and prick by, step by step, with the ruler as the last. */
export function PrintSheets({ onMeasurePrinter }: { readonly onMeasurePrinter: () => void }) {
  const pattern = usePattern();
  const { pictures } = useWork();
  const [paper, setPaper] = usePaper();
  const { profiles } = usePrinters();
  const [choices, setChoices] = useState(() => printUnder(preferencesNow().film));
  const [plan, lay] = useJob('planSheets');
  const fitting = profiles.filter(({ use, paper: name }) => use === 'print' && name === paper?.name);
  const printer = fitting.find(({ name }) => name === choices.printer) ?? null;
  const picture = (pattern.paper && pictures.get(pattern.paper.entry)) ?? null;
  const request = useMemo(
    () => (paper ? requestOf(pattern, picture, paper, printer, choices) : null),
    [pattern, picture, paper, printer, choices],
  );
  useEffect(() => {
    if (request) void lay(request);
  }, [lay, request]);

  if (paper === undefined) return null;
  const laid = plan.at === 'done' ? plan.made : null;
  return (
    <>
      <Step number={1} title="Your printer">
        <PaperChoice paper={paper} onChange={setPaper} />
        {fitting.length > 0 && (
          <Choice
            label="Put right for"
            value={printer?.name ?? ''}
            onChange={(name) => setChoices({ ...choices, printer: name })}
            choices={[
              { value: '', words: 'no printer in particular' },
              ...fitting.map(({ name, verified, date }) => ({
                value: name,
                words: name,
                help: `measured ${date}, ${verified ? 'proved' : 'not yet proved'}`,
              })),
            ]}
          />
        )}
      </Step>
      {!paper || !request ? (
        <Message kind="note">Choose the paper first: it says how large the sheets are.</Message>
      ) : (
        <>
          <Step number={2} title="How you will prick">
            <WayChoice choices={choices} onChange={setChoices} hasPicture={picture !== null} />
          </Step>
          <Step number={3} title="The sheets to come">
            {laid?.ok && (
              <>
                {printPlanInWords(laid.value, choices.way).map((words) => (
                  <p key={words}>{words}</p>
                ))}
                {laid.value.notes.map((note) => (
                  <Message key={note} kind="caution">
                    {note}
                  </Message>
                ))}
                <PlannedSheets plan={laid.value} />
              </>
            )}
            {laid && !laid.ok && <TroubleMessage trouble={laid.trouble} />}
            {plan.at === 'broken' && <Message kind="trouble">{plan.why}</Message>}
          </Step>
          <Step number={4} title="A test sheet first">
            <TestSheet paper={paper} printer={printer} onMeasurePrinter={onMeasurePrinter} />
          </Step>
          <Step number={5} title="The PDF">
            <MakePdf request={request} can={laid?.ok ?? true} />
            <PrintSettings />
          </Step>
          <Step number={6} title="Measure the rulers">
            <p>Measure both rulers of the first sheet, from left edge to left edge of the end lines.</p>
            <RulerCheck onMeasurePrinter={onMeasurePrinter} />
          </Step>
        </>
      )}
    </>
  );
}
