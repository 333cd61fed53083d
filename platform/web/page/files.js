// Files in and out by the browser's own ways: its dialogs, drops on the page, the share sheet, the
// camera. What comes in is copied into the program's folder /in; nothing leaves but by the person.

const accepts = ['image/png,image/jpeg', 'image/png,image/jpeg', '.json,.txt,application/json,text/plain', '.db', '.csv,.tsv,text/csv'];
const kinds = { png: 'image/png', json: 'application/json', html: 'text/html', csv: 'text/csv', txt: 'text/plain' };
const dialog = document.getElementById('camera'), video = document.getElementById('seen');

export class Files {
  #bench; #wake; #told;

  constructor(bench, wake, told) {
    this.#bench = bench; this.#wake = wake; this.#told = told;
    bench.FS.mkdir('/in');
    addEventListener('dragover', event => event.preventDefault());
    addEventListener('drop', event => {
      event.preventDefault();
      for (const file of event.dataTransfer.files) this.take(file);
    });
    document.getElementById('shoot').onclick = () => this.#shoot();
    document.getElementById('leave').onclick = () => this.#close();
    document.getElementById('instead').onclick = () => { this.#close(); this.#choose(0); };
  }

  async take(file, name = file.name) {
    const path = '/in/' + name.replace(/[^\p{L}\p{N}._ -]/gu, '_').slice(-100);
    try {
      this.#bench.FS.writeFile(path, new Uint8Array(await file.arrayBuffer()));
    } catch (error) {
      return this.#told(name + ' cannot be read: ' + error.message);
    }
    this.#bench.ccall('ww_file', null, ['string'], [path]);
    this.#wake(() => this.#bench.FS.unlink(path));
  }

  /// `kind` as FileKind: photo, camera, recipe, backup, table.
  pick(kind) {
    if (kind === 1) this.#camera();
    else this.#choose(kind);
  }

  #choose(kind) {
    const input = document.createElement('input');
    input.type = 'file';
    input.accept = accepts[kind];
    input.onchange = () => { for (const file of input.files) this.take(file); };
    input.click();
  }

  async #camera() {
    try {
      const seen = await navigator.mediaDevices.getUserMedia(
        { audio: false, video: { facingMode: 'environment', width: { ideal: 4096 }, height: { ideal: 3072 } } });
      video.srcObject = seen;
      dialog.hidden = false;
      await video.play();
      document.getElementById('shoot').focus();
    } catch (error) {
      this.#close();
      this.#told('No camera can be used (' + error.message + '); choose a photo instead');
      this.#choose(0);
    }
  }

  #close() {
    for (const track of video.srcObject?.getTracks() ?? []) track.stop();
    video.srcObject = null;
    dialog.hidden = true;
    document.getElementById('canvas').focus({ preventScroll: true });
  }

  async #shoot() {
    const picture = new OffscreenCanvas(video.videoWidth, video.videoHeight);
    picture.getContext('2d').drawImage(video, 0, 0);
    const file = await picture.convertToBlob({ type: 'image/jpeg', quality: 0.95 });
    this.#close();
    this.take(file, 'camera-' + new Date().toISOString().slice(0, 19).replace(/:/g, '') + '.jpg');
  }

  /// Hands a file of the program out: to the share sheet of a tablet, else as a download.
  async give(path) {
    const name = path.split('/').pop();
    const type = kinds[name.split('.').pop()] ?? 'application/octet-stream';
    const file = new File([this.#bench.FS.readFile(path)], name, { type });
    if (matchMedia('(pointer: coarse)').matches && navigator.canShare?.({ files: [file] })) {
      try {
        return await navigator.share({ files: [file], title: name });
      } catch (error) {
        if (error.name === 'AbortError') return undefined; // the person thought better of it
      }
    }
    const link = document.createElement('a');
    link.href = URL.createObjectURL(file);
    link.download = name;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 60000);
    return undefined;
  }
}
