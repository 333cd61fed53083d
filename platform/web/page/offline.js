// The page's own copy on the device, and new versions of it: one takes over right at the start, or
// when nobody looks, and never in a sitting; one tab decides, each loads anew for itself.

export class Offline {
  #storage; #note; #waits;
  #worker = null; // its registration
  #busy = false; #shown = false; #newer = false; #asked = false;

  /// `note` is told where no copy can be kept; the next load tries again. `waits` says whether a file is
  /// about to be handed in.
  constructor(storage, note, waits) {
    this.#storage = storage;
    this.#note = note;
    this.#waits = waits;
    navigator.serviceWorker?.addEventListener('message', event => {
      if (event.data !== 'newer') return;
      this.#newer = true;
      if (this.#shown) this.#update();
      else location.reload(); // a page that is still coming may have files of both versions
    });
  }

  /// Whether a sitting is on, or words are typed that nothing keeps yet; told before start().
  set(busy) {
    this.#busy = busy;
    this.#update();
  }

  #update(seen = document.visibilityState !== 'hidden') {
    if (this.#busy || this.#waits() || this.#storage.broken) return; // what lies in memory alone would go with the page
    // Who asked a moment ago does not wait until nobody looks: no sitting is to begin in the old version.
    if (this.#newer && (this.#asked || !seen)) return location.reload();
    if (seen || this.#storage.looksOn) return;
    this.#ask();
  }

  /// After the first frame.
  async start() {
    const workers = navigator.serviceWorker;
    const lacking = why => this.#note('Without a network this page does not open: ' + why);
    this.#shown = true;
    if (!workers) return lacking(isSecureContext ? 'this browser keeps no copy of it, but another may' : 'for that it has to come by https, or from localhost');
    try {
      this.#worker = await workers.register('sw.js');
    } catch (error) {
      return lacking('the browser keeps no copy (' + error.message + '). Allow it to store data for this page, then load it again');
    }
    const coming = this.#worker?.installing;
    coming?.addEventListener('statechange', () => {
      if (coming.state === 'redundant' && !this.#worker.active) lacking('not all of it could be kept. Make room on the device, then load it again');
    });
    // Not at once: a page that goes away is hidden, too, and the next one is coming already, in the old version.
    document.addEventListener('visibilitychange', () => setTimeout(() => this.#update(), 0));
    // Nothing is in memory alone yet: a version that is broken, or finds the storage so, does not stay for ever.
    if (this.#storage.broken && !this.#busy) this.#ask();
    else this.#update(false);
  }

  /// This version cannot start: one that waits, or comes now, may.
  async rescue() {
    this.#worker = await navigator.serviceWorker?.register('sw.js').catch(() => null);
    this.#ask();
    const coming = this.#worker?.installing;
    coming?.addEventListener('statechange', () => { if (coming.state === 'installed') this.#ask(); });
  }

  /// A worker of a new version may be at work already, and still give out the old one.
  #ask() {
    this.#asked = true;
    (this.#worker?.waiting ?? this.#worker?.active)?.postMessage('take over');
  }
}
