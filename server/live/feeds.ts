import type { Role } from '#domain/progress/command.ts';

/** One open feed of a page. */
export type Feed = {
  /** The link it came by. */
  readonly link: string;
  readonly role: Role;
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

  /** Whether a page of this role is open. */
  has(role: Role): boolean {
    return [...this.#open].some((feed) => feed.role === role);
  }

  /** To the pages of one role. */
  sendTo(role: Role, text: string): void {
    for (const feed of this.#open) if (feed.role === role) feed.send(text);
  }

  /** Closes the feeds of one link, or all. */
  close(link?: string): void {
    for (const feed of this.#open) if (link === undefined || feed.link === link) feed.close();
  }
}
