import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { type Browser, chromium, type Page } from 'playwright-core';
import { CHROMIUM_ARGS, findChromium } from './browser.ts';

/** A browser with a profile on the disk, which can be ended as a power cut ends it. */
export interface KillableBrowser {
  readonly page: Page;
  /** Ends all of its processes at once, without a word of warning. */
  kill(): Promise<void>;
}

export async function startKillable(profile: string): Promise<KillableBrowser> {
  // What the browser before left behind when it was killed.
  for (const file of ['DevToolsActivePort', 'SingletonLock', 'SingletonCookie', 'SingletonSocket']) {
    rmSync(join(profile, file), { force: true });
  }
  const args = ['--headless', '--remote-debugging-port=0', `--user-data-dir=${profile}`, 'about:blank'];
  const child = spawn(await findChromium(), [...CHROMIUM_ARGS, ...args], { detached: true, stdio: 'ignore' });
  const browser = await connect(child, join(profile, 'DevToolsActivePort'));
  const page = await browser.contexts()[0]!.newPage();
  await page.setViewportSize({ width: 1280, height: 800 });
  return {
    page,
    async kill() {
      const gone = new Promise((resolve) => child.once('exit', resolve));
      process.kill(-child.pid!, 'SIGKILL');
      await gone;
      await browser.close().catch(() => {});
    },
  };
}

async function connect(child: ChildProcess, portFile: string): Promise<Browser> {
  for (let tries = 0; tries < 300; tries++) {
    const [port, path] = existsSync(portFile) ? readFileSync(portFile, 'utf8').split('\n') : [];
    if (port && path) return chromium.connectOverCDP(`ws://127.0.0.1:${port}${path}`);
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  process.kill(-child.pid!, 'SIGKILL');
  throw new Error('The browser did not start.');
}
