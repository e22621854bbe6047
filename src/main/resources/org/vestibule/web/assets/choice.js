// A field in which one types and then chooses from a list: arrow keys, Enter, or a press on a line.
// No line can be taken while the list answers another text than the one in the field.
export class Choice {
  #asked = 0;
  #answered = null;
  #running = null;

  // `find(typed, signal)` comes back with a function that fills the list; `says` is told "busy", "failed", or how many lines there are.
  constructor(input, list, find, chosen, says = () => {}) {
    this.input = input;
    this.list = list;
    this.find = find;
    this.chosen = chosen;
    this.says = says;
    this.at = 0;
    input.addEventListener("input", () => this.open());
    input.addEventListener("focus", () => input.select());
    input.addEventListener("keydown", (event) => this.key(event));
    input.addEventListener("blur", () => setTimeout(() => this.close(), 150));
    list.addEventListener("pointerdown", (event) => event.preventDefault());
    list.addEventListener("click", (event) => this.take(event.target.closest("[role=option]")));
  }

  options() {
    return [...this.list.querySelectorAll("[role=option]")].filter((one) => !one.hidden);
  }

  // True if the list answers what stands in the field.
  fits() {
    return this.#answered === this.input.value;
  }

  async open() {
    const typed = this.input.value;
    this.#asked += 1;
    const number = this.#asked;
    this.busy();
    let fill = null;
    try {
      fill = await this.find(typed, this.#running.signal);
    } catch {
      // Said below: a list that did not come is no list.
    }
    // A later question was asked meanwhile: this answer is nobody's any more.
    if (number !== this.#asked) return;
    this.list.removeAttribute("aria-busy");
    if (!fill) {
      this.list.replaceChildren();
      this.close();
      this.says("failed");
      return;
    }
    fill();
    this.#answered = typed;
    this.says(this.options().length);
    if (document.activeElement !== this.input) return;
    this.list.hidden = false;
    this.input.setAttribute("aria-expanded", "true");
    this.mark(0);
  }

  busy() {
    this.#running?.abort();
    this.#running = new AbortController();
    this.#answered = null;
    this.list.setAttribute("aria-busy", "true");
    this.mark(-1);
  }

  close() {
    this.list.hidden = true;
    this.input.setAttribute("aria-expanded", "false");
    this.input.removeAttribute("aria-activedescendant");
  }

  mark(place) {
    const options = this.options();
    this.list.querySelectorAll("[aria-selected]").forEach((one) => one.removeAttribute("aria-selected"));
    if (!options.length || !this.fits()) {
      this.input.removeAttribute("aria-activedescendant");
      return;
    }
    this.at = (place + options.length) % options.length;
    options[this.at].setAttribute("aria-selected", "true");
    options[this.at].scrollIntoView({ block: "nearest" });
    this.input.setAttribute("aria-activedescendant", options[this.at].id);
  }

  async key(event) {
    const closed = this.list.hidden;
    if (event.key === "ArrowDown" || event.key === "ArrowUp") {
      event.preventDefault();
      if (this.waits()) this.says("busy");
      else if (closed) await this.open();
      else this.mark(this.at + (event.key === "ArrowDown" ? 1 : -1));
    } else if (event.key === "Enter" && this.waits()) {
      event.preventDefault();
      event.stopPropagation();
      this.says("busy");
    } else if (event.key === "Enter" && !closed) {
      event.preventDefault();
      event.stopPropagation();
      this.take(this.options()[this.at]);
    } else if (event.key === "Escape" && !closed) {
      event.preventDefault();
      this.close();
    }
  }

  // True while a list is on its way.
  waits() {
    return this.list.getAttribute("aria-busy") === "true";
  }

  take(option) {
    if (!option || !this.fits()) return;
    this.close();
    this.chosen(option);
  }
}

// True if every word that was typed begins one of a phrase's words, or if the letters begin its words.
export function fits(typed, phrases) {
  const asked = typed.trim().toLowerCase();
  if (!asked) return true;
  const tokens = asked.split(/\s+/);
  return phrases.split("|").some((phrase) => {
    const words = phrase.split(/[\s,]+/).filter(Boolean);
    const initials = words.map((word) => word[0]).join("");
    return initials.startsWith(asked) || tokens.every((token) => words.some((word) => word.startsWith(token)));
  });
}
