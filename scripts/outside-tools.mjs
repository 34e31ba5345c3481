// The independent programs that read our results in tests; test/outside/tools.json is the list.
import { spawnSync } from 'node:child_process';
import { accessSync, constants, readFileSync } from 'node:fs';
import { delimiter, join } from 'node:path';

/** @type {{ command: string, package: string }[]} */
export const TOOLS = JSON.parse(readFileSync(new URL('../test/outside/tools.json', import.meta.url), 'utf8'));

/** Installs the tools that are missing, where that can be done. Returns why some are still missing, or null. */
export function installTools() {
  const missing = TOOLS.filter(({ command }) => !isOnPath(command));
  if (missing.length === 0) return null;
  const wanted = missing.map((tool) => tool.package);
  const list = wanted.join(' ');
  if (!isOnPath('apt-get')) return `no apt-get here to install ${list}`;
  if (process.getuid?.() !== 0) return `only root may install ${list}; run: sudo apt-get install ${list}`;
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  const apt = (/** @type {string[]} */ ...args) =>
    spawnSync('apt-get', ['-q', '-o', 'Acquire::Retries=2', ...args], { env, stdio: ['ignore', 2, 2] });
  const install = () => apt('install', '-y', '--no-install-recommends', ...wanted).status === 0;
  if (install()) return null;
  apt('update');
  return install() ? null : `apt-get could not install ${list}`;
}

/** Whether a program of that name can be run. @param {string} command */
export function isOnPath(command) {
  return (process.env.PATH ?? '').split(delimiter).some((folder) => {
    try {
      accessSync(join(folder, command), constants.X_OK);
      return true;
    } catch {
      return false;
    }
  });
}
