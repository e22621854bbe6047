// Labels photographs one after the other by keys. What becomes of each is worked out by the server alone.
import { Choice, fits } from "./choice.js";
import { Crop } from "./crop.js";
import { TeethField } from "./teeth-field.js";

const page = document.getElementById("sorting");
const byId = (id) => document.getElementById(id);
const correcting = page.dataset.mode === "correct";
const form = byId("answers");
const previewed = byId("previewed");
const edges = byId("edges");
const visit = byId("visit");
const view = byId("view");
const take = byId("take");
const buttons = [...document.querySelectorAll(".order button")];
const FACTS = ["view", "mirror", "incisors", "up", "teeth", "crop", "trim", "stage", "treatment", "note", "accessories"];
const said = new Map(buttons.map((button) => [button.dataset.key, first(button)]));
let current = "";
let running = null;
let pictured = false;

function first(button) {
  const words = { state: "open", shown: "", answered: "" };
  for (const [name, value] of new URLSearchParams(button.dataset.given)) words[name] = value;
  return words;
}

function words() {
  return said.get(current);
}

function part() {
  return previewed.querySelector(".preview");
}

// The questions, in the order in which they are asked.

const views = [...byId("view-list").children];

new Choice(
  view,
  byId("view-list"),
  (typed) => () => views.forEach((one) => { one.hidden = !fits(typed, one.dataset.phrases); }),
  async (option) => {
    if (words().view !== option.dataset.value) Object.assign(words(), { view: option.dataset.value, incisors: "", up: "" });
    view.value = option.textContent;
    await changed();
    onward();
  },
);
view.addEventListener("change", () => {
  if (!view.value.trim()) say("view", "");
  else view.value = named(words().view);
});

function named(key) {
  return views.find((one) => one.dataset.value === key)?.textContent ?? key ?? "";
}

async function say(name, value) {
  words()[name] = value;
  await changed();
}

const mirror = byId("mirror");
mirror.addEventListener("change", (event) => say("mirror", event.target.value));
mirror.addEventListener("keydown", async (event) => {
  const chosen = mirror.querySelectorAll("input")[Number(event.key) - 1];
  if (!chosen || event.ctrlKey || event.altKey || event.metaKey) return;
  event.preventDefault();
  chosen.checked = true;
  await say("mirror", chosen.value);
  onward();
});

edges.addEventListener("click", (event) => {
  const edge = event.target.closest(".edge");
  if (edge) laid(edge.dataset.edge);
});
edges.addEventListener("keydown", async (event) => {
  const edge = { ArrowUp: "top", ArrowDown: "bottom", ArrowLeft: "left", ArrowRight: "right" }[event.key];
  if (!edge) return;
  event.preventDefault();
  await laid(edge);
  onward();
});

async function laid(edge) {
  const name = part()?.dataset.edge ?? "up";
  await say(name, words()[name] === edge ? "" : edge);
}

const teeth = new TeethField(byId("teeth"), byId("on-chart"), () => say("teeth", byId("teeth").value.trim()));

for (const name of ["stage", "treatment", "note"]) {
  byId(name).addEventListener("change", () => say(name, byId(name).value));
}

const crop = new Crop(
  document.querySelector(".cuts"), byId("frame"), document.querySelector(".canvas"), byId("size"),
  () => say("crop", crop.words()),
);
byId("whole").addEventListener("click", () => say("crop", ""));

// What becomes of it by what is said: the server's answer, never one of our own.

async function changed() {
  Object.assign(words(), { state: "open", shown: "", answered: "" });
  await preview();
}

async function preview() {
  const key = current;
  running?.abort();
  running = new AbortController();
  const query = new URLSearchParams(FACTS.filter((fact) => words()[fact]).map((fact) => [fact, words()[fact]]));
  if (visit.dataset.visit) query.set("visit", visit.dataset.visit);
  take.disabled = true;
  try {
    const answer = await fetch(`/preview/${key}?${query}`, { signal: running.signal });
    if (answer.status === 401) location.reload();
    const text = await answer.text();
    if (key !== current) return;
    // The server escapes every value that it puts into this part of a page.
    previewed.innerHTML = text;
    // Nothing can be taken before the picture itself is seen.
    pictured = await previewed.querySelector(".window img")?.decode().then(() => true, () => false) ?? false;
    if (key === current && part()) show();
  } catch (stopped) {
    if (stopped.name !== "AbortError") throw stopped;
  }
}

