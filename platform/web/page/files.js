// Files in and out by the browser's own ways: its dialogs, drops on the page, the share sheet, the
// camera. What comes in is copied into the program's folder /in; nothing leaves but by the person.

const accepts = ['image/png,image/jpeg', 'image/png,image/jpeg', '.json,.txt,application/json,text/plain', '.db', '.csv,.tsv,text/csv'];
const kinds = { png: 'image/png', jpg: 'image/jpeg', jpeg: 'image/jpeg', json: 'application/json', html: 'text/html', csv: 'text/csv', txt: 'text/plain' };
const dialog = document.getElementById('camera'), video = document.getElementById('seen');
const shoot = document.getElementById('shoot');

const stop = stream => { for (const track of stream?.getTracks() ?? []) track.stop(); };

export class Files {
  #bench; #wake; #told;
  #backup = ''; // looked into, until the person has said whether it is to be taken
  #out = []; // handed out in this turn
  #count = 0; // of files that came in
  #asking = 0; // dialogs of the browser that are open
  #camera = null; // one object for each time that it is wanted, from the press until the dialog is closed

  constructor(bench, wake, told) {
    this.#bench = bench; this.#wake = wake; this.#told = told;
    bench.FS.mkdir('/in');
    addEventListener('dragover', event => event.preventDefault());
    addEventListener('drop', event => {
      event.preventDefault();
      for (const file of event.dataTransfer.files) this.take(file);
    });
    shoot.onclick = () => this.#shoot();
    document.getElementById('leave').onclick = () => this.#close();
    document.getElementById('instead').onclick = () => { this.#close(); this.#choose(0); };
    dialog.addEventListener('cancel', () => this.#close());
    video.addEventListener('loadeddata', () => { shoot.disabled = !video.videoWidth; });
    document.addEventListener('visibilitychange', () => { if (this.#camera && document.visibilityState === 'hidden') this.#close(); });
  }

  async take(file, name = file.name) {
    // In a folder of its own, because others may be of the same name.
    const folder = '/in/' + ++this.#count;
    const path = folder + '/' + name.replace(/[^\p{L}\p{N}._ -]/gu, '_').slice(-100);
    const backup = path.endsWith('.db');
    if (backup && this.#backup) this.#bench.FS.unlink(this.#backup);
    if (backup) this.#backup = '';
    try {
      this.#bench.FS.mkdir(folder);
      this.#bench.FS.writeFile(path, new Uint8Array(await file.arrayBuffer()));
    } catch (error) {
      return this.#told(name + ' cannot be read: ' + error.message);
    }
    this.#bench.ccall('ww_file', null, ['string'], [path]);
    if (backup) this.#backup = path;
    this.#wake(() => {
      if (backup) return;
      this.#bench.FS.unlink(path);
      this.#bench.FS.rmdir(folder);
    });
    return undefined;
  }

  /// Whether the person is about to hand something in, for which the page may be hidden.
  get waits() { return this.#asking > 0 || this.#camera !== null; }

  /// `kind` as FileKind: photo, camera, recipe, backup, table.
  pick(kind) {
    if (kind === 1) this.#look();
    else this.#choose(kind);
  }

  #choose(kind) {
    const input = document.createElement('input');
    input.type = 'file';
    input.accept = accepts[kind];
    input.hidden = true;
    const answered = () => { --this.#asking; input.remove(); };
    input.onchange = () => { for (const file of input.files) this.take(file); answered(); };
    input.oncancel = answered;
    ++this.#asking;
    document.body.append(input); // one outside the page may be gone before it is answered
    input.click();
  }

  /// The browser may ask the person first, which takes as long as it takes.
  async #look() {
    if (this.#camera) return;
    const wish = this.#camera = {};
    try {
      const seen = await navigator.mediaDevices.getUserMedia(
        { audio: false, video: { facingMode: 'environment', width: { ideal: 4096 }, height: { ideal: 3072 } } });
      if (this.#camera !== wish) return stop(seen);
      video.srcObject = seen;
      shoot.disabled = true;
      dialog.showModal();
      await video.play();
      shoot.focus();
    } catch (error) {
      if (this.#camera !== wish) return;
      this.#close();
      this.#told('No camera can be used (' + error.message + '); choose a photo instead');
      this.#choose(0);
    }
  }

  #close() {
    this.#camera = null;
    stop(video.srcObject);
    video.srcObject = null;
    dialog.close();
    document.getElementById('canvas').focus({ preventScroll: true });
  }

  async #shoot() {
    shoot.disabled = true; // once for each picture
    const picture = new OffscreenCanvas(video.videoWidth, video.videoHeight);
    picture.getContext('2d').drawImage(video, 0, 0);
    const file = await picture.convertToBlob({ type: 'image/jpeg', quality: 0.95 });
    this.#close();
    this.take(file, 'camera-' + new Date().toISOString().slice(0, 19).replace(/:/g, '') + '.jpg');
  }

  /// Hands a file of the program out, together with all others of this turn.
  give(path) {
    const name = path.split('/').pop();
    const type = kinds[name.split('.').pop()] ?? 'application/octet-stream';
    this.#out.push(new File([this.#bench.FS.readFile(path)], name, { type }));
    if (this.#out.length === 1) queueMicrotask(() => this.#hand(this.#out.splice(0)));
  }

  /// To the share sheet of a tablet, else as downloads.
  async #hand(files) {
    if (matchMedia('(pointer: coarse)').matches && navigator.canShare?.({ files })) {
      try {
        return await navigator.share({ files, title: files[0].name });
      } catch (error) {
        if (error.name === 'AbortError') return undefined; // the person thought better of it
      }
    }
    for (const file of files) {
      const link = document.createElement('a');
      link.href = URL.createObjectURL(file);
      link.download = file.name;
      link.click();
      setTimeout(() => URL.revokeObjectURL(link.href), 60000);
    }
    return undefined;
  }
}
