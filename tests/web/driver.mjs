// Drives the bench in Debian's Chromium: a server of its own, a profile of its own, fingers through
// the browser's own input. Tests wait for states and frames, never for milliseconds alone.

import assert from 'node:assert/strict';
import { execFileSync, spawn } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import path from 'node:path';

export const root = path.resolve(import.meta.dirname ?? path.dirname(new URL(import.meta.url).pathname), '../..');
export const folder = process.env.WW_WEB_BENCH ?? path.join(root, 'build-web/bench');
const shots = process.env.WW_WEB_SHOTS ?? path.join(root, 'build/shots/web');
const { chromium } = createRequire(path.join(root, '.deps/node/package.json'))('playwright-core');

// What a busy machine with a software renderer may take, at most.
export const patience = 60000;

export const Screen = { bench: 0, layOut: 1, library: 2, settings: 3, check: 8 };

const tablet = { hasTouch: true, isMobile: true, deviceScaleFactor: 2 };
export const landscape = { ...tablet, viewport: { width: 1180, height: 820 } };
export const portrait = { ...tablet, viewport: { width: 820, height: 1180 } };
/// The same shape with a quarter of the dots: the renderer of a test machine is a processor.
export const small = { hasTouch: true, isMobile: true, deviceScaleFactor: 1, viewport: { width: 960, height: 600 } };
export const upright = { ...small, viewport: { width: 600, height: 960 } };

export async function serve(from = folder, port = 0) {
  const server = spawn('python3', [path.join(root, 'platform/web/serve.py'), from, String(port)], { stdio: ['ignore', 'pipe', 'inherit'] });
  const address = await new Promise(told => server.stdout.once('data', data => told(String(data).trim())));
  const gone = new Promise(done => server.once('exit', done));
  return { address, stop: () => { server.kill(); return gone; } };
}

/// A browser with a profile that outlives it, and the page of the bench in it.
export class Tablet {
  constructor(address, profile = landscape, more = {}) {
    this.address = address;
    this.profile = profile;
    this.more = more;
    this.data = mkdtempSync(path.join(tmpdir(), 'wrapwright-web-'));
    this.complaints = [];
    this.foreign = [];
  }

  async open() {
    const { args = [], ...context } = this.more;
    this.context = await chromium.launchPersistentContext(this.data, {
      executablePath: process.env.WW_CHROMIUM ?? '/usr/bin/chromium', headless: true, acceptDownloads: true,
      args: ['--no-sandbox', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync',
        '--use-gl=angle', '--use-angle=swiftshader', '--enable-unsafe-swiftshader', ...args],
      ...this.profile, ...context });
    this.context.setDefaultTimeout(patience);
    this.context.on('request', request => {
      if (!request.url().startsWith(this.address) && !/^(blob|data|about):/.test(request.url())) this.foreign.push(request.url());
    });
    this.page = this.context.pages()[0];
    this.page.on('console', message => { if (message.type() === 'error') this.complaints.push(message.text()); });
    this.page.on('pageerror', error => this.complaints.push(String(error)));
    await this.load();
    return this;
  }

  async load() {
    await this.page.goto(this.address);
    await this.ready();
  }

  async ready() {
    await this.page.waitForFunction(() => globalThis.wrapwright?.firstMs > 0, null, { timeout: patience });
    this.cdp = await this.context.newCDPSession(this.page);
    await this.settle();
  }

  state() { return this.page.evaluate(() => wrapwright.state); }

  /// Waits until what came in is answered and shown.
  settle() { return this.page.waitForFunction(() => wrapwright.settled, null, { timeout: patience, polling: 50 }); }

  async until(what, test) {
    const end = Date.now() + patience;
    for (;;) {
      const state = await this.state();
      if (test(state)) return state;
      assert.ok(Date.now() < end, `${what} does not come; the state is ${JSON.stringify({ ...state, controls: Object.keys(state.controls) })}`);
      await this.page.waitForTimeout(30);
    }
  }

  /// The middle of a control, in CSS pixels, or a place of it by shares.
  async place(label, x = 0.5, y = 0.5) {
    const state = await this.until(`control ${label}`, s => find(s.controls, label));
    const [left, top, width, height] = find(state.controls, label);
    const unit = await this.page.evaluate(() => wrapwright.unit());
    return { x: (left + x * width) * unit, y: (top + y * height) * unit };
  }

  touch(type, points) {
    return this.cdp.send('Input.dispatchTouchEvent', { type, touchPoints: points.map((p, id) => ({ ...p, id: p.id ?? id })) });
  }

  async frames(count) {
    const from = await this.page.evaluate(() => wrapwright.frames);
    await this.page.waitForFunction(n => wrapwright.frames >= n || wrapwright.settled, from + count, { timeout: patience, polling: 20 });
  }

  async tap(label, x, y) {
    const at = await this.place(label, x, y);
    await this.touch('touchStart', [at]);
    await this.touch('touchEnd', []);
    await this.settle();
    return at;
  }

