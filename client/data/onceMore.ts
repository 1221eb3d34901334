/**
 * Loads a part of the program; where that fails, once more after a moment. A weak link drops requests, and nobody should
 * have to reload a page for one.
 */
export function onceMore<Part>(load: () => Promise<Part>): () => Promise<Part> {
  return () =>
    load().catch(async () => {
      await new Promise((resolve) => setTimeout(resolve, pause));
      return load();
    });
}

const pause = 1000;
