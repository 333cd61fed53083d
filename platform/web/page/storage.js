// The folder /data of the program, kept in the browser's own storage.
//
// The program's files lie in memory. What it writes is noted by blocks, and keep() puts the changed
// blocks into IndexedDB in one transaction, which asks for the disk ('strict') and is whole or not at
// all. The page shows nothing before that has ended. Between two turns of the loop SQLite has no
// transaction open, so that what is kept is always a whole library.

const block = 16384;
// What SQLite and the program make for a moment, or hand out.
const passing = name => /-journal$|\.part\d*$|\.lock$/.test(name);

const ended = request => new Promise((done, failed) => {
  request.onsuccess = () => done(request.result);
  request.onerror = () => failed(request.error);
});

// Beside the blocks, whose keys are lists: which tab has the library, where the browser has no locks.
const owner = 'owner', answerMs = 1000;

export class Storage {
  #db = null;
  #mark = ''; // this tab's, as owner
  #nodes = new Map(); // name -> node of the folder, as they are kept
  #fs = null;
  #folder = null;
  looksOn = false;
  broken = ''; // why nothing is kept at all
  lost = () => {}; // called when the browser takes away what was kept
  keeps = 0; // transactions that ended, and how long the last one took
  lastMs = 0;

  /// Opens the storage, and takes the lock that one tab has at a time.
  async open() {
    if (navigator.locks) {
      this.looksOn = !await new Promise(told => {
        navigator.locks.request('wrapwright', { ifAvailable: true }, lock => {
          told(!!lock);
          return lock ? new Promise(() => {}) : undefined; // held until the tab is gone
        });
      });
    }
    try {
      const request = indexedDB.open('wrapwright', 1);
      request.onupgradeneeded = () => {
        request.result.createObjectStore('files');
        request.result.createObjectStore('blocks');
      };
      this.#db = await ended(request);
      this.#db.onclose = () => {
        this.#db = null;
        this.broken = 'The browser has taken away what it kept for this page; what you see is all there is';
        this.lost();
      };
      if (!navigator.locks) await this.#claim();
    } catch (error) {
      this.broken = 'This browser refuses to keep anything for this page (' + error.message + ')';
    }
  }

  /// Without locks the tab that has the library answers for itself. One that does not, because it was
  /// killed or lies frozen, loses it: keep() looks for the mark before it writes.
  async #claim() {
    const tabs = globalThis.BroadcastChannel ? new BroadcastChannel('wrapwright') : null; // else the mark alone
    this.looksOn = tabs && await new Promise(told => {
      tabs.onmessage = ({ data }) => { if (data === 'taken') told(true); };
      tabs.postMessage('who has it');
      setTimeout(told, answerMs, false);
    });
    if (this.looksOn) return;
    if (tabs) tabs.onmessage = ({ data }) => { if (data === 'who has it' && !this.looksOn) tabs.postMessage('taken'); };
    this.#mark = crypto.getRandomValues(new Uint32Array(4)).join();
    await ended(this.#db.transaction('blocks', 'readwrite').objectStore('blocks').put(this.#mark, owner));
  }

  async #read() {
    const files = new Map();
    if (!this.#db) throw new Error('the storage is closed');
    const all = this.#db.transaction(['files', 'blocks']);
    const [names, sizes] = await Promise.all(
      [ended(all.objectStore('files').getAllKeys()), ended(all.objectStore('files').getAll())]);
    for (let i = 0; i < names.length; ++i) {
      const range = IDBKeyRange.bound([names[i], 0], [names[i], Infinity]);
      const [keys, blocks] = await Promise.all(
        [ended(all.objectStore('blocks').getAllKeys(range)), ended(all.objectStore('blocks').getAll(range))]);
      const bytes = new Uint8Array(sizes[i]);
      keys.forEach((key, k) => bytes.set(blocks[k].subarray(0, Math.max(0, bytes.length - key[1] * block)), key[1] * block));
      files.set(names[i], bytes);
    }
    return files;
  }

  /// What is kept, for mount(): asked for while the program itself is still being loaded.
  async load() { return this.#db ? this.#read() : new Map(); }

  mount(FS, files) {
    this.#fs = FS;
    FS.mkdir('/data');
    const folder = this.#folder = FS.lookupPath('/data').node;
    const made = folder.node_ops.mknod;
    folder.node_ops = { ...folder.node_ops, mknod: (...how) => this.#watch(made(...how)) };
    this.#fill(files);
  }

  #fill(files) {
    for (const name of Object.keys(this.#folder.contents)) {
      if (this.#fs.isFile(this.#folder.contents[name].mode)) this.#fs.unlink('/data/' + name);
    }
    this.#nodes.clear();
    for (const [name, bytes] of files) {
      this.#fs.writeFile('/data/' + name, bytes, { canOwn: true });
      const node = this.#folder.contents[name];
      node.changed.clear();
      this.#nodes.set(name, node);
    }
  }

  /// Notes what is written to a new file of the folder.
  #watch(node) {
    if (!this.#fs.isFile(node.mode)) return node;
    node.changed = new Set();
    const { write } = node.stream_ops, { setattr } = node.node_ops;
    node.stream_ops = { ...node.stream_ops, write(stream, buffer, offset, length, position, own) {
      for (let b = Math.floor(position / block); b * block < position + length; ++b) node.changed.add(b);
      return write(stream, buffer, offset, length, position, own);
    } };
    node.node_ops = { ...node.node_ops, setattr(of, attr) {
      if (attr.size !== undefined) {
        for (let b = Math.floor(Math.min(attr.size, of.usedBytes) / block); b * block < Math.max(attr.size, of.usedBytes); ++b) of.changed.add(b);
      }
      return setattr(of, attr);
    } };
    return node;
  }

  #wanted() {
    const there = new Map();
    if (this.looksOn) return there;
    for (const [name, node] of Object.entries(this.#folder.contents)) {
      if (this.#fs.isFile(node.mode) && !passing(name)) there.set(name, node);
    }
    return there;
  }

  /// Whether the program has written what is not kept yet.
  due() {
    if (this.broken || this.looksOn) return false;
    const there = this.#wanted();
    if (there.size !== this.#nodes.size) return true;
    for (const [name, node] of there) {
      if (this.#nodes.get(name) !== node || node.changed.size) return true;
    }
    return false;
  }

  /// Keeps what was written; throws where the browser refuses, and then keeps nothing of it.
  async keep() {
    if (!this.#db) throw new Error('the storage is closed');
    const began = performance.now();
    const there = this.#wanted(), done = [];
    const all = this.#db.transaction(['files', 'blocks'], 'readwrite', { durability: 'strict' });
    const files = all.objectStore('files'), blocks = all.objectStore('blocks');
    if (this.#mark && await ended(blocks.get(owner)) !== this.#mark) {
      this.looksOn = true;
      throw new Error('another tab has the library now');
    }
    for (const name of this.#nodes.keys()) {
      if (there.get(name) === this.#nodes.get(name)) continue; // else it is gone, or another one
      files.delete(name);
      blocks.delete(IDBKeyRange.bound([name, 0], [name, Infinity]));
    }
    for (const [name, node] of there) {
      const whole = this.#nodes.get(name) !== node;
      const size = node.usedBytes, count = Math.ceil(size / block);
      const changed = whole ? [...Array(count).keys()] : [...node.changed];
      if (!whole && !changed.length) continue;
      for (const b of changed) {
        if (b < count) blocks.put(node.contents.slice(b * block, Math.min(size, (b + 1) * block)), [name, b]);
        else blocks.delete([name, b]);
      }
      files.put(size, name);
      done.push(node);
    }
    await new Promise((kept, refused) => {
      all.oncomplete = kept;
      all.onabort = () => refused(all.error || new Error('the browser ended it'));
    });
    for (const node of done) node.changed.clear();
    this.#nodes = there;
    ++this.keeps;
    this.lastMs = performance.now() - began;
  }

  /// Puts back what is kept, after keep() was refused.
  async goBack() { this.#fill(await this.#read()); }

  /// Asks the browser not to clear it when room gets short; whether it promises that.
  async stay() {
    return !!navigator.storage?.persist && (await navigator.storage.persisted() || await navigator.storage.persist());
  }
}
