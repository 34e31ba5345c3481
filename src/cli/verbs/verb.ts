import type { Command } from 'commander';
import type { ExitCode } from '../outcome/exit.ts';

/** Adds one verb to the program; `leave` takes the exit code once the verb has done its work. */
export type AddVerb = (pinlight: Command, leave: (code: ExitCode) => void) => void;
