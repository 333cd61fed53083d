// How the bench runs in a browser, as ratios within one run: the first frame against a bare page of the
// same toolkit, recomputing as WebAssembly against the native program. Prints; judges nothing.
//
//   ninja -C build-web bare-page record bench && ninja -C build record && node tests/bench/web.mjs

import { execFileSync } from 'node:child_process';
import { copyFileSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { Tablet, root, serve, small } from '../web/driver.mjs';

const median = list => [...list].sort((a, b) => a - b)[list.length >> 1];
const recipes = path.join(root, 'assets/recipes');
// So many times that the browser's engine has compiled what runs often, as it has after the first edits.
const seconds = (...command) => Number(execFileSync(command[0], [...command.slice(1), recipes, '200'], { encoding: 'utf8' }));

const here = [], there = [];
for (let i = 0; i < 7; ++i) {
  here.push(seconds(path.join(root, 'build/tests/web/record')));
  there.push(seconds(process.execPath, path.join(root, 'build-web/tests/web/record.js')));
}
console.log(`all demo recipes at all sizes: native ${(1e3 * median(here)).toFixed(2)} ms, web ${(1e3 * median(there)).toFixed(2)} ms, ratio ${(median(there) / median(here)).toFixed(2)} (goal 2)`);

const bare = mkdtempSync(path.join(tmpdir(), 'wrapwright-bare-'));
for (const file of ['bare-page.js', 'bare-page.wasm']) copyFileSync(path.join(root, 'build-web/tests/web', file), path.join(bare, file));
writeFileSync(path.join(bare, 'page.js'), `import start from './bare-page.js';
start({ canvas: document.getElementById('canvas') }).then(() => { globalThis.wrapwright = { firstMs: performance.now(), settled: true }; });`);
writeFileSync(path.join(bare, 'index.html'), `<!doctype html><canvas id="canvas" width="960" height="600"></canvas><script type="module" src="page.js"></script>`);
const servers = [await serve(bare), await serve()];
const pages = await Promise.all(servers.map(s => new Tablet(s.address, small, { serviceWorkers: 'block' }).open()));
const times = [[], []];
for (let i = 0; i < 9; ++i) {
  for (const k of [0, 1]) {
    await pages[k].page.reload();
    await pages[k].ready();
    times[k].push(await pages[k].page.evaluate(() => wrapwright.firstMs));
  }
}
const [bareMs, ownMs] = times.map(median);
console.log(`first frame: bare page ${bareMs.toFixed(0)} ms, the bench ${ownMs.toFixed(0)} ms, ratio ${(ownMs / bareMs).toFixed(2)} (goal 2)`);
for (const tablet of pages) await tablet.close();
for (const server of servers) await server.stop();
rmSync(bare, { recursive: true });
