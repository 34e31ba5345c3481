import { CommanderError } from 'commander';
import { troubleInWords } from '#jobs/words/trouble.ts';
import { EXIT } from './outcome/exit.ts';
import { Refused } from './outcome/refused.ts';
import { program } from './program.ts';
import { nameInWords } from './terminal/clean.ts';
import { say } from './terminal/say.ts';

/** Does what the words after `pinlight` ask for, and gives the exit code. */
export async function run(words: readonly string[]): Promise<number> {
  let code: number = EXIT.done;
  try {
    const pinlight = await program(words, (verbCode) => {
      code = verbCode;
    });
    await pinlight.parseAsync(words, { from: 'user' });
    return code;
  } catch (fault) {
    if (fault instanceof CommanderError) return fault.exitCode === 0 ? EXIT.done : EXIT.refused;
    if (fault instanceof Refused) {
      const sentence = troubleInWords(fault.trouble);
      say(fault.about === null ? sentence : `${nameInWords(fault.about)}: ${sentence}`);
      return EXIT.refused;
    }
    say('Something went wrong inside Pinlight, and nothing was written. Please report it, with these lines:');
    say(fault instanceof Error ? (fault.stack ?? fault.message) : String(fault));
    return EXIT.refused;
  }
}
