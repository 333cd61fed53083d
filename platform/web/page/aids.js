// What the browser does beside drawing: it reads aloud, ticks, keeps the screen lit.

let sound = null;

/// The click of a counter: 20 ms of a falling wave.
export function tick() {
  sound ??= new AudioContext();
  const wave = sound.createOscillator(), loudness = sound.createGain(), now = sound.currentTime;
  wave.frequency.value = 1800;
  loudness.gain.setValueAtTime(0.5, now);
  loudness.gain.exponentialRampToValueAtTime(0.001, now + 0.02);
  wave.connect(loudness).connect(sound.destination);
  wave.start(now);
  wave.stop(now + 0.02);
}

let toSay = '', dumb = false;

/// Only by a voice of this device: others send the text away. `note` is told once where there is none.
export function say(text, note) {
  toSay = text;
  globalThis.speechSynthesis?.cancel();
  if (!text) return;
  const voices = globalThis.speechSynthesis?.getVoices() ?? [];
  const voice = voices.find(v => v.localService && v.lang.startsWith('en'));
  if (voice) {
    const words = new SpeechSynthesisUtterance(text);
    words.voice = voice;
    words.lang = voice.lang;
    return speechSynthesis.speak(words);
  }
  const none = () => {
    if (!dumb) note('Nothing is read aloud: this device has no English voice of its own');
    dumb = true;
  };
  if (voices.length || !globalThis.speechSynthesis) return none();
  // A browser may know its voices only a moment after it was first asked.
  const later = () => {
    clearTimeout(patience);
    speechSynthesis.removeEventListener('voiceschanged', later);
    if (toSay !== text) return;
    if (speechSynthesis.getVoices().length) say(text, note);
    else none();
  };
  const patience = setTimeout(later, 3000);
  speechSynthesis.addEventListener('voiceschanged', later);
  return undefined;
}

/// Keeps the screen lit while it is wanted; asked again when the page comes back.
export class Awake {
  #wanted = false; #lock = null; #refused; #told = false;

  constructor(refused) {
    this.#refused = refused;
    document.addEventListener('visibilitychange', () => this.#ask());
  }

  set(wanted) {
    this.#wanted = wanted;
    if (wanted) return this.#ask();
    this.#lock?.release();
    this.#lock = null;
    return undefined;
  }

  get held() { return !!this.#lock && !this.#lock.released; }

  async #ask() {
    if (!this.#wanted || document.visibilityState !== 'visible' || this.held) return;
    try {
      if (!navigator.wakeLock) throw new Error('this browser has no way to');
      const lock = await navigator.wakeLock.request('screen');
      if (this.#wanted && !this.held) this.#lock = lock;
      else lock.release(); // the sitting ended while it was asked for
    } catch (error) {
      if (!this.#told) this.#refused('The screen may go dark while you tie (' + error.message + ')');
      this.#told = true;
    }
  }
}
