// Serves the built bench on this machine alone.
import { createReadStream, statSync } from 'node:fs';
import { createServer } from 'node:http';
import { extname, join, normalize } from 'node:path';
import { fileURLToPath } from 'node:url';

const KINDS = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json',
  '.webmanifest': 'application/manifest+json',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.jpg': 'image/jpeg',
  '.ttf': 'font/ttf',
  '.icc': 'application/vnd.iccprofile',
};

/**
 * @typedef {object} BenchServer
 * @property {string} address the address to open
 * @property {() => Promise<void>} close
 */

/**
 * Serves a folder on the loopback address; port 0 takes any that is free. Rejects where the port is taken.
 * @param {{ port: number, folder?: string }} options
 * @returns {Promise<BenchServer>}
 */
export function serveBench({ port, folder = fileURLToPath(new URL('../dist/bench', import.meta.url)) }) {
  const server = createServer((request, response) => {
    // No file of the bench has a name that an address would have to write otherwise.
    const path = new URL(request.url ?? '/', 'http://localhost').pathname;
    const file = join(folder, normalize(path.endsWith('/') ? `${path}index.html` : path));
    const kind = KINDS[/** @type {keyof typeof KINDS} */ (extname(file))];
    if (request.method !== 'GET' || !kind || !file.startsWith(folder) || !isFile(file)) {
      response.writeHead(404).end();
      return;
    }
    response.writeHead(200, {
      'content-type': kind,
      // Files with a hash in their name never change; the rest is asked for anew.
      'cache-control': path.includes('/assets/') ? 'public, max-age=31536000, immutable' : 'no-cache',
      'x-content-type-options': 'nosniff',
    });
    createReadStream(file).pipe(response);
  });
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', () => {
      const at = server.address();
      const taken = typeof at === 'object' && at ? at.port : port;
      resolve({
        address: `http://127.0.0.1:${taken}/`,
        close: () =>
          new Promise((done) => {
            server.close(() => done());
            server.closeAllConnections();
          }),
      });
    });
  });
}

/** @param {string} file */
function isFile(file) {
  try {
    return statSync(file).isFile();
  } catch {
    return false;
  }
}
