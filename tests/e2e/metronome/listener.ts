/**
 * Listens to what the metronome really sounds: runs on the audio thread, and tells the frame at which each sound begins
 * (the first sample above `threshold` after `quietFrames` of less).
 */
declare const currentFrame: number;
declare const sampleRate: number;
declare function registerProcessor(name: string, processor: new () => Listener): void;
declare class AudioWorkletProcessor {
  readonly port: MessagePort;
}

const threshold = 0.02;
const quietFrames = sampleRate / 4;

class Listener extends AudioWorkletProcessor {
  #lastLoud = Number.NEGATIVE_INFINITY;

  process(inputs: Float32Array[][]): boolean {
    const samples = inputs[0]?.[0] ?? [];
    for (const [place, sample] of samples.entries()) {
      if (Math.abs(sample) < threshold) continue;
      const frame = currentFrame + place;
      if (frame - this.#lastLoud > quietFrames) this.port.postMessage(frame / sampleRate);
      this.#lastLoud = frame;
    }
    return true;
  }
}

registerProcessor("listener", Listener);
