/** One short tone, for a hand that is busy and an eye that looks elsewhere. */

const TONE_HZ = 880;
const TONE_S = 0.4;
const LOUDNESS = 0.2;

/** Nothing where the phone has no sound, or allows none before it was touched. */
export function sound(): void {
  if (!("AudioContext" in globalThis)) return;
  const context = new AudioContext();
  const tone = context.createOscillator();
  const volume = context.createGain();
  tone.frequency.value = TONE_HZ;
  volume.gain.value = LOUDNESS;
  tone.connect(volume).connect(context.destination);
  tone.onended = () => void context.close();
  tone.start();
  tone.stop(context.currentTime + TONE_S);
}