function show() {
  const found = part();
  const facts = words();
  const name = found?.dataset.edge ?? "up";
  const question = byId("edge-question");
  question.textContent = question.dataset[name];
  edges.querySelectorAll(".edge").forEach((edge) => {
    edge.setAttribute("aria-pressed", String(facts[name] === edge.dataset.edge));
  });
  const places = found?.dataset.shown ? {
    across: found.dataset.across.split(",").map(Number), down: found.dataset.down.split(",").map(Number),
    wide: Number(found.dataset.wide), high: Number(found.dataset.high),
  } : null;
  crop.allow(places);
  crop.set(facts.crop);
  if (found?.dataset.shown) teeth.tick(found.dataset.iso);
  document.querySelectorAll("[data-asks]").forEach((one) => delete one.dataset.asks);
  ask()?.closest(".combo, .choice, .asked-side")?.setAttribute("data-asks", "");
  settle();
}

function settle() {
  const found = part();
  const despite = byId("despite");
  take.disabled = !found?.dataset.shown || !pictured || (despite !== null && !despite.checked);
}

previewed.addEventListener("change", settle);
previewed.addEventListener("click", async (event) => {
  if (!event.target.closest("[data-trim]")) return;
  await say("trim", "yes");
  onward();
});

function ask() {
  const wanted = part()?.dataset.ask;
  if (wanted === "view") return view;
  if (wanted === "mirror") return mirror.querySelector("input:checked") ?? mirror.querySelector("input");
  if (wanted === "incisors") return edges.querySelector(".edge.top");
  return null;
}

// To what has to be said next: a question, a doubt, or that it is right.
function onward() {
  const despite = byId("despite");
  const found = part();
  const trouble = previewed.querySelector(".trouble button") ?? edges.querySelector(".edge.top");
  (ask() ?? (!found?.dataset.shown ? trouble : despite && !despite.checked ? despite : take)).focus();
}

page.addEventListener("keydown", (event) => {
  if (event.key === "PageDown" || event.key === "PageUp") {
    event.preventDefault();
    const at = buttons.findIndex((one) => one.dataset.key === current) + (event.key === "PageDown" ? 1 : -1);
    if (buttons[at]) open(buttons[at]);
  } else if (event.key === "Enter" && event.target.id === "despite") {
    event.preventDefault();
    event.target.checked = true;
    settle();
    take.focus();
  }
});

form.addEventListener("submit", (event) => {
  event.preventDefault();
  if (take.disabled) onward();
  else ready();
});

function ready() {
  const found = part();
  Object.assign(words(), { state: "ready", shown: found.dataset.shown, answered: found.dataset.kinds });
  tell();
  const next = buttons.slice(buttons.findIndex((one) => one.dataset.key === current) + 1)
    .concat(buttons).find((one) => said.get(one.dataset.key).state === "open");
  if (next) open(next);
  else if (!visit.dataset.visit) visit.focus();
  else byId(correcting ? "why" : "file").focus();
}

// One photograph after the other.

async function open(button) {
  current = button.dataset.key;
  buttons.forEach((one) => one.toggleAttribute("aria-current", one === button));
  document.querySelectorAll("[data-about]").forEach((one) => { one.hidden = one.dataset.about !== current; });
  byId("place").textContent = `${buttons.indexOf(button) + 1} / ${buttons.length}`;
  byId("asked").src = `/asked/${current}`;
  const facts = words();
  view.value = named(facts.view);
  mirror.querySelectorAll("input").forEach((one) => { one.checked = one.value === facts.mirror; });
  for (const name of ["teeth", "stage", "treatment", "note"]) byId(name).value = facts[name] ?? "";
  if (byId("off")) byId("off").action = `/reject/${current}`;
  const before = { state: facts.state, shown: facts.shown, answered: facts.answered };
  const kept = facts.state === "ready";
  await preview();
  if (kept) Object.assign(facts, before);
  if (kept && byId("despite")) byId("despite").checked = true;
  settle();
  if (facts.view && facts.mirror) onward();
  else (facts.view ? ask() ?? view : view).focus();
}

buttons.forEach((button) => button.addEventListener("click", () => open(button)));

