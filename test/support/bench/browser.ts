import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';
import { type Browser, chromium } from 'playwright-core';

export const CHROMIUM_ARGS = ['--no-sandbox', '--disable-gpu'];

export const launchChromium = async (): Promise<Browser> =>
  chromium.launch({ executablePath: await findChromium(), args: CHROMIUM_ARGS });

/** A Chromium: the one that $CHROMIUM names, one on the path, or the one that comes as a package. */
export async function findChromium(): Promise<string> {
  const found =
    process.env.CHROMIUM || onPath('chromium') || onPath('chromium-browser') || onPath('google-chrome');
  return found || (await packaged());
}

function onPath(command: string): string | null {
  for (const folder of (process.env.PATH ?? '').split(delimiter)) {
    const file = join(folder, command);
    try {
      accessSync(file, constants.X_OK);
      return file;
    } catch {
      // Not there; the next folder may have it.
    }
  }
  return null;
}

/** It looks for its libraries where a function of that kind would run; it is told so before it is loaded. */
async function packaged(): Promise<string> {
  process.env.AWS_LAMBDA_JS_RUNTIME ??= 'nodejs20.x';
  const { default: bundled } = await import('@sparticuz/chromium');
  return bundled.executablePath();
}
