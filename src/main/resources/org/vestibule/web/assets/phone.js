// Sends photographs piece by piece, proves that they arrived, and says when they may be deleted.
import { Memory } from "./phone-memory.js";

const PIECE = 512 * 1024;
const PAUSES = [1000, 2000, 4000, 8000];
const HERE = ["safe", "unproved"];
const GOING = ["checking", "sending", "waiting", "proving"];
const page = document.getElementById("phone");
const wanted = document.getElementById("wanted");
const list = document.getElementById("files");
const verdict = document.getElementById("verdict");
const proof = page.dataset.form;
const memory = new Memory(page.dataset.page);
const sendings = [];
let ended = false;
let leaving = false;
let line = Promise.resolve();

const say = (key) => document.querySelector(`#says [data-key="${key}"]`).textContent;

class Refusal extends Error {
  constructor(reason, advice) {
    super(reason);
    this.advice = advice;
  }
}

class Unreadable extends Error {}

class Sending {
  constructor(name, size, view) {
    this.name = name;
    this.size = size;
    this.view = view;
    this.row = document.getElementById("file").content.firstElementChild.cloneNode(true);
    this.row.querySelector(".file-name").textContent = name;
    this.row.querySelector("progress").setAttribute("aria-label", name);
    sendings.push(this);
    list.append(this.row);
  }

  // A file whose bytes this page holds from now on.
  give(file) {
    this.file = file;
    this.show("checking");
    return this;
  }

  // A file that was chosen before this page was loaded: what the server says of it counts.
  remembered(kept, known) {
    this.id = kept.id;
    const here = known.get(kept.id);
    this.progress(here?.received ?? 0);
    if (here?.hash) this.show(here.confirmed ? "safe" : "unproved");
    else if (["no-jpeg", "refused", "unreadable"].includes(kept.state)) this.show(kept.state, kept.words);
    else this.show("again");
  }

  isHere() {
    return HERE.includes(this.state);
  }

  // True for what is not here and waits for this file to be chosen again.
  lacks(file) {
    const over = !this.isHere() && !GOING.includes(this.state);
    return over && this.name === file.name && this.size === file.size;
  }

  remove() {
    memory.forget(this.id);
    sendings.splice(sendings.indexOf(this), 1);
    this.row.remove();
  }

  show(state, words = "") {
    this.tell(state, words);
    remember();
    judge();
  }

  tell(state, words = "") {
    this.state = state;
    this.words = words;
    this.row.dataset.state = state;
    const said = this.row.querySelector(".file-state");
    said.textContent = words ? say(state) + " " + words : say(state);
  }

  progress(received) {
    this.row.querySelector("progress").value = (100 * received) / Math.max(1, this.size);
  }

  // Never fails: whatever happens to one file, those after it are sent.
  async send() {
    try {
      await this.whole();
    } catch (trouble) {
      if (trouble instanceof Refusal) {
        this.show("refused", [trouble.message, trouble.advice].filter(Boolean).join(": ") + ".");
      } else {
        this.show("unreadable");
        if (!(trouble instanceof Unreadable)) console.error(trouble);
      }
    }
  }

  async whole() {
    if (!(await isJpeg(this.file))) {
      this.show("no-jpeg");
      return;
    }
    const hash = await digest(this.file);
    await this.pieces();
    this.show("proving");
    const end = await this.insist(() => ask(`/phone/files/${this.id}/end`, form({ hash })));
    this.progress(this.size);
    this.show(end.confirmed ? "safe" : "unproved");
  }