function tell() {
  let count = 0;
  for (const button of buttons) {
    const facts = said.get(button.dataset.key);
    const label = button.querySelector(".label");
    label.textContent = facts.state === "open" && !correcting ? label.dataset.empty : named(facts.view);
    button.dataset.state = facts.state;
    if (facts.state === "ready") count += 1;
  }
  const status = byId("ready");
  if (status) {
    const text = count === 0 ? status.dataset.none : count === 1 ? status.dataset.one : status.dataset.many.replace("{0}", count);
    status.textContent = count && !visit.dataset.visit ? `${text} ${status.dataset.visit}` : text;
    byId("file").disabled = !count || !visit.dataset.visit;
  } else {
    byId("correct-now").disabled = !count;
  }
  series();
}

// Whose they are. Never chosen by anybody but the person.

new Choice(
  visit,
  byId("visit-list"),
  async (typed, signal) => {
    if (visit.dataset.visit) {
      delete visit.dataset.visit;
      tell();
    }
    const query = new URLSearchParams({ near: current || page.dataset.key, q: typed });
    const answer = await fetch(`/visits?${query}`, { signal });
    if (!answer.ok) return null;
    const text = await answer.text();
    return () => {
      byId("visit-list").innerHTML = text;
      byId("visit-list").querySelectorAll("[role=option]").forEach((one, at) => { one.id = `visit-${at}`; });
    };
  },
  async (option) => {
    visit.dataset.visit = option.dataset.value;
    visit.value = [...option.children].slice(0, 3).map((one) => one.textContent).join(" · ");
    // Another visit may raise other doubts, also of what was ready.
    for (const facts of said.values()) if (facts.state === "ready") facts.state = "open";
    tell();
    const button = buttons.find((one) => said.get(one.dataset.key).state === "open");
    if (button) await open(button);
  },
  (found) => {
    const state = byId("visit-state");
    const word = typeof found === "string" ? found : found === 1 ? "one" : found ? "many" : "none";
    state.textContent = state.dataset[word].replace("{0}", found);
  },
);

async function series() {
  if (!visit.dataset.visit) {
    byId("series").textContent = "";
    return;
  }
  const query = new URLSearchParams({ visit: visit.dataset.visit });
  for (const facts of said.values()) if (facts.state === "ready" && !correcting) query.append("view", facts.view);
  byId("series").innerHTML = await (await fetch(`/series?${query}`)).text();
}

// Filing: each photograph ends filed or says why not; what was not filed stays as it was said.

function carry(body, key, before) {
  for (const name of [...FACTS, "shown", "answered"]) body.append(before + name, said.get(key)[name] ?? "");
}

byId("file")?.addEventListener("click", async () => {
  const body = new URLSearchParams({ visit: visit.dataset.visit });
  for (const [key, facts] of said) {
    if (facts.state !== "ready") continue;
    body.append("photo", key);
    carry(body, key, key + ".");
  }
  byId("file").disabled = true;
  const outcome = byId("outcome");
  try {
    const answer = await fetch("/file", { method: "POST", headers: { "X-Vestibule-Form": page.dataset.proof }, body });
    const text = await answer.text();
    if (answer.ok) outcome.innerHTML = text;
    else outcome.replaceChildren(...new DOMParser().parseFromString(text, "text/html").querySelector("main").children);
  } finally {
    byId("file").disabled = false;
  }
  outcome.querySelectorAll("[data-key]").forEach((one) => {
    const state = one.dataset.state;
    if (state === "filed" || state === "elsewhere") said.get(one.dataset.key).state = state;
    if (state === "refused") said.get(one.dataset.key).state = "open";
  });
  tell();
  outcome.focus();
});

byId("correct")?.addEventListener("submit", () => {
  const carried = byId("carried");
  carried.replaceChildren();
  const body = new URLSearchParams({ visit: visit.dataset.visit ?? "" });
  carry(body, current, "");
  for (const [name, value] of body) {
    const field = Object.assign(document.createElement("input"), { type: "hidden", name, value });
    carried.append(field);
  }
});

window.addEventListener("beforeunload", (event) => {
  if (!correcting && [...said.values()].some((facts) => facts.state === "ready")) event.preventDefault();
});

tell();
await open(buttons[0]);
if (!visit.dataset.visit) visit.focus();