  /// Pushes the list that the control is in until it is in sight; the list is seen between these shares
  /// of the height.
  async bring(label, top = 0.25, bottom = 0.85) {
    const { height } = this.page.viewportSize();
    for (let i = 0; i < 60; ++i) {
      const { x, y } = await this.place(label);
      if (y > top * height && y < bottom * height) return;
      const middle = 0.5 * (top + bottom) * height, most = 0.4 * (bottom - top) * height;
      const way = Math.max(-most, Math.min(most, 0.5 * (middle - y)));
      await this.drag({ x, y: middle - way }, { x, y: middle + way });
    }
    assert.fail(`${label} does not come into sight`);
  }

  async drag(from, to, steps = 5) {
    await this.touch('touchStart', [from]);
    await this.frames(2);
    for (let i = 1; i <= steps; ++i) {
      await this.touch('touchMove', [{ x: from.x + (to.x - from.x) * i / steps, y: from.y + (to.y - from.y) * i / steps }]);
      await this.frames(1);
    }
    await this.touch('touchEnd', []);
    await this.settle();
  }

  /// Two fingers, each from one place to another.
  async two(from, to, steps = 5) {
    const at = share => from.map((p, i) => ({ x: p.x + (to[i].x - p.x) * share, y: p.y + (to[i].y - p.y) * share }));
    await this.touch('touchStart', [from[0]]);
    await this.touch('touchStart', from);
    await this.frames(2);
    for (let i = 1; i <= steps; ++i) {
      await this.touch('touchMove', at(i / steps));
      await this.frames(1);
    }
    await this.touch('touchEnd', []);
    await this.settle();
  }

  /// From the lay-out list into the sitting, by touch.
  async begin() {
    const state = await this.state();
    if (state.screen === Screen.layOut) await this.tap('Begin now' in state.controls ? 'Begin now' : 'Begin');
    return this.until('the beginning', s => s.events > 0 && s.screen === Screen.bench);
  }

  /// Keeps what is on the screen, and compares it with what was looked at before.
  async look(name) {
    await this.until('the end of what is told for a moment', s => !s.notice);
    await this.settle();
    mkdirSync(path.join(shots, 'small'), { recursive: true });
    const shot = path.join(shots, name + '.png'), little = path.join(shots, 'small', name + '.png');
    const golden = path.join(root, 'tests/golden/web', name + '.png');
    await this.page.screenshot({ path: shot });
    execFileSync('convert', [shot, '-resize', '320x', '-strip', little]);
    if (process.env.WW_KEEP_GOLDENS) {
      mkdirSync(path.dirname(golden), { recursive: true });
      execFileSync('cp', [little, golden]);
    }
    assert.ok(existsSync(golden), `no golden: look at ${shot} and keep it`);
    // Share of full scale by which a blinking cursor or another driver may differ on average; a panel
    // elsewhere differs by several times that (as tests/desktop/window_test.py).
    const { stderr } = (() => {
      try { execFileSync('compare', ['-metric', 'RMSE', little, golden, 'null:'], { stdio: ['ignore', 'pipe', 'pipe'] }); return { stderr: '0 (0)' }; } catch (e) { return { stderr: String(e.stderr) }; }
    })();
    const difference = Number(stderr.split('(')[1]?.split(')')[0]);
    assert.ok(difference < 0.03, `${name} differs from its golden by ${difference}: see ${shot}`);
  }

  /// Ends the browser as a pulled plug would: no process of it has time for anything.
  async kill() {
    const processes = execFileSync('ps', ['-eo', 'pid,args'], { encoding: 'utf8' }).split('\n')
      .filter(line => line.includes(`--user-data-dir=${this.data}`)).map(line => Number(line.trim().split(/\s+/)[0]));
    assert.ok(processes.length > 0, 'the browser is found');
    for (const pid of processes) { try { process.kill(pid, 'SIGKILL'); } catch { /* ended with its parent */ } }
    for (const alive = pid => { try { return process.kill(pid, 0); } catch { return false; } }; processes.some(alive);) {
      await new Promise(done => setTimeout(done, 50));
    }
    for (const name of ['SingletonLock', 'SingletonCookie', 'SingletonSocket']) rmSync(path.join(this.data, name), { force: true });
  }

  /// Closes the browser; its profile stays for the next open().
  leave() { return this.context.close(); }

  async close() {
    await this.context?.close().catch(() => {});
    rmSync(this.data, { recursive: true, force: true, maxRetries: 5 });
  }

  /// Nothing was complained of, and nothing was asked of anybody else.
  clean() {
    assert.deepEqual(this.complaints, []);
    assert.deepEqual(this.foreign, []);
  }
}

function find(controls, label) {
  const key = Object.keys(controls).find(k => k === label || k === '##' + label || k.startsWith(label + '##'));
  return key && controls[key];
}

/// A test with a server and a tablet, both gone afterwards.
export async function withTablet(profile, work, more) {
  const server = await serve();
  const tablet = new Tablet(server.address, profile, more);
  try {
    await tablet.open();
    await work(tablet, server);
    tablet.clean();
  } catch (error) {
    mkdirSync(shots, { recursive: true });
    await tablet.page?.screenshot({ path: path.join(shots, 'failed.png') }).catch(() => {});
    if (tablet.complaints.length) console.error('the browser says:', tablet.complaints.slice(0, 20));
    throw error;
  } finally {
    await tablet.close();
    await server.stop();
  }
}
