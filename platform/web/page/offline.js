// The page's own copy on the device, and new versions of it: one waits until no sitting is on and
// nobody looks; one tab decides, each loads anew for itself.

export class Offline {
  #storage;
  #worker = null; // its registration
  #busy = false; #newer = false; #asked = false;

  constructor(storage) { this.#storage = storage; }

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
    if (!workers) return;
    document.addEventListener('visibilitychange', () => this.#update());
    workers.addEventListener('message', event => {
      if (event.data !== 'newer') return;
      this.#newer = true;
      this.#update();
    });
    this.#worker = await workers.register('sw.js').catch(() => null);
  }
}
