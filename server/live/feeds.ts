/** One open feed of a page. */
export type Feed = {
  /** The link it came by. */
  readonly link: string;
  readonly send: (text: string) => void;
  readonly close: () => void;
};

/** The open feeds of one build. */
export class Feeds {
  readonly #open = new Set<Feed>();

  get count(): number {
    return this.#open.size;
  }

  add(feed: Feed): void {
    this.#open.add(feed);
  }

  remove(feed: Feed): void {
    this.#open.delete(feed);
  }

  /** To everyone, or to the pages of one link. */
  send(text: string, link?: string): void {
    for (const feed of this.#open) if (link === undefined || feed.link === link) feed.send(text);
  }

  /** Closes the feeds of one link, or all. */
  close(link?: string): void {
    for (const feed of this.#open) if (link === undefined || feed.link === link) feed.close();
  }
}
