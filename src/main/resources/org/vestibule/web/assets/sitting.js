// Asks the server. Where the sitting has ended meanwhile, what is asked waits until the same person has signed in again
// in another window: the page stays, and so does everything that was said on it. Where the server has too much to do,
// it is asked again when it said, a few times, and the person reads that.
const TRIES = 4;
const LONGEST_SECONDS = 10;

export class Sitting {
  #page;
  #dialog;
  #again = null;
  #told;
  #waiting = 0;

  // `page` says in data-person who said what stands on it, and in data-proof that a page of ours asks.
  // `told` has in data-busy what is said while the server has too much to do.
  constructor(page, dialog, told) {
    this.#page = page;
    this.#dialog = dialog;
    this.#told = told;
  }

  async fetch(address, how = {}) {
    for (let tries = 1; ; tries++) {
      const proof = this.#page.dataset.proof;
      const headers = how.method ? { "X-Vestibule-Form": proof } : {};
      const answer = await fetch(address, { ...how, headers });
      const seconds = Number.parseInt(answer.headers.get("Retry-After"), 10);
      if (answer.status === 401) await this.#signedIn();
      else if (answer.status === 503 && seconds >= 0 && tries < TRIES) await this.#later(Math.min(seconds, LONGEST_SECONDS), how.signal);
      // Signed in anew in another window: the proof of the sitting before counts no more.
      else if (!(answer.status === 403 && how.method && await this.#isRenewed(proof))) return answer;
    }
  }

  async #later(seconds, signal) {
    this.#waiting += 1;
    this.#told.textContent = this.#told.dataset.busy;
    try {
      await new Promise((go, stop) => {
        const timer = setTimeout(go, 1000 * seconds);
        signal?.addEventListener("abort", () => {
          clearTimeout(timer);
          stop(signal.reason);
        });
      });
    } finally {
      this.#waiting -= 1;
      if (this.#waiting === 0) this.#told.textContent = "";
    }
  }

  // Comes back when somebody is signed in under the name that stands on the page.
  async check() {
    while (await this.#renew() !== "same") await this.#signedIn();
  }

  async #isRenewed(proof) {
    await this.check();
    return this.#page.dataset.proof !== proof;
  }

  #signedIn() {
    this.#again ??= this.#asked().finally(() => { this.#again = null; });
    return this.#again;
  }

  #asked() {
    const state = this.#dialog.querySelector("[data-nobody]");
    state.textContent = "";
    this.#dialog.showModal();
    return new Promise((go, stop) => {
      this.#dialog.querySelector("button").onclick = async () => {
        const found = await this.#renew().catch(() => "nobody");
        if (found !== "same") {
          state.textContent = state.dataset[found].replace("{0}", state.dataset.found ?? "");
          return;
        }
        this.#dialog.onclose = null;
        this.#dialog.close();
        go();
      };
      this.#dialog.onclose = () => stop(new Error("nobody signed in again"));
    });
  }

  // "same", "other" or "nobody"; for the same person the page's forms get the new sitting's proof.
  async #renew() {
    const answer = await fetch("/who");
    if (!answer.ok) return "nobody";
    const page = new DOMParser().parseFromString(await answer.text(), "text/html");
    const person = page.querySelector(".sitting span")?.textContent ?? "";
    if (person !== this.#page.dataset.person) {
      this.#dialog.querySelector("[data-nobody]").dataset.found = person;
      return person ? "other" : "unnamed";
    }
    const proof = page.querySelector("input[name=form]").value;
    this.#page.dataset.proof = proof;
    document.querySelectorAll("input[name=form]").forEach((one) => { one.value = proof; });
    return "same";
  }
}
