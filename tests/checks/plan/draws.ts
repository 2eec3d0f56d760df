import { createHash } from "node:crypto";

/**
 * Chance by name: the same words always give the same draw, whatever was drawn before. A hall with one more place so keeps
 * its athletes, their turns and their delays, and two days differ by the change alone.
 */
export class Draws {
  private readonly seed: string;
  constructor(seed: string) {
    this.seed = seed;
  }

  /** Eight numbers between 0 and 1, never either. */
  private eight(name: string): number[] {
    const digest = createHash("sha256").update(`${this.seed}/${name}`).digest();
    return Array.from({ length: 8 }, (_, index) => (digest.readUInt32LE(index * 4) + 0.5) / 2 ** 32);
  }

  uniform(name: string, from = 0, until = 1): number {
    return from + (until - from) * (this.eight(name)[0] ?? 0.5);
  }

  whole(name: string, least: number, most: number): number {
    return least + Math.floor(this.uniform(name) * (most - least + 1));
  }

  happens(name: string, chance: number): boolean {
    return this.uniform(name) < chance;
  }

  /** Gamma distributed with a whole `shape` of at most 8: the sum of as many exponential times. */
  gamma(name: string, shape: number, mean: number): number {
    const logs = this.eight(name).slice(0, shape);
    return (-mean / shape) * logs.reduce((sum, each) => sum + Math.log(each), 0);
  }

  /** A factor around 1: e to the power of `spread` times the sum of eight uniform draws with mean 0 and deviation 1. */
  factor(name: string, spread: number): number {
    const sum = this.eight(name).reduce((total, each) => total + each - 0.5, 0);
    return Math.exp(spread * sum * Math.sqrt(12 / 8));
  }
}
