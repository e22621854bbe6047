// What was chosen on this phone for one page: names, sizes and how far each file came; no picture.
// It outlives a reload, a phone that sleeps and a closed tab, and is forgotten days after the page's day.
// Two tabs may have the same page open: each writes what it knows, and keeps what the other one wrote.
const PREFIX = "vestibule-chosen-";
const KEPT_MILLISECONDS = 3 * 24 * 3600 * 1000;

export class Memory {
  constructor(page) {
    this.key = PREFIX + page;
    this.works = true;
    this.gone = new Set();
  }

  #try(step) {
    try {
      return step();
    } catch {
      // The browser keeps nothing; then nothing is ever called safe.
      this.works = false;
      return null;
    }
  }

  files() {
    return this.#try(() => this.#read(this.key)?.files ?? []) ?? [];
  }

  #read(key) {
    return JSON.parse(localStorage.getItem(key) ?? "null");
  }

  // What was written of a file that goes on under another id, or was chosen anew, counts no more.
  forget(id) {
    if (id) this.gone.add(id);
  }

  // What stands here and is none of these files: another tab's.
  others(files) {
    return this.files().filter((kept) => !this.gone.has(kept.id) && !files.some((file) => isSame(kept, file)));
  }

  // Of a file whose bytes another tab may hold, what that tab wrote counts: `held` says whose this tab holds.
  keep(files) {
    const stored = this.files();
    const own = files.map(({ held, ...file }) => (!held && stored.find((kept) => isSame(kept, file))) || file);
    const all = [...own, ...this.others(files)];
    this.#try(() => localStorage.setItem(this.key, JSON.stringify({ at: Date.now(), files: all })));
  }

  // Tells when another tab has written.
  whenChanged(told) {
    addEventListener("storage", (event) => {
      if (event.key === this.key || event.key === null) told();
    });
  }

  forgetOld() {
    this.#try(() => {
      const keys = Object.keys(localStorage).filter((key) => key.startsWith(PREFIX));
      for (const key of keys) {
        if (!(Date.now() - this.#read(key)?.at < KEPT_MILLISECONDS)) localStorage.removeItem(key);
      }
    });
  }
}

// By the id that the server gave; before there is one, by name and size.
function isSame(kept, file) {
  return kept.id && file.id ? kept.id === file.id : kept.name === file.name && kept.size === file.size;
}