  async pieces() {
    const begin = { name: this.name, size: this.size, view: this.view };
    let state = await this.insist(() => ask("/phone/files", form(begin)));
    if (this.id !== state.id) memory.forget(this.id);
    this.id = state.id;
    while (state.received < this.size && !state.hash) {
      this.show("sending");
      this.progress(state.received);
      const from = state.received;
      // Read before it is sent: what can't be read is no broken connection, and never will be sent.
      const piece = await bytes(this.file.slice(from, from + PIECE));
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
    // The session slept; the code's secret brings it back, and what was sent is still there. This
    // page is over: nothing more is to become of its files, so that the next one asks for them again.
    leaving = true;
    location.assign("/phone");
    return new Promise(() => {});
  }
  if (answer.status === 410) {
    ended = true;
    throw new Refusal(say("ended"), "");
  }
  if (answer.status >= 500 || answer.status === 408) throw new Error("the server is not ready");
  const json = (answer.headers.get("Content-Type") ?? "").startsWith("application/json");
  const said = json ? await answer.json() : { reason: String(answer.status), advice: "" };
  if (!answer.ok) throw new Refusal(said.reason, said.advice);
  return said;
}

async function bytes(blob) {
  try {
    return await blob.arrayBuffer();
  } catch (trouble) {
    throw new Unreadable(String(trouble));
  }
}

async function isJpeg(file) {
  const start = new Uint8Array(await bytes(file.slice(0, 3)));
  return start[0] === 0xff && start[1] === 0xd8 && start[2] === 0xff;
}

// Browsers compute it only where the connection is secure.
async function digest(file) {
  if (!globalThis.crypto?.subtle) return "";
  const hash = await crypto.subtle.digest("SHA-256", await bytes(file));
  return [...new Uint8Array(hash)].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}

function chosen() {
  return sendings.map(({ name, size, view, id, state, words, file }) => ({ name, size, view, id, state, words, held: Boolean(file) }));
}

function remember() {
  memory.keep(chosen());
}

// Another tab wrote how far its files came. Those that only stand here are shown as they are there.
function hear() {
  const kept = memory.files();
  for (const one of sendings.filter(({ file }) => !file)) {
    const there = kept.find(({ id }) => id && id === one.id);
    if (there) one.tell(there.state, there.words);
  }
  judge();
}

// Nothing may be deleted before every file that was chosen is there and proved; those that were
// chosen before the page was loaded or in another tab count as well, and where they can't be remembered nothing is safe.
function judge() {
  const all = [...sendings, ...memory.others(chosen())];
  const unproved = all.some((one) => one.state === "unproved");
  const safe = memory.works && all.every((one) => HERE.includes(one.state));
  let key = "none";
  if (ended) key = "ended";
  else if (all.length > 0) key = !safe ? "not-yet" : unproved ? "not-proved" : "all-safe";
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
  const details = wanted.querySelector("details");
  if (details) details.open = open;
  const again = [...wanted.querySelectorAll("input")].find((input) => input.value === chosen);
  if (again) again.checked = true;
}

function take(event) {
  const files = [...event.target.files];
  event.target.value = "";
  const view = files.length === 1 ? (wanted.querySelector("input:checked")?.value ?? "") : "";
  document.getElementById("nothing").hidden = true;
  for (const file of files) {
    const before = sendings.find((one) => one.lacks(file));
    const one = (before ?? new Sending(file.name, file.size, view)).give(file);
    line = line.then(() => one.send()).then(refresh);
  }
  wanted.querySelector("input[value='']").checked = true;
}

// What was chosen before this page was loaded, with what the server has of it.
async function recall() {
  const kept = memory.files();
  memory.forgetOld();
  if (kept.length === 0) return;
  document.getElementById("nothing").hidden = true;
  const old = kept.map((one) => new Sending(one.name, one.size, one.view));
  old.forEach((one, number) => Object.assign(one, { id: kept[number].id }).show("checking"));
  const files = (await old[0].insist(() => ask("/phone/files", {}))).files;
  const known = new Map(files.map((file) => [file.id, file]));
  old.forEach((one, number) => one.remembered(kept[number], known));
  // What was chosen again while the server was being asked.
  old.filter((one) => sendings.some(({ file }) => file && one.lacks(file))).forEach((one) => one.remove());
  remember();
  judge();
}

line = recall().catch((trouble) => {
  if (!(trouble instanceof Refusal)) console.error(trouble);
  judge();
});
memory.whenChanged(hear);
for (const id of ["camera", "roll"]) document.getElementById(id).addEventListener("change", take);
setInterval(() => document.visibilityState === "visible" && refresh(), 20000);
addEventListener("beforeunload", (event) => {
  const going = sendings.some((one) => one.file && GOING.includes(one.state));
  if (going && !ended && !leaving) event.preventDefault();
});
