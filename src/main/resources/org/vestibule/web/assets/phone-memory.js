// What was chosen on this phone for one page: names, sizes and how far each file came; no picture.
// It outlives a reload, a phone that sleeps and a closed tab, and is forgotten days after the page's day.
const PREFIX = "vestibule-chosen-";
const KEPT_MILLISECONDS = 3 * 24 * 3600 * 1000;

export class Memory {
  constructor(page) {
    this.key = PREFIX + page;
    this.works = true;
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

  keep(files) {
    this.#try(() => localStorage.setItem(this.key, JSON.stringify({ at: Date.now(), files })));
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
