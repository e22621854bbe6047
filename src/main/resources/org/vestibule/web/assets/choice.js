// A field in which one types and then chooses from a list: arrow keys, Enter, or a press on a line.
export class Choice {
  constructor(input, list, find, chosen) {
    this.input = input;
    this.list = list;
    this.find = find;
    this.chosen = chosen;
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

  async open() {
    await this.find(this.input.value);
    if (document.activeElement !== this.input) return;
    this.list.hidden = false;
    this.input.setAttribute("aria-expanded", "true");
    this.mark(0);
  }

  close() {
    this.list.hidden = true;
    this.input.setAttribute("aria-expanded", "false");
    this.input.removeAttribute("aria-activedescendant");
  }

  mark(place) {
    const options = this.options();
    this.list.querySelectorAll("[aria-selected]").forEach((one) => one.removeAttribute("aria-selected"));
    if (!options.length) {
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
      if (closed) await this.open();
      else this.mark(this.at + (event.key === "ArrowDown" ? 1 : -1));
    } else if (event.key === "Enter" && !closed) {
      event.preventDefault();
      event.stopPropagation();
      this.take(this.options()[this.at]);
    } else if (event.key === "Escape" && !closed) {
      event.preventDefault();
      this.close();
    }
  }

  take(option) {
    if (!option) return;
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
