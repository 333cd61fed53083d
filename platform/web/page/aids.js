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

/// Only a voice of this device: others send the text away.
export function say(text) {
  if (!globalThis.speechSynthesis) return;
  speechSynthesis.cancel();
  if (!text) return;
  const voice = speechSynthesis.getVoices().find(v => v.localService && v.lang.startsWith('en'));
  if (speechSynthesis.getVoices().length && !voice) return;
  const words = new SpeechSynthesisUtterance(text);
  if (voice) words.voice = voice;
  words.lang = 'en';
  speechSynthesis.speak(words);
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
      this.#lock = await navigator.wakeLock.request('screen');
    } catch (error) {
      if (!this.#told) this.#refused('The screen may go dark while you tie (' + error.message + ')');
      this.#told = true;
    }
  }
}
