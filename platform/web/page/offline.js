// The page's own copy on the device, and new versions of it: one waits until no sitting is on and
// nobody looks; one tab decides, each loads anew for itself.

export class Offline {
  #storage; #note;
  #worker = null; // its registration
  #busy = false; #newer = false; #asked = false;

  /// `note` is told where no copy can be kept; the next load tries again.
  constructor(storage, note) { this.#storage = storage; this.#note = note; }

  /// Whether a sitting is on; told before start().
  set(busy) {
    this.#busy = busy;
    this.#update();
  }

  #update() {
    if (this.#busy || this.#storage.broken) return; // what lies in memory alone would go with the page
    // Who asked a moment ago does not wait until nobody looks again: no sitting is to begin in the old version.
    if (document.visibilityState !== 'hidden' && !(this.#newer && this.#asked)) return;
    if (this.#newer) return location.reload();
    this.#asked = !this.#storage.looksOn;
    // A worker of a new version may be at work already, and still give out the old one.
    if (this.#asked) (this.#worker?.waiting ?? this.#worker?.active)?.postMessage('take over');
    return undefined;
  }

  async start() {
    const workers = navigator.serviceWorker;
    const lacking = why => this.#note('Without a network this page does not open: ' + why);
    if (!workers) return lacking(isSecureContext ? 'this browser keeps no copy of it, but another may' : 'for that it has to come by https, or from localhost');
    document.addEventListener('visibilitychange', () => this.#update());
    workers.addEventListener('message', event => {
      if (event.data !== 'newer') return;
      this.#newer = true;
      this.#update();
    });
    try {
      this.#worker = await workers.register('sw.js');
    } catch (error) {
      return lacking('the browser keeps no copy (' + error.message + '). Allow it to store data for this page, then load it again');
    }
    const coming = this.#worker?.installing;
    coming?.addEventListener('statechange', () => {
      if (coming.state === 'redundant' && !this.#worker.active) lacking('not all of it could be kept. Make room on the device, then load it again');
    });
    return undefined;
  }
}
