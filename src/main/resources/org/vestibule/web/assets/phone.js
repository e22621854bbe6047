// Sends photographs piece by piece, proves that they arrived, and says when they may be deleted.
const PIECE = 512 * 1024;
const PAUSES = [1000, 2000, 4000, 8000];
const page = document.getElementById("phone");
const wanted = document.getElementById("wanted");
const list = document.getElementById("files");
const verdict = document.getElementById("verdict");
const proof = page.dataset.form;
const sendings = [];
let ended = false;
let line = Promise.resolve();

const say = (key) => document.querySelector(`#says [data-key="${key}"]`).textContent;

class Refusal extends Error {
  constructor(reason, advice) {
    super(reason);
    this.advice = advice;
  }
}

class Sending {
  constructor(file, view) {
    this.file = file;
    this.view = view;
    this.row = document.getElementById("file").content.firstElementChild.cloneNode(true);
    this.row.querySelector(".file-name").textContent = file.name;
    this.row.querySelector("progress").setAttribute("aria-label", file.name);
    list.append(this.row);
    this.show("checking");
  }

  show(state, words = "") {
    this.state = state;
    this.row.dataset.state = state;
    const said = this.row.querySelector(".file-state");
    said.textContent = words ? say(state) + " " + words : say(state);
    judge();
  }

  progress(received) {
    this.row.querySelector("progress").value = (100 * received) / Math.max(1, this.file.size);
  }

  async send() {
    try {
      if (!(await isJpeg(this.file))) {
        this.show("no-jpeg");
        return;
      }
      const hash = await digest(this.file);
      await this.pieces();
      this.show("proving");
      const end = await this.insist(() => ask(`/phone/files/${this.id}/end`, form({ hash })));
      this.progress(this.file.size);
      this.show(end.confirmed ? "safe" : "unproved");
    } catch (trouble) {
      if (!(trouble instanceof Refusal)) throw trouble;
      this.show("refused", [trouble.message, trouble.advice].filter(Boolean).join(": ") + ".");
    }
  }

  async pieces() {
    const begin = { name: this.file.name, size: this.file.size, view: this.view };
    let state = await this.insist(() => ask("/phone/files", form(begin)));
    this.id = state.id;
    while (state.received < this.file.size && !state.hash) {
      this.show("sending");
      this.progress(state.received);
      const from = state.received;
      const piece = this.file.slice(from, from + PIECE);
      state = await this.insist(
        () => ask(`/phone/files/${this.id}/from/${from}`, { method: "PUT", body: piece }),
        () => ask(`/phone/files/${this.id}`, {}),
      );
    }
    this.progress(state.received);
  }

  // Tries until the connection is back; what is here already is never sent again.
  async insist(step, again = step) {
    let next = step;
    for (let tries = 0; ; tries++) {
      try {
        return await next();
      } catch (trouble) {
        if (trouble instanceof Refusal) throw trouble;
        this.show("waiting");
        await pause(PAUSES[Math.min(tries, PAUSES.length - 1)]);
        next = again;
      }
    }
  }
}

function pause(milliseconds) {
  return new Promise((resolve) => {
    const done = () => {
      clearTimeout(timer);
      removeEventListener("online", done);
      resolve();
    };
    const timer = setTimeout(done, milliseconds);
    addEventListener("online", done);
  });
}

function form(values) {
  return { method: "POST", body: new URLSearchParams(values) };
}

async function ask(address, request) {
  const answer = await fetch(address, { ...request, headers: { "X-Vestibule-Form": proof } });
  if (answer.status === 401) {
    // The session slept; the code's secret brings it back, and what was sent is still there.
    location.assign("/phone");
    throw new Refusal(say("ended"), "");
  }
  if (answer.status === 410) {
    ended = true;
    throw new Refusal(say("ended"), "");
  }
  if (answer.status >= 500) throw new Error("the server is not ready");
  const json = (answer.headers.get("Content-Type") ?? "").startsWith("application/json");
  const said = json ? await answer.json() : { reason: String(answer.status), advice: "" };
  if (!answer.ok) throw new Refusal(said.reason, said.advice);
  return said;
}

async function isJpeg(file) {
  const start = new Uint8Array(await file.slice(0, 3).arrayBuffer());
  return start[0] === 0xff && start[1] === 0xd8 && start[2] === 0xff;
}

// Browsers compute it only where the connection is secure.
async function digest(file) {
  if (!globalThis.crypto?.subtle) return "";
  const hash = await crypto.subtle.digest("SHA-256", await file.arrayBuffer());
  return [...new Uint8Array(hash)].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}

// Nothing may be deleted before every file that was chosen is there and proved.
function judge() {
  const states = sendings.map((one) => one.state);
  const unproved = states.includes("unproved");
  const safe = states.every((state) => state === "safe" || state === "unproved");
  let key = "none";
  if (ended) key = "ended";
  else if (states.length > 0) key = !safe ? "not-yet" : unproved ? "not-proved" : "all-safe";
  if (verdict.dataset.state === key) return;
  verdict.dataset.state = key;
  verdict.querySelector("p").textContent = key === "none" ? "" : say(key);
}

async function refresh() {
  const answer = await fetch("/phone/wanted").catch(() => null);
  if (!answer?.ok) return;
  const chosen = wanted.querySelector("input:checked")?.value ?? "";
  const open = wanted.querySelector("details")?.open ?? false;
  // The server escapes every value that it puts into this part of a page.
  wanted.innerHTML = await answer.text();
  wanted.querySelector("details").open = open;
  const again = [...wanted.querySelectorAll("input")].find((input) => input.value === chosen);
  if (again) again.checked = true;
}

function take(event) {
  const chosen = [...event.target.files];
  event.target.value = "";
  const view = chosen.length === 1 ? (wanted.querySelector("input:checked")?.value ?? "") : "";
  document.getElementById("nothing").hidden = true;
  for (const file of chosen) {
    const one = new Sending(file, view);
    sendings.push(one);
    line = line.then(() => one.send()).then(refresh);
  }
  judge();
  wanted.querySelector("input[value='']").checked = true;
}

for (const id of ["camera", "roll"]) document.getElementById(id).addEventListener("change", take);
setInterval(() => document.visibilityState === "visible" && refresh(), 20000);
addEventListener("beforeunload", (event) => {
  const going = sendings.some((one) => ["checking", "sending", "waiting", "proving"].includes(one.state));
  if (going && !ended) event.preventDefault();
});
